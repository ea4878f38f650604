import { timeText } from "../parts/days.js";

/** How much is not in a backup file, in a sentence. `paired`: a server has it all as well. */
export function waitingText(waiting, time, paired) {
  const nothing = paired
    ? "Nothing here waits for a backup file. Your server keeps its own."
    : "There is nothing to back up yet.";
  if (waiting === 0)
    return time === "" ? nothing : `Everything is in the backup of ${timeText(time)}.`;
  const count = waiting === 1 ? "1 entry is" : `${waiting} entries are`;
  if (time === "" && paired)
    return `${count} in no backup file yet. Your server has what was sent.`;
  return time === ""
    ? `${count} only on this device: there is no backup yet.`
    : `${count} not in the last backup, of ${timeText(time)}.`;
}
