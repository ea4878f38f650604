/** How every screen saves what it shows, and undoes it. */
import { askToKeep, mayVanish } from "../data/install.js";
import { undo, undoable } from "../data/journal.js";
import { run } from "../data/queue.js";
import { ChangedElsewhere, change, record, setting } from "../data/records.js";
import { changeSettings } from "../data/settings.js";
import { state } from "../data/state.js";
import { problem } from "../data/store.js";
import { button, el } from "./element.js";
import { endTyping } from "./end-typing.js";
import { goesWithScreen, redraw } from "./navigation.js";
import { small } from "./say.js";
import { sheet } from "./sheet.js";
import { announce, notice } from "./status.js";
import {
  CHANGED_AGAIN_SINCE,
  CHANGED_ELSEWHERE_SINCE,
  CHANGED_IN_ANOTHER_WINDOW,
  DELETED_ELSEWHERE_SINCE,
  fieldChanged,
  KEEP_MINE,
  KEEP_THE_OTHER_ONE,
  PUT_BACK,
  PUT_IT_BACK,
  SAVED,
  settingsTells,
  THERE_IS_NOTHING_TO_UNDO,
  UNDO,
  UNDONE,
  WHICH_IS_RIGHT,
} from "./first-words.js";
import { SAFARI_DELETES } from "../data/first-words.js";

let asked = false; // whether the browser was asked to keep what is stored

/**
 * Changes records and tells how it went: true when it is kept. `said`: a sentence, shown with an
 * Undo. Runs inside `run`.
 */
export async function saveChange(what, edits, how = /** @type {any} */ ({})) {
  const { said = "", ...options } = how;
  let done;
  try {
    done = await change(what, edits, options);
  } catch (error) {
    if (!(error instanceof ChangedElsewhere)) throw error;
    notice(CHANGED_ELSEWHERE_SINCE);
    await redraw();
    return false;
  }
  if (done.kept === "") notice(problem());
  else if (!asked) askToKeep(); // not waited for: a browser may ask the person first
  asked ||= done.kept === "disk";
  if (done.kept === "") return false;
  // now there is something to undo
  document.querySelector("#tools [hidden]")?.removeAttribute("hidden");
  if (said === "") announce(SAVED);
  else offerUndo(said + (await warnedOnce()), { group: done.group, what });
  return true;
}

/** Once, in a browser that deletes what is not used for a week: a sentence more, else "". */
async function warnedOnce() {
  if (!mayVanish() || state.settings.warned) return "";
  await changeSettings({ warned: true });
  return settingsTells(SAFARI_DELETES);
}

/** A function that saves one field of a record, as long as nobody else has changed it. */
export function saver(id, field, what) {
  let shown = record(id)[field] ?? null;
  return async (value) => {
    let kept = false;
    await run(async () => {
      kept = await saveField(id, field, shown, value, what);
    });
    if (kept) shown = value;
    return kept;
  };
}

async function saveField(id, field, shown, value, what) {
  try {
    const { kept } = await change(fieldChanged(what), [setting(id, field, shown, value)]);
    if (kept === "") notice(problem());
    return kept !== "";
  } catch (error) {
    if (!(error instanceof ChangedElsewhere)) throw error;
    askWhich(error.now, () => saveField(id, field, error.now[field] ?? null, value, what));
    return false;
  }
}

function askWhich(now, mine) {
  if (!now || now.gone) {
    notice(DELETED_ELSEWHERE_SINCE);
    return;
  }
  const shut = sheet(
    CHANGED_IN_ANOTHER_WINDOW,
    el("p", {}, WHICH_IS_RIGHT),
    button(KEEP_MINE, () => settle(mine), { class: "plain wide" }),
    button(KEEP_THE_OTHER_ONE, () => settle(() => {}), { class: "plain wide" }),
  );
  const settle = (act) => {
    shut();
    run(async () => {
      await act();
      await redraw();
    });
  };
}

/** Undoes the last change. */
export function undoLast() {
  endTyping();
  run(async () => {
    const last = await undoable();
    if (last) await takeBack(last);
    else goesWithScreen(notice(THERE_IS_NOTHING_TO_UNDO));
  });
}

/** Undoes a change: {group, what}; with `again` what was undone is put back. */
export async function takeBack(last) {
  const { kept, group, left } = await undo(last);
  if (kept === "") notice(problem());
  else {
    const rest = left > 0 ? CHANGED_AGAIN_SINCE : "";
    const actions = last.again
      ? []
      : [[PUT_IT_BACK, () => run(() => takeBack({ group, what: last.what, again: true }))]];
    goesWithScreen(
      notice(`${last.again ? PUT_BACK : UNDONE}: ${small(last.what)}.${rest}`, actions),
    );
    await redraw();
  }
}

function offerUndo(said, group) {
  goesWithScreen(notice(said, [[UNDO, () => run(() => takeBack(group))]]));
}
