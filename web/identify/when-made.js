import { seenYears } from "../data/work-ahead.js";
import { heldClaim } from "./held-claim.js";
import { button, el } from "../parts/element.js";
import { claimLine, claimProblem } from "./claim-words.js";
import { timeline } from "./timeline.js";
import { whoLink } from "./who-says-so.js";
import { SEEN_IN_OTHER_YEARS, THE_SELLERS_DATE } from "./words.js";

const NAMED = 3;

/**
 * What the answer card says of when it was made: who says so, the claim, the time line,
 * and the way to tell what the sources do not know.
 */
export function datedFacts(state, step, act) {
  const { pack, view } = state;
  const held = heldClaim(state, step);
  const variants = view.variants.slice(0, NAMED).map(({ variant }) => variant);
  const claim = held?.judged ? held.claim : null;
  const seen = seenYears(state, step.session);
  return [
    el(
      "div",
      { class: "row" },
      whoLink(() => act.who(variants)),
      view.stop === "unrecorded"
        ? null
        : button(SEEN_IN_OTHER_YEARS, act.sighting, { class: "link" }),
    ),
    held === null ? null : claimed(pack, held, act),
    timeline(pack, step.session, view, seen, claim),
  ];
}

function claimed(pack, { claim, judged }, act) {
  const text = judged ? `${claimLine(claim, judged)}.` : claimProblem(pack, claim.problem);
  return el(
    "p",
    { class: "warn" },
    `${text} `,
    button(THE_SELLERS_DATE, act.seller, { class: "plain" }),
  );
}
