/**
 * What a list can say of a range of one's own: its columns as the person may name them, and its
 * rows as the core reads them (`identify/core/ranges/lists_in.py`).
 */
import { kit } from "../data/packs.js";
import { readDay } from "../parts/days.js";
import { small } from "../parts/say.js";
import { ofRange, ofShelf } from "./describing.js";
import { rangingRules } from "./keep-compiled.js";
import { rowsOf } from "./own-range.js";
import { isNewItem, isVariantOf, isWrittenDown, newText } from "./list-words.js";

export const OF_ITS_OWN = "own"; // something to look at that is called like the column

/** What a list can be held against: {features (of describing.js), kinds, looked, choices}. */
export async function known(range) {
  const { features, kinds } = await kit();
  const shelves = new Map(features.map((feature) => [feature.id, feature]));
  const own = rowsOf(range, "range_feature");
  const taken = own.map(({ key }) => key);
  const all = [
    ...own.map((row) => ofRange(row, shelves.get(row.kit || row.key) ?? null)),
    ...features.filter(({ id }) => !taken.includes(id)).map(ofShelf),
  ];
  return {
    features: all,
    kinds,
    looked: all.map(lookedAt),
    choices: kinds.map(({ id, name, plural = "", caption = "" }) =>
      choice(id, [name, plural, caption]),
    ),
  };
}

function lookedAt({ key, name, title, states }) {
  return {
    id: key,
    texts: [name, title],
    states: states.map((state) => choice(state.key, [state.name, state.caption, state.key])),
  };
}

function choice(id, texts) {
  return { id, texts: texts.filter(Boolean).map((text) => text.replaceAll("_", " ")) };
}

/** What each column seems to be: [{field, feature}]. `rows`: the first names the columns. */
export async function guessed(rows, held) {
  const ranging = await rangingRules();
  const [headings, ...lines] = rows;
  return ranging
    .column_uses(headings, lines, held.looked, held.choices)
    .map(({ field, feature }) => ({ field, feature }));
}

/**
 * What the rows say by what the columns are: {items, unread: [{column, text, count}], years:
 * [{line, text, wrong}], left: how many rows say nothing}. `settled`: by `settledName` [text, the
 * state or kind that the person chose for it, or "new"].
 */
export async function meaning(rows, columns, held, settled) {
  const ranging = await rangingRules();
  const lines = rows.slice(1).map((line) => [...line]);
  const years = yearsRead(lines, columns);
  const uses = columns.map((column, place) => use(column, place, lines, held, settled));
  const reads = ranging.read_lines(lines, uses);
  const unread = new Map();
  for (const { column, text } of reads.flatMap((read) => read.unread)) {
    const name = settledName(column, text);
    const before = unread.get(name) ?? { column, text, count: 0 };
    unread.set(name, { ...before, count: before.count + 1 });
  }
  for (const read of reads)
    if (read.kind === "") read.kind = ranging.kind_in_name(read.name, held.choices);
  const items = ranging.listed_items(reads);
  for (const { variants } of items)
    if (variants.length > 1)
      for (const variant of variants) variant.name ||= differing(variant, held);
  return {
    items,
    unread: [...unread.values()],
    years,
    left: lines.length - reads.length,
  };
}

/** What a variant is called by what is seen on it alone. */
function differing({ seen }, held) {
  const names = seen.flatMap(([feature, states]) => {
    const looked = held.features.find(({ key }) => key === feature);
    return states.map(
      (id) => looked?.states.find(({ key }) => key === id)?.name ?? id.replace(/^new /, ""),
    );
  });
  return names.map((name, place) => (place === 0 ? name : small(name))).join(", ");
}

/** What the person said of a text is kept under this name. */
export function settledName(column, text) {
  return `${column} ${text.toLowerCase()}`;
}

/** The years of the lines as EDTF; what cannot be read is told and left empty. */
function yearsRead(lines, columns) {
  const place = columns.findIndex(({ field }) => field === "years");
  const wrong = [];
  if (place < 0) return wrong;
  for (const [line, cells] of lines.entries()) {
    const text = cells[place] ?? "";
    const read = readDay(text);
    cells[place] = read.day;
    if (read.wrong !== "") wrong.push({ line, text, wrong: read.wrong });
  }
  return wrong;
}

/** A column for the core: with what its cells may mean, and the texts settled by hand. */
function use({ field, feature }, place, lines, held, settled) {
  const none = { field, feature: "", states: [], sure: 1 };
  if (field === "kind") return { ...none, states: withSettled(held.choices, place, settled) };
  if (field === OF_ITS_OWN) {
    const texts = [...new Set(lines.map((cells) => cells[place] ?? "").filter(Boolean))];
    const states = texts.map((text) => choice(text, [text]));
    return { field: "seen", feature: `${OF_ITS_OWN} ${place}`, states, sure: 1 };
  }
  if (field !== "seen") return none;
  const { states } = held.looked.find(({ id }) => id === feature);
  return { field, feature, states: withSettled(states, place, settled), sure: 1 };
}

function withSettled(choices, place, settled) {
  const mine = Object.entries(settled)
    .filter(([name]) => name.startsWith(`${place} `))
    .map(([, said]) => said);
  const widened = choices.map((kind) => ({
    ...kind,
    texts: [...kind.texts, ...mine.filter(([, id]) => id === kind.id).map(([text]) => text)],
  }));
  const fresh = mine.filter(([, id]) => id === "new");
  return [...widened, ...fresh.map(([text]) => choice(newText(text), [text]))];
}

/** What a row of the list does, as a sentence. */
export function rowSentence(item, variant, there) {
  const called = [item.number, item.name].filter(Boolean).join(" ");
  const of = variant.name ? `${called}, ${small(variant.name)}` : called;
  if (there) return isWrittenDown(of);
  return item.lines[0] === variant.line ? isNewItem(of) : isVariantOf(of);
}
