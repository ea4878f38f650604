/** Going into the first steps, and out of them again. */
import { PRACTICE, PRACTISING } from "../data/practice.js";

/** Begins one of the first steps with nothing in its storage. */
export async function beginSteps(use) {
  await forgetSteps();
  go(`./?first-steps=${use}`);
}

/** Back to the collector's own app; what was done in the first steps is gone. */
export async function leaveSteps() {
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
      request.onblocked = resolve; // another window is at it: it is told, and lets go
    } catch {
      resolve(); // the browser lets nothing be stored, so nothing is left
    }
  });
}

/** In the first steps themselves the entry of the history is replaced: Back leads to where they were begun. */
function go(to) {
  if (PRACTICE === "") location.assign(to);
  else location.replace(to);
}
