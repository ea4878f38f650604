/**
 * The start: loads the engine, the range and the piece at hand, then draws and routes between
 * screens.
 */
import { deepen, goingBack, here, onMoved } from "./data/back-button.js";
import { watchInstall } from "./data/install.js";
import { CannotGoOn, loadEngine, loadFurther } from "./data/engine.js";
import { setAsideNow } from "./data/gate.js";
import { packList } from "./data/packs.js";
import {
  packOf,
  putBy,
  restored,
  restoredBeside,
  restoredFormer,
  swap,
} from "./data/piece-at-hand.js";
import { PRACTICE } from "./data/practice-storage.js";
import { onTrouble, run, step } from "./data/queue.js";
import { loadRecords, onLost } from "./data/records.js";
import { readSettings } from "./data/settings.js";
import { put, state } from "./data/state.js";
import { StorageLost } from "./data/storage-connection.js";
import { openStore } from "./data/store.js";
import { missing } from "./data/what-was-known.js";
import { restoredTray } from "./data/tray.js";
import { startWorker, updateWaiting, worksOffline } from "./data/update.js";
import { meanwhile } from "./data/work-ahead.js";
import { act, ahead, screen, stepsMoved, tools } from "./identify/identify.js";
import { keyChooses } from "./identify/question.js";
import { adopt, onThread, openRange } from "./identify/range-at-hand.js";
import { assess } from "./identify/reasoning.js";
import { timeText } from "./parts/days.js";
import { endTyping } from "./parts/end-typing.js";
import { NotLoaded, loaded } from "./parts/loaded-later.js";
import { goTo, goToPiece, startNavigation } from "./parts/navigation.js";
import { closeSheet, sheetOpen } from "./parts/sheet.js";
import { notice, signalLine } from "./parts/status.js";
import { tellStored } from "./parts/storage-trouble.js";
import { WIDE } from "./parts/wide-window.js";
import { startLight, switchLight } from "./settings/light-switch.js";
import { markPlace, startPlaces } from "./shell/bottom-bar.js";
import { stuckScreen } from "./shell/stuck.js";
import {
  ANOTHER_WINDOWS_PIECE,
  LOOK_AT_IT,
  NEW_VERSION_BROUGHT_IN,
  NEW_VERSION_READY,
  NEXT_PIECE,
  NO_SIGNAL_UNTIL_CLOSED,
  NO_SIGNAL_WORKS,
  ONE_RECORD_NOT_READ,
  OPEN_IT_AGAIN,
  OPEN_IT_HERE_TOO,
  PIECE_NOT_READ,
  RANGE_NO_LONGER_HERE,
  recordsNotRead,
  setAsideAndWorks,
  START_AGAIN,
  STEP_WENT_WRONG,
  TAKE_IT_UP,
  TRY_AGAIN,
  youBeganAt,
} from "./shell/first-words.js";

const OLD = 12 * 3600 * 1000; // milliseconds after which a piece is hardly in the hand any more

let shown = null;
let opening = null;

function trouble(error) {
  if (error instanceof NotLoaded || error instanceof CannotGoOn) {
    console.warn(error.cause ?? error);
    notice(error.message);
    return;
  }
  if (error instanceof StorageLost) {
    console.warn(error, error.cause);
    notice(error.message, [[OPEN_IT_AGAIN, () => location.reload()]]);
    return;
  }
  console.error(error);
  notice(STEP_WENT_WRONG, [
    [TRY_AGAIN, () => location.reload()],
    ...(state.piece ? [[START_AGAIN, act.restart]] : []),
  ]);
}

/**
 * Draws the screen that the browser stands at; after a tap the focus goes to its heading. `drawn`:
 * the nodes of a piece’s screen, if they are made already.
 */
async function show(focus = true, drawn = null) {
  const entry = here();
  shown = entry.screen;
  closeSheet();
  if (shown === "identify") place(drawn ?? screen(), tools(), focus);
  else {
    const kept = await shelf();
    const nodes = await kept.draw(entry);
    if (same(entry, here())) place(nodes, kept.tools(), focus);
  }
}

function same(a, b) {
  return a.screen === b.screen && a.id === b.id && a.depth === b.depth;
}

function place(nodes, head, focus) {
  document.getElementById("tools").replaceChildren(...head);
  document.getElementById("screen").replaceChildren(...nodes);
  /** @type {HTMLElement} */
  const top = document.querySelector("#screen h1");
  document.title = `${top.ariaLabel ?? top.textContent} – Stallside`;
  markPlace(here().screen);
  window.scrollTo(0, 0);
  if (focus) top.focus({ preventScroll: true });
}

function signal() {
  if (!navigator.onLine) {
    signalLine(worksOffline() ? NO_SIGNAL_WORKS : NO_SIGNAL_UNTIL_CLOSED);
  } else signalLine(updateWaiting() ? NEW_VERSION_READY : "");
}

async function moved(entry) {
  endTyping();
  if (sheetOpen() && !goingBack()) {
    closeSheet();
    history.go(1);
    return;
  }
  await step(async () => {
    await stepsMoved(entry);
    const now = here();
    if (now.screen === "identify") {
      if (shown === "identify") return;
      if (state.piece) put({ view: await assess(state.piece) });
    }
    await show();
    window.scrollTo(0, now.top ?? 0);
  });
}

async function takeUpBeside(beside) {
  await swap(state.piece, beside);
  await adopt(beside);
  await show();
}

