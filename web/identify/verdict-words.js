/**
 * The verdict of the engine in words: what the piece in hand means for the collector.
 */
import { record } from "../data/records.js";
import { moneyText } from "../parts/money.js";
import { stateText, title, variantText } from "../parts/piece-names.js";
import { anyOf, itemName, percent } from "../parts/say.js";
import { dateText } from "../parts/days.js";

/** @import { Verdict } from "../data/engine-types.d.ts" */

const SHORT = {
  same: "You own it",
  other: "You own a different variant",
  item: "You own one, perhaps this variant",
  upgrade: "Better than the one you own",
  wanted: "You want it",
  completes: "It adds to a train or set you have begun",
  new: "You do not own it",
  unrecorded: "Not in the range",
};
const EVERY = {
  same: "Whichever it is, you own it",
  other: "Whichever it is, you own a different variant",
  item: "Whichever it is, you own one like it",
  upgrade: "Whichever it is, it is better than yours",
  wanted: "Whichever it is, you want it",
  completes: "Whichever it is, it adds to what you have begun",
  new: "Whichever it is, you do not own it",
};
const HELD = ["wanted", "upgrade", "same", "completes", "other", "new", "unrecorded"];

/**
 * The word of the verdict, or the likeliest while none is certain: {word, chance, sure}.
 * @param {Verdict} verdict
 */
export function leading(verdict) {
  const { word } = verdict.reason;
  if (word === "item") return { word, chance: verdict.same + verdict.other, sure: true };
  if (word !== "") return { word, chance: verdict[word], sure: true };
  const best = HELD.reduce((top, one) => (verdict[one] > verdict[top] + 1e-9 ? one : top));
  return { word: best, chance: verdict[best], sure: false };
}

/**
 * The verdict in one line.
 * @param {Verdict} verdict
 * @returns {string}
 */
export function verdictLine(verdict) {
  const { word, chance, sure } = leading(verdict);
  const text = SHORT[word];
  return sure
    ? `${text} (${percent(chance)})`
    : `Perhaps: ${text[0].toLowerCase()}${text.slice(1)} (${percent(chance)})`;
}

/**
 * The verdict as a heading: about every candidate, where they all lead to the same.
 * @param {Verdict} verdict
 * @returns {string}
 */
export function verdictTitle(verdict) {
  const { word } = leading(verdict);
  return verdict.settled && verdict.reason.candidates > 1 ? EVERY[word] : SHORT[word];
}

/** Why, in a sentence or two. */
export function verdictReasons(state, verdict) {
  const { word } = leading(verdict);
  const rest = [...limits(state, verdict), ...inSets(state, verdict)];
  return [reasonFor(state, verdict, word), ...rest].filter(Boolean);
}

function reasonFor(state, verdict, word) {
  if (["same", "upgrade"].includes(word)) return beaten(state, verdict);
  if (["other", "item"].includes(word)) return held(state, verdict);
  if (word === "wanted") return wanted(state, verdict);
  if (word === "completes") return completing(state, verdict);
  if (word !== "new") return "";
  return verdict.reason.candidates > 1
    ? "None of them is in your collection."
    : "No piece of this item is in your collection.";
}

function pieceText(state, piece) {
  const packs = new Map([[state.pack.id, state.pack]]);
  const called = [title(packs, piece), variantText(packs, piece)].filter(Boolean).join(", ");
  const bought = piece.paid ? `bought for ${moneyText(state.engine, piece.paid)}` : "";
  const when = piece.when ? dateText(piece.when) : "";
  const shape = stateText(piece) || "condition not said";
  return [called, shape, [bought, when].filter(Boolean).join(", ")].filter(Boolean).join("; ");
}

function beaten(state, { beat, owned }) {
  const found = record(beat?.piece ?? owned[0]?.piece);
  if (!found) return "";
  const better = {
    yes: " The one in your hand is better.",
    no: " The one in your hand is not better.",
  }[beat?.better];
  const ask =
    beat?.better === "" ? " Say what condition this one is in to see which is better." : "";
  return `Yours: ${pieceText(state, found)}.${better ?? ask}`;
}

function held(state, { owned }) {
  const found = record(owned[0]?.piece);
  return found ? `The one you own: ${pieceText(state, found)}.` : "";
}

function wanted(state, { wants }) {
  const near = wants.find((one) => one.met) ?? wants[0];
  const want = record(near?.want);
  if (!want) return "";
  const terms = [
    want.least ? `at least ${want.least}` : "",
    want.box === "yes" ? "with its box" : "",
    want.most ? `up to ${moneyText(state.engine, want.most)}` : "",
  ].filter(Boolean);
  return terms.length === 0 ? "It is among your wants." : `You want it ${anyOf(terms, "and")}.`;
}

function completing({ pack }, { completing: found }) {
  const [whole] = found;
  if (!whole) return "";
  const rest =
    whole.missing.length === 0
      ? "With it, it is complete."
      : `Then still missing: ${anyOf(
          whole.missing.map((place) => itemName(pack, place)),
          "and",
        )}.`;
  return `It adds to ${whole.name}. ${rest}`;
}

/** How the price, the condition and the box stand to the wants. */
function limits(state, { wants }) {
  return wants.slice(0, 2).flatMap(({ want, price, condition, box }) => {
    const { most, least } = record(want) ?? {};
    return [
      price === "above" ? `More is asked than your limit of ${moneyText(state.engine, most)}.` : "",
      price === "within"
        ? `The price is within your limit of ${moneyText(state.engine, most)}.`
        : "",
      price === "currency"
        ? `Your limit is ${moneyText(state.engine, most)}: another currency.`
        : "",
      condition === "short" ? `You want it at least ${least}.` : "",
      box === "short" ? "You want it with its box." : "",
    ];
  });
}

function inSets({ pack }, { sets }) {
  return sets.slice(0, 1).map(({ item }) => `One like it is in your ${itemName(pack, item)}.`);
}
