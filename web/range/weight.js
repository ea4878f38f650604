/** How much the drawings and photos of a range of one's own come to, where that is too much. */
import { el } from "../parts/element.js";
import { rowsOf } from "./own-range.js";
import { picturesAreLarge } from "./words.js";

const MANY = 35_000_000; // bytes; of 40 MB nobody can follow it (from-address.js)

/** A sentence for the screen of the range `id`; none where it is not too large. */
export function weightTold(id) {
  const rows = [...rowsOf(id, "range_kind"), ...rowsOf(id, "range_state")];
  const bytes = rows.reduce((sum, { drawing = "" }) => sum + drawing.length, 0);
  if (bytes < MANY) return [];
  return [el("p", { class: "warn" }, picturesAreLarge(Math.round(bytes / 1_000_000)))];
}
