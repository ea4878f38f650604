/**
 * The portrait of a variant, drawn from what is recorded of it. What is in it the engine says
 * (`portrait` in core/portraits.py); how it is drawn stands in portrait-drawing.js. Both are loaded
 * when the first portrait is asked for, which comes into its place once they are here.
 */
import { loadFurther } from "../data/engine.js";
import { svg } from "./element.js";
import { loaded } from "./loaded-later.js";

/** @import { Pack, Answer } from "../data/engine-types.d.ts" */

const SMALL = 96; // up to this width details could not be seen
const drawn = new WeakMap();
let hand = null; // {engine, text}: what draws
let coming = null;

/** Loads what draws portraits; resolves once all that were asked for are there. */
export function portraitsReady() {
  coming ??= Promise.all([loadFurther(), loaded(import("./portrait-drawing.js"))]).then(
    ([engine, { portraitText }]) => {
      hand = { engine, text: portraitText };
    },
  );
  return coming;
}

/**
 * A variant as a picture, `size` pixels wide and a little more than half as high; of several
 * variants, of an item say, what they can be.
 * @param {Pack} pack
 * @param {number | number[]} variants its place, or their places
 * @param {{size?: number, answers?: Answer[], label?: string}} [how] `answers` of a piece at hand:
 *   where one of several states is recorded, the one that was seen is drawn; `label`: what it is
 *   for those who do not see it, left out where a text beside it says so
 * @returns {SVGSVGElement}
 */
export function portrait(pack, variants, { size = 320, answers = [], label = "" } = {}) {
  const small = size <= SMALL;
  const node = svg("svg", {
    viewBox: "0 0 120 66",
    class: "portrait",
    width: size,
    height: Math.round((size * 66) / 120),
    fill: "none",
    stroke: "currentColor",
    "stroke-width": small ? 2 : 0.9,
    "stroke-linecap": "round",
    "stroke-linejoin": "round",
    focusable: "false",
    ...(label === "" ? { "aria-hidden": "true" } : { role: "img", "aria-label": label }),
  });
  const fill = () => node.replaceChildren(picture(pack, [variants].flat(), answers, small));
  if (hand) fill();
  else portraitsReady().then(fill, () => {}); // without them a list is still a list
  return node;
}

/** What is in a portrait: made once for each variant, and copied. */
function picture(pack, places, answers, small) {
  if (!drawn.has(pack)) drawn.set(pack, { shown: hand.engine.sitting(pack), made: new Map() });
  const { shown, made } = drawn.get(pack);
  const make = () => parsed(hand.text(hand.engine.portrait(pack, shown, places, answers), small));
  if (answers.length > 0) return make();
  const key = `${small} ${places.join(" ")}`;
  if (!made.has(key)) made.set(key, make());
  return made.get(key).cloneNode(true);
}

function parsed(text) {
  const whole = `<svg xmlns="http://www.w3.org/2000/svg"><g>${text}</g></svg>`;
  const { documentElement } = new DOMParser().parseFromString(whole, "image/svg+xml");
  return document.importNode(documentElement.firstChild, true);
}
