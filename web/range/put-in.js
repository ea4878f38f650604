/** A piece that is in no range, with what was answered of it, put into a range of one's own. */
import { kit } from "../data/packs.js";
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { button, el } from "../parts/element.js";
import { goTo } from "../parts/navigation.js";
import { sheet } from "../parts/sheet.js";
import { announce } from "../parts/status.js";
import { kindIn, ofShelf, rowsFor, withKind } from "./describing.js";
import {
  copyOf,
  keepRows,
  newItem,
  newRange,
  newState,
  newVariant,
  ownRanges,
  rowsOf,
} from "./own-range.js";
import {
  ADD_TO_YOUR_OWN_RANGE,
  BEGIN_A_NEW_RANGE,
  intoName,
  MAKERS_NAME,
  NAME_THE_RANGE_FIRST,
  NEW_VARIANT,
  OR_INTO_A_NEW_ONE,
  pieceInto,
  WHAT_IS_IT,
  WHAT_IS_IT_CALLED,
} from "./own-words.js";

/** @import { Answer, Feature, Pack } from "../data/engine-types.d.ts" */

const MARK = /^mark_/; // what dates a piece and is no feature of a range

/** The range of one's own that a compiled range was made from, or null. */
function ownOf(packId) {
  return ownRanges().find(({ key }) => key === packId) ?? null;
}

/**
 * Asks which range it goes into, and puts it there: `pack` (where it was looked for), `answers`,
 * `kind` (the key of its likely kind, "" not known).
 */
export async function putIn({ pack, answers, kind }) {
  const { kinds } = await kit();
  const named = kinds.find(({ id }) => id === kind) ?? pack.kinds.find(({ id }) => id === kind);
  const own = ownOf(pack.id);
  if (own && named) return run(() => put(own, [], named, pack, answers));
  ask(kinds, named ?? kinds[0], (range, rows, chosen) => put(range, rows, chosen, pack, answers));
}

/** Which range, and which kind of piece. */
function ask(kinds, likely, settle) {
  const pick = el(
    "select",
    { id: "put-in-kind" },
    (kinds.includes(likely) ? kinds : [likely, ...kinds]).map((kind) =>
      el("option", { value: kind.id, selected: kind === likely }, kind.name),
    ),
  );
  const name = el("input", { type: "text", id: "put-in-name", autocomplete: "off" });
  const said = el("p", { class: "quiet" }, MAKERS_NAME);
  const into = (range, rows) => {
    const chosen = [likely, ...kinds].find(({ id }) => id === pick.value);
    shut();
    run(() => settle(range, rows, chosen));
  };
  const fresh = () => {
    const called = name.value.trim();
    if (called === "") {
      said.textContent = NAME_THE_RANGE_FIRST;
      said.className = "wrong";
      announce(said.textContent);
      name.focus();
      return;
    }
    const range = newRange({ name: called });
    into(range, [range]);
  };
  const mine = ownRanges();
  const shut = sheet(
    ADD_TO_YOUR_OWN_RANGE,
    el(
      "div",
      { class: "field" },
      el("label", { for: pick.id }, WHAT_IS_IT),
      el("span", { class: "pick" }, pick),
    ),
    mine.map((range) =>
      button(intoName(range.name), () => into(range, []), { class: "main wide" }),
    ),
    el(
      "div",
      { class: "field" },
      el("label", { for: name.id }, mine.length > 0 ? OR_INTO_A_NEW_ONE : WHAT_IS_IT_CALLED),
      name,
    ),
    said,
    button(BEGIN_A_NEW_RANGE, fresh, { class: mine.length > 0 ? "plain wide" : "main wide" }),
  );
}

async function put(range, before, kindShelf, pack, answers) {
  const { kind, rows } = kindIn(range.id, kindShelf);
  const { made, seen, edits } = await seenRows(range.id, pack, answers, [...before, ...rows], kind);
  const item = newItem(range.id, { number: "", name: "", kind: kind.id, seen });
  const all = [...made, item, newVariant(item, {})];
  const kept = await keepRows(pieceInto(range.name), all, { edits });
  if (kept) goTo("entry", { id: item.id });
}

/** What answers say, as rows: {made: rows that are new, seen: {feature: [states]}, edits}. */
async function seenRows(range, pack, answers, before, kind) {
  const { features } = await kit();
  let made = before;
  const seen = {};
  const edits = [];
  for (const answer of answers) {
    const asked = pack.features.find(({ id }) => id === answer.feature);
    if (!asked || asked.id === "kind" || MARK.test(asked.id) || answer.states.length === 0)
      continue;
    const shelf = features.find(({ id }) => id === asked.id) ?? fromPack(pack, asked);
    const own = rowsOf(range, "range_feature").find(({ key }) => key === asked.id) ?? null;
    const needed = rowsFor(range, { ...ofShelf(shelf), own }, made);
    made = [...made, ...needed.rows];
    const ids = answer.states.map((key) => {
      if (needed.stateIds.has(key)) return needed.stateIds.get(key);
      const { name, drawing } = asked.states.find(({ id }) => id === key);
      const state = newState(needed.own, { key, name, drawing: pack.drawings[drawing] ?? "" });
      made = [...made, state];
      return state.id;
    });
    seen[needed.own.id] = ids;
    edits.push(...withKind(needed.own, kind.id));
  }
  return { made, seen, edits };
}

/**
 * A feature of a compiled range as one of the shelf.
 * @param {Pack} pack
 * @param {Feature} feature
 */
function fromPack(pack, feature) {
  return {
    ...feature,
    kinds: feature.kinds.map((place) => pack.kinds[place].id),
    part: feature.part < 0 ? null : pack.parts[feature.part],
    mistaken: feature.mistaken.map((pair) => pair.map((place) => feature.states[place].id)),
    states: feature.states
      .filter((_, place) => place !== feature.none)
      .map((state) => ({ ...state, drawing: pack.drawings[state.drawing] ?? "" })),
  };
}

/**
 * A piece of a range of one's own that is like a variant of it but for some answers, as another
 * variant: `variant` is the key of the one that it is like, `answers` those that differ.
 */
export function putInVariant({ pack, variant, answers }) {
  return run(async () => {
    const range = ownOf(pack.id);
    const like = rowsOf(range.id, "range_variant").find(({ key }) => key === variant);
    const kind = record(record(like.item).kind);
    const { made, seen, edits } = await seenRows(range.id, pack, answers, [], kind);
    const [first] = answers;
    const feature = pack.features.find(({ id }) => id === first.feature);
    const name = feature.states.find(({ id }) => id === first.states[0]).name;
    const fresh = copyOf(like, { name, seen });
    if (await keepRows(NEW_VARIANT, [...made, fresh], { edits })) goTo("version", { id: fresh.id });
  });
}
