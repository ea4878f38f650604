import { NoBackup, readBackup, restore } from "../data/backup-file.js";
import { problem } from "../data/store.js";
import { notice } from "../parts/status.js";
import { started } from "./first-choice.js";
import { ranges, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { goTo } from "../parts/navigation.js";
import { DEMO_COLLECTION, DEMO_NOT_LOADED } from "./words.js";

/** Puts the demo collection in. */
export function takeDemo() {
  return run(async () => {
    try {
      const response = await fetch(new URL("../packs/demo.json", import.meta.url));
      const read = await readBackup(await response.blob());
      const { kept } = await restore(read, DEMO_COLLECTION);
      if (kept === "") notice(problem());
    } catch (error) {
      if (!(error instanceof NoBackup) && !(error instanceof TypeError)) throw error;
      notice(DEMO_NOT_LOADED);
      return;
    }
    for (const { id } of ranges()) await readyRange(id);
    await started();
    goTo("collection");
  });
}
