/**
 * The portrait of a variant, drawn from what is recorded of it. What is in it the engine says
 * (`portrait` in core/portraits.py); how it is drawn stands in portrait-drawing.js. Both are loaded
 * when the first portrait is asked for, which comes into its place once they are here.
 */
import { loadFurther } from "../data/engine.js";
import { turns } from "../data/turns.js";
import { svg } from "./element.js";
import { loaded } from "./loaded-later.js";

/** @import { Pack, Answer } from "../data/engine-types.d.ts" */

const SMALL = 96; // up to this width details could not be seen
const APART = 15; // hundredths of the width: of rings nearer than that a finger hits the wrong one
const drawn = new WeakMap();
let hand = null; // {engine, text, whereIs}: what draws
let coming = null;
const waiting = []; // what fills portraits of lists
let drawing = null;

/** Loads what draws portraits; resolves once all that were asked for are there. */
export function portraitsReady() {
  coming ??= Promise.all([loadFurther(), loaded(import("./portrait-drawing.js"))]).then(
    ([engine, { portraitText, whereIs }]) => {
      hand = { engine, text: portraitText, whereIs };
    },
    (error) => {
      coming = null; // the next one tries again
      throw error;
    },
  );
  return coming;
}

/**
 * A variant as a picture, `size` pixels wide and a little more than half as high; of several
 * variants, of an item say, what they can be.
 * @param {Pack} pack
 * @param {number | number[]} variants its place, or their places
 * @param {{size?: number, answers?: Answer[], label?: string, layers?: string[]}} [how]
 *   `answers` of a piece at hand: where one of several states is recorded, the one that was seen is
 *   drawn;
 *   `label`: what it is for those who do not see it, left out where a text beside it says so;
 *   `layers`: nothing but these is drawn, whatever else is recorded
 * @returns {SVGSVGElement}
 */
export function portrait(pack, variants, { size = 320, answers = [], label = "", layers } = {}) {
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
  const places = [variants].flat();
  const fill = () => node.replaceChildren(picture(pack, places, answers, small, layers));
  if (hand && (!small || layers || isMade(pack, places, answers))) fill();
  else if (hand) inTheirTurn(fill);
  else portraitsReady().then(fill, () => {}); // without them a list is still a list
  return node;
}

/** In a list drawing takes longer than all the rest: its pictures come one after the other. */
function inTheirTurn(fill) {
  waiting.push(fill);
  drawing ??= drawAll();
}

async function drawAll() {
  const turn = turns();
  do {
    await turn();
    try {
      waiting.shift()();
    } catch (error) {
      reportError(error); // the others are drawn all the same
    }
  } while (waiting.length > 0);
  drawing = null; // in the same breath: nothing comes in between that nobody would draw
}

/** Resolves once every portrait that was asked for is drawn. */
export async function portraitsDrawn() {
  await portraitsReady();
  await drawing;
}

function isMade(pack, places, answers) {
  return answers.length === 0 && studio(pack).made.has(keyOf(places, true));
}

const keyOf = (places, small) => `${small} ${places.join(" ")}`;

function studio(pack) {
  if (!drawn.has(pack)) drawn.set(pack, { shown: hand.engine.sitting(pack), made: new Map() });
  return drawn.get(pack);
}

/** What portraits of a range are made from; null until what draws is loaded. */
export function sittingOf(pack) {
  return hand && studio(pack).shown;
}

/**
 * Where features are to be seen in a portrait: [{feature, x, y, radius}], in hundredths of its
 * width and height (the radius of its width), none over another; [] until what draws is loaded.
 * @param {Pack} pack
 * @param {number[]} variants
 * @param {number[]} features
 * @param {Answer[]} [answers]
 */
export function placesIn(pack, variants, features, answers = []) {
  if (!hand) return [];
  const { shown } = studio(pack);
  const portrayed = hand.engine.portrait(pack, shown, variants, answers);
  const out = [];
  for (const feature of features) {
    const circle = hand.whereIs(portrayed, shown.layers[feature]);
    if (!circle) continue;
    const [x, y, radius] = circle;
    out.push({ feature, ...freeSpot(out, x / 1.2, y / 0.66), radius: radius / 1.2 });
  }
  return out;
}

/** The place nearest to this one, beside it, that stands far enough from all others. */
function freeSpot(others, x, y) {
  const free = (at) =>
    others.every((spot) => Math.hypot(spot.x - at, (spot.y - y) * 0.55) >= APART);
  for (let away = 0; away <= 100; away += 1)
    for (const at of [x + away, x - away]) if (at >= 6 && at <= 94 && free(at)) return { x: at, y };
  return { x, y };
}

/**
 * In what two pieces differ, by the features: {seen (portraits show it), unseen}; null until what
 * draws is loaded.
 * @param {Pack} pack
 * @param {number[]} first with its answers, where it is the piece at hand
 * @param {number[]} second
 * @param {Answer[]} [answers]
 */
export function differencesOf(pack, first, second, answers = []) {
  return hand && hand.engine.differences(pack, studio(pack).shown, first, second, answers);
}

/** What is in a portrait: made once for each variant, and copied. */
function picture(pack, places, answers, small, only) {
  const taken = photoOf(pack, places);
  if (taken) return taken;
  const { shown, made } = studio(pack);
  const layered = () => {
    const all = hand.engine.portrait(pack, shown, places, answers);
    return only ? { ...all, layers: all.layers.filter(({ layer }) => only.includes(layer)) } : all;
  };
  const make = () => parsed(hand.text(layered(), small));
  if (answers.length > 0 || only) return make();
  const key = keyOf(places, small);
  if (!made.has(key)) made.set(key, make());
  return made.get(key).cloneNode(true);
}

const PHOTO = /^data:image\/jpeg;base64,[\w+/=]+$/;

/** The photo that the range has of a variant, in place of a drawing; null for none. */
function photoOf(pack, places) {
  if (places.length !== 1) return null;
  const { id, item } = pack.variants[places[0]];
  const own = pack.items[item].pack; // in a search over all ranges
  const href = pack.drawings[`${own ? `${own} ` : ""}variant-${id}`] ?? "";
  return PHOTO.test(href) ? svg("image", { href, width: 120, height: 66 }) : null;
}

/** A portrait as the text of an SVG of its own, for a page outside the app; "" for none. */
export async function portraitPage(pack, variants) {
  await portraitsReady();
  if (variants.length === 0) return "";
  const portrayed = hand.engine.portrait(pack, studio(pack).shown, variants, []);
  return (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 66" fill="none" ' +
    'stroke="currentColor" stroke-width=".9" stroke-linecap="round" stroke-linejoin="round">' +
    "<style>svg{color:#14181a}@media(prefers-color-scheme:dark){svg{color:#f3f6f7}}</style>" +
    `${hand.text(portrayed, false)}</svg>`
  );
}

function parsed(text) {
  const whole = `<svg xmlns="http://www.w3.org/2000/svg"><g>${text}</g></svg>`;
  const { documentElement } = new DOMParser().parseFromString(whole, "image/svg+xml");
  return document.importNode(documentElement.firstChild, true);
}
