/**
 * What the collector keeps, as screens: which screen is which, and how all of them save and undo.
 */
import { here } from "../data/back-button.js";
import { ranges, readPacks } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { all, everything, loadRecords, onChanged, onWritten } from "../data/records.js";
import { LISTED, neighbours } from "../desk/neighbours.js";
import { TABLED, tableOf } from "../desk/tables.js";
import { button, el, heading } from "../parts/element.js";
import { followKeyboard } from "../parts/keyboard.js";
import { withLook } from "../parts/later-styles.js";
import { NotLoaded, loaded } from "../parts/loaded-later.js";
import { startReminders } from "../notebook/reminders.js";
import { leaveScreen, redraw } from "../parts/navigation.js";
import { undoLast } from "../parts/saving.js";
import { sheetOpen } from "../parts/sheet.js";
import { WIDE } from "../parts/wide-window.js";
import { SCREENS, menuLines } from "./screens.js";
import { BACK, NOT_ON_THIS_DEVICE_YET, UNDO } from "./words.js";
import { TRY_AGAIN } from "./first-words.js";

const RECORDS = ["piece", "want", "note"]; // their Undo stands at the thumb

/** In a wide window, what draws the list of a screen as a table; else nothing. */
function wideList(screen) {
  return WIDE.matches && TABLED.includes(screen) ? tableOf(screen) : undefined;
}

/** The function of a screen; where it cannot be loaded, one that says so. */
async function functionOf(screen) {
  try {
    await withLook();
    return await SCREENS[screen].load();
  } catch (error) {
    if (!(error instanceof NotLoaded)) throw error;
    console.warn(error.cause);
    return () =>
      el(
        "section",
        { class: "shelf" },
        heading(1, NOT_ON_THIS_DEVICE_YET),
        el("p", {}, error.message),
        button(TRY_AGAIN, () => location.reload(), { class: "main" }),
      );
  }
}

/** Looks what moved in ranges of which another version is here than the records were made with. */
async function lookAtMoved(state) {
  await (await loaded(import("../range/moved-names.js"))).lookAtMoved(state);
}

/** Reads the records and begins to follow their changes. Gives what draws a screen. */
export async function openShelf(state) {
  await loadRecords();
  followKeyboard();
  onChanged(() => {
    const busy = sheetOpen() || document.activeElement?.matches("input, textarea, select");
    if (!SCREENS[here().screen].still) run(busy ? readPacks : redraw);
  });
  const used = await readPacks();
  const another = ({ id, version }) => used.has(id) && state.settings.seen[id] !== version;
  startReminders();
  if (ranges().some(another)) run(() => lookAtMoved(state));
  followOwn(state);
  if (ranges().some(({ follows }) => follows)) startLooking(state).catch(console.warn);
  return { draw: (entry) => draw(state, entry), tools };
}

/** Has ranges of one's own compiled whenever their rows change, once there is one. */
function followOwn(state) {
  let following = false;
  const begin = async () => {
    if (following || all("range").length === 0) return;
    following = true;
    const { followRanges } = await loaded(import("../range/keep-compiled.js"));
    followRanges(state);
  };
  onWritten(begin);
  onChanged(begin);
  begin().catch(console.warn);
}

/** Looks for newer editions of ranges that are followed. */
async function startLooking(state) {
  (await loaded(import("../range/following.js"))).startLooking(state);
}

/** The nodes of a screen. */
async function draw(state, entry) {
  await readPacks();
  const screen = await functionOf(entry.screen);
  const node = await screen(state, entry, wideList(entry.screen), menuLines);
  if (WIDE.matches)
    return LISTED.includes(entry.screen) ? [node, neighbours(state, entry)] : [node];
  return RECORDS.includes(entry.screen) ? [node, undoAtHand()] : [node];
}

/** Undo where either thumb reaches it: a record is filled in with one hand. */
function undoAtHand() {
  return el("div", { class: "finish reach" }, button(UNDO, undoLast, { class: "plain" }));
}

function tools() {
  const back = button(BACK, leaveScreen, { class: "plain" });
  const { screen } = here();
  const elsewhere = !WIDE.matches && RECORDS.includes(screen);
  if (SCREENS[screen].undo === false || elsewhere) return [back];
  const nothing = everything().length === 0;
  return [back, button(UNDO, undoLast, { class: "plain", hidden: nothing })];
}
