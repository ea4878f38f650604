import { timeText } from "../parts/days.js";
import {
  everythingIsIn,
  inNoFileYet,
  NO_FILE_NEEDED,
  NOTHING_OF_YOUR_OWN_YET,
  notInTheLast,
  ONE_RECORD_IS,
  onlyHere,
  recordsAre,
} from "./words.js";

/** How much is not in a backup file, in a sentence. `paired`: a server has it all as well. */
export function waitingText(waiting, time, paired) {
  const nothing = paired ? NO_FILE_NEEDED : NOTHING_OF_YOUR_OWN_YET;
  if (waiting === 0) return time === "" ? nothing : everythingIsIn(timeText(time));
  const count = waiting === 1 ? ONE_RECORD_IS : recordsAre(waiting);
  if (time === "" && paired) return inNoFileYet(count);
  return time === "" ? onlyHere(count) : notInTheLast(count, timeText(time));
}
