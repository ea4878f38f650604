/** One range that is used as it is: what it is, its editions, and what can be done with it. */
import { rawPack } from "../data/packs.js";
import { run } from "../data/queue.js";
import { button, el, heading } from "../parts/element.js";
import { dateText, timeText } from "../parts/days.js";
import { notice } from "../parts/status.js";
import { newsText, standing } from "./added-range.js";
import { lookNow, rowsHere } from "./following.js";
import { rowsFromFolder } from "./from-address.js";
import { takeInRange } from "./range-file.js";
import { handOn, takeAway, whence } from "./ranges.js";
import {
  CAME_WITH_THE_APP,
  CAME_WITHOUT_WRITING,
  editionCame,
  editionOf,
  EDITIONS,
  followedSince,
  IMPORT_INTO_YOUR_OWN,
  itemNumbers,
  lastLooked,
  lastLookedTrouble,
  LOOK_FOR_A_NEWER_EDITION,
  LOOKING,
  LOOKS_ONCE_A_DAY,
  MADE_UP,
  madeFromTo,
  NO_LONGER_HERE,
  NOBODY_WROTE_IT,
  NOT_HERE,
  REMOVE_IT,
  SHARE_IT,
  STOP_FOLLOWING_IT,
  writtenDownBy,
} from "./following-words.js";

/** The screen of the range `id`. */
export async function oneRangeScreen(state, { id }) {
  const range = standing(id);
  if (!range)
    return el("section", { class: "shelf" }, heading(1, NOT_HERE), el("p", {}, NO_LONGER_HERE));
  const { items } = await rawPack(state.engine, range);
  return el(
    "section",
    { class: "shelf" },
    el("p", { class: "kicker" }, capital(whence(range) || CAME_WITH_THE_APP)),
    heading(1, range.name),
    aboutLines({ ...range, items: items.length }),
    range.follows ? editions(state, range) : null,
    el(
      "div",
      { class: "stack" },
      range.own ? takeInButton(range) : null,
      button(SHARE_IT, () => run(() => handOn(range)), { class: "plain wide" }),
      range.own
        ? button(
            range.follows ? STOP_FOLLOWING_IT : REMOVE_IT,
            () => run(() => takeAway(state, range)),
            {
              class: "plain wide",
            },
          )
        : null,
    ),
  );
}

const capital = (text) => text[0].toUpperCase() + text.slice(1);

/** What a range is, a line each: who wrote it, how many numbers, its years, its edition. */
export function aboutLines(range) {
  const { by = "", items, first, last, about = "", invented } = range;
  const made = range.made || range.dated || "";
  const lines = [
    by === "" ? NOBODY_WROTE_IT : writtenDownBy(by),
    items === 1 ? "1 number." : itemNumbers(items),
    first === 0 ? "" : madeFromTo(first, last),
    made === "" ? "" : editionOf(dateText(made.slice(0, 10))),
    invented ? MADE_UP : "",
  ];
  return [
    el("p", {}, lines.filter(Boolean).join(" ")),
    about === "" ? "" : el("p", { class: "quiet" }, about),
  ];
}

/** What came from the address, and when it was looked at. */
function editions(state, range) {
  const { news, came, since = came, looked, trouble } = range;
  const ask = button(LOOK_FOR_A_NEWER_EDITION, () => look(state, range, ask), {
    class: "main wide",
  });
  return el(
    "section",
    {},
    heading(2, EDITIONS),
    el(
      "p",
      {},
      news ? editionCame(timeText(came), newsText(news)) : followedSince(timeText(since)),
    ),
    trouble
      ? el("p", { class: "warn" }, lastLookedTrouble(timeText(looked), trouble))
      : el("p", { class: "quiet" }, lastLooked(timeText(looked))),
    ask,
    el("p", { class: "quiet" }, LOOKS_ONCE_A_DAY),
  );
}

/** Looks beside the queue: no tap waits for an address to answer. */
async function look(state, range, ask) {
  if (ask.disabled) return;
  ask.disabled = true;
  ask.textContent = LOOKING;
  await lookNow(state, range);
  ask.disabled = false;
  ask.textContent = LOOK_FOR_A_NEWER_EDITION;
}

function takeInButton(range) {
  const ask = button(IMPORT_INTO_YOUR_OWN, () => takeIn(range, ask), {
    class: "plain wide",
  });
  return ask;
}

/** Takes what was written down of it into a range of one's own. */
async function takeIn({ id, follows }, ask) {
  ask.disabled = true;
  const kept = await rowsHere(id);
  /** @type {{ rows?: any; problem?: string }} */
  const file = kept ? { rows: kept } : await fetchedRows(id, follows);
  ask.disabled = false;
  if (file.problem) notice(file.problem);
  else takeInRange(file, null);
}

/** @returns {any} */
function fetchedRows(id, follows) {
  if (follows?.folder) return rowsFromFolder(follows.folder, id);
  return {
    problem: CAME_WITHOUT_WRITING,
  };
}
