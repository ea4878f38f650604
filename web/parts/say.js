/** The sentences made from what the engine and the packs say. No DOM here. */
/**
 * @import {
 *   Against,
 *   Answer,
 *   Dropped,
 *   Feature,
 *   Needs,
 *   Pack,
 *   Scope,
 *   Session,
 *   View,
 *   Years,
 * } from "../data/engine-types.d.ts"
 */

/** A chance in words short enough for a figure. */
export function percent(value) {
  if (value < 0.01) return "under 1%";
  if (value > 0.99) return "over 99%";
  return `${Math.round(value * 100)}%`;
}

/** The first letter small, for use inside a sentence; abbreviations stay as they are. */
export function small(text) {
  return /^[A-Z][^A-Z0-9]/.test(text) ? text[0].toLowerCase() + text.slice(1) : text;
}

/** "a", "a or b", "a, b or c". */
export function anyOf(words, joint = "or") {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} ${joint} ${words[words.length - 1]}`;
}

export function span(first, last) {
  return first === last ? String(first) : `${first} to ${last}`;
}

/**
 * Years that may reach to the ends of the range's life, give or take one: "1963 or later", "1958 to
 * 1961".
 * @param {Pack} pack
 * @param {number} first
 * @param {number} last
 * @returns {string}
 */
export function bounded({ range }, first, last) {
  const early = first <= range.first + 1;
  const late = last >= range.last - 1;
  if (first === last || (!early && !late)) return span(first, last);
  if (early && late) return "any year";
  return late ? `${first} or later` : `${last} or earlier`;
}

/**
 * "Made 1958 to 1961, most likely 1959".
 * @param {Years} years
 * @returns {string}
 */
export function madeYears(years) {
  if (years.chances.length === 0) return "Years not recorded";
  const made =
    years.first === years.last ? `Made in ${years.first}` : `Made ${span(years.first, years.last)}`;
  const peak = likeliestYears(years.chances);
  return years.first === years.last || !peak ? made : `${made}, most likely ${peak}`;
}

/**
 * "Made 1958 to 1961".
 * @param {Years} years
 * @returns {string}
 */
export function madeSpan(years) {
  return madeYears(years).split(",")[0];
}

/**
 * The same in few words: "1958–1961".
 * @param {Years} years
 * @returns {string}
 */
export function madeInFew(years) {
  if (years.chances.length === 0) return madeSpan(years);
  const { first, last } = years;
  return first === last ? String(first) : `${first}–${last}`;
}

/** The years next to one another that stand out from the rest; empty when none do. */
function likeliestYears(chances) {
  const top = Math.max(...chances.map(([, value]) => value));
  const peak = chances.findIndex(([, value]) => value === top);
  let [from, to] = [peak, peak];
  while (from > 0 && chances[from - 1][1] > 0.9 * top) from -= 1;
  while (to < chances.length - 1 && chances[to + 1][1] > 0.9 * top) to += 1;
  const likely = chances.filter(([, value]) => value > 0.1 * top).length;
  return (to - from + 1) * 2 > likely ? "" : span(chances[from][0], chances[to][0]);
}

export function stillPossible(count) {
  return count === 1 ? "Only 1 still possible" : `${count} still possible`;
}

/**
 * How an item is called: its number and its name.
 * @param {Pack} pack
 * @param {number} index
 * @returns {string}
 */
export function itemName(pack, index) {
  const item = pack.items[index];
  return `${item.number} ${item.name}`;
}

/**
 * How a variant is called in a list.
 * @param {Pack} pack
 * @param {number} index
 * @returns {string}
 */
export function variantName(pack, index) {
  const variant = pack.variants[index];
  return variant.name === ""
    ? itemName(pack, variant.item)
    : `${itemName(pack, variant.item)}, ${small(variant.name)}`;
}

/**
 * What the piece is limited to, as a sentence; "" for nothing.
 * @param {Pack} pack
 * @param {Scope} scope
 * @returns {string}
 */
export function limit(pack, { kind, items }) {
  if (items.length > 0) {
    const places = items.map((number) => pack.items.findIndex((item) => item.number === number));
    return `Looking only at ${anyOf(
      places.map((place) => itemName(pack, place)),
      "and",
    )}.`;
  }
  return kind === ""
    ? ""
    : `Looking only at ${small(pack.kinds.find((row) => row.id === kind).plural)}.`;
}

/**
 * @param {Pack} pack
 * @param {string} id
 * @returns {number}
 */
export function featureOf(pack, id) {
  return pack.features.findIndex((feature) => feature.id === id);
}

/**
 * @param {Pack} pack
 * @param {Answer} answer
 * @returns {string[]}
 */
function stateNames(pack, answer) {
  const feature = pack.features[featureOf(pack, answer.feature)];
  return answer.states.map((id) => feature.states.find((state) => state.id === id).name);
}

/**
 * An answer for a list: what was seen, and how surely.
 * @param {Pack} pack
 * @param {Answer} answer
 * @returns {string}
 */
export function answerText(pack, answer) {
  if (answer.how === "other") return "Something else";
  if (answer.how === "cannot") return "Can’t see it";
  const names = stateNames(pack, answer);
  if (answer.how === "unsure") return `Perhaps ${small(names[0])}`;
  return anyOf(names.map((name, place) => (place === 0 ? name : small(name))));
}

/**
 * An answer put back to the person: You said “wire loop”.
 * @param {Pack} pack
 * @param {Answer} answer
 * @returns {string}
 */
function youSaid(pack, answer) {
  if (answer.how === "other") return "You saw something not in the drawings";
  const names = anyOf(stateNames(pack, answer).map((name) => `“${small(name)}”`));
  return answer.how === "unsure" ? `You thought ${names}` : `You said ${names}`;
}

/**
 * Why a variant falls behind, for one entry of the engine's `why_not`.
 * @param {Pack} pack
 * @param {Session} session
 * @param {Against} entry
 */
export function against(pack, session, entry) {
  const feature = pack.features[entry.feature];
  const recorded = entry.recorded.map((state) => `“${small(feature.states[state].name)}”`);
  const theirs =
    recorded.length === 0
      ? "This is not recorded for it."
      : `It is recorded with ${anyOf(recorded)}.`;
  return `${feature.name}: ${small(youSaid(pack, session.answers[entry.answer]))}. ${theirs}`;
}

/** How much an answer weighs, in plain words. */
export function weight(bits) {
  if (bits >= 4) return "counts strongly against it";
  return bits >= 1.5 ? "counts clearly against it" : "counts a little against it";
}

/**
 * Why the engine asks its question.
 * @param {View} view
 */
export function reason(view) {
  const { expected, groups } = view.question;
  if (view.possible < 2) return "It checks the answer: so far only one fits well.";
  const left = groups.reduce(
    (sum, group) => sum + expected[group.state] * Math.min(group.variants, view.possible),
    0,
  );
  return (
    `This should rule out ${share(1 - left / view.possible)} of the ${view.possible} still ` +
    "possible."
  );
}

function share(part) {
  const words = [
    [0.08, "a few"],
    [0.29, "about a quarter"],
    [0.41, "about a third"],
    [0.58, "about half"],
    [0.7, "about two thirds"],
    [0.82, "about three quarters"],
    [0.93, "most"],
  ];
  return words.find(([below]) => part < below)?.[1] ?? "nearly all";
}

/** How far a question helps, set against the best one. */
export function helps(bits, best) {
  if (bits > 0.8 * best) return "helps as much";
  return bits > 0.4 * best ? "helps about half as much" : "helps a little";
}

const NEEDS = { loupe: "With a loupe", "body off": "With the body off" };

/**
 * "With a loupe"; a need the app does not know is shown as the pack words it.
 * @param {Needs} name
 * @returns {string}
 */
export function need(name) {
  return NEEDS[name] ?? `With ${name}`;
}

/**
 * What looking takes: its time, and a loupe or a screwdriver.
 * @param {Feature} feature
 */
export function effort(feature) {
  const time =
    feature.seconds >= 60
      ? `${Math.round(feature.seconds / 60)} min`
      : `${feature.seconds} seconds`;
  if (feature.seconds < 1) return "At a glance";
  return feature.needs === "nothing" ? `About ${time}` : `${need(feature.needs)}, about ${time}`;
}

const DROPPED = {
  feature: "that question is no longer asked",
  state: "that choice is no longer in the list",
  how: "it could not be read",
  count: "it could not be read",
  item: "that number is no longer in the range",
  kind: "that kind is no longer in the range",
  part: "that part is no longer in the range",
};

/**
 * What was set aside when a saved piece met a newer reference.
 * @param {Pack} pack
 * @param {Dropped[]} dropped
 */
export function setAside(pack, dropped) {
  const lines = dropped.map(({ what, reason: why }) => {
    const feature = featureOf(pack, what);
    const name = feature < 0 ? `“${what}”` : pack.features[feature].name;
    return `${name} (${DROPPED[why] ?? "it could not be read"})`;
  });
  return (
    "The range has changed since. Left out of this piece: " +
    `${lines.join("; ")}. Everything else is as you left it.`
  );
}
