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

/** The screen of the range `id`. */
export async function oneRangeScreen(state, { id }) {
  const one = standing(id);
  if (!one)
    return el(
      "section",
      { class: "shelf" },
      heading(1, "Not here"),
      el("p", {}, "This range is no longer on this device."),
    );
  const { items } = await rawPack(state.engine, one);
  return el(
    "section",
    { class: "shelf" },
    el("p", { class: "kicker" }, capital(whence(one) || "came with the app")),
    heading(1, one.name),
    aboutLines({ ...one, items: items.length }),
    one.follows ? editions(state, one) : null,
    el(
      "div",
      { class: "stack" },
      one.own ? takeInButton(one) : null,
      button("Share it", () => run(() => handOn(one)), { class: "plain wide" }),
      one.own
        ? button(
            one.follows ? "Stop following it" : "Remove it",
            () => run(() => takeAway(state, one)),
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
    by === "" ? "It does not say who wrote it down." : `Written down by ${by}.`,
    items === 1 ? "1 number." : `${items} numbers.`,
    first === 0 ? "" : `Made ${first} to ${last}.`,
    made === "" ? "" : `Edition of ${dateText(made.slice(0, 10))}.`,
    invented ? "It is made up: there is no such range." : "",
  ];
  return [
    el("p", {}, lines.filter(Boolean).join(" ")),
    about === "" ? "" : el("p", { class: "quiet" }, about),
  ];
}

/** What came from the address, and when it was looked at. */
function editions(state, one) {
  const { news, came, looked, trouble } = one;
  const ask = button("Look for a newer edition", () => look(state, one, ask), {
    class: "main wide",
  });
  return el(
    "section",
    {},
    heading(2, "Editions"),
    el(
      "p",
      {},
      news
        ? `The edition that you have came on ${timeText(came)}: ${newsText(news)}.`
        : `You have followed it since ${timeText(came)}.`,
    ),
    trouble
      ? el("p", { class: "warn" }, `Last looked on ${timeText(looked)}: ${trouble}`)
      : el("p", { class: "quiet" }, `Last looked on ${timeText(looked)}.`),
    ask,
    el(
      "p",
      { class: "quiet" },
      "The app looks by itself once a day, while it is open with signal and no piece is being " +
        "identified. Your pieces follow a number that has changed.",
    ),
  );
}

/** Looks beside the queue: no tap waits for an address to answer. */
async function look(state, one, ask) {
  if (ask.disabled) return;
  ask.disabled = true;
  ask.textContent = "Looking …";
  await lookNow(state, one);
  ask.disabled = false;
  ask.textContent = "Look for a newer edition";
}

function takeInButton(one) {
  const ask = button("Import it into a range of your own", () => takeIn(one, ask), {
    class: "plain wide",
  });
  return ask;
}

/** Takes what was written down of it into a range of one's own. */
async function takeIn({ id, follows }, ask) {
  ask.disabled = true;
  const kept = await rowsHere(id);
  /** @type {{ rows?: any; problem?: string }} */
  const found = kept ? { rows: kept } : await fetchedRows(id, follows);
  ask.disabled = false;
  if (found.problem) notice(found.problem);
  else takeInRange(found, null);
}

/** @returns {any} */
function fetchedRows(id, follows) {
  if (follows?.folder) return rowsFromFolder(follows.folder, id);
  return {
    problem:
      "This range came ready to be used, without what was written down. Ask whoever gave it to " +
      "you to share it out of their app again.",
  };
}
