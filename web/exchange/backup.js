import { backedUp, lastBackup } from "../data/last-backup.js";
import { NoBackup, WouldBeEmptier, readBackup, restore } from "../data/backup-file.js";
import { askToKeep, kept, mayVanish } from "../data/install.js";
import { changedAfter } from "../data/journal.js";
import { change, everything, record, trashing } from "../data/records.js";
import { problem } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { fileButton } from "../parts/file-button.js";
import { title } from "../parts/piece-names.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { waitingText } from "./backup-waiting.js";
import { NotStored } from "../sync/sync-state.js";
import { removals, takeShared } from "../sync/restore-operations.js";
import { saveBackup, saveRescued } from "./save-backup.js";
import { packsAtHand, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { redraw } from "../parts/navigation.js";
import { SAFARI_DELETES } from "../data/first-words.js";
import {
  ADDED_TO_WHAT_IS_HERE,
  andMore,
  ASK_THE_BROWSER_TO_KEEP_IT,
  BACKUP,
  budgetOf,
  couldNotBeRead,
  DELETED_THERE,
  DELETED_WHERE_MADE,
  FILE_HOLDS_EVERYTHING,
  FILE_OF_THE_SCREEN,
  HAS_PROMISED,
  inAPrivateWindow,
  MAKE_A_BACKUP_FILE,
  NOT_FOR_CERTAIN,
  nothingWasRestored,
  recordCount,
  RESTORE,
  RESTORE_A_BACKUP_FILE,
  RESTORE_AND_BIN,
  RESTORE_AND_KEEP_THEM_HERE,
  restoredWhat,
  THIS_BROWSER_DOES_NOT_SAY,
  tryAgainRestored,
  wentToTheBin,
  WILL_NOT_PROMISE,
  WILL_THE_BROWSER_KEEP_IT,
  wouldRemove,
} from "./words.js";

const NAMED = 12;

/** Backup: what is not in one yet, the file in one tap, and its restore. */
export async function backupScreen(state) {
  const { seq, time } = await lastBackup();
  const waiting = await changedAfter(seq);
  return el(
    "section",
    { class: "shelf" },
    heading(1, BACKUP),
    el("p", {}, waitingText(waiting, time, state.settings.paired)),
    button(MAKE_A_BACKUP_FILE, handOver, { class: "main wide" }),
    el("p", { class: "quiet" }, FILE_HOLDS_EVERYTHING),
    heading(2, RESTORE),
    el("p", {}, ADDED_TO_WHAT_IS_HERE),
    fileButton(RESTORE_A_BACKUP_FILE, (file) => run(() => takeIn(file)), {
      accept: ".json,application/json",
    }),
    heading(2, WILL_THE_BROWSER_KEEP_IT),
    await keepText(),
  );
}

/** Out of the queue: no tap waits until the person has chosen where the file goes. */
async function handOver() {
  await run(() => {}); // what was tapped before is stored first
  try {
    const said = await saveBackup();
    await run(redraw);
    notice(said);
  } catch (error) {
    if (error instanceof WouldBeEmptier) tellEmptier(error);
    else run(() => Promise.reject(error));
  }
}

function tellEmptier({ message }) {
  const rescue = async () => notice(await saveRescued());
  const some = everything().length > 0;
  notice(message, some ? [[FILE_OF_THE_SCREEN, rescue]] : []);
}

async function takeIn(file) {
  await sayingWhy(async () => {
    const read = await readBackup(file);
    const { removed, file: rest } = await removals(read);
    if (removed.length === 0) await putIn(rest, [], []);
    else await ask(rest, removed);
  });
}

/** Says what the file would remove, and asks what is to become of it. */
async function ask(file, ids) {
  const some = ids.map(record);
  for (const entry of some) await readyRange(entry.pack);
  const names = some.slice(0, NAMED).map((entry) => el("li", {}, nameOf(entry)));
  const rest = some.length > NAMED ? el("p", {}, andMore(some.length - NAMED)) : null;
  const go = (away, stay) => () => {
    shut();
    return run(() => sayingWhy(() => putIn(file, away, stay)));
  };
  const shut = sheet(
    wouldRemove(counted(ids.length)),
    el("p", {}, DELETED_WHERE_MADE),
    el("ul", { class: "plain-list" }, names),
    rest,
    button(RESTORE_AND_KEEP_THEM_HERE, go([], ids), { class: "main wide" }),
    button(RESTORE_AND_BIN, go(ids, []), { class: "plain wide" }),
  );
}

function nameOf(entry) {
  return entry.type === "budget" ? budgetOf(entry.day) : title(packsAtHand, entry);
}

const counted = (count) => (count === 1 ? "1 record" : recordCount(count));

/** Restores the file; then these go to the bin, and those come back out of it. */
async function putIn(file, away, stay) {
  const shared = await takeShared(file);
  const { kept: stored, ...own } = await restore(shared.rest);
  if (stored === "") {
    notice(nothingWasRestored(problem()));
    return;
  }
  const moved = [
    ...away.filter((id) => record(id)?.trashed === "").map((id) => trashing(id)),
    ...stay.filter((id) => record(id)?.trashed !== "").map((id) => trashing(id, false)),
  ];
  if (moved.length > 0) await change(DELETED_THERE, moved);
  if (own.last > 0) await backedUp(own.last);
  for (const id of new Set(file.records.map(({ pack }) => pack))) await readyRange(id);
  await redraw();
  const [added, newer, older] = ["added", "newer", "older"].map((sort) => shared[sort] + own[sort]);
  const left = couldNotBeRead(file.broken, file.why);
  const broken = file.broken === 0 ? "" : left;
  const trash = away.length === 0 ? "" : wentToTheBin(counted(away.length));
  notice(restoredWhat(added, newer, older, trash, broken));
}

async function sayingWhy(act) {
  try {
    await act();
  } catch (error) {
    if (error instanceof NotStored) notice(tryAgainRestored(error.message));
    else if (error instanceof NoBackup) notice(error.message);
    else throw error;
  }
}

/** Asks outside the queue: no tap waits for the person’s answer to the browser. */
async function askBrowser() {
  if (!(await askToKeep())) notice(WILL_NOT_PROMISE);
  run(redraw);
}

async function keepText() {
  const answer = await kept();
  if (problem() !== "") return el("p", { class: "warn" }, problem());
  if (answer === true) return el("p", {}, HAS_PROMISED);
  return [
    el("p", {}, inAPrivateWindow(answer === false ? NOT_FOR_CERTAIN : THIS_BROWSER_DOES_NOT_SAY)),
    mayVanish() ? el("p", { class: "warn" }, SAFARI_DELETES) : null,
    button(ASK_THE_BROWSER_TO_KEEP_IT, askBrowser, { class: "plain wide" }),
  ];
}
