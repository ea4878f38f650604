import { makeBackup } from "../data/backup-file.js";
import { backedUp } from "../data/last-backup.js";
import { save } from "./server-files.js";

/** Puts the backup file among this device's downloads. Gives a sentence that says so. */
export async function saveBackup() {
  const { blob, name, seq, count } = await makeBackup();
  save(blob, name);
  await backedUp(seq);
  return (
    `${name}, with ${count} entries, went to this device’s downloads. Look that it is there, and ` +
    "copy it to another place."
  );
}
