import { timeText } from "./when.js";

/** How much is not in a backup, in a sentence. */
export function waitingText(waiting, time) {
  if (waiting === 0) return time === "" ? "There is nothing to back up yet." : `Everything is in the backup of ${timeText(time)}.`;
  const count = waiting === 1 ? "1 entry is" : `${waiting} entries are`;
  return time === ""
    ? `${count} only on this phone: there is no backup yet.`
    : `${count} not in the last backup, of ${timeText(time)}.`;
}
