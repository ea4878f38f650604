import { NoBackup, readBackup, restore } from "../data/backup-file.js";
import { problem } from "../data/store.js";
import { notice } from "../parts/status.js";
import { started } from "./first-choice.js";

/** Puts the demo collection in. */
export function takeDemo(app, keep) {
  return keep.run(async () => {
    try {
      const response = await fetch(new URL("../packs/demo.json", import.meta.url));
      const read = readBackup(await response.text());
      const { kept } = await restore(read, "Demo collection");
      if (kept === "") notice(problem());
    } catch (error) {
      if (!(error instanceof NoBackup) && !(error instanceof TypeError)) throw error;
      notice("The demo could not be loaded. With a signal, try again.");
      return;
    }
    for (const { id } of keep.ranges) await keep.ready(id);
    await started(app);
    keep.open("collection");
  });
}
