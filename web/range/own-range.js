/**
 * A range of one's own: its rows are records (`identify/core/types/own_ranges.py` says what they
 * hold), made here, kept all at once by `keepRows`, and compiled for the engine.
 */
import { blank, newId } from "../data/record-shapes.js";
import { all, making, record } from "../data/records.js";
import { saveChange } from "../parts/saving.js";

/** @import { OwnFeature, OwnItem, OwnRange, OwnVariant } from "../data/engine-types.d.ts" */

/** The sorts of records that name a range and what they are of it. */
export const POINTING = ["piece", "want", "note", "sighting"];

/** The sorts of rows, in the order of a folder's files. */
export const ROWS = [
  "range_kind",
  "range_part",
  "range_caution",
  "range_feature",
  "range_state",
  "range_source",
  "range_item",
  "range_variant",
  "range_change",
  "range_move",
];
const LONGEST_ID = 65;
let last = 0; // the place given to the latest row, so that rows made together stand in order

/** The ranges of one's own, by name. @returns {OwnRange[]} */
export function ownRanges() {
  return all("range").sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** The rows of one sort of a range, in their order. @returns {any[]} */
export function rowsOf(range, type) {
  return all(type)
    .filter((row) => row.range === range)
    .sort((a, b) => (a.at ?? 0) - (b.at ?? 0) || (a.id < b.id ? -1 : 1));
}

/** The field of an item or a variant that says what is seen of a feature. */
export function seenField(feature) {
  return `seen_${feature}`;
}

/** A name as an id: what a row is called where only plain letters may stand. */
export function plainWord(text) {
  const plain = text
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "_")
    .replace(/^_+|_+$/g, "")
    .slice(0, 24)
    .replace(/_$/, "");
  return /^[a-z]/.test(plain) ? plain : `x${plain}`;
}

/** A key that no other device makes by chance. */
function newKey(name) {
  return `${plainWord(name)}_${newId("").slice(0, 4)}`;
}

/** A new row of a range, not kept yet. */
function newRow(type, range, fields) {
  for (const row of all(type)) if (row.range === range) last = Math.max(last, row.at ?? 0);
  last += 1;
  return blank(type, { range, at: last, ...fields });
}

/**
 * A new range: {name, maker, gauge, scale, material, country, years, about}, all but the name may
 * be left out.
 * @returns {OwnRange}
 */
export function newRange(fields) {
  return blank("range", { key: newKey(fields.name), ...fields });
}

/** A sort of piece: {name, plural, complete, drawing}. A key is given where it has a usual one. */
export function newKind(range, fields) {
  const name = fields.name;
  return newRow("range_kind", range, {
    key: newKey(name),
    plural: name,
    complete: "a beginning",
    ...fields,
  });
}

/** A part that can be swapped: {name, swap, replaced}. */
export function newPart(range, fields) {
  return newRow("range_part", range, { key: newKey(fields.name), swap: 0.05, ...fields });
}

/** Who says so: {what, year, trust}. */
export function newSource(range, fields) {
  return newRow("range_source", range, { key: newKey(fields.what), trust: 0.8, ...fields });
}

/** Something to take care with: {text, kinds: [ids]; none: everything}. */
export function newCaution(range, fields) {
  return newRow("range_caution", range, fields);
}

/** A number or a key that was another one before: {what: "item" or "variant", was, now}. */
export function newMove(range, fields) {
  return newRow("range_move", range, fields);
}

/** In how many fields of other rows of its range the id of a row stands. */
export function usesOf({ id, range }) {
  const rows = ROWS.flatMap((type) => rowsOf(range, type));
  const said = (value) =>
    value === id || (Array.isArray(value) && value.flat().includes(id)) ? 1 : 0;
  return rows
    .filter((row) => row.id !== id)
    .flatMap((row) => Object.values(row))
    .reduce((count, value) => count + said(value), 0);
}

/**
 * A feature of one's own: {name, question, where, part, kinds: [ids], ...}.
 * @returns {OwnFeature}
 */
export function newFeature(range, fields) {
  return newRow("range_feature", range, {
    key: newKey(fields.name),
    question: `${fields.name}?`,
    seconds: 4,
    needs: "nothing",
    ...fields,
  });
}

/** What can be seen of a feature: {name, drawing (SVG, or a photo as a data: URL)}. */
export function newState(feature, fields) {
  return newRow("range_state", feature.range, {
    feature: feature.id,
    key: newKey(fields.name),
    ...fields,
  });
}

