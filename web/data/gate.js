/**
 * The gate before what the storage holds: what does not fit is not handed out, and is set aside.
 * What fits is decided by `identify/core/gate.py`.
 */
import { loadedEngine, furtherHere, loadEngine, loadFurther } from "./engine.js";
import { newId, unhalved, whole } from "./record-shapes.js";
import { STORES } from "./storage-connection.js";

/** The place of what does not fit: {key, from, value, fault: {why, at}, time}. */
export const ASIDE = "aside";
const GUARDED = ["records", "journal", "photos"];
const BROKEN = { why: "group", at: "" };
let came = 0;

/** Does anything of these stores come through the gate? */
export function guards(stores) {
  return stores.some((store) => GUARDED.includes(store));
}

/** Loads the rules for these stores; before a transaction, which waits for nothing. */
export async function loadGate(stores) {
  if (stores.includes("records") && !loadedEngine()) await loadEngine();
  if (stores.includes("journal") && !furtherHere()) await loadFurther();
}

function faultOf(store, value) {
  if (store === "records") return loadedEngine().record_fault(value);
  if (store === "journal") return furtherHere().entry_fault(value, true);
  return value.full instanceof Blob && value.small instanceof Blob ? null : BROKEN;
}

/** A transaction behind the gate; `found(store, value, fault)` hears of what does not fit. */
export function guarded(there, unfit) {
  const through = (store, stored) => {
    if (stored === undefined || !GUARDED.includes(store)) return stored;
    let [value, fault] = [stored, faultOf(store, stored)];
    if (fault?.why === "unicode") {
      value = unhalved(stored); // half a character is typed sooner than one thinks
      fault = faultOf(store, value);
    }
    if (!fault) return store === "records" ? whole(value) : value;
    unfit(store, stored, fault);
    return undefined;
  };
  const allThrough = (store, values) =>
    values.map((value) => through(store, value)).filter((value) => value !== undefined);
  return {
    ...there,
    get: async (store, key) => through(store, await there.get(store, key)),
    all: async (store) => allThrough(store, await there.all(store)),
    where: async (store, field, value) => allThrough(store, await there.where(store, field, value)),
    /** What comes after `key`: {values, last: their last key, more: perhaps there is more}. */
    async after(store, key, most) {
      const read = await there.after(store, key, most);
      const end = read[read.length - 1];
      const last = end ? end[STORES[store].keyPath] : key;
      return { values: allThrough(store, read), last, more: read.length === most };
    },
    backwards: (store, visit) =>
      there.backwards(store, (value) => {
        const fits = through(store, value);
        return fits === undefined || visit(fits);
      }),
  };
}

/** What is kept of something that does not fit. */
export function asideOf(from, value, fault) {
  came += 1;
  return { key: newId("a"), from, value, fault, time: new Date().toISOString() };
}

/** How much was set aside since the app was opened. */
export function setAsideNow() {
  return came;
}
