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
import {
  A_CAUTION,
  A_KIND_OF_PIECE,
  A_PART,
  A_SOURCE,
  ADD_WHAT_CAN_BE_SEEN,
  addOne,
  CATALOGUES_AND_BOOKS,
  CHANGE_THE_DRAWING,
  DELETE_IT,
  DRAW_OR_PHOTOGRAPH_IT,
  IT_IS_IN_THE_BIN,
  KINDS_OF_PIECE,
  NEW_KIND,
  NEW_PART,
  NEW_SOURCE,
  NEW_WHAT_CAN_BE_SEEN,
  newOne,
  NUMBERS_THAT_CHANGED,
  oneUp,
  ORDER_CHANGED,
  PARTS_THAT_GET_SWAPPED,
  placeCount,
  placesSaySo,
  rowDeleted,
  SOMETHING_NEW,
  SOMETHING_TO_LOOK_AT,
  somethingElseNumber,
  TAKES_TWO,
  WHAT_CAN_BE_SEEN_THERE,
  WHAT_IT_IS_MADE_OF,
  WHAT_TO_LOOK_AT,
  WHAT_TO_TAKE_CARE_WITH,
  whetherToDelete,
} from "./own-words.js";

/** The sorts of rows, with what a list of them is called, one of them, and how one is begun. */
const SORTS = {
  range_kind: [KINDS_OF_PIECE, A_KIND_OF_PIECE, newKind, { name: NEW_KIND }],
  range_feature: [WHAT_TO_LOOK_AT, SOMETHING_TO_LOOK_AT, newFeature, { name: SOMETHING_NEW }],
  range_part: [PARTS_THAT_GET_SWAPPED, A_PART, newPart, { name: NEW_PART }],
  range_source: [CATALOGUES_AND_BOOKS, A_SOURCE, newSource, { what: NEW_SOURCE }],
  range_caution: [WHAT_TO_TAKE_CARE_WITH, A_CAUTION, newCaution, { text: "" }],
  range_move: [NUMBERS_THAT_CHANGED, "", null, {}],
};

/** The ways to each list, with how many there are. */
export function rowLists(range) {
  return el(
    "ul",
    { class: "found", "aria-label": WHAT_IT_IS_MADE_OF },
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
  const [label, kind, begin, fresh] = SORTS[type];
  const add = () =>
    run(async () => {
      const row = begin(range, fresh);
      if (await keepRows(newOne(kind), [row])) goTo("row", { id: row.id });
    });
  return el(
    "section",
    { class: "shelf" },
    el("p", { class: "kicker" }, whole.name),
    heading(1, label),
    begin ? button(addOne(kind), add, { class: "main wide" }) : null,
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
        el(
          "span",
          { class: "lines" },
          el("strong", {}, rowName(row)),
          el("span", { class: "quiet" }, rowAbout(row)),
        ),
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
      el("span", {}, row.drawing === "" ? DRAW_OR_PHOTOGRAPH_IT : CHANGE_THE_DRAWING),
    ],
    () => goTo("pad", { id: row.id }),
    { class: "plain wide" },
  );
}

/** What can be seen of a feature. */
function statesOf(feature) {
  const states = rowsOf(feature.range, "range_state").filter((row) => row.feature === feature.id);
  const add = () =>
    run(async () => {
      const state = newState(feature, { name: somethingElseNumber(states.length + 1) });
      if (await keepRows(NEW_WHAT_CAN_BE_SEEN, [state])) goTo("row", { id: state.id });
    });
  return [
    heading(2, WHAT_CAN_BE_SEEN_THERE),
    states.length < 2 ? el("p", { class: "quiet" }, TAKES_TWO) : null,
    el(
      "ul",
      { class: "found", "aria-label": WHAT_CAN_BE_SEEN_THERE },
      states.map((state, place) => [line(state), place > 0 ? earlier(states, place) : null]),
    ),
    button(ADD_WHAT_CAN_BE_SEEN, add, { class: "plain wide" }),
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
      if (await saveChange(ORDER_CHANGED, edits)) await redraw();
    });
  return el("li", {}, button(oneUp(state.name), swap, { class: "link" }));
}

/** Takes a row away; what uses it is told first. */
async function away(row) {
  const uses = usesOf(row);
  const done = async () => {
    const kept = await saveChange(rowDeleted(rowName(row)), [trashing(row.id)], {
      said: IT_IS_IN_THE_BIN,
    });
    if (kept) leaveScreen();
  };
  if (uses === 0) {
    await done();
    return;
  }
  const shut = sheet(
    whetherToDelete(small(rowName(row))),
    el(
      "p",
      {},
      placesSaySo(uses === 1 ? "1 place" : placeCount(uses), uses === 1 ? "says" : "say"),
    ),
    button(
      DELETE_IT,
      () => {
        shut();
        run(done);
      },
      { class: "main wide" },
    ),
  );
}