/** An item: {number, name, kind (id), years (EDTF), source (id), ..., seen}. @returns {OwnItem} */
export function newItem(range, { seen = {}, ...fields }) {
  return newRow("range_item", range, { ...fields, ...seenFields(seen) });
}

/**
 * A variant of an item: {name, years, source, common, note, seen: {feature id: [state ids]}}.
 * @returns {OwnVariant}
 */
export function newVariant(item, { seen = {}, ...fields }) {
  const key = newKey(`${item.number} ${fields.name ?? ""}`);
  return newRow("range_variant", item.range, {
    item: item.id,
    key,
    name: "",
    common: 1,
    ...fields,
    ...seenFields(seen),
  });
}

/** A running change: {feature, state, since, until (EDTF), kinds, items, source, note}. */
export function newChange(range, fields) {
  return newRow("range_change", range, fields);
}

/** A row like another one, with these fields instead. */
export function copyOf(row, { seen = {}, ...fields }) {
  const { id, made, changed, came, at, ...rest } = row;
  const own = "key" in row ? { key: newKey(fields.name ?? row.name) } : {};
  return newRow(row.type, row.range, { ...rest, ...own, ...fields, ...seenFields(seen) });
}

function seenFields(seen) {
  return Object.fromEntries(
    Object.entries(seen).map(([feature, states]) => [seenField(feature), states]),
  );
}

/**
 * The rows that a feature of the shelf makes: the feature, its states, and its part where the range
 * has none of that key. Their ids are made of what they are, so that two devices that pick the same
 * make one.
 * @param {string} range
 * @param {{ id: string; name: string; title?: string; question: string; where: string;
 *   seconds: number; needs: string; layer?: string; unseen?: string; kinds?: string[];
 *   part?: { id: string; name: string; swap: number } | null; mistaken?: string[][];
 *   when?: Record<string, string[]>;
 *   states: { id: string; name: string; caption?: string; look?: string;
 *     drawing?: string }[] }} kit
 * @param {any[]} [made] rows made beside it and not kept yet
 * @returns {any[]}
 */
export function featureFromKit(range, kit, made = []) {
  const idOf = (...words) => {
    const id = [range, ...words].join("_");
    return id.length <= LONGEST_ID && /^\w+$/.test(id) && !record(id) ? id : newId("r");
  };
  const beside = (type) => [...rowsOf(range, type), ...made.filter((row) => row.type === type)];
  const rows = [];
  let part = "";
  if (kit.part) {
    const there = beside("range_part").find(({ key }) => key === kit.part.id);
    const { id: key, ...about } = kit.part;
    const own = there ?? newPart(range, { id: idOf("p", key), key, ...about });
    if (!there) rows.push(own);
    part = own.id;
  }
  const kinds = beside("range_kind").filter(({ key }) => (kit.kinds ?? []).includes(key));
  const conditionsOf = (when) =>
    Object.entries(when).flatMap(([key, states]) => {
      const asked = beside("range_feature").find((row) => row.key === key);
      const seen = beside("range_state").filter(({ feature: of }) => of === asked?.id);
      // what is not in the range yet comes into it under this id
      const stateOf = (state) =>
        seen.find((row) => row.key === state)?.id ?? [range, "s", key, state].join("_");
      return states.map((state) => [asked?.id ?? [range, "f", key].join("_"), stateOf(state)]);
    });
  const stateIds = new Map(kit.states.map((state) => [state.id, idOf("s", kit.id, state.id)]));
  const feature = newFeature(range, {
    id: idOf("f", kit.id),
    key: kit.id,
    kit: kit.id,
    name: kit.name,
    title: kit.title ?? "",
    question: kit.question,
    where: kit.where,
    seconds: kit.seconds,
    needs: kit.needs,
    layer: kit.layer ?? "",
    unseen: kit.unseen ?? "",
    part,
    kinds: kinds.map(({ id }) => id),
    only_if: conditionsOf(kit.when ?? {}),
    mistaken: (kit.mistaken ?? []).map((pair) => pair.map((state) => stateIds.get(state) ?? "")),
  });
  const states = kit.states.map(({ id, name, caption = "", look = "", drawing = "" }) =>
    newState(feature, { id: stateIds.get(id), key: id, name, caption, look, drawing }),
  );
  return [...rows, feature, ...states];
}

/**
 * Keeps new rows, and further edits of records (`change` in records.js), as one change that Undo
 * takes back: true when they are kept.
 */
export function keepRows(what, rows, { edits = [], ...options } = /** @type {any} */ ({})) {
  return saveChange(what, [...rows.map((row) => making(row)), ...edits], options);
}
