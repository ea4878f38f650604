/**
 * "Does it look like this?": the leader's portrait with two or three rings, before anything is
 * called sure. What fits is an answer like any other; what does not is answered by all that it can
 * be instead. And "Look again": the same with what was seen otherwise.
 */
import { button, el, heading } from "../parts/element.js";
import { loaded } from "../parts/loaded-later.js";
import { portraitsReady, sittingOf } from "../parts/portrait.js";
import { ringedPortrait } from "../parts/ringed-portrait.js";
import { itemName, variantName } from "../parts/say.js";
import {
  ALL_FITS,
  AS_I_SAID,
  ASK_IN_WORDS,
  DOES_IT_LOOK_LIKE_THIS,
  DONE,
  IT_DOES_NOT_FIT,
  IT_FITS_AFTER_ALL,
  LOOK_AGAIN,
  SKIP_THIS,
  TAP_WHAT_FITS_AFTER_ALL,
  THE_REST_FITS,
  UNDO,
  WHAT_DIFFERS,
} from "./first-words.js";

/** @import { Ringed, View } from "../data/engine-types.d.ts" */

const SOON = 0.4; // a leader with this much may be shown after the next answer
const FEW = 16; // where so many have less than this together, no pictures hold enough
const LEFT = 0.6;
const PATIENCE = 2000; // ms that one tap waits for what draws them; until it is there, words ask
let which = null; // which-of-these.js, once it is loaded and portraits can be drawn
let coming = null;

/**
 * Loads what draws portraits when one may soon be compared.
 * @param {View} view
 */
export async function comparing(view) {
  if (which || coming) return;
  if (!(view.variants[0]?.chance >= SOON) && !fewLeft(view)) return;
  coming = load();
  await Promise.race([coming, new Promise((done) => setTimeout(done, PATIENCE))]);
}

async function load() {
  try {
    await portraitsReady();
    which = await loaded(import("./which-of-these.js"));
  } catch {} // the next screen tries again
  coming = null;
}

const fewLeft = ({ variants }) =>
  variants.slice(0, FEW).reduce((sum, { chance }) => sum + chance, 0) >= LEFT;

/**
 * The card with the portraits to choose from, where these tell about as much as the question; else
 * null.
 * @param {any} state what is shown
 * @param {any} at the step it is at
 */
export function toChoose(state, at, act) {
  const { engine, ready, pack, view, thread } = state;
  const asking =
    at.asked === "" && view.stop === "" && view.question && view.question.about !== "again";
  if (!asking || at.unlike || !which || thread || !fewLeft(view)) return null;
  const sheet = engine.pictures(ready, sittingOf(pack), at.session, view.question.feature);
  return sheet.pictures.length > 0 ? which.whichOfThese(state, sheet, act) : null;
}

/**
 * What to compare for the piece at hand; null where there is nothing.
 * @param {any} state what is shown
 * @param {any} session
 * @returns {Ringed | null}
 */
export function toCompare({ engine, ready, pack, view, thread }, session) {
  const [best] = view.variants;
  const shown = best && which && !thread ? sittingOf(pack) : null;
  if (!shown) return null;
  const again = view.question?.about === "again";
  if (!again && best.chance < SOON) return null;
  const compared = again
    ? engine.odd_rings(ready, shown, session)
    : engine.rings(ready, shown, session);
  return compared.rings.length > 0 ? compared : null;
}

/**
 * What was seen: what the portrait shows there, or (`fits` false) anything else; where there is but
 * one other thing to see, that.
 */
function answerOf(pack, { feature, state }, fits = true) {
  const { id, states, none } = pack.features[feature];
  const places = states.map((_, place) => place).filter((place) => (place === state) === fits);
  const there = places.filter((place) => place !== none);
  const seen = (there.length === 1 ? there : places).map((place) => states[place].id);
  return { feature: id, how: seen.length > 1 ? "several" : "sure", states: seen };
}

/** As before: what was said of it once more. */
function saidOf(pack, { feature }, session) {
  const { id } = pack.features[feature];
  return session.answers.find((answer) => answer.feature === id);
}

/**
 * The card. A tap marks a ring. Most often: as one that does not fit, and is not what the portrait
 * shows. Looking again: as one that fits after all.
 */
export function looksLikeThis({ pack, view }, session, { variant, rings }, act) {
  const again = view.question?.about === "again";
  const words = again
    ? { title: LOOK_AGAIN, hint: TAP_WHAT_FITS_AFTER_ALL, none: AS_I_SAID, some: DONE }
    : { title: WHAT_DIFFERS, hint: "", none: ALL_FITS, some: THE_REST_FITS };
  const marked = new Set();
  const on = button(words.none, go, { class: "main" });

  function go() {
    const answers = rings.map((ring) =>
      again && !marked.has(ring)
        ? saidOf(pack, ring, session)
        : answerOf(pack, ring, again || !marked.has(ring)),
    );
    act.answerAll(answers);
  }

  function tapped(ring, is) {
    if (is) marked.add(ring);
    else marked.delete(ring);
    on.textContent = marked.size > 0 ? words.some : words.none;
  }

  const name = itemName(pack, pack.variants[variant].item);
  return el(
    "section",
    { class: again ? "card looks-like-this again" : "card looks-like-this" },
    heading(1, words.title, { "aria-label": again ? null : DOES_IT_LOOK_LIKE_THIS }),
    ringedPortrait(pack, [variant], rings, {
      label: `${name}, ${variantName(pack, variant)}`,
      marks: again ? IT_FITS_AFTER_ALL : IT_DOES_NOT_FIT,
      tapped,
    }),
    el("div", { class: "unsure" }, on),
    words.hint === "" ? null : el("p", { class: "quiet" }, words.hint),
    el(
      "div",
      { class: "reach" },
      button(UNDO, act.undo, { class: "plain" }),
      button(ASK_IN_WORDS, () => act.change(pack.features[view.question.feature].id), {
        class: "plain",
      }),
      again ? button(SKIP_THIS, act.skipCheck, { class: "plain" }) : null,
    ),
  );
}
