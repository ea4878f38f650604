/**
 * A range of one's own tried out while it is written: what it asks, how sure it gets, what it
 * cannot tell apart, what is worth a look next time. All is worked out here, a little at a time, so
 * that the screen stays alive.
 */
import { CannotGoOn } from "../data/engine.js";
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { changeSettings } from "../data/settings.js";
import { turns } from "../data/turns.js";
import { gone } from "../collection/piece.js";
import { openRange } from "../identify/range-at-hand.js";
import { button, el, heading } from "../parts/element.js";
import { goTo } from "../parts/navigation.js";
import { anyOf, percent, small, variantName } from "../parts/say.js";
import { notice } from "../parts/status.js";
import { compileRange, keepCompiled } from "./keep-compiled.js";
import { rowsOf } from "./own-range.js";
import {
  ALL_TOLD_APART,
  andMore,
  ASK_AS_AT_A_STALL,
  bothOf,
  featureOf,
  fewestToMost,
  FINISH_THE_PIECE_FIRST,
  HOW_SURE_IT_GETS,
  howItWent,
  MAY_SEPARATE,
  NOT_KNOWING_WHAT_IT_IS,
  NOT_TOLD_APART,
  NOT_WRITTEN_DOWN_EVERYWHERE,
  NOTHING_DIFFERS,
  NOTHING_TO_ASK_YET,
  NOTHING_TO_TRY,
  notOfAll,
  NOWHERE_YET,
  ROUND_TO,
  takenForUnknown,
  TRYING_IT,
  TRYING_PART_NOT_HERE,
  tryName,
  unknownWere,
  WHAT_IT_ASKS_FIRST,
  WHAT_IT_CANNOT_TELL_APART,
  WORTH_A_LOOK,
  WORTH_A_LOOK_NEXT_TIME,
  wouldSettleIt,
} from "./trying-words.js";

/** @import { Alike, Pack, Tried, TryingModule } from "../data/engine-types.d.ts" */

const TRIALS = 40;
const SEED = 1; // the same range is told the same
const SHOWN = 8;
let rules = null;

/** @returns {Promise<TryingModule>} */
export async function tryingRules() {
  try {
    rules ??= await import(new URL("../trying.js", import.meta.url).href);
  } catch {
    throw new CannotGoOn(TRYING_PART_NOT_HERE);
  }
  return rules;
}

/** What is to be seen of the range `id` before it is used. */
export async function tryingScreen(state, { id }) {
  const range = record(id);
  if (!range || range.trashed !== "") return gone();
  const { pack } = await compileRange(id);
  if (!pack)
    return el(
      "section",
      { class: "shelf" },
      heading(1, tryName(range.name)),
      el("p", {}, NOTHING_TO_TRY),
    );
  const sure = el("p", { role: "status" }, TRYING_IT);
  const first = el("ul", { class: "plain-list" });
  const below = el("div", {});
  const section = el(
    "section",
    { class: "shelf" },
    heading(1, tryName(range.name)),
    button(ASK_AS_AT_A_STALL, () => run(() => atStall(state, pack.id)), {
      class: "main wide",
    }),
    heading(2, HOW_SURE_IT_GETS),
    sure,
    heading(2, WHAT_IT_ASKS_FIRST),
    first,
    below,
  );
  const shown = () => section.isConnected;
  // beside the queue: whoever waits for a tap must not wait for all trials
  setTimeout(async () => {
    try {
      await fill({ id, pack, sure, first, below, shown });
    } catch (error) {
      run(() => {
        throw error;
      });
    }
  });
  return section;
}

/** To the start of identifying, with this range chosen. */
async function atStall(state, key) {
  if (state.piece) {
    notice(FINISH_THE_PIECE_FIRST);
    return;
  }
  await keepCompiled(state); // what was written just now waits for a pause otherwise
  await openRange(key);
  await changeSettings({ range: key });
  goTo("identify");
}

/** Works without holding the screen up; false once the screen is left. */
export function slices(shown) {
  const turn = turns();
  return async () => !(await turn()) || shown();
}

/** Fills the screen in. */
async function fill({ id, pack, sure, first, below, shown }) {
  const trying = await tryingRules();
  const go = slices(shown);
  const engine = trying.prepare(pack);
  const exact = trying.without_errors(pack);
  const worths = trying.worths(exact);
  first.replaceChildren(...firstQuestions(trying, engine, pack).map((text) => el("li", {}, text)));
  const apart = trying.to_part(exact);
  const alike = [];
  for (let place = 0; place < apart.met.length; place += 1) {
    alike.push(...trying.alike_with(apart, place));
    if (!(await go())) return;
  }
  const looks = trying.looks_to_take(pack, alike, worths, SHOWN);
  below.replaceChildren(
    ...pairs(pack, id, alike),
    ...nextTime(pack, id, looks),
    ...notEverywhere(pack, trying.unrecorded_features(pack)),
  );
  const trials = [];
  for (let place = 0; place < TRIALS; place += 1) {
    const trial = trying.new_trial(engine, SEED, place, TRIALS);
    while (!trial.done) {
      trying.ask_on(engine, trial);
      if (!(await go())) return;
    }
    trials.push(trial);
  }
  sure.textContent = howSure(trying.told_of(trials));
}

