/** The owned pieces that a range of one's own learns from. */
import { all } from "../data/records.js";

/** @import { Specimen } from "../data/engine-types.d.ts" */

/**
 * The pieces of a range whose owner said which variant they are. One that the app only thinks
 * likely is none.
 * @param {string} key that of the compiled range
 * @returns {Specimen[]}
 */
export function specimensOf(key) {
  return all("piece")
    .filter(({ pack, item, of }) => pack === key && item !== "" && confirmed(of))
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map(({ item, of, answers, replaced }) => ({
      item,
      variant: of[0].variant,
      answers,
      replaced,
    }));
}

const confirmed = (of) => of.length === 1 && of[0].chance === 1;
