/** The browser has deleted what was stored: said once it is noticed, with the ways out. */
import { change, everything, making } from "../data/records.js";
import { run } from "../data/queue.js";
import { problem } from "../data/store.js";
import { forgetKnown, missing } from "../data/what-was-known.js";
import { startEmpty } from "../first-steps/first-choice.js";
import { timeText } from "../parts/days.js";
import { goTo, redraw } from "../parts/navigation.js";
import { notice } from "../parts/status.js";
import { saveRescued } from "./save-backup.js";
import {
  browserHadDeleted,
  browserHasDeleted,
  MAKE_A_FILE_OF_THEM,
  PAIR_WITH_A_SERVER,
  PUT_BACK_AFTERWARDS,
  PUT_THEM_BACK,
  recordCount,
  RESTORE_A_BACKUP_FILE,
  START_EMPTY,
  storedAgain,
} from "./words.js";

/** At the start: what was here is gone; a file, a server or another device may have it. */
export function tellMissing() {
  const { count, time } = missing();
  notice(browserHadDeleted(entries(count), timeText(time)), [
    [RESTORE_A_BACKUP_FILE, () => goTo("backup")],
    [PAIR_WITH_A_SERVER, () => goTo("devices")],
    [START_EMPTY, withNothing],
  ]);
}

/** What was here is not expected back, and nobody is asked again how to begin. */
function withNothing() {
  forgetKnown();
  startEmpty();
}

/** In an open window: it still knows all of it but the photos. */
export function tellEmptied() {
  notice(browserHasDeleted(entries(everything().length)), [
    [PUT_THEM_BACK, () => run(putBack)],
    [MAKE_A_FILE_OF_THEM, async () => notice(await saveRescued())],
  ]);
}

const entries = (count) => (count === 1 ? "1 record" : recordCount(count));

async function putBack() {
  const { kept } = await change(PUT_BACK_AFTERWARDS, everything().map(making));
  await redraw();
  if (kept === "") notice(problem());
  else notice(storedAgain(entries(everything().length)));
}
