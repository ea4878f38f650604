import { current } from "../data/piece-at-hand.js";
import { el, heading } from "../parts/element.js";
import { candidateNodes } from "../identify/candidates.js";

/** The candidates beside the question or the answer, for a window that has the room. */
export function beside(state) {
  return el(
    "aside",
    { class: "beside", "aria-label": "What it could be" },
    heading(2, "What it could be"),
    ...candidateNodes(state, current(state.piece)),
  );
}
