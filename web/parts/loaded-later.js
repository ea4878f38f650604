/**
 * What is in later.js: loaded when it is first wanted; the app keeps it on the phone all the same.
 */

import { loadFurther } from "../data/engine.js";
import { PART_NOT_LOADED } from "./first-words.js";

/** A part of the app could not be loaded, for want of a signal mostly. */
export class NotLoaded extends Error {}

/** What an `import()` gives, and all of the engine with it; NotLoaded where it gives nothing. */
export async function loaded(module) {
  try {
    const [there] = await Promise.all([module, loadFurther()]);
    return there;
  } catch (error) {
    throw new NotLoaded(PART_NOT_LOADED, {
      cause: error,
    });
  }
}
