/** The part of the engine that brings lists in and takes them out: loaded when it is wanted. */
import { CannotGoOn } from "../data/engine.js";
import { READER_NOT_HERE } from "./import-words.js";

/** @import { TablesModule } from "../data/engine-types.d.ts" */

let rules = null;

/** A list that cannot be read or made, said in a sentence. */
export class NoList extends CannotGoOn {}

/**
 * Throws NoList.
 * @returns {Promise<TablesModule>}
 */
export async function listRules() {
  try {
    rules ??= await import(new URL("../tables.js", import.meta.url).href);
  } catch {
    throw new NoList(READER_NOT_HERE);
  }
  return rules;
}
