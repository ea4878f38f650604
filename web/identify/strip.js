import { chance } from "../parts/chance.js";
import { el } from "../parts/element.js";
import { itemName, percent, small, span, stillPossible, variantName } from "../parts/say.js";
import { claimLine } from "./claim-words.js";
import { done, saidReplaced } from "./replaced.js";
import { verdictLine } from "./verdict-words.js";
import {
  andPartProbably,
  looksLikeYears,
  NOT_ENOUGH_TO_GO_ON_YET,
  partProbably,
  PERHAPS_NOT_IN_THE_RANGE,
  replacedAndOwn,
  savedAndPossible,
  SO_FAR,
  someVariantOf,
  WHAT_YOU_SAW_OF_IT,
  whatYouSawOf,
  YEARS_NOT_RECORDED,
} from "./first-words.js";

/** @import { Pack, Suspect, View } from "../data/engine-types.d.ts" */

/**
 * What it looks like so far, in one line: the leader with its chance; to hear, the years, how many
 * are left, the verdict and the claim as well. Opens the candidates.
 */
export function strip(pack, view, open, held = null) {
  const swapped = view.parts.filter(saidReplaced);
  const lead = leader(pack, view);
  const years =
    view.years.chances.length > 0 ? span(view.years.first, view.years.last) : YEARS_NOT_RECORDED;
  return el(
    "button",
    { type: "button", class: "strip", onclick: open },
    el("span", { class: "unseen" }, SO_FAR),
    el(
      "span",
      { class: "strip-lead" },
      el("span", { class: "strip-name" }, lead.name),
      lead.chance === null ? null : chance(lead.chance),
    ),
    el("span", { class: "strip-more unseen" }, `${years} · ${stillPossible(view.possible)}`),
    view.verdict ? el("span", { class: "strip-swap unseen" }, verdictLine(view.verdict)) : null,
    held?.judged
      ? el("span", { class: "strip-swap unseen" }, claimLine(held.claim, held.judged))
      : null,
    swapped.map(({ part }) =>
      el(
        "span",
        { class: "strip-swap unseen" },
        partProbably(pack.parts[part].name, done(pack, part)),
      ),
    ),
  );
}

/** The variant that leads clearly, else the item its variants add up to, else nothing yet. */
function leader(pack, view) {
  const [best] = view.variants;
  const [item] = view.items;
  if (!best || view.unrecorded > Math.max(item.chance, 0.5))
    return { name: PERHAPS_NOT_IN_THE_RANGE, chance: view.unrecorded };
  if (best.chance >= 0.4 || (item.chance >= 0.2 && best.chance > 0.8 * item.chance)) {
    return { name: variantName(pack, best.variant), chance: best.chance };
  }
  if (item.chance >= 0.2)
    return { name: someVariantOf(itemName(pack, item.item)), chance: item.chance };
  return { name: NOT_ENOUGH_TO_GO_ON_YET, chance: null };
}

/**
 * What a screen reader is told after an answer.
 * @param {Pack} pack
 * @param {View} view
 */
export function progress(pack, view) {
  const years = view.years.chances.length > 0 ? ` ${span(view.years.first, view.years.last)}.` : "";
  const swapped = view.parts
    .filter(saidReplaced)
    .map(({ part }) => andPartProbably(pack.parts[part].name, done(pack, part)));
  const verdict = view.verdict ? ` ${verdictLine(view.verdict)}.` : "";
  return savedAndPossible(stillPossible(view.possible), years, verdict, swapped.join(""));
}

/**
 * Why a part is thought to have been replaced, and when the part by itself was made.
 * @param {Pack} pack
 * @param {Suspect} part
 * @returns {string}
 */
export function swapReason(pack, { part, swapped, features, first, last }) {
  const names = features
    .map((place) => small(pack.features[place].name))
    .filter((name) => name !== small(pack.parts[part].name));
  const seen = names.length === 0 ? WHAT_YOU_SAW_OF_IT : whatYouSawOf(names.join(", "));
  const own = first > 0 ? looksLikeYears(span(first, last)) : "";
  return replacedAndOwn(pack.parts[part].name, done(pack, part), percent(swapped), seen, own);
}
