/**
 * A range of one's own tried out while it is written: what it asks, how sure it gets, what it
 * cannot tell apart, what is worth a look next time. All is worked out here, a little at a time, so
 * that the screen stays alive.
 */
import { CannotGoOn } from "../data/engine.js";
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { changeSettings } from "../data/settings.js";
import { gone } from "../collection/piece.js";
import { openRange } from "../identify/range-at-hand.js";
import { button, el, heading } from "../parts/element.js";
import { goTo } from "../parts/navigation.js";
import { anyOf, percent, small, variantName } from "../parts/say.js";
import { notice } from "../parts/status.js";
import { compileRange, keepCompiled } from "./keep-compiled.js";
import { rowsOf } from "./own-range.js";

/** @import { Alike, Pack, Tried, TryingModule } from "../data/engine-types.d.ts" */

const TRIALS = 40;
const SEED = 1; // the same range is told the same
const AT_ONCE = 12; // milliseconds of work before the screen has its turn
const SHOWN = 8;
let rules = null;

/** @returns {Promise<TryingModule>} */
export async function tryingRules() {
  try {
    rules ??= await import(new URL("../trying.js", import.meta.url).href);
  } catch {
    throw new CannotGoOn(
      "The part that tries a range out is not on this device yet. Try it with a signal.",
    );
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
      heading(1, `Try ${range.name}`),
      el("p", {}, "Nothing is written down yet. Write down a piece first, then try it."),
    );
  const sure = el("p", { role: "status" }, "Trying it …");
  const first = el("ul", { class: "plain-list" });
  const below = el("div", {});
  const section = el(
    "section",
    { class: "shelf" },
    heading(1, `Try ${range.name}`),
    button("Ask me as it would at a stall", () => run(() => atStall(state, pack.id)), {
      class: "main wide",
    }),
    heading(2, "How sure it gets"),
    sure,
    heading(2, "What it asks first"),
    first,
    below,
  );
  const shown = () => section.isConnected;
  // beside the queue: whoever waits for a tap must not wait for all trials
  setTimeout(async () => {
    try {
      await found({ id, pack, sure, first, below, shown });
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
    notice("You are identifying a piece. Finish it or start again, then try the range.");
    return;
  }
  await keepCompiled(state); // what was written just now waits for a pause otherwise
  await openRange(key);
  await changeSettings({ range: key });
  goTo("identify");
}

/** Works without holding the screen up; false once the screen is left. */
export function slices(shown) {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < AT_ONCE) return true;
    await new Promise((done) => {
      setTimeout(done);
    });
    since = performance.now();
    return shown();
  };
}

/** Fills the screen in. */
async function found({ id, pack, sure, first, below, shown }) {
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
  const times = fewest === most ? "" : `, from ${fewest} to ${most}`;
  const beyond =
    unknown === 0
      ? ""
      : ` ${unknown === 1 ? "1 was" : `${unknown} were`} taken for something in no range.`;
  return (
    `${count} pieces were drawn from what you wrote down, with a slip or a part from another ` +
    `piece now and then: ${right} were named right, after ${Math.round(questions)} questions ` +
    `as a rule${times}. On average it was then ${percent(sure)} sure.${beyond}`
  );
}

/** "Coaches: type of coach, then main colour, then coupling", for each kind and for all. */
function firstQuestions(trying, engine, pack) {
  const kinds = pack.kinds.length > 1 ? ["", ...pack.kinds.map((kind) => kind.id)] : [""];
  return kinds.map((kind) => {
    const places = trying.first_asked(engine, kind, 5).filter((place) => kind === "" || place > 0);
    const names = places.map((place) => small(nameOf(pack, place)));
    const asked = [...new Set(names)].slice(0, 3);
    const of = pack.kinds.find((one) => one.id === kind)?.plural ?? "Not knowing what it is";
    return `${of}: ${asked.length === 0 ? "nothing to ask yet" : asked.join(", then ")}.`;
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
    rowsOf(range, "range_variant").find((one) => one.key === id || one.id === id) ??
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
  return count > SHOWN ? el("p", { class: "quiet" }, `And ${count - SHOWN} more.`) : null;
}

/** @param {Alike[]} alike */
function pairs(pack, range, alike) {
  const best = alike.toSorted((one, other) => other.met - one.met).slice(0, SHOWN);
  if (best.length === 0)
    return [
      heading(2, "What it cannot tell apart"),
      el("p", {}, "Nothing. Every variant can be told from every other."),
    ];
  return [
    heading(2, "What it cannot tell apart"),
    el(
      "ul",
      { class: "found", "aria-label": "Not told apart" },
      best.map(({ one, other, would }) =>
        leads(pack, range, other, [
          el("strong", {}, `${calledOf(pack, one)} and ${calledOf(pack, other)}`),
          el("span", { class: "quiet" }, whatWouldTell(pack, would)),
        ]),
      ),
    ),
    more(alike.length),
  ].filter(Boolean);
}

function whatWouldTell(pack, would) {
  if (would.length === 0)
    return "Nothing that is written down differs. Look for something that does.";
  return `${anyOf(would.map((place) => nameOf(pack, place)))} would settle it, with a closer look.`;
}

function nextTime(pack, range, looks) {
  if (looks.length === 0) return [];
  return [
    heading(2, "Worth a look next time"),
    el(
      "ul",
      { class: "found", "aria-label": "Worth a look" },
      looks.map(({ variant, feature, apart }) =>
        leads(
          pack,
          range,
          variant,
          [
            el("strong", {}, `${nameOf(pack, feature)} of ${calledOf(pack, variant)}`),
            apart ? el("span", { class: "quiet" }, "It may separate it from one like it.") : null,
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
    heading(2, "Not written down everywhere"),
    el(
      "ul",
      { class: "plain-list", "aria-label": "Not written down everywhere" },
      gaps.map(({ feature, without, of }) =>
        el("li", {}, `${nameOf(pack, feature)}: ${missingOf(without, of)}.`),
      ),
    ),
  ];
}

function missingOf(without, of) {
  if (without === of) return "nowhere yet";
  return `not of ${without} of the ${of} variants that can have it`;
}
