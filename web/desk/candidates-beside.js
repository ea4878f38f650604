import { current } from "../data/piece-at-hand.js";
import { el, heading } from "../parts/element.js";
import { portrait } from "../parts/portrait.js";
import { candidateNodes } from "../identify/candidates.js";
import { WHAT_IT_COULD_BE } from "./words.js";

const LIKELY = 0.02;

/** What all that are likely have in common. */
function picture({ pack, view, piece }) {
  const likely = view.variants
    .filter((candidate) => candidate.chance >= LIKELY)
    .map((candidate) => candidate.variant);
  const { answers } = current(piece).session;
  return likely.length === 0 ? null : portrait(pack, likely, { size: 260, answers });
}

/** The candidates beside the question or the answer, for a window that has the room. */
export function beside(state) {
  return el(
    "aside",
    { class: "beside", "aria-label": WHAT_IT_COULD_BE },
    heading(2, WHAT_IT_COULD_BE),
    picture(state),
    ...candidateNodes(state, current(state.piece)),
  );
}
