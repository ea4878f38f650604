/** Do its parts belong together? The years of every part against those of the piece. */
import { el } from "../parts/element.js";
import { bounded, percent, small, span } from "../parts/say.js";
import { seenWords } from "./claim-words.js";
import { done, saidReplaced } from "./replaced.js";
import {
  aLater,
  ALL_ORIGINAL_SO_FAR,
  almostCertainly,
  anOlder,
  CAN_HARDLY,
  chanceAllOriginal,
  chanceOf,
  COULD_BE_ORIGINAL,
  countsForLittle,
  isFrom,
  isRecordedWithout,
  isReplaced,
  NOT_ALL_ORIGINAL,
  orEarlierTogether,
  orLaterIsFrom,
  perhaps,
  PIECE_ITSELF,
  pieceOf,
  probably,
  readBothAgain,
  SAME_YEAR,
  SOMETHING_DOES_NOT_FIT,
  WHAT_REPLACED_MEANS,
} from "./words.js";

/**
 * @import { MarkClash, Pack, SeenYears, Session } from "../data/engine-types.d.ts"
 * @import { Suspect } from "../data/engine-types.d.ts"
 */

/**
 * Whether a part was replaced, in words.
 * @param {Pack} pack
 * @param {Suspect} part
 */
function swapWords(pack, { part, how }) {
  const replaced = done(pack, part);
  if (how === "almost certainly") return almostCertainly(replaced);
  if (how === "probably") return probably(replaced);
  return how === "perhaps" ? perhaps(replaced) : COULD_BE_ORIGINAL;
}

/**
 * "Piece 1958 to 1961, coupling 1963 or later: coupling probably replaced"; where their years meet,
 * "Horns perhaps replaced: no P 24 is recorded with what you saw (metal)".
 * @param {any} state
 * @param {Session} session
 * @param {Suspect} suspect
 * @returns {string}
 */
function partSentence(state, session, suspect) {
  const { pack, view } = state;
  const { whole } = view;
  const { part, first, last } = suspect;
  const name = small(pack.parts[part].name);
  if (first <= whole.last && last >= whole.first) return unlikeIt(state, session, suspect);
  const own = first > 0 ? `, ${name} ${bounded(pack, first, last)}` : "";
  const piece = whole.first > 0 ? pieceOf(span(whole.first, whole.last), own) : own;
  return `${piece}: ${name} ${swapWords(pack, suspect)}`;
}

/**
 * Why a part does not fit whose years would: what was seen of it is not recorded for the item.
 * @param {any} state
 * @param {Session} session
 * @param {Suspect} suspect
 */
function unlikeIt({ engine, ready, pack, view }, session, suspect) {
  const { name } = pack.parts[suspect.part];
  const [leader] = view.items;
  const odd =
    leader &&
    suspect.features.find((place) => engine.never_recorded(ready, session, leader.item, place));
  if (odd === undefined) return isReplaced(name, swapWords(pack, suspect));
  const answer = session.answers.findIndex(({ feature }) => feature === pack.features[odd].id);
  const seen = seenWords(pack, session, { feature: odd, answer });
  return isRecordedWithout(name, swapWords(pack, suspect), pack.items[leader.item].number, seen);
}

/**
 * What to say of the piece as a whole.
 * @param {Suspect[]} parts
 * @returns {string}
 */
function together(parts) {
  const odd = parts.filter(saidReplaced).length;
  if (odd > 0) return NOT_ALL_ORIGINAL;
  return parts.some(({ how }) => how !== "") ? SOMETHING_DOES_NOT_FIT : ALL_ORIGINAL_SO_FAR;
}

/**
 * The parts that were looked at; null for none.
 * @param {any} state
 * @param {Session} session
 */
export function partsBelong(state, session) {
  const { parts, whole } = state.view;
  if (parts.length === 0) return null;
  return [
    el("p", {}, together(parts)),
    el(
      "ul",
      { class: "parts" },
      parts.map((suspect) =>
        el("li", { class: saidReplaced(suspect) ? "warn" : null }, said(state, session, suspect)),
      ),
    ),
    el("p", { class: "quiet" }, chanceAllOriginal(percent(whole.original))),
  ];
}

/**
 * @param {any} state
 * @param {Session} session
 * @param {Suspect} suspect
 */
function said(state, session, suspect) {
  const { pack } = state;
  const { name, replaced } = pack.parts[suspect.part];
  const looked = suspect.features
    .map((place) => small(pack.features[place].name))
    .filter((word) => word !== small(name));
  const by = looked.length === 0 ? "" : ` (${looked.join(", ")})`;
  const chance = chanceOf(done(pack, suspect.part), percent(suspect.swapped));
  if (suspect.how === "") {
    const years = suspect.first > 0 ? ` ${bounded(pack, suspect.first, suspect.last)},` : "";
    return `${name}${by}:${years} ${swapWords(pack, suspect)}. ${chance}`;
  }
  return [
    el("strong", {}, `${partSentence(state, session, suspect)}${by}.`),
    ` ${chance}`,
    saidReplaced(suspect) ? countsForLittle(replaced || WHAT_REPLACED_MEANS) : null,
  ];
}

/**
 * The date marks that cannot be of one year, a sentence each; null where there are none.
 * @param {{pack: Pack, engine: any}} app
 * @param {Session} session
 * @param {SeenYears[]} seen
 */
export function marksApart({ pack, engine }, session, seen) {
  const clashes = engine.marks_apart(pack, seen);
  if (clashes.length === 0) return null;
  return clashes.map((clash) => el("p", { class: "warn" }, clashWords(pack, session, seen, clash)));
}

/**
 * "The box (£1.25) is of 1971 or later, the piece (nippon) of 1921 or earlier: ..."
 * @param {Pack} pack
 * @param {Session} session
 * @param {SeenYears[]} seen
 * @param {MarkClash} clash
 * @returns {string}
 */
function clashWords(pack, session, seen, { late, early, hard }) {
  const [newer, older] = [seen[late], seen[early]].map((entry) => {
    const { part } = pack.features[entry.feature];
    return { entry, part, name: part < 0 ? PIECE_ITSELF : small(pack.parts[part].name) };
  });
  const years = [
    isFrom(newer.name, seenWords(pack, session, newer.entry), newer.entry.earliest),
    orLaterIsFrom(older.name, seenWords(pack, session, older.entry)),
    orEarlierTogether(older.entry.latest, hard ? "cannot" : CAN_HARDLY),
    SAME_YEAR,
  ].join("");
  if (newer.part === older.part) return readBothAgain(years);
  return newer.part < 0 ? anOlder(years, older.name) : aLater(years, newer.name);
}
