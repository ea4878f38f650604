/** Going into the first steps, and out of them again. */
import { PRACTICE, PRACTISING } from "../data/practice-storage.js";
import { remove } from "../data/store.js";

/** What is kept once one of them is begun. */
export const BEGUN = "first steps";
const PATIENCE = 3000; // ms for another window to let go

/** Begins one of the first steps with nothing in its storage. */
export async function beginSteps(use) {
  if (PRACTICE !== "") await remove("kept", BEGUN);
  await forgetSteps();
  go(`./?first-steps=${use}`);
}

/** Back to the collector's own app; what was done in the first steps is gone. */
export async function leaveSteps() {
  if (PRACTICE !== "") await remove("kept", BEGUN);
  await forgetSteps();
  go("./");
}

/** Takes away what is left of first steps that were not ended, for instance by a closed window. */
export function forgetSteps() {
  return new Promise((resolve) => {
    try {
      const request = indexedDB.deleteDatabase(PRACTISING);
      request.onsuccess = resolve;
      request.onerror = resolve;
      setTimeout(resolve, PATIENCE);
    } catch {
      resolve(); // the browser lets nothing be stored, so nothing is left
    }
  });
}

/**
 * In the first steps themselves the entry of the history is replaced: Back leads to where they were
 * begun.
 */
function go(to) {
  if (PRACTICE === "") location.assign(to);
  else location.replace(to);
}
