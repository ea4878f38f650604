import { dateText } from "./days.js";
import { el, heading } from "./element.js";
import { anyOf, featureOf, itemName } from "./say.js";
import {
  belongsWith,
  onThePiece,
  SHOULD_BE_IN_THE_BOX,
  THE_SOURCES_DIFFER,
  WHAT_THE_SOURCES_SAY,
} from "./first-words.js";

/** @import { Item, Pack, Variant } from "../data/engine-types.d.ts" */

/**
 * What the sources say of the variant, and where they differ.
 * @param {Pack} pack
 * @param {Variant} variant
 * @param {Item} item
 */
export function sources(pack, variant, item) {
  const said = variant.said.length > 0 ? variant.said : item.said;
  if (said.length === 0) return null;
  const differ = new Set(said.map(([, years]) => years)).size > 1;
  return [
    heading(2, differ ? THE_SOURCES_DIFFER : WHAT_THE_SOURCES_SAY),
    el(
      "ul",
      { class: "plain-list" },
      said.map(([place, years]) => el("li", {}, `${pack.sources[place].what}: ${dateText(years)}`)),
    ),
  ];
}

/** The answers that were given, as far as the pack still knows them; `say` words one. */
export function whatWasSeen(pack, answers, say) {
  const known = answers
    .map((answer) => [answer, pack.features[featureOf(pack, answer.feature)]])
    .filter(
      ([answer, feature]) =>
        feature && answer.states.every((id) => feature.states.some((state) => state.id === id)),
    );
  return el(
    "ul",
    { class: "plain-list" },
    known.map(([answer, { name }]) => el("li", {}, `${name}: ${say(answer)}`)),
  );
}

/**
 * Running numbers and names on the piece itself.
 * @param {Item} item
 */
export function carries({ carried }) {
  return carried.length === 0 ? null : el("p", { class: "quiet" }, onThePiece(anyOf(carried)));
}

/** What it runs with, and what should be in the box. */
export function belongs(pack, item, own) {
  const fellows =
    item.formation === ""
      ? []
      : pack.items
          .map((mate, place) => [mate, place])
          .filter(([mate, place]) => mate.formation === item.formation && place !== own)
          .map(([, place]) => place);
  return [
    fellows.length === 0 ? null : [heading(2, belongsWith(item.formation)), named(pack, fellows)],
    item.contains.length === 0
      ? null
      : [heading(2, SHOULD_BE_IN_THE_BOX), named(pack, item.contains)],
  ];
}

function named(pack, items) {
  return el(
    "ul",
    { class: "plain-list" },
    items.map((place) => el("li", {}, itemName(pack, place))),
  );
}

/** The remarks there are, a paragraph each. */
export function notes(texts) {
  return texts.filter((text) => text !== "").map((text) => el("p", {}, text));
}
