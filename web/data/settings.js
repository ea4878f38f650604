/** What the person has chosen: the range, and what they have with them. */
import { read, write } from "./store.js";

const USUAL = { range: "", able: [] };

/** The settings, with the usual ones where none were chosen. */
export async function readSettings() {
  const kept = await read("kept", "settings");
  return {
    range: typeof kept?.range === "string" ? kept.range : USUAL.range,
    able: Array.isArray(kept?.able) ? kept.able : USUAL.able,
  };
}

/** Keeps the settings. Resolves to false when they could not be stored. */
export function keepSettings(settings) {
  return write("kept", "settings", settings);
}
