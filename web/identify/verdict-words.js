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
  same: "In your collection",
  other: "You have another variant",
  item: "You have one, perhaps this",
  upgrade: "Better than yours",
  wanted: "On your list",
  completes: "Fits a set you have begun",
  new: "Not in your collection",
  unrecorded: "Not in the range",
};
const EVERY = {
  same: "Whichever it is, you have it",
  other: "Whichever it is, you have another variant",
  item: "Whichever it is, you have one like it",
  upgrade: "Whichever it is, it’s better than yours",
  wanted: "Whichever it is, it’s on your list",
  completes: "Whichever it is, it fits a set you have begun",
  new: "Whichever it is, you don’t have it",
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
  const best = HELD.reduce((top, own) => (verdict[own] > verdict[top] + 1e-9 ? own : top));
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

/**
 * The same at a glance.
 * @param {Verdict} verdict
 */
export function verdictShort(verdict) {
  return SHORT[leading(verdict).word];
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
    : "None of this number is in your collection.";
}

function pieceText(state, piece) {
  const packs = new Map([[state.pack.id, state.pack]]);
  const called = [title(packs, piece), variantText(packs, piece)].filter(Boolean).join(", ");
  const bought = piece.paid ? `bought for ${moneyText(state.engine, piece.paid)}` : "";
  const when = piece.when ? dateText(piece.when) : "";
  const shape = stateText(piece) || "condition not noted";
  return [called, shape, [bought, when].filter(Boolean).join(", ")].filter(Boolean).join("; ");
}

function beaten(state, { beat, owned }) {
  const piece = record(beat?.piece ?? owned[0]?.piece);
  if (!piece) return "";
  const better = {
    yes: " The one in your hand is better.",
    no: " The one in your hand is not better.",
  }[beat?.better];
  const ask =
    beat?.better === "" ? " Say what condition this one is in, to see which is better." : "";
  return `Yours: ${pieceText(state, piece)}.${better ?? ask}`;
}

function held(state, { owned }) {
  const piece = record(owned[0]?.piece);
  return piece ? `Yours: ${pieceText(state, piece)}.` : "";
}

function wanted(state, { wants }) {
  const near = wants.find(({ met }) => met) ?? wants[0];
  const want = record(near?.want);
  if (!want) return "";
  const terms = [
    want.least ? `at least ${want.least}` : "",
    want.box === "yes" ? "with its box" : "",
    want.most ? `up to ${moneyText(state.engine, want.most)}` : "",
  ].filter(Boolean);
  return terms.length === 0 ? "It is on your list." : `You want one ${anyOf(terms, "and")}.`;
}

function completing({ pack }, { completing: sets }) {
  const [whole] = sets;
  if (!whole) return "";
  const rest =
    whole.missing.length === 0
      ? "That completes it."
      : `Still missing then: ${anyOf(
          whole.missing.map((place) => itemName(pack, place)),
          "and",
        )}.`;
  return `It belongs to ${whole.name}. ${rest}`;
}

/** How the price, the condition and the box stand to the wants. */
function limits(state, { wants }) {
  return wants.slice(0, 2).flatMap(({ want, price, condition, box }) => {
    const { most, least } = record(want) ?? {};
    return [
      price === "above" ? `The price is above your limit of ${moneyText(state.engine, most)}.` : "",
      price === "within"
        ? `The price is within your limit of ${moneyText(state.engine, most)}.`
        : "",
      price === "currency"
        ? `Your limit is ${moneyText(state.engine, most)}, in another currency.`
        : "",
      condition === "short" ? `You want one at least ${least}.` : "",
      box === "short" ? "You want one with its box." : "",
    ];
  });
}

function inSets({ pack }, { sets }) {
  return sets
    .slice(0, 1)
    .map(({ item }) => `There is one like it in your ${itemName(pack, item)}.`);
}
