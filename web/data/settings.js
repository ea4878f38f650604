/** What the person has chosen: the range, what they have with them, how they count. */
import { put, state } from "./state.js";
import { read, write } from "./store.js";

/**
 * first: nothing was chosen yet on how to start the collection. paired: with a server of one’s own.
 * warned: that this browser deletes what is not used for a week.
 * keys: single ones do something. seen: the version of each range that the records were last looked
 * through with.
 */
const USUAL = {
  range: "",
  able: [],
  currency: "GBP",
  duplicates: "variant",
  first: true,
  keys: true,
  paired: false,
  seen: {},
  warned: false,
};

/** The settings, with the usual ones where none were chosen. */
export async function readSettings() {
  const kept = (await read("kept", "settings")) ?? {};
  const sound = Object.entries(USUAL).map(([name, usual]) => {
    const fits =
      typeof kept[name] === typeof usual && Array.isArray(kept[name]) === Array.isArray(usual);
    return [name, fits ? kept[name] : usual];
  });
  return Object.fromEntries(sound);
}

/** Keeps the settings. Resolves to false when they could not be stored. */
export function keepSettings(settings) {
  return write("kept", "settings", settings);
}

/** Changes some of the settings and keeps them. Resolves to false when they could not be stored. */
export function changeSettings(changes) {
  put({ settings: { ...state.settings, ...changes } });
  return keepSettings(state.settings);
}
