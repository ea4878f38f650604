/** @import { Suspect } from "../data/engine-types.d.ts" */

/**
 * Whether a part is said to have been replaced; "perhaps" says it of nothing.
 * @param {Suspect} part
 */
export const saidReplaced = ({ how }) => how === "probably" || how === "almost certainly";
