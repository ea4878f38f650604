/**
 * What is seen on a piece, put down in a range of one's own: which features a kind can be asked
 * for, and how an answer becomes rows. The shelf's features come into the range when they are first
 * answered.
 */
import { kit } from "../data/packs.js";
import { record } from "../data/records.js";
import { featureFromKit, keepRows, newKind, rowsOf, seenField } from "./own-range.js";
import { isNoted } from "./own-words.js";

/** @import { OwnItem, OwnVariant } from "../data/engine-types.d.ts" */

/**
 * A feature that can be looked at, of the range or still on the shelf:
 * {key, own (row or null), shelf (of the kit, or null), title, question, where, states: [{key, row,
 * name, caption, drawing}]}.
 */
export function ofShelf(shelf) {
  return {
    key: shelf.id,
    own: null,
    shelf,
    name: shelf.name,
    title: shelf.title || shelf.name,
    question: shelf.question,
    where: shelf.where ?? "",
    states: shelf.states.map((state) => ({
      key: state.id,
      row: null,
      name: state.name,
      caption: state.caption || state.name,
      drawing: state.drawing ?? "",
    })),
  };
}

/** The same of a feature of the range, `shelf` where it was picked. */
export function ofRange(own, shelf) {
  const captions = new Map((shelf?.states ?? []).map(({ id, caption }) => [id, caption]));
  return {
    key: own.key,
    own,
    shelf,
    name: own.name,
    title: shelf?.title || own.name,
    question: own.question,
    where: own.where,
    states: rowsOf(own.range, "range_state")
      .filter(({ feature }) => feature === own.id)
      .map((row) => ({
        key: row.key,
        row,
        name: row.name,
        caption: captions.get(row.key) || row.name,
        drawing: row.drawing,
      })),
  };
}

// the layers of a portrait that tell most, in the order in which they are asked
const FIRST = [
  "body",
  "extent",
  "plan",
  "colour",
  "lining",
  "emblem",
  "number",
  "coupling",
  "wheels",
  "bogies",
  "horns",
  "load",
  "lettering",
];

/**
 * The shelf in the order it is asked: form, what shows from the side, what most ranges are told by,
 * the finer points.
 */
function inOrder(features) {
  const late = ({ layer = "", unseen = "", needs = "nothing" }) => {
    if (needs !== "nothing") return FIRST.length + 3;
    if (layer === "") return FIRST.length + (unseen === "" ? 2 : 1);
    return FIRST.includes(layer) ? FIRST.indexOf(layer) : FIRST.length;
  };
  return [...features].sort((a, b) => late(a) - late(b));
}

/** What a kind (its key) can be asked for: first what the range has, then the rest of the shelf. */
export async function featuresFor(range, kind) {
  const { features } = await kit();
  const shelves = new Map(features.map((feature) => [feature.id, feature]));
  const kinds = new Map(rowsOf(range, "range_kind").map(({ id, key }) => [id, key]));
  const own = rowsOf(range, "range_feature");
  const has = (row) =>
    row.kinds.length === 0 ||
    row.kinds.some((id) => kinds.get(id) === kind) ||
    (shelves.get(row.kit)?.kinds ?? []).includes(kind); // of a kind that came into it later
  const taken = new Set(own.map(({ key }) => key));
  return [
    ...own.filter(has).map((row) => ofRange(row, shelves.get(row.kit || row.key) ?? null)),
    ...inOrder(features)
      .filter(({ id, kinds: which = [] }) => !taken.has(id) && which.includes(kind))
      .map(ofShelf),
  ];
}

/** What is put down of a feature on an item or a variant: keys of states. */
export function seenOn(row, feature) {
  if (!feature.own) return [];
  const ids = row[seenField(feature.own.id)] ?? [];
  return feature.states.filter(({ row: state }) => state && ids.includes(state.id));
}

/** Whether an item or a variant can have a feature, by what is put down: no horns on steam. */
export function canHave(row, { shelf }, features) {
  return Object.entries(shelf?.when ?? {}).every(([key, states]) => {
    const asked = features.find((feature) => (feature.shelf?.id ?? feature.key) === key);
    const seen = asked ? seenOn(row, asked) : [];
    return seen.length === 0 || seen.some((state) => states.includes(state.key));
  });
}

/** Whether anything is put down of a feature on this item or variant. */
export function isPutDown(row, feature) {
  return feature.own !== null && (row[seenField(feature.own.id)] ?? []).length > 0;
}

/** The kind of a range with this key: {kind, rows: what is new of it}. */
export function kindIn(range, shelf) {
  const there = rowsOf(range, "range_kind").find(({ key }) => key === shelf.id);
  if (there) return { kind: there, rows: [] };
  const { id: key, name, plural, drawing = "" } = shelf;
  const kind = newKind(range, { key, name, plural: plural ?? name, drawing });
  return { kind, rows: [kind] };
}

/**
 * The rows that a feature needs and has not got, and the ids of its states by their keys. `made`:
 * rows made beside it and not kept yet.
 */
export function rowsFor(range, feature, made = []) {
  const there =
    feature.own ?? made.find((row) => row.type === "range_feature" && row.key === feature.key);
  const rows = there ? [] : featureFromKit(range, feature.shelf, made);
  const own = there ?? rows.find(({ type }) => type === "range_feature");
  const states = [...rowsOf(range, "range_state"), ...made, ...rows].filter(
    (row) => row.type === "range_state" && row.feature === own.id,
  );
  return { rows, own, stateIds: new Map(states.map(({ key, id }) => [key, id])) };
}

/** An edit that lets a feature of the range be of this kind (its id) too; none where it is. */
export function withKind(own, kind) {
  if (!record(own.id) || own.kinds.length === 0 || own.kinds.includes(kind)) return [];
  const alter = (now) => ({ ...now, kinds: [...new Set([...now.kinds, kind])] });
  return [{ id: own.id, alter }];
}

/** The item that a row is, or is a variant of. */
export function itemOf(row) {
  return row.type === "range_item" ? row : record(row.item);
}

/**
 * Puts down what is seen of a feature on an item or a variant (`keys`: several are one of these),
 * and other fields that change with it; true when it is kept.
 * @param {OwnItem | OwnVariant} row
 */
export function putDown(row, feature, keys, fields = {}) {
  const { rows, own, stateIds } = rowsFor(row.range, feature);
  const field = seenField(own.id);
  const value = keys.map((key) => stateIds.get(key));
  const edit = { id: row.id, alter: (now) => ({ ...now, [field]: value, ...fields }) };
  const edits = [edit, ...withKind(own, itemOf(row).kind)];
  return keepRows(isNoted(feature.name), rows, { edits });
}

/** The variants of an item, and the item of a variant. */
export function variantsIn(item) {
  return rowsOf(item.range, "range_variant").filter((variant) => variant.item === item.id);
}

/** The key of an item's kind, "" where it has none. */
export function kindKey(item) {
  return record(item.kind)?.key ?? "";
}
