/** In a wide window, the list that a record stands in beside the record itself. */
import { chosenPieces, pieceRow } from "../collection/collection.js";
import { byDay, notes } from "../notebook/meet-day.js";
import { noteRow } from "../notebook/notebook.js";
import { el, heading } from "../parts/element.js";
import { sortedWants, wantRow } from "../wants/wants.js";
import { COLLECTION, NOTEBOOK, theOthersOf, WANTS } from "./words.js";

const BEFORE = 3;
const SHOWN = 30;
const LISTS = {
  piece: { title: COLLECTION, of: chosenPieces, row: pieceRow },
  want: { title: WANTS, of: sortedWants, row: wantRow },
  note: { title: NOTEBOOK, of: () => byDay(notes()), row: noteRow },
};

/** The screens that have a list beside them. */
export const LISTED = Object.keys(LISTS);

/** The list around the record that a screen shows. */
export function neighbours(state, { screen, id }) {
  const { title, of, row } = LISTS[screen];
  const records = of(state);
  const at = records.findIndex((piece) => piece.id === id);
  const from = Math.max(0, Math.min(at - BEFORE, records.length - SHOWN));
  const list = records.slice(from, from + SHOWN).map((piece) => {
    const entry = row(state, piece);
    if (piece.id === id) entry.setAttribute("aria-current", "true");
    return el("li", {}, entry);
  });
  return el(
    "aside",
    { class: "neighbours", "aria-label": theOthersOf(title) },
    heading(2, title),
    el("ul", { class: "found" }, list),
  );
}
