/** The part of the engine that brings a list into the collection: loaded when it is wanted. */
import { READER_NOT_HERE } from "./import-words.js";

/** @import { ImportingModule } from "../data/engine-types.d.ts" */

let rules = null;

/** A list that cannot be read, said in a sentence. */
export class NoList extends Error {}

/**
 * Throws NoList.
 * @returns {Promise<ImportingModule>}
 */
export async function listRules() {
  try {
    rules ??= await import(new URL("../importing.js", import.meta.url).href);
  } catch {
    throw new NoList(READER_NOT_HERE);
  }
  return rules;
}
