import { makeBackup, rescued } from "../data/backup-file.js";
import { backedUp } from "../data/last-backup.js";
import { handOut } from "./hand-out.js";

const UNSHARED =
  "The backup was not shared, and does not count as made. Try again, and choose where " +
  "to put it, for instance “Save to Files”.";

/** Hands out the backup file. It counts as made only once it went out. Gives a sentence on that. */
export async function saveBackup() {
  const { blob, name, seq, count } = await makeBackup();
  const went = await handOut(new File([blob], name, { type: blob.type }));
  if (went === "") return UNSHARED;
  await backedUp(seq);
  return went === "shared"
    ? `${name}, with ${count} records, went where you chose. Check it is there.`
    : `${name}, with ${count} records, went to this device’s downloads. Check it is there, ` +
        "and copy it to another place.";
}

/** Hands out what this window still knows; it does not count as a backup. Gives a sentence. */
export async function saveRescued() {
  const { blob, name, count } = await rescued();
  const part = name.replace(".json", "-part.json");
  const went = await handOut(new File([blob], part, { type: blob.type }));
  if (went === "") return UNSHARED;
  return (
    `${part} holds ${count} records, without photos and history. Keep your last backup as well: ` +
    "restore first that one, then this."
  );
}
