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

/** At the start: what was here is gone; a file, a server or another device may have it. */
export function tellMissing() {
  const { count, time } = missing();
  notice(
    `This browser has deleted what the app had stored on this device: ${entries(count)} on ` +
      `${timeText(time)}. Restore a backup file, or pair again with your own server, and it is ` +
      "back.",
    [
      ["Restore a backup file", () => goTo("backup")],
      ["Pair with a server", () => goTo("devices")],
      ["Start empty", withNothing],
    ],
  );
}

/** What was here is not expected back, and nobody is asked again how to begin. */
function withNothing() {
  forgetKnown();
  startEmpty();
}

/** In an open window: it still knows all of it but the photos. */
export function tellEmptied() {
  notice(
    "This browser has just deleted what the app had stored on this device. This window still " +
      `knows ${entries(everything().length)}, without photos and history. Do not close it yet.`,
    [
      ["Put them back", () => run(putBack)],
      ["Make a file of them", async () => notice(await saveRescued())],
    ],
  );
}

const entries = (count) => (count === 1 ? "1 record" : `${count} records`);

async function putBack() {
  const { kept } = await change("Put back after the browser deleted it", everything().map(making));
  await redraw();
  if (kept === "") notice(problem());
  else
    notice(
      `Stored again: ${entries(everything().length)}. ` +
        "Photos come back from a backup file or from your server.",
    );
}
