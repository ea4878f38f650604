import { timeText } from "../parts/days.js";

/** How much is not in a backup file, in a sentence. `paired`: a server has it all as well. */
export function waitingText(waiting, time, paired) {
  const nothing = paired
    ? "Nothing here needs a backup file. Your server keeps its own."
    : "Nothing of your own yet.";
  if (waiting === 0)
    return time === "" ? nothing : `Everything is in the backup of ${timeText(time)}.`;
  const count = waiting === 1 ? "1 record is" : `${waiting} records are`;
  if (time === "" && paired)
    return `${count} in no backup file yet. Your server has what was sent.`;
  return time === ""
    ? `${count} only on this device: there is no backup yet.`
    : `${count} not in the last backup, of ${timeText(time)}.`;
}
