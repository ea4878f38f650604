/**
 * "Does it look like this?": the leader's portrait with two or three rings, before anything is
 * called sure. What fits is an answer like any other; what does not is asked about.
 */
import { button, el, heading } from "../parts/element.js";
import { portraitsReady, sittingOf } from "../parts/portrait.js";
import { ringedPortrait } from "../parts/ringed-portrait.js";
import { itemName, variantName } from "../parts/say.js";

/** @import { Ringed, View } from "../data/engine-types.d.ts" */

const SOON = 0.4; // a leader with this much may be shown after the next answer

/**
 * Loads what draws portraits when one may soon be compared.
 * @param {View} view
 */
export async function comparing({ variants: [best] }) {
  if (best?.chance >= SOON) await portraitsReady().catch(() => {}); // then it is asked in words
}

/**
 * What to compare for the piece at hand; null where there is nothing.
 * @param {any} state what is shown
 * @param {any} session
 * @returns {Ringed | null}
 */
export function toCompare({ engine, ready, pack, view, thread }, session) {
  const [best] = view.variants;
  const shown = best?.chance >= SOON && !thread ? sittingOf(pack) : null;
  const compared = shown && engine.rings(ready, shown, session);
  return compared?.rings.length > 0 ? compared : null;
}

/** What was seen where all of it fits. */
function allFits(pack, rings) {
  return rings.map(({ feature, state }) => {
    const { id, states } = pack.features[feature];
    return { feature: id, how: "sure", states: [states[state].id] };
  });
}

/** The card: a ring that does not fit is asked about, the rest can be asked in words. */
export function looksLikeThis({ pack, view }, { variant, rings }, act) {
  const ask = ({ feature }) => act.change(pack.features[feature].id);
  const name = itemName(pack, pack.variants[variant].item);
  return el(
    "section",
    { class: "card looks-like-this" },
    heading(1, "Like this?", { "aria-label": "Does it look like this?" }),
    ringedPortrait(pack, [variant], rings, {
      label: `${name}, ${variantName(pack, variant)}`,
      tapped: ask,
    }),
    el(
      "div",
      { class: "unsure" },
      button("All fits", () => act.fits(allFits(pack, rings)), { class: "main" }),
    ),
    el("p", { class: "quiet" }, "Tap a ring that does not fit."),
    el(
      "div",
      { class: "reach" },
      button("Undo", act.undo, { class: "plain" }),
      button("Ask in words", () => ask(view.question), { class: "plain" }),
    ),
  );
}
