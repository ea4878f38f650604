/**
 * What a range of one's own is made of besides its pieces: what to look at and what can be seen
 * there, kinds, parts, sources, cautions, numbers that changed.
 */
import { run } from "../data/queue.js";
import { record, setting, trashing } from "../data/records.js";
import { gone } from "../collection/piece.js";
import { pictured } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { goTo, leaveScreen, redraw } from "../parts/navigation.js";
import { saveChange } from "../parts/saving.js";
import { sheet } from "../parts/sheet.js";
import { small } from "../parts/say.js";
import { faultsHere } from "./faults.js";
import { conditions, takenForOneAnother } from "./feature-pairs.js";
import {
  keepRows,
  newCaution,
  newFeature,
  newKind,
  newPart,
  newSource,
  newState,
  rowsOf,
  usesOf,
} from "./own-range.js";
import { fieldsOf, rowAbout, rowName } from "./row-fields.js";

/** The sorts of rows, with what a list of them is called, one of them, and how one is begun. */
const SORTS = {
  range_kind: ["Kinds of piece", "a kind of piece", newKind, { name: "New kind" }],
  range_feature: ["What to look at", "something to look at", newFeature, { name: "Something new" }],
  range_part: ["Parts that get swapped", "a part", newPart, { name: "New part" }],
  range_source: ["Catalogues and books", "a source", newSource, { what: "New source" }],
  range_caution: ["What to take care with", "a caution", newCaution, { text: "" }],
  range_move: ["Numbers that changed", "", null, {}],
};

/** The ways to each list, with how many there are. */
export function rowLists(range) {
  return el(
    "ul",
    { class: "found", "aria-label": "What it is made of" },
    Object.entries(SORTS)
      .map(([type, [label, , begin]]) => ({
        type,
        label,
        begin,
        count: rowsOf(range, type).length,
      }))
      .filter(({ begin, count }) => begin || count > 0)
      .map(({ type, label, count }) =>
        el(
          "li",
          {},
          button(
            [el("strong", {}, label), el("span", { class: "quiet" }, String(count))],
            () => goTo("rows", { range, type }),
            { class: "hit" },
          ),
        ),
      ),
  );
}

/** The rows of a sort of a range. */
export function rowsScreen(_, { range, type }) {
  const whole = record(range);
  if (!whole || whole.trashed !== "") return gone();
  const [label, one, begin, fresh] = SORTS[type];
  const add = () =>
    run(async () => {
      const row = begin(range, fresh);
      if (await keepRows(`New: ${one}`, [row])) goTo("row", { id: row.id });
    });
  return el(
    "section",
    { class: "shelf" },
    el("p", { class: "kicker" }, whole.name),
    heading(1, label),
    begin ? button(`Add ${one}`, add, { class: "main wide" }) : null,
    el("ul", { class: "found", "aria-label": label }, rowsOf(range, type).map(line)),
  );
}

function line(row) {
  return el(
    "li",
    {},
    button(
      [
        "drawing" in row ? pictured(row.drawing) : null,
        el("strong", {}, rowName(row)),
        el("span", { class: "quiet" }, rowAbout(row)),
      ],
      () => goTo("row", { id: row.id }),
      { class: "hit" },
    ),
  );
}

/** The row `id`. */
export async function rowScreen(_, { id }) {
  const row = record(id);
  if (!row || row.trashed !== "") return gone();
  return el(
    "section",
    { class: "shelf" },
    el("p", { class: "kicker" }, record(row.range)?.name ?? ""),
    heading(1, rowName(row)),
    ...(await faultsHere(row)),
    "drawing" in row ? drawingOf(row) : null,
    fieldsOf(row),
    row.type === "range_feature" ? [statesOf(row), takenForOneAnother(row), conditions(row)] : null,
    button("Delete", () => run(() => away(row)), { class: "plain" }),
  );
}

function drawingOf(row) {
  return button(
    [
      pictured(row.drawing),
      el("span", {}, row.drawing === "" ? "Draw or photograph it" : "Change the drawing"),
    ],
    () => goTo("pad", { id: row.id }),
    { class: "plain wide" },
  );
}

/** What can be seen of a feature. */
function statesOf(feature) {
  const states = rowsOf(feature.range, "range_state").filter((one) => one.feature === feature.id);
  const add = () =>
    run(async () => {
      const state = newState(feature, { name: `Something else ${states.length + 1}` });
      if (await keepRows("New: what can be seen", [state])) goTo("row", { id: state.id });
    });
  return [
    heading(2, "What can be seen there"),
    states.length < 2
      ? el(
          "p",
          { class: "quiet" },
          "It takes two to choose between: with this one alone it is not asked.",
        )
      : null,
    el(
      "ul",
      { class: "found", "aria-label": "What can be seen there" },
      states.map((state, place) => [line(state), place > 0 ? earlier(states, place) : null]),
    ),
    button("Add what can be seen", add, { class: "plain wide" }),
  ];
}

/** One place up in the order of the drawings. */
function earlier(states, place) {
  const [before, state] = [states[place - 1], states[place]];
  const swap = () =>
    run(async () => {
      const edits = [
        setting(state.id, "at", state.at, before.at),
        setting(before.id, "at", before.at, state.at),
      ];
      if (await saveChange("Order changed", edits)) await redraw();
    });
  return el("li", {}, button(`${state.name}: one up`, swap, { class: "link" }));
}

/** Takes a row away; what uses it is told first. */
async function away(row) {
  const uses = usesOf(row);
  const done = async () => {
    const kept = await saveChange(`${rowName(row)} deleted`, [trashing(row.id)], {
      said: "It is in the bin.",
    });
    if (kept) leaveScreen();
  };
  if (uses === 0) {
    await done();
    return;
  }
  const shut = sheet(
    `Delete ${small(rowName(row))}?`,
    el(
      "p",
      {},
      `${uses === 1 ? "1 place" : `${uses} places`} in this range ${uses === 1 ? "says" : "say"} ` +
        "so. Nothing said about it counts then. Nothing else is lost, and it is all there again " +
        "once you take this out of the bin.",
    ),
    button(
      "Delete it",
      () => {
        shut();
        run(done);
      },
      { class: "main wide" },
    ),
  );
}