/** @param {Tried} tried */
function howSure({ count, right, unknown, questions, fewest, most, sure }) {
  const times = fewest === most ? "" : fewestToMost(fewest, most);
  const beyond =
    unknown === 0 ? "" : takenForUnknown(unknown === 1 ? "1 was" : unknownWere(unknown));
  return howItWent(count, right, Math.round(questions), times, percent(sure), beyond);
}

/** "Coaches: type of coach, then main colour, then coupling", for each kind and for all. */
function firstQuestions(trying, engine, pack) {
  const kinds = pack.kinds.length > 1 ? ["", ...pack.kinds.map((kind) => kind.id)] : [""];
  return kinds.map((kind) => {
    const places = trying.first_asked(engine, kind, 5).filter((place) => kind === "" || place > 0);
    const names = places.map((place) => small(nameOf(pack, place)));
    const asked = [...new Set(names)].slice(0, 3);
    const of = pack.kinds.find((row) => row.id === kind)?.plural ?? NOT_KNOWING_WHAT_IT_IS;
    return `${of}: ${asked.length === 0 ? NOTHING_TO_ASK_YET : asked.join(ROUND_TO)}.`;
  });
}

const nameOf = (pack, place) => pack.features[place].name;

/** What a variant is called; its number stands once where its item has no other name. */
export function calledOf(pack, place) {
  const { number, name } = pack.items[pack.variants[place].item];
  const called = variantName(pack, place);
  return number === name ? called.slice(number.length + 1) : called;
}

/** The record that a variant was made of: the variant's own, or its item's where it has none. */
function rowOf(pack, range, place) {
  const { id, item } = pack.variants[place];
  return (
    rowsOf(range, "range_variant").find((variant) => variant.key === id || variant.id === id) ??
    record(id) ??
    rowsOf(range, "range_item").find(({ number }) => number === pack.items[item].number)
  );
}

function leads(pack, range, place, words, params = {}) {
  const row = rowOf(pack, range, place);
  const to = row?.type === "range_variant" ? "version" : "entry";
  return el(
    "li",
    {},
    button(words, () => goTo(params.feature ? "looking" : to, { id: row.id, ...params }), {
      class: "hit",
    }),
  );
}

function more(count) {
  return count > SHOWN ? el("p", { class: "quiet" }, andMore(count - SHOWN)) : null;
}

/** @param {Alike[]} alike */
function pairs(pack, range, alike) {
  const best = alike.toSorted((a, b) => b.met - a.met).slice(0, SHOWN);
  if (best.length === 0)
    return [heading(2, WHAT_IT_CANNOT_TELL_APART), el("p", {}, ALL_TOLD_APART)];
  return [
    heading(2, WHAT_IT_CANNOT_TELL_APART),
    el(
      "ul",
      { class: "found", "aria-label": NOT_TOLD_APART },
      best.map(({ one, other, would }) =>
        leads(pack, range, other, [
          el("strong", {}, bothOf(calledOf(pack, one), calledOf(pack, other))),
          el("span", { class: "quiet" }, whatWouldTell(pack, would)),
        ]),
      ),
    ),
    more(alike.length),
  ].filter(Boolean);
}

function whatWouldTell(pack, would) {
  if (would.length === 0) return NOTHING_DIFFERS;
  return wouldSettleIt(anyOf(would.map((place) => nameOf(pack, place))));
}

function nextTime(pack, range, looks) {
  if (looks.length === 0) return [];
  return [
    heading(2, WORTH_A_LOOK_NEXT_TIME),
    el(
      "ul",
      { class: "found", "aria-label": WORTH_A_LOOK },
      looks.map(({ variant, feature, apart }) =>
        leads(
          pack,
          range,
          variant,
          [
            el("strong", {}, featureOf(nameOf(pack, feature), calledOf(pack, variant))),
            apart ? el("span", { class: "quiet" }, MAY_SEPARATE) : null,
          ],
          { feature: pack.features[feature].id },
        ),
      ),
    ),
  ];
}

function notEverywhere(pack, gaps) {
  if (gaps.length === 0) return [];
  return [
    heading(2, NOT_WRITTEN_DOWN_EVERYWHERE),
    el(
      "ul",
      { class: "plain-list", "aria-label": NOT_WRITTEN_DOWN_EVERYWHERE },
      gaps.map(({ feature, without, of }) =>
        el("li", {}, `${nameOf(pack, feature)}: ${missingOf(without, of)}.`),
      ),
    ),
  ];
}

function missingOf(without, of) {
  if (without === of) return NOWHERE_YET;
  return notOfAll(without, of);
}
