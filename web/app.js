/**
 * The start: loads the engine, the range and the piece at hand, then draws and routes between
 * screens.
 */
import { foreseen, meanwhile } from "./data/work-ahead.js";
import { deepen, here, onMoved } from "./data/back-button.js";
import { watchInstall } from "./data/install.js";
import { PRACTICE } from "./data/practice-storage.js";
import { loadEngine, loadPack, packList } from "./data/packs.js";
import {
  current,
  keep,
  mended,
  packOf,
  putBy,
  restored,
  restoredBeside,
  restoredFormer,
  swap,
} from "./data/piece-at-hand.js";
import { keepSettings, readSettings } from "./data/settings.js";
import { all, anything, loadRecords, recordsEdition } from "./data/records.js";
import { openStore, problem } from "./data/store.js";
import { startWorker, updateWaiting, worksOffline } from "./data/update.js";
import { endTyping } from "./parts/fields.js";
import { startLight, switchLight } from "./settings/light-switch.js";
import { markPlace, startPlaces } from "./shell/bottom-bar.js";
import { setAside } from "./parts/say.js";
import { closeSheet, sheetOpen } from "./parts/sheet.js";
import { notice, signalLine } from "./parts/status.js";
import { identify } from "./identify/identify.js";
import { keyChooses } from "./identify/question.js";
import { NotLoaded, loaded } from "./parts/loaded-later.js";
import { WIDE } from "./parts/wide-window.js";
import { stuckScreen } from "./shell/stuck.js";

const app = {
  engine: null,
  list: [],
  entry: null,
  pack: null,
  ready: null,
  settings: null,
  piece: null,
  view: null,
  former: null,
  opening: "",
  thread: null, // undefined: it is starting
  run,
  tap,
  show,
  adopt,
  chooseRange,
  assess,
  able: (needs) => flow.able(needs),
  shelf,
  openRange: openPack,
  openFor,
  narrowed,
  tellStored,
};
const LARGE = 50_000; // issues of a range: to reason about more of them would hold the screen up
const flow = identify(app);
let queue = Promise.resolve();
let stepping = 0;
let shown = null;
let opening = null;
let study = { about: "", found: null };
let told = "";

/** Does one thing after another; what goes wrong is told, and the piece stays as it was. */
function run(action) {
  queue = queue.then(action).catch(trouble);
  return queue;
}

/** The same for what moves the piece on or back. */
function step(action) {
  stepping += 1;
  return run(action).finally(() => {
    stepping -= 1;
  });
}

/** The same for a tap: one that comes while the last step is still being stored is not meant. */
function tap(action) {
  return stepping > 0 ? queue : step(action);
}

function trouble(error) {
  if (error instanceof NotLoaded) {
    console.warn(error.cause);
    notice(error.message);
    return;
  }
  console.error(error);
  notice("Something went wrong with that step. What you answered before it is kept.", [
    ["Try again", () => location.reload()],
    ...(app.piece ? [["Start again", flow.restart]] : []),
  ]);
}

/** Says what is wrong with the storage, once. */
function tellStored() {
  if (problem() !== told && problem() !== "") notice(problem());
  told = problem();
}

/**
 * Draws the screen that the browser stands at; after a tap the focus goes to its heading. `drawn`:
 * the nodes of a piece’s screen, if they are made already.
 */
async function show(focus = true, drawn = null) {
  const entry = here();
  shown = entry.screen;
  closeSheet();
  if (shown === "identify") place(drawn ?? flow.screen(), flow.tools(), focus);
  else {
    const kept = await app.shelf();
    const node = await kept.draw(entry);
    if (same(entry, here())) place([node], kept.tools(), focus);
  }
}

function same(one, other) {
  return one.screen === other.screen && one.id === other.id && one.depth === other.depth;
}

function place(nodes, tools, focus) {
  document.getElementById("tools").replaceChildren(...tools);
  document.getElementById("screen").replaceChildren(...nodes);
  /** @type {HTMLElement} */
  const top = document.querySelector("#screen h1");
  document.title = `${top.textContent} – Identify`;
  markPlace(here().screen);
  window.scrollTo(0, 0);
  if (focus) top.focus({ preventScroll: true });
}

