/** The sentences about a seller's date. No DOM here. */
import { itemName, small, span } from "../parts/say.js";

/**
 * @import {
 *   Claim,
 *   ClaimProblem,
 *   Evidence,
 *   Judgement,
 *   Pack,
 *   SeenYears,
 *   Session,
 *   View,
 * } from "../data/engine-types.d.ts"
 */

const OPEN_START = 1800; // the engine's years for "no beginning" and "no end"
const OPEN_END = 2100;

/**
 * A claim in words with its EDTF where that says it otherwise: "1956 to 1959 (1956/1959)".
 * @param {Claim} claim
 * @returns {string}
 */
export function claimBoth(claim) {
  const words = claimWords(claim);
  const { edtf } = claim;
  return edtf === "" || edtf === words ? words : `${words} (${edtf})`;
}

/**
 * A claim in words: "1956 to 1959", "1939 or earlier", "the first issue".
 * @param {Claim} claim
 * @returns {string}
 */
export function claimWords({ about, first, last }) {
  if (about !== "years") return `the ${about}`;
  if (first === OPEN_START) return `${last} or earlier`;
  return last === OPEN_END ? `${first} or later` : span(first, last);
}

/**
 * What is wrong with a claim, and what would be right.
 * @param {Pack} pack
 * @param {ClaimProblem} problem
 * @returns {string}
 */
export function claimProblem({ range }, problem) {
  if (problem === "reversed") return "That ends before it begins. Put the earlier year first.";
  if (problem === "outside") {
    return (
      `${range.name} was made from ${range.first} to ${range.last}, so none of it is ` +
      "from then."
    );
  }
  return (
    "The app cannot read that. Type a year (1957), years (1955 to 1958), a decade (1950s, " +
    "late fifties), “about 1957”, “before 1960”, “before the war” or “first issue”."
  );
}

export const VERDICTS = {
  fits: "Agrees with what you saw",
  possible: "It is possible",
  unlikely: "It is unlikely",
  "ruled out": "It is ruled out",
  open: "Can’t say yet",
  unknown: "Can’t say",
};

/**
 * What the word rests on, in a sentence.
 * @param {Claim} claim
 * @param {Judgement} judged
 * @param {number} answers
 */
export function verdictNote(claim, { word, could }, answers) {
  if (word === "unknown") {
    return "What you saw does not fit any recorded variant, so its years are not known.";
  }
  if (answers === 0) {
    return "You have not looked at anything yet: this goes only by what is recorded.";
  }
  if (word === "open") return "It could still be from too many years. Look at more of it first.";
  if (claim.about !== "years") return "";
  return could >= 0.5
    ? "It was being made then, if it is what it seems."
    : "It wasn’t being made then, if it is what it seems.";
}

/**
 * The years that a claim means for the item: those of its first or last issue, or as claimed.
 * @param {Pack} pack
 * @param {Claim} claim
 * @param {number} item
 * @returns {[number, number]}
 */
export function claimSpan(pack, claim, item) {
  if (claim.about === "years") return [claim.first, claim.last];
  const spans = spansOf(pack, item);
  const first = Math.min(...spans.map(([from]) => from));
  const last = Math.max(...spans.map(([, to]) => to));
  const meant = spans.filter(([from, to]) =>
    claim.about === "first issue" ? from === first : to === last,
  );
  return [Math.min(...meant.map(([from]) => from)), Math.max(...meant.map(([, to]) => to))];
}

function spansOf({ rows, variants, spans }, item) {
  const places = rows.span.filter((_, row) => variants[rows.variant[row]].item === item);
  return places.map((place) => {
    const { first, weights } = spans[place];
    return [first, first + weights.length - 1];
  });
}

/**
 * One sentence to say to the seller: what was seen that goes against the claim, or for it. A claim
 * that is ruled out always comes with the reason.
 * @param {Pack} pack
 * @param {Session} session
 * @param {Claim} claim
 * @param {Judgement} judged
 * @param {View} view
 */
export function sayAloud(pack, session, claim, judged, view) {
  if (view.items.length === 0 || ["unknown", "open"].includes(judged.word)) return "";
  const [{ item }] = view.items;
  const [first, last] = claimSpan(pack, claim, item);
  const speaking = judged.evidence.filter((entry) => entry.earliest > 0);
  if (judged.word === "fits" || judged.word === "possible") {
    const along = speaking.filter((entry) => !apart(entry, first, last));
    return forIt(pack, session, claim, judged, along);
  }
  const hard = speaking.find((entry) => entry.bits < -0.5 && apart(entry, first, last));
  const so = judged.word === "ruled out" ? "so this can’t be" : "so this is unlikely to be";
  const ending = `${so} ${ofThatDate(claim)}`;
  if (hard) return `${cameOrWent(pack, session, hard, last)}, ${ending}${unless(pack, hard)}.`;
  const spans = spansOf(pack, item);
  const life = {
    earliest: Math.min(...spans.map(([from]) => from)),
    latest: Math.max(...spans.map(([, to]) => to)),
  };
  if (apart(life, first, last)) {
    return `${itemName(pack, item)} ${timed(life, last)}, ${ending}.`;
  }
  return (
    `Everything you saw, taken together, points to ${span(view.years.first, view.years.last)}, ` +
    `${ending}.`
  );
}

