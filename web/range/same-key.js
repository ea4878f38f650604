/**
 * Two ranges of one's own under one key: two devices took them in before they synced, from files
 * that are not the same. A key is what pieces name a range by, so the later one gets another.
 */
import { setting } from "../data/records.js";
import { saveChange } from "../parts/saving.js";
import { ownRanges } from "./own-range.js";
import { RANGES_TOLD_APART, twoOfOneName } from "./words.js";

const byAge = (a, b) => (`${a.made} ${a.id}` < `${b.made} ${b.id}` ? -1 : 1);

/** Gives each its own key: the same on every device, whichever does it first. */
export async function setKeysApart() {
  const known = new Set();
  for (const { id, key, name } of ownRanges().sort(byAge)) {
    if (known.has(key)) {
      const edits = [setting(id, "key", key, `${key.slice(0, 40)}_${id.slice(1, 9)}`)];
      await saveChange(RANGES_TOLD_APART, edits, { said: twoOfOneName(name) });
    }
    known.add(key);
  }
}
