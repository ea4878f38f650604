/** Going from screen to screen. What draws them is the shell, which says so at the start. */
import { backToPiece, onMoved, pushScreen, remember } from "../data/back-button.js";
import { run } from "../data/queue.js";
import { problem } from "../data/store.js";
import { endTyping } from "./end-typing.js";
import { leaveTold } from "./status.js";

let shell = null;
let fleeting = null;
let listLeft = null; // where there is a long list, it is here

/**
 * `draw(focus, drawn)` draws the screen that the browser stands at; `opened()` is a promise that
 * the collection is there.
 */
export function startNavigation(draw, opened) {
  shell = { draw, opened };
  onMoved(leave);
}

/** `act` gets the long list of a screen that is left, and gives what is remembered of it. */
export function onListLeft(act) {
  listLeft = act;
}

/** Takes away what was told of another screen. */
export function leaveNotice() {
  fleeting?.remove();
  fleeting = null;
}

/** Resolves once the collection is there. */
export function collectionOpen() {
  return shell.opened();
}

/** A notice that goes with its screen, whatever else stays. */
export function goesWithScreen(node) {
  fleeting = node;
}

/**
 * Goes to another screen; what is being typed is saved first. `instead`: in place of this one;
 * `keepNotice`: what was just said stays.
 */
export function goTo(screen, params = {}, { instead = false, keepNotice = false } = {}) {
  endTyping();
  return run(async () => {
    if (!keepNotice) leaveNotice();
    if (instead) remember({ ...params, screen });
    else {
      remember({ top: window.scrollY, ...listStands() });
      pushScreen(screen, params);
    }
    if (!keepNotice) leave();
    await show();
  });
}

/** What is remembered of the long list that is shown, where there is one. */
function listStands() {
  const list = document.querySelector("#screen ul.rows");
  return list && listLeft?.(list);
}

/** Goes back to where this screen was opened. */
export function leaveScreen() {
  endTyping();
  run(() => history.back());
}

/** Goes back to the piece being identified, or to its start. */
export function goToPiece() {
  endTyping();
  leaveNotice();
  run(() => backToPiece());
}

/** Draws the screen that the browser stands at; `drawn`: its nodes, where they are made already. */
export function show(focus = true, drawn = null) {
  return shell.draw(focus, drawn);
}

/** Draws the screen anew where it stands. */
export async function redraw() {
  const top = window.scrollY;
  const stands = listStands();
  if (stands) remember(stands);
  await show(false);
  window.scrollTo(0, top);
}

/** What was only told goes with its screen; not that the storage is in trouble. */
function leave() {
  if (problem() === "") leaveTold();
}
