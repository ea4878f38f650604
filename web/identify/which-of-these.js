/**
 * "Which of these?": a few variants are left, and their portraits tell them apart at a glance. A
 * tap answers for all in which these differ, and for nothing else.
 */
import { button, el, heading } from "../parts/element.js";
import { portrait } from "../parts/portrait.js";
import { anyOf, variantName } from "../parts/say.js";
import { ASK_IN_WORDS, MORE, NONE_OF_THESE, UNDO, WHICH_OF_THESE } from "./first-words.js";

/** @import { Pack, Pictures } from "../data/engine-types.d.ts" */

const WIDE = 3; // so few are each as wide as the phone

/** What a picture says of a feature. */
function answerOf(pack, feature, places) {
  const { id, states } = pack.features[feature];
  return {
    feature: id,
    how: places.length > 1 ? "several" : "sure",
    states: places.map((place) => states[place].id),
  };
}

/** What a picture shows of those features that it does not show without words. */
function caption(pack, { features, captioned }, { states }) {
  const shown = features
    .map((feature, place) => (captioned[place] ? statesText(pack, feature, states[place]) : ""))
    .filter(Boolean);
  if (shown.length === 0) return null;
  return el("span", { class: "caption", "aria-hidden": "true" }, shown.join(", "));
}

/** What to look at: the titles of the questions that the pictures stand for. */
function title(pack, features) {
  return features
    .map((feature) => pack.features[feature].title ?? pack.features[feature].name)
    .join(" ");
}

/** The same to be heard. */
function heard(pack, features, { states }) {
  return features.map((feature, place) => {
    const text = `${pack.features[feature].name}: ${statesText(pack, feature, states[place])}`;
    return el("span", { class: "unseen shows" }, text);
  });
}

/** States that a portrait shows alike are all named: the picture answers for each of them. */
function statesText(pack, feature, places) {
  const { states } = pack.features[feature];
  return anyOf(places.map((place) => states[place].caption || states[place].name));
}

/**
 * The card.
 * @param {{pack: Pack, view: any}} shown
 * @param {Pictures} sheet
 * @param {any} act
 */
export function whichOfThese({ pack, view }, sheet, act) {
  const { features, layers, pictures } = sheet;
  const { id } = pack.features[view.question.feature];
  return el(
    "section",
    { class: "card looks-like-this which" },
    heading(1, title(pack, features), { "aria-label": WHICH_OF_THESE }),
    el(
      "div",
      { class: pictures.length > WIDE ? "pictures" : "pictures wide" },
      pictures.map((picture) =>
        button(
          [
            portrait(pack, picture.variant, { size: 320, layers }),
            caption(pack, sheet, picture),
            el("span", { class: "unseen" }, `${variantName(pack, picture.variant)}. `),
            heard(pack, features, picture),
          ],
          () =>
            act.answerAll(
              features.map((feature, place) => answerOf(pack, feature, picture.states[place])),
            ),
          { class: "plain picture-choice" },
        ),
      ),
    ),
    el(
      "div",
      { class: "unsure" },
      button(NONE_OF_THESE, () => act.inWords(id, true), { class: "plain" }),
    ),
    el(
      "div",
      { class: "reach" },
      button(UNDO, act.undo, { class: "plain" }),
      button(ASK_IN_WORDS, () => act.inWords(id, false), { class: "plain" }),
      button(MORE, () => act.more(pack.features[view.question.feature]), {
        class: "plain",
        "aria-haspopup": "dialog",
      }),
    ),
  );
}
