import { backedUp, lastBackup } from "../data/last-backup.js";
import { NoBackup, makeBackup, readBackup, restore } from "../data/backup-file.js";
import { askToKeep, kept } from "../data/install.js";
import { changedAfter } from "../data/journal.js";
import { problem } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { fileButton } from "../parts/photobox.js";
import { notice } from "../parts/status.js";
import { waitingText } from "./backup-waiting.js";
import { NotStored } from "../sync/replica.js";
import { takeShared } from "../sync/restore-operations.js";
import { save } from "./server-files.js";
import { readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { redraw } from "../parts/navigation.js";

/** Backup: what is not in one yet, the file in one tap, and its restore. */
export async function backupScreen(state) {
  const { seq, time } = await lastBackup();
  const waiting = await changedAfter(seq);
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Backup"),
    el("p", {}, waitingText(waiting, time, state.settings.paired)),
    button("Make a backup file", () => run(() => handOver()), { class: "main wide" }),
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

async function handOver() {
  const { blob, name, seq, count } = await makeBackup();
  save(blob, name);
  await backedUp(seq);
  await redraw();
  notice(
    `${name}, with ${count} entries, went to this device’s downloads. Look that it is there, and ` +
      "copy it to another place.",
  );
}

async function takeIn(file) {
  try {
    const read = readBackup(await file.text());
    const shared = await takeShared(read);
    const { kept: stored, ...own } = await restore(shared.rest);
    const [added, newer, older] = ["added", "newer", "older"].map(
      (sort) => shared[sort] + own[sort],
    );
    if (stored === "") {
      notice(`${problem()} Nothing was restored.`);
      return;
    }
    if (own.last > 0) await backedUp(own.last);
    for (const one of read.records) await readyRange(one.pack);
    await redraw();
    const broken =
      read.broken === 0 ? "" : ` ${read.broken} in the file could not be read and were left out.`;
    notice(
      `Restored: ${added} added, ${newer} brought up to date, ${older} left as they are here ` +
        `because they were changed later.${broken}`,
    );
  } catch (error) {
    if (error instanceof NotStored) notice(`${error.message} Try again: what was taken in stays.`);
    else if (error instanceof NoBackup) notice(error.message);
    else throw error;
  }
}

async function keepText() {
  const answer = await kept();
  if (problem() !== "") return el("p", { class: "warn" }, problem());
  if (answer === true)
    return el("p", {}, "Yes: it has agreed to keep it, also when room runs short.");
  return [
    el(
      "p",
      {},
      answer === false
        ? "Not for certain: it may delete it when room runs short. In a private window " +
            "everything is gone when you close it."
        : "This browser does not say.",
    ),
    button(
      "Ask the browser to keep it",
      () =>
        run(async () => {
          if (!(await askToKeep()))
            notice("The browser did not agree. Put the app on the home screen, and make a backup.");
          await redraw();
        }),
      { class: "plain wide" },
    ),
  ];
}
