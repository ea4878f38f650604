/**
 * A portrait with rings on it: what to compare, or in what two pieces differ. Each ring has a
 * number, and below stands what it shows.
 */
import { button, el, inFew } from "./element.js";
import { differencesOf, placesIn, portrait } from "./portrait.js";
import { notShown } from "./first-words.js";

/** @import { Pack, Answer } from "../data/engine-types.d.ts" */

const MOST = 6; // more rings than this are not looked at

/**
 * @typedef {object} RingOn
 * @property {number} feature
 * @property {number} state what is to be seen there
 */

/**
 * The portrait of a variant (or of several) with a ring for each of `rings`.
 * @param {Pack} pack
 * @param {number[]} variants
 * @param {RingOn[]} rings
 * @param {{
 *   answers?: Answer[],
 *   label?: string,
 *   marks?: string,
 *   tapped?: (ring: RingOn, marked: boolean) => any,
 * }} [how]
 *   `tapped`: a ring was marked, or is no longer; `marks`: what that says of it, to be heard
 */
export function ringedPortrait(pack, variants, rings, how = {}) {
  const { answers = [], label = "", marks: said = "", tapped } = how;
  const spots = placesIn(
    pack,
    variants,
    rings.map(({ feature }) => feature),
    answers,
  );
  const marks = rings.map((ring, n) => {
    const spot = spots.find(({ feature }) => feature === ring.feature);
    if (!spot) return null;
    const number = el("span", { class: "ring-number", "aria-hidden": "true" }, String(n + 1));
    const turn = () => {
      const marked = mark.getAttribute("aria-pressed") === "false";
      mark.setAttribute("aria-pressed", String(marked));
      tapped(ring, marked);
    };
    const mark = tapped
      ? button(number, turn, {
          class: "ring",
          "aria-pressed": "false",
          "aria-label": `${n + 1}: ${ringText(pack, ring)}. ${said}`,
        })
      : el("span", { class: "ring", "aria-hidden": "true" }, number);
    mark.style.left = `${spot.x}%`;
    mark.style.top = `${spot.y}%`;
    mark.style.width = `${2 * spot.radius}%`;
    // no transform: that makes a layer, and the next ring would lie on the number of this one
    const half = `calc(-1 * max(var(--touch) / 2, ${spot.radius}%))`;
    mark.style.margin = `${half} 0 0 ${half}`;
    return mark;
  });
  return el(
    "div",
    { class: "ringed" },
    el(
      "div",
      { class: "ringed-picture" },
      portrait(pack, variants, { size: 480, answers, label }),
      marks,
    ),
    el(
      "ol",
      { class: "ringed-list" },
      rings.map((ring) =>
        el(
          "li",
          {},
          tapped ? inFew(shownText(pack, ring), ringText(pack, ring)) : ringText(pack, ring),
        ),
      ),
    ),
  );
}

/** What a ring shows, in a few words: where it is to be seen the ring itself says. */
function shownText(pack, { feature, state }) {
  const { caption, name } = pack.features[feature].states[state];
  return caption || name;
}

function ringText(pack, ring) {
  return `${pack.features[ring.feature].name}: ${shownText(pack, ring)}`;
}

/**
 * Two pieces with rings where they differ, one above the other, and a line for what portraits do
 * not show. Null where nothing is known to differ, or before what draws is loaded.
 * @param {Pack} pack
 * @param {{name: string, variants: number[], answers?: Answer[]}} first the piece at hand, with
 *   what was seen of it, or a candidate
 * @param {{name: string, variants: number[]}} second
 */
export function differencePictures(pack, first, second) {
  const apart = differencesOf(pack, first.variants, second.variants, first.answers);
  if (!apart || apart.seen.length + apart.unseen.length === 0) return null;
  const seen = apart.seen.slice(0, MOST);
  const shown = ({ name, variants, answers = [] }, side) =>
    el(
      "figure",
      { class: "beside-another" },
      el("figcaption", {}, name),
      ringedPortrait(
        pack,
        variants,
        seen.map((each) => ({ feature: each.feature, state: each[side] })),
        { answers, label: name },
      ),
    );
  const unseen = apart.unseen.map(({ feature }) => pack.features[feature].name.toLowerCase());
  return el(
    "div",
    { class: "differences" },
    shown(first, "one"),
    shown(second, "other"),
    unseen.length === 0 ? null : el("p", { class: "quiet" }, notShown(unseen.join(", "))),
  );
}
