/**
 * The engine: the modules that `identify/core` is compiled to. engine.js is what the first question
 * needs; further.js adds the rest to it, once there is time: before anything is done (app.js), and
 * before anything of later.js is used (parts/loaded-later.js).
 */
const at = (path) => new URL(`../${path}`, import.meta.url).href;
/** @import { EngineModule, FurtherModule } from "./engine-types.d.ts" */
import { REASONING_NOT_LOADED } from "./first-words.js";

let engine = null;
let further = null;

/** Why the app cannot go on, in a sentence for the person. */
export class CannotGoOn extends Error {}

/**
 * Loads the engine.
 * @returns {Promise<EngineModule>}
 */
export async function loadEngine() {
  const module = await had(at("engine.js"));
  engine ??= { ...module };
  return engine;
}

/**
 * Loads what the start does not wait for of it: what is read, money, dates, marks, the gate for
 * changes and files.
 * @returns {Promise<FurtherModule>}
 */
export async function loadFurther() {
  const [whole, module] = await Promise.all([loadEngine(), had(at("further.js"))]);
  if (!further) Object.assign(whole, module);
  further = module;
  return further;
}

async function had(address) {
  try {
    return await import(address);
  } catch {
    throw new CannotGoOn(REASONING_NOT_LOADED);
  }
}

/**
 * The engine, where it is loaded already: it is before anything is read or drawn.
 * @returns {EngineModule}
 */
export function loadedEngine() {
  return engine;
}

/**
 * The further part, where it is loaded already.
 * @returns {FurtherModule}
 */
export function furtherHere() {
  return further;
}
