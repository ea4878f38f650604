/**
 * Ranges that are followed from an address: looked for a newer edition when the person asks, and by
 * itself once a day while the app is open, there is signal, and no piece is in the hand.
 */
import { ranges } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { button, el } from "../parts/element.js";
import { redraw } from "../parts/navigation.js";
import { sheet, sheetOpen } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { here } from "../data/back-button.js";
import { addRange, newsOf, newsText, standing } from "./added-range.js";
import { newerOf } from "./from-address.js";
import { noted, rowsKept } from "./kept-ranges.js";
import {
  EDITION_STAYS,
  newerEdition,
  newestEditionOf,
  OLDER_EDITION,
  olderEditionOf,
  TAKE_THE_OLDER,
  youFollow,
} from "./following-words.js";

const DAY = 24 * 3600 * 1000; // milliseconds
const EVERY = 60_000;
const TOLD_THERE = ["ranges", "range", "moved"]; // the screens that show what an edition changes
const tried = new Map(); // when it was last looked by itself, by the ids of ranges
let looking = false;

/** Looks by itself from now on, whenever a day has passed. */
export function startLooking(state) {
  if (looking) return;
  looking = true;
  const look = () => lookByItself(state).catch(console.warn);
  setInterval(look, EVERY);
  window.addEventListener("online", look);
  look();
}

/** Nobody types, and no sheet is open: nothing is lost where the screen is drawn anew. */
function undisturbed() {
  return !sheetOpen() && !document.activeElement?.matches("input, textarea, select");
}

/** Nothing is in the hand: nobody waits for an answer now. */
function idle(state) {
  return state.piece === null && navigator.onLine && !document.hidden && undisturbed();
}

/** Is a range followed, and was it not looked for within a day? */
function isDue({ id, follows, looked = "" }) {
  const last = Math.max(Date.parse(looked) || 0, tried.get(id) ?? 0);
  return follows && Math.abs(Date.now() - last) >= DAY; // a clock may have been set back
}

async function lookByItself(state) {
  const due = ranges().find(isDue);
  if (!due || !idle(state)) return;
  tried.set(due.id, Date.now());
  const answer = await newerOf(due);
  await run(() => {
    if (idle(state) && answer.kind !== "offline") return tell(state, due, answer);
    tried.delete(due.id); // a piece came into the hand meanwhile: it is looked for another time
    return null;
  });
}

/** Looks for a newer edition because the person asks. */
export async function lookNow(state, entry) {
  const answer = await newerOf(entry);
  await run(async () => {
    const said = await tell(state, entry, answer);
    if (said) notice(said);
  });
}

/**
 * Takes up what came. Gives what is left to be said to somebody who waits for it.
 * @param {any} state
 * @param {any} line of the list, as it was when it was looked for
 * @param {Awaited<ReturnType<typeof newerOf>>} answer
 */
async function tell(state, line, { same, edition, problem, kind }) {
  const { id, name, version } = line;
  const entry = standing(id);
  if (!entry?.follows || entry.version !== version) return "";
  const looked = new Date().toISOString();
  if (kind === "offline") return `${problem} ${EDITION_STAYS}`;
  if (edition && isOlder(entry, edition)) {
    await seen(id, { looked, trouble: OLDER_EDITION });
    askOlder(state, entry, edition);
    return "";
  }
  if (edition) {
    await takeUp(state, entry, edition, looked);
    return "";
  }
  await seen(id, { looked, trouble: same ? "" : problem });
  return same ? newestEditionOf(name) : `${problem} ${EDITION_STAYS}`;
}

async function seen(id, changes) {
  await noted(id, changes);
  if (here().screen === "range" && !sheetOpen()) await redraw();
}

/** Was this edition here before, or is it known to be older than the one that is? */
function isOlder({ had = [], made }, { pack = null, made: then = "" }) {
  return had.includes(pack.version) || (then !== "" && then < (made ?? ""));
}

async function takeUp(state, entry, edition, looked) {
  const news = await newsOf(state, entry, edition.pack);
  const had = [...(entry.had ?? []), entry.version].slice(-50);
  const { follows, since = entry.came } = entry;
  const said = newerEdition(entry.name, newsText(news));
  const line = { follows, since, had, looked, came: looked, news, trouble: "" };
  const kept = await addRange(state, edition, line, said);
  if (kept && TOLD_THERE.includes(here().screen) && undisturbed()) await redraw();
}

/** Asks whether an older edition is to be taken in place of the one that is here. */
function askOlder(state, entry, edition) {
  if (here().screen !== "range" || here().id !== entry.id) return;
  const shut = sheet(
    olderEditionOf(entry.name),
    el("p", {}, `${OLDER_EDITION} ${EDITION_STAYS}`),
    button(
      TAKE_THE_OLDER,
      () => {
        shut();
        run(() => takeUp(state, { ...entry, had: [] }, edition, new Date().toISOString()));
      },
      { class: "plain wide" },
    ),
  );
}

/** Begins to follow what was found at an address: {address, folder}. True when it is kept. */
export async function follow(state, edition, follows) {
  const { name } = edition.pack.range;
  const now = new Date().toISOString();
  const line = { follows, since: now, had: [], looked: now, came: now, news: null, trouble: "" };
  const kept = await addRange(state, edition, line, youFollow(name));
  if (kept) startLooking(state);
  return kept;
}

/** What was written down of a range that came so, else null. */
export async function rowsHere(id) {
  const text = await rowsKept(id);
  return text === null ? null : JSON.parse(text);
}