function forIt(pack, session, claim, { word, evidence }, speaking) {
  const best = speaking.find((entry) => entry.bits > 0.5);
  if (!best) {
    return evidence.length === 0 ? "" : "Nothing seen so far counts clearly for it or against it.";
  }
  const ending =
    word === "fits"
      ? `which agrees with ${claimWords(claim)}`
      : `so it may be ${ofThatDate(claim)}`;
  return `${named(pack, session, best)}: in use ${fromTo(pack, best)}, ${ending}.`;
}

function apart({ earliest, latest }, first, last) {
  return earliest > last || latest < first;
}

function cameOrWent(pack, session, entry, last) {
  return `${named(pack, session, entry)} ${timed(entry, last)}`;
}

function timed({ earliest, latest }, last) {
  return earliest > last ? `didn’t come in until ${earliest}` : `went out in ${latest}`;
}

/** "The coupling here (wide plastic claw)"; of the finish what was looked at: "The lettering". */
function named(pack, session, entry) {
  const { part, name } = pack.features[entry.feature];
  const seen = seenWords(pack, session, entry);
  const itself = part < 0 || pack.parts[part].altered;
  return `The ${small(itself ? name : pack.parts[part].name)} here (${seen})`;
}

/**
 * What was seen, as it stands in the answer: "wide plastic claw".
 * @param {Pack} pack
 * @param {Session} session
 * @param {Pick<SeenYears, "feature" | "answer">} entry
 * @returns {string}
 */
export function seenWords(pack, session, entry) {
  const feature = pack.features[entry.feature];
  return session.answers[entry.answer].states
    .map((id) => small(feature.states.find((state) => state.id === id).name))
    .join(" or ");
}

function unless(pack, { feature }) {
  const { part } = pack.features[feature];
  if (part < 0) return "";
  const { altered, name } = pack.parts[part];
  return altered ? `, unless it was ${altered}` : `, unless someone changed the ${small(name)}`;
}

function ofThatDate(claim) {
  if (claim.about !== "years") return claimWords(claim);
  return claim.first === claim.last ? `a ${claim.first} one` : `from ${claimWords(claim)}`;
}

/**
 * "from 1953 to 1958", "from 1958 on", "until 1953".
 * @param {Pack} pack
 * @param {SeenYears} entry
 * @returns {string}
 */
export function fromTo({ range }, { earliest, latest }) {
  if (earliest <= range.first) return latest >= range.last ? "throughout" : `until ${latest}`;
  if (latest >= range.last) return `from ${earliest} on`;
  return earliest === latest ? `in ${earliest}` : `from ${earliest} to ${latest}`;
}

/** How much an answer weighs for a claim or against it. */
export function speaks(bits) {
  const side = bits < 0 ? "against it" : "for it";
  const size = Math.abs(bits);
  if (size >= 4) return `counts strongly ${side}`;
  return size >= 1.5 ? `counts clearly ${side}` : `counts a little ${side}`;
}

/**
 * The two answers that count most for a claim, or most against it (`side` -1).
 * @param {Judgement} judged
 * @param {number} side
 * @returns {Evidence[]}
 */
export function strongest(judged, side) {
  return judged.evidence.filter((entry) => entry.bits * side >= 0.1).slice(0, 2);
}

/**
 * What the strip says: "Seller says 1956 to 1959: unlikely".
 * @param {Claim} claim
 * @param {Judgement} judged
 * @returns {string}
 */
export function claimLine(claim, judged) {
  const word =
    {
      fits: "fits",
      open: "can’t say yet",
      unknown: "can’t say",
    }[judged.word] ?? judged.word;
  return `Seller says ${claimWords(claim)}: ${word}`;
}

/**
 * The same for a narrow line: "1957: fits".
 * @param {Claim} claim
 * @param {Judgement} judged
 * @returns {string}
 */
export function claimShort(claim, judged) {
  const word = { open: "can’t say yet", unknown: "can’t say" }[judged.word] ?? judged.word;
  return `${claimWords(claim)}: ${word}`;
}

/** What can be typed by a tap, as [label, text to read], a list of them for each line. */
export function quickClaims({ range }) {
  const lines = [];
  for (let start = range.first - (range.first % 10); start <= range.last; start += 10) {
    const parts = [
      { label: `early ${start}s`, text: `early ${start}s`, from: start, to: start + 3 },
      { label: "mid", text: `mid ${start}s`, from: start + 3, to: start + 7 },
      { label: "late", text: `late ${start}s`, from: start + 6, to: start + 9 },
    ].filter(({ from, to }) => from <= range.last && to >= range.first);
    lines.push(parts.map(({ label, text }) => [label, text]));
  }
  const others = [
    ["First issue", "first issue"],
    ["Last issue", "last issue"],
  ];
  if (range.first <= 1939) others.unshift(["Before the war", "before the war"]);
  return [...lines, others];
}
