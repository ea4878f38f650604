import { NoBackup, readBackup, restore } from "../data/backup-file.js";
import { problem } from "../data/store.js";
import { notice } from "../parts/status.js";
import { started } from "./first-choice.js";
import { ranges, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { goTo } from "../parts/navigation.js";

/** Puts the demo collection in. */
export function takeDemo() {
  return run(async () => {
    try {
      const response = await fetch(new URL("../packs/demo.json", import.meta.url));
      const read = await readBackup(await response.text());
      const { kept } = await restore(read, "Demo collection");
      if (kept === "") notice(problem());
    } catch (error) {
      if (!(error instanceof NoBackup) && !(error instanceof TypeError)) throw error;
      notice("The demo could not be loaded. With a signal, try again.");
      return;
    }
    for (const { id } of ranges()) await readyRange(id);
    await started();
    goTo("collection");
  });
}
