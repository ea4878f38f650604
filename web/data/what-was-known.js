/**
 * How much was stored here, written down beside the storage: a browser that deletes the storage may
 * leave this line, and the app then knows that it knew more. Safari deletes it along with the rest.
 *
 *   {count: of records, time, gone: the storage was found without them}
 */
import { STORAGE } from "./practice-storage.js";

const PLACE = `${STORAGE} known`;
const NOTHING = { count: 0, time: "", gone: false };
let now = read();

function read() {
  try {
    return { ...NOTHING, ...JSON.parse(localStorage.getItem(PLACE) ?? "{}") };
  } catch {
    return NOTHING; // the browser lets nothing be stored
  }
}

function write(change) {
  now = { ...now, ...change };
  try {
    localStorage.setItem(PLACE, JSON.stringify(now));
  } catch {
    // The same.
  }
}

/** What was known before, where the storage was found without it; else null. */
export function missing() {
  return now.gone ? now : null;
}

/** How many records are known to have been here. */
export function countKnown() {
  return now.count;
}

/** So many records are here. */
export function noteKnown(count) {
  now = read(); // another window may have written it
  if (count === 0 && now.count > 0) {
    if (!now.gone) write({ gone: true });
  } else if (count >= now.count || !now.gone) {
    if (count !== now.count || now.gone) {
      write({ count, time: new Date().toISOString(), gone: false });
    }
  }
}

/** What was here is not expected back. */
export function forgetKnown() {
  write(NOTHING);
}
