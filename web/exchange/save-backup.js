import { makeBackup, rescued } from "../data/backup-file.js";
import { backedUp } from "../data/last-backup.js";
import { handOut } from "./hand-out.js";
import { holdsOnlyRecords, NOT_SHARED, wentToDownloads, wentWhereChosen } from "./words.js";

/** Hands out the backup file. It counts as made only once it went out. Gives a sentence on that. */
export async function saveBackup() {
  const { blob, name, seq, count } = await makeBackup();
  const went = await handOut(new File([blob], name, { type: blob.type }));
  if (went === "") return NOT_SHARED;
  await backedUp(seq);
  return went === "shared" ? wentWhereChosen(name, count) : wentToDownloads(name, count);
}

/** Hands out what this window still knows; it does not count as a backup. Gives a sentence. */
export async function saveRescued() {
  const { blob, name, count } = await rescued();
  const part = name.replace(".json", "-part.json");
  const went = await handOut(new File([blob], part, { type: blob.type }));
  if (went === "") return NOT_SHARED;
  return holdsOnlyRecords(part, count);
}
