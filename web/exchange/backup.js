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
import { NotStored } from "../sync/replica.js";
import { removals, takeShared } from "../sync/restore-operations.js";
import { saveBackup, saveRescued } from "./save-backup.js";
import { packsAtHand, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { redraw } from "../parts/navigation.js";
import { SAFARI_DELETES } from "../data/first-words.js";

const NAMED = 12;

/** Backup: what is not in one yet, the file in one tap, and its restore. */
export async function backupScreen(state) {
  const { seq, time } = await lastBackup();
  const waiting = await changedAfter(seq);
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Backup"),
    el("p", {}, waitingText(waiting, time, state.settings.paired)),
    button("Make a backup file", handOver, { class: "main wide" }),
    el(
      "p",
      { class: "quiet" },
      "The file holds everything: pieces, wants, notes, photos, and what you paid. Keep it where " +
        "only you can read it.",
    ),
    heading(2, "Restore"),
    el(
      "p",
      {},
      "What is in the file is added to what is here. Where both have the same piece, the version " +
        "changed later counts, and the other one stays in its history.",
    ),
    fileButton("Restore a backup file", (file) => run(() => takeIn(file)), {
      accept: ".json,application/json",
    }),
    heading(2, "Will the browser keep it?"),
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
  notice(message, some ? [["Make a file of what is on the screen", rescue]] : []);
}

async function takeIn(file) {
  await told(async () => {
    const read = await readBackup(await file.text());
    const { removed, file: rest } = await removals(read);
    if (removed.length === 0) await putIn(rest, [], []);
    else await ask(rest, removed);
  });
}

/** Says what the file would remove, and asks what is to become of it. */
async function ask(file, ids) {
  const some = ids.map(record);
  for (const one of some) await readyRange(one.pack);
  const names = some.slice(0, NAMED).map((one) => el("li", {}, nameOf(one)));
  const rest = some.length > NAMED ? el("p", {}, `And ${some.length - NAMED} more.`) : null;
  const go = (away, stay) => () => {
    shut();
    return run(() => told(() => putIn(file, away, stay)));
  };
  const shut = sheet(
    `This file would remove ${counted(ids.length)}`,
    el(
      "p",
      {},
      "They were deleted where the file was made, but are still here. Nothing has changed yet.",
    ),
    el("ul", { class: "plain-list" }, names),
    rest,
    button("Restore, and keep them here", go([], ids), { class: "main wide" }),
    button("Restore, and move them to the bin", go(ids, []), { class: "plain wide" }),
  );
}

function nameOf(one) {
  return one.type === "budget" ? `Budget of ${one.day}` : title(packsAtHand, one);
}

const counted = (count) => (count === 1 ? "1 record" : `${count} records`);

/** Restores the file; then these go to the bin, and those come back out of it. */
async function putIn(file, away, stay) {
  const shared = await takeShared(file);
  const { kept: stored, ...own } = await restore(shared.rest);
  if (stored === "") {
    notice(`${problem()} Nothing was restored.`);
    return;
  }
  const moved = [
    ...away.filter((id) => record(id)?.trashed === "").map((id) => trashing(id)),
    ...stay.filter((id) => record(id)?.trashed !== "").map((id) => trashing(id, false)),
  ];
  if (moved.length > 0) await change("Deleted where the backup was made", moved);
  if (own.last > 0) await backedUp(own.last);
  for (const one of file.records) await readyRange(one.pack);
  await redraw();
  const [added, newer, older] = ["added", "newer", "older"].map((sort) => shared[sort] + own[sort]);
  const left = ` ${file.broken} in the file could not be read and were left out: ${file.why}`;
  const broken = file.broken === 0 ? "" : left;
  const trash = away.length === 0 ? "" : ` ${counted(away.length)} went to the bin.`;
  notice(
    `Restored: ${added} added, ${newer} updated, ${older} left as they are here ` +
      `because they were changed later.${trash}${broken}`,
  );
}

async function told(act) {
  try {
    await act();
  } catch (error) {
    if (error instanceof NotStored)
      notice(`${error.message} Try again: what was restored so far stays.`);
    else if (error instanceof NoBackup) notice(error.message);
    else throw error;
  }
}

/** Asks outside the queue: no tap waits for the person’s answer to the browser. */
async function askBrowser() {
  if (!(await askToKeep()))
    notice("The browser will not promise it. Put the app on the home screen, and make a backup.");
  run(redraw);
}

async function keepText() {
  const answer = await kept();
  if (problem() !== "") return el("p", { class: "warn" }, problem());
  if (answer === true) return el("p", {}, "Yes: it has promised to, even when space runs short.");
  return [
    el(
      "p",
      {},
      (answer === false
        ? "Not for certain: it may delete it if space runs short."
        : "This browser does not say.") +
        " In a private window everything is gone when you close it.",
    ),
    mayVanish() ? el("p", { class: "warn" }, SAFARI_DELETES) : null,
    button("Ask the browser to keep it", askBrowser, { class: "plain wide" }),
  ];
}
