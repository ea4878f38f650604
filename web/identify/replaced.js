import { REPLACED } from "./first-words.js";

/** @import { Pack, Suspect } from "../data/engine-types.d.ts" */

/**
 * Whether a part is said to have been replaced; "perhaps" says it of nothing.
 * @param {Suspect} part
 */
export const saidReplaced = ({ how }) => how === "probably" || how === "almost certainly";

/**
 * What was done to a part that is not the piece's own: "replaced"; of the finish "repainted", or
 * what its range calls it.
 * @param {Pack} pack
 * @param {number} part
 */
export const done = (pack, part) => pack.parts[part].altered ?? REPLACED;