/** Opens a range; the first one when there is none of that name. */
async function openPack(id) {
  const entry = app.list.find((one) => one.id === id) ?? app.list[0];
  app.opening = entry.id;
  const { pack, ready } = await loadPack(app.engine, entry);
  if (pack === app.pack) return;
  app.thread?.close();
  const large = pack.rows.kind.length >= LARGE;
  Object.assign(app, { entry, pack, ready, thread: large ? undefined : null });
  if (large) threaded(pack);
}

/** Has a large range reasoned about beside the screen, as soon as that can be done. */
async function threaded(pack) {
  let thread = null;
  try {
    const { startThread } = await loaded(import("./identify/large-range.js"));
    thread = await startThread(app);
  } catch (error) {
    console.warn(error);
  }
  if (app.pack !== pack || app.thread) return thread?.close();
  app.thread = thread;
  meanwhile(flow.ahead());
}

async function chooseRange(id) {
  await openPack(id);
  app.settings = { ...app.settings, range: id };
  await keepSettings(app.settings);
  tellStored();
  show(false);
  document.getElementById("range").focus();
}

function signal() {
  if (!navigator.onLine) {
    signalLine(
      worksOffline()
        ? "No signal: everything still works"
        : "No signal: works until you close this page",
    );
  } else signalLine(updateWaiting() ? "A new version is ready: see Settings" : "");
}

async function moved(entry) {
  endTyping();
  if (sheetOpen()) {
    closeSheet();
    history.go(1);
    return;
  }
  await step(async () => {
    await flow.moved(entry);
    const now = here();
    if (now.screen === "identify") {
      if (shown === "identify") return;
      if (app.piece) app.view = await assess(app.piece);
    }
    await show();
    window.scrollTo(0, now.top ?? 0);
  });
}

/** A session over all ranges, carried over to the one range that is left, as soon as one is. */
async function narrowed(session) {
  if (!app.pack.packs) return session;
  const left = app.engine.settled(app.ready, session);
  if (left === "") return session;
  const { ready } = await loadPack(
    app.engine,
    app.list.find((one) => one.id === left),
  );
  return app.engine.narrowed(ready, session);
}

/** Opens the range that the piece is looked for in; with no piece, the chosen one. */
async function openFor(piece) {
  const id = piece ? packOf(piece) : app.settings.range;
  if (id === app.pack.id || (id === "" && !piece)) return piece;
  await openPack(id);
  return piece ? mended(app.engine, app, piece).piece : piece;
}

/** The engine’s view of a piece, with the verdict where something is kept that can have a say. */
async function assess(piece) {
  const { session } = current(piece);
  const found = anything() ? studied(piece) : null;
  const about = found ? study.about : "";
  const { engine, ready, thread } = app;
  return foreseen(`${about} ${JSON.stringify(session)}`, () => {
    const own = () =>
      found ? engine.assess_studied(ready, session, found) : engine.assess(ready, session);
    return thread ? thread.view(session, about, found).catch(own) : own();
  });
}

/** What the records mean for the piece, worked out once for all its answers. */
function studied(piece) {
  const hand = { condition: "", boxed: "", asked: null, ...piece.hand };
  const made = all("piece").some((one) => one.session === piece.id) ? piece.id : "";
  const about = [recordsEdition(), app.pack.version, made, JSON.stringify(hand)].join(" ");
  if (study.about !== about) {
    const others = all("piece").filter((one) => !one.session || one.session !== piece.id);
    const records = { pieces: others, wants: all("want") };
    study = { about, found: app.engine.study(app.ready, records, hand) };
  }
  return study.found;
}

/** Takes up a piece: opens its range, and makes it fit if the range has changed since. */
async function adopt(piece) {
  await openPack(packOf(piece));
  const { piece: fitting, dropped } = mended(app.engine, app, piece);
  app.view = await assess(fitting);
  app.piece = fitting;
  if (dropped.length > 0) notice(setAside(app.pack, dropped));
  if (fitting !== piece) await keep(fitting);
}

async function takeUpBeside(beside) {
  await swap(app.piece, beside);
  await adopt(beside);
  await show();
}