/** Takes up the piece that was at hand, or says why it cannot. */
async function restore({ piece, unreadable }, beside) {
  if (beside && beside.id !== piece?.id && state.list.some((range) => range.id === packOf(beside)))
    notice(ANOTHER_WINDOWS_PIECE, [[TAKE_IT_UP, () => run(() => takeUpBeside(beside))]]);
  if (unreadable) notice(PIECE_NOT_READ);
  if (piece && state.list.some((range) => range.id === packOf(piece))) {
    if (piece.made && Date.now() - Date.parse(piece.made) > OLD)
      notice(youBeganAt(timeText(piece.made)), [[NEXT_PIECE, act.restart]]);
    return adopt(piece);
  }
  if (piece) {
    await putBy(piece);
    notice(RANGE_NO_LONGER_HERE);
  }
  return openRange(state.settings.range);
}

async function start() {
  startLight();
  onTrouble(trouble);
  startNavigation(show, shelf);
  watchInstall();
  document.getElementById("light").addEventListener("click", switchLight);
  document.getElementById("settings").addEventListener("click", openSettings);
  startPlaces(openScreen);
  const opened = openStore();
  const read = (...readers) => opened.then(() => Promise.all(readers.map((reader) => reader())));
  const reading = read(
    readSettings,
    restored,
    restoredFormer,
    restoredBeside,
    restoredTray,
    loadRecords,
  );
  const [engine, list, earlier] = await Promise.all([loadEngine(), packList(opened), reading]);
  const [settings, piece, former, beside, tray] = earlier;
  put({ engine, list, settings, former, tray });
  const whole = loadFurther();
  if (piece) await whole; // its answer may speak of a date or a price
  tellStored();
  await restore(piece, beside);
  onMoved(moved);
  document.addEventListener("click", once, { capture: true });
  document.addEventListener("click", () => deepen(state.piece ? state.piece.steps.length : 0), {
    capture: true,
  });
  document.addEventListener("keydown", (event) => state.settings.keys && keyChooses(event));
  await show(false);
  if (setAsideNow() > 0) tellSetAside();
  onLost(() => tellLoss(false).catch(trouble));
  if (missing() && PRACTICE === "") tellLoss(true).catch(trouble);
  if (PRACTICE !== "") guided().catch(trouble);
  WIDE.addEventListener("change", atDesk);
  if (WIDE.matches) atDesk();
  run(() => whole); // before any tap is heeded
  await whole.catch(() => {});
  onThread(ahead);
  meanwhile(ahead());
  shelf().catch((error) => (error instanceof NotLoaded ? console.warn(error) : trouble(error)));
}

/** Leads through one of the first steps. */
async function guided() {
  (await loaded(import("./first-steps/guide.js"))).openGuide(state, PRACTICE);
}

/** What a wide window has besides: keys, photos dragged in, the candidates beside the question. */
async function atDesk() {
  (await loaded(import("./desk/desk.js"))).openDesk(state);
}

/** The browser deleted what was stored: before this start, or just now. */
async function tellLoss(before) {
  const { tellMissing, tellEmptied } = await loaded(import("./exchange/emptied.js"));
  if (before) tellMissing();
  else tellEmptied();
}

function tellSetAside() {
  const count = setAsideNow();
  const what = count === 1 ? ONE_RECORD_NOT_READ : recordsNotRead(count);
  notice(setAsideAndWorks(what), [[LOOK_AT_IT, () => goTo("aside")]]);
}

/** The second tap of a double tap would answer a question that nobody has read. */
function once(event) {
  if (event.detail > 1 && event.target.closest("button:not(.key)")) {
    event.preventDefault();
    event.stopImmediatePropagation();
  }
}

/** What the app was opened for: a pairing link is taken out of the address before anything else. */
async function arrive(steps) {
  const { hash } = location;
  if (hash !== "") history.replaceState({ ...here(), step: steps }, "", location.pathname);
  await starting;
  if (hash === "" && !state.settings?.paired) return;
  const { arrive: begin } = await loaded(import("./sync/at-start.js"));
  await begin(state, hash);
}

function openSettings() {
  if (here().screen !== "settings") openScreen("settings");
}

/** The collection's screens: loaded once, after the first question is on the screen. */
function shelf() {
  opening ??= loaded(import("./shell/shelf.js"))
    .then(({ openShelf }) => openShelf(state))
    .catch((error) => {
      opening = null;
      throw error;
    });
  return opening;
}

/** Goes to a screen; a tap that comes before the start is done waits for it. */
async function openScreen(name) {
  await starting;
  await shelf();
  if (name === "identify") goToPiece();
  else goTo(name);
}

function stuck(error) {
  console.error(error);
  document.getElementById("screen").replaceChildren(stuckScreen(state, error));
}

window.addEventListener("error", (event) => trouble(event.error ?? event.message));
window.addEventListener("unhandledrejection", (event) => trouble(event.reason));
window.addEventListener("online", signal);
window.addEventListener("offline", signal);

const starting = start().catch(stuck);
arrive(here().step).catch(console.warn);
window.addEventListener("hashchange", () =>
  arrive(state.piece?.steps.length ?? 0).catch(console.warn),
);
// Not awaited at the top: later.js, which the start may need, waits for this file to end.
starting.then(() => {
  signal();
  startWorker({
    ready: signal,
    replaced: () => notice(NEW_VERSION_BROUGHT_IN, [[OPEN_IT_HERE_TOO, () => location.reload()]]),
  }).then(signal);
});
