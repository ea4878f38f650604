/** What pieces, wants and notes are called, by the packs they speak of. No DOM here. */
import { itemName, percent, small } from "./say.js";
import {
  ANY_VARIANT,
  boxIn,
  IN_NO_RANGE,
  NO_BOX,
  NOT_IDENTIFIED,
  NOT_IN_THE_RANGE,
  NOT_NAMED_YET,
  orAnotherNumber,
  otherCount,
  perhapsOr,
  SOME_VARIANT,
  THE_ONLY_VARIANT,
} from "./first-words.js";

/** @import { Pack } from "../data/engine-types.d.ts" */

const looked = new WeakMap();
const CERTAIN = 0.995;

function lookup(pack) {
  if (!looked.has(pack)) {
    looked.set(pack, {
      items: new Map(pack.items.map((item, place) => [item.number, place])),
      variants: new Map(pack.variants.map((variant, place) => [variant.id, place])),
    });
  }
  return looked.get(pack);
}

/**
 * The place of an item in its pack; -1 where the pack or the item is not there.
 * @param {Pack | undefined} pack
 * @param {string} number
 * @returns {number}
 */
export function itemPlace(pack, number) {
  return pack ? (lookup(pack).items.get(number) ?? -1) : -1;
}

/**
 * The place of a variant in its pack; -1 where it is not there.
 * @param {Pack | undefined} pack
 * @param {string} id
 * @returns {number}
 */
export function variantPlace(pack, id) {
  return pack ? (lookup(pack).variants.get(id) ?? -1) : -1;
}

/**
 * The places of an item's variants.
 * @param {Pack} pack
 * @param {number} item
 * @returns {number[]}
 */
export function variantsOf(pack, item) {
  return pack.variants
    .map((_, place) => place)
    .filter((place) => pack.variants[place].item === item);
}

/**
 * How a variant is called beside its item's name.
 * @param {Pack} pack
 * @param {number} place
 * @returns {string}
 */
export function variantLabel(pack, place) {
  return pack.variants[place].name === "" ? THE_ONLY_VARIANT : small(pack.variants[place].name);
}

/** The number of the item that a record is about; "" for none. */
function itemNumber(record) {
  return record.type === "note" ? (record.of[0]?.item ?? "") : (record.item ?? "");
}

/**
 * What a record is about: number and name.
 * @param {Map<string, Pack>} packs
 * @param {any} record
 * @returns {string}
 */
export function title(packs, record) {
  if (record.type.startsWith("range")) return rowName(record);
  const number = itemNumber(record);
  const pack = packs.get(record.pack);
  const place = itemPlace(pack, number);
  if (place >= 0 && record.type === "piece" && ofSeveral(pack, record))
    return orAnotherNumber(itemName(pack, place));
  if (place >= 0) return itemName(pack, place);
  if (number !== "") return `${number} (${record.pack})`;
  if (record.type === "note") return record.text.split("\n")[0].slice(0, 60) || NOT_IDENTIFIED;
  return record.called || NOT_NAMED_YET;
}

/** What a range, or a row of one of one's own, is called. */
function rowName({ number = "", name = "", what = "", text = "", was = "" }) {
  return [number, name].filter(Boolean).join(" ") || what || text || was || NOT_NAMED_YET;
}

/** Could a piece be of more than one item? */
function ofSeveral(pack, { of }) {
  const places = of.map((entry) => variantPlace(pack, entry.variant)).filter((place) => place >= 0);
  return new Set(places.map((place) => pack.variants[place].item)).size > 1;
}

/**
 * Which variant a record is about, in a few words.
 * @param {Map<string, Pack>} packs
 * @param {any} record
 * @returns {string}
 */
export function variantText(packs, record) {
  const pack = packs.get(record.pack);
  const item = itemPlace(pack, itemNumber(record));
  if (item < 0 && itemNumber(record) === "" && record.type !== "note") return IN_NO_RANGE;
  if (item < 0) return record.type === "piece" ? NOT_IN_THE_RANGE : "";
  if (record.type === "want") {
    const place = variantPlace(pack, record.variant);
    return place < 0 ? ANY_VARIANT : variantLabel(pack, place);
  }
  const named = record.of.filter((entry) => variantPlace(pack, entry.variant) >= 0);
  if (named.length === 0) return variantsOf(pack, item).length === 1 ? "" : SOME_VARIANT;
  const [best] = named;
  const label = variantLabel(pack, variantPlace(pack, best.variant));
  if (named.length === 1 || best.chance >= CERTAIN) return label;
  const others = named.length === 2 ? "1 other" : otherCount(named.length - 1);
  return perhapsOr(label, percent(best.chance), others);
}

/** Condition and box in a few words; "" where nothing is said. */
export function stateText({ condition, boxed, box_condition: box }) {
  const said = condition === "" ? [] : [condition];
  if (boxed === "yes") said.push(box ? boxIn(box) : "boxed");
  if (boxed === "no") said.push(NO_BOX);
  return said.join(", ");
}

const haystacks = new WeakMap();

const plain = (text) => text.toLowerCase().replace(/[^a-z0-9]/g, "");

/** Is the text a number as it stands on a piece or its box? Then only that number is meant. */
const isNumber = (words) =>
  words.length < 3 &&
  words.some((word) => /^\d/.test(word)) &&
  /^[a-z]{0,3}\d/.test(plain(words.join("")));

/**
 * Does a record have this number, or everything that is written of it each of these words?
 * @param {Map<string, Pack>} packs
 * @param {any} record
 * @param {string[]} words
 * @returns {boolean}
 */
export function matches(packs, record, words) {
  const number = plain(itemNumber(record) || (record.called ?? ""));
  if (isNumber(words) && number !== "" && number.startsWith(plain(words.join("")))) return true;
  if (!haystacks.has(record)) {
    const { id, type, answers, ...rest } = record;
    const text = [title(packs, record), variantText(packs, record), texts(rest)].join(" ");
    haystacks.set(record, ` ${text.toLowerCase()}`);
  }
  const text = haystacks.get(record);
  return isNumber(words)
    ? text.includes(` ${words.join(" ")}`)
    : words.every((word) => text.includes(word));
}

function texts(value) {
  if (typeof value === "string") return value;
  return value && typeof value === "object" ? Object.values(value).map(texts).join(" ") : "";
}

/** The words of a search. */
export function wordsOf(text) {
  return text.toLowerCase().split(/\s+/).filter(Boolean);
}