/** Takes up the piece that was at hand, or says why it cannot. */
async function restore({ piece, unreadable }, beside) {
  if (beside && beside.id !== piece?.id && app.list.some((one) => one.id === packOf(beside)))
    notice("Another window was at a piece too. It is kept.", [
      ["Take it up", () => run(() => takeUpBeside(beside))],
    ]);
  if (unreadable)
    notice(
      "The piece you were at cannot be read by this version. It was put by: start with it again.",
    );
  if (piece && app.list.some((one) => one.id === packOf(piece))) return adopt(piece);
  if (piece) {
    await putBy(piece);
    notice(
      "The range of the piece you were at is no longer here. The piece was put by: start again " +
        "with another range.",
    );
  }
  return openPack(app.settings.range);
}

async function start() {
  startLight();
  watchInstall();
  document.getElementById("light").addEventListener("click", switchLight);
  document.getElementById("settings").addEventListener("click", openSettings);
  startPlaces(openScreen);
  const opened = openStore();
  const read = (...readers) => opened.then(() => Promise.all(readers.map((reader) => reader())));
  const reading = read(readSettings, restored, restoredFormer, restoredBeside, loadRecords);
  const [engine, list, found] = await Promise.all([loadEngine(), packList(opened), reading]);
  const [settings, piece, former, beside] = found;
  Object.assign(app, { engine, list, settings, former });
  tellStored();
  await restore(piece, beside);
  onMoved(moved);
  document.addEventListener("click", once, { capture: true });
  document.addEventListener("click", () => deepen(app.piece ? app.piece.steps.length : 0), {
    capture: true,
  });
  document.addEventListener("keydown", (event) => app.settings.keys && keyChooses(event));
  await show(false);
  if (PRACTICE !== "") guided().catch(trouble);
  WIDE.addEventListener("change", atDesk);
  if (WIDE.matches) atDesk();
  meanwhile(flow.ahead());
  shelf().catch((error) => (error instanceof NotLoaded ? console.warn(error) : trouble(error)));
}

/** Leads through one of the first steps. */
async function guided() {
  (await loaded(import("./first-steps/guide.js"))).openGuide(app, PRACTICE);
}

/** What a wide window has besides: keys, photos dragged in, the candidates beside the question. */
async function atDesk() {
  (await loaded(import("./desk/desk.js"))).openDesk(app);
}

/** The second tap of a double tap would answer a question that nobody has read. */
function once(event) {
  if (event.detail > 1 && event.target.closest("button")) {
    event.preventDefault();
    event.stopImmediatePropagation();
  }
}

/** What the app was opened for: a pairing link is taken out of the address before anything else. */
async function arrive(steps) {
  const { hash } = location;
  if (hash !== "") history.replaceState({ ...here(), step: steps }, "", location.pathname);
  await starting;
  if (hash === "" && !app.settings?.paired) return;
  const { arrive: begin } = await loaded(import("./sync/at-start.js"));
  await begin(app, hash);
}

function openSettings() {
  if (here().screen !== "settings") openScreen("settings");
}

/** The collection's screens: loaded once, after the first question is on the screen. */
function shelf() {
  opening ??= loaded(import("./shell/shelf.js"))
    .then(({ openShelf }) => openShelf(app))
    .catch((error) => {
      opening = null;
      throw error;
    });
  return opening;
}

/** Goes to a screen; a tap that comes before the start is done waits for it. */
async function openScreen(screen) {
  await starting;
  const kept = await shelf();
  if (screen === "identify") kept.keep.identify();
  else kept.keep.open(screen);
}

function stuck(error) {
  console.error(error);
  document.getElementById("screen").replaceChildren(stuckScreen(app, error));
}

window.addEventListener("error", (event) => trouble(event.error ?? event.message));
window.addEventListener("unhandledrejection", (event) => trouble(event.reason));
window.addEventListener("online", signal);
window.addEventListener("offline", signal);

const starting = start().catch(stuck);
arrive(here().step).catch(console.warn);
window.addEventListener("hashchange", () =>
  arrive(app.piece?.steps.length ?? 0).catch(console.warn),
);
// Not awaited at the top: later.js, which the start may need, waits for this file to end.
starting.then(() => {
  signal();
  startWorker({
    ready: signal,
    replaced: () =>
      notice("Another window put a new version in place.", [
        ["Open it here too", () => location.reload()],
      ]),
  }).then(signal);
});
