/** How every screen saves what it shows, and undoes it. */
import { SAFARI_DELETES, askToKeep, mayVanish } from "../data/install.js";
import { undo, undoable } from "../data/journal.js";
import { run } from "../data/queue.js";
import { ChangedElsewhere, change, record, setting } from "../data/records.js";
import { changeSettings } from "../data/settings.js";
import { state } from "../data/state.js";
import { problem } from "../data/store.js";
import { button, el } from "./element.js";
import { endTyping } from "./fields.js";
import { goesWithScreen, redraw } from "./navigation.js";
import { small } from "./say.js";
import { sheet } from "./sheet.js";
import { announce, notice } from "./status.js";

let asked = false; // whether the browser was asked to keep what is stored

/**
 * Changes records and tells how it went: true when it is kept. `said`: a sentence, shown with an
 * Undo. Runs inside `run`.
 */
export async function saveChange(what, edits, told = /** @type {any} */ ({})) {
  const { said = "", ...options } = told;
  let done;
  try {
    done = await change(what, edits, options);
  } catch (error) {
    if (!(error instanceof ChangedElsewhere)) throw error;
    notice(
      "Another window or device has since changed or deleted this. Nothing was written over it: " +
        "here is how it stands now.",
    );
    await redraw();
    return false;
  }
  if (done.kept === "") notice(problem());
  else if (!asked) askToKeep(); // not waited for: a browser may ask the person first
  asked ||= done.kept === "disk";
  if (done.kept === "") return false;
  // now there is something to undo
  document.querySelector("#tools [hidden]")?.removeAttribute("hidden");
  if (said === "") announce("Saved.");
  else offerUndo(said + (await warnedOnce()), { group: done.group, what });
  return true;
}

/** Once, in a browser that deletes what is not used for a week: a sentence more, else "". */
async function warnedOnce() {
  if (!mayVanish() || state.settings.warned) return "";
  await changeSettings({ warned: true });
  return ` ${SAFARI_DELETES} Settings tells how to put it there.`;
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
    const { kept } = await change(`${what} changed`, [setting(id, field, shown, value)]);
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
    notice("Another window or device has since deleted this. It is in the bin.");
    return;
  }
  const shut = sheet(
    "Changed in another window",
    el(
      "p",
      {},
      "What you changed here was also changed in another window or on another device. " +
        "Which is right?",
    ),
    button("Keep mine", () => settle(mine), { class: "plain wide" }),
    button("Keep the other one", () => settle(() => {}), { class: "plain wide" }),
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
    else goesWithScreen(notice("There is nothing to undo."));
  });
}

/** Undoes a change: {group, what}; with `again` what was undone is put back. */
export async function takeBack(last) {
  const { kept, group, left } = await undo(last);
  if (kept === "") notice(problem());
  else {
    const rest = left > 0 ? " What was changed again since stays as it is." : "";
    const actions = last.again
      ? []
      : [["Put it back", () => run(() => takeBack({ group, what: last.what, again: true }))]];
    goesWithScreen(
      notice(`${last.again ? "Put back" : "Undone"}: ${small(last.what)}.${rest}`, actions),
    );
    await redraw();
  }
}

function offerUndo(said, group) {
  goesWithScreen(notice(said, [["Undo", () => run(() => takeBack(group))]]));
}
