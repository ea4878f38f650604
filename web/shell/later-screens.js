/** The screens that are loaded when they are first opened. */
import { button, el, heading } from "../parts/element.js";
import { withLook } from "../parts/later-styles.js";
import { NotLoaded, loaded } from "../parts/loaded-later.js";

/** Each gives its function. */
const SCREENS = {
  backup: async () => (await loaded(import("../exchange/backup.js"))).backupScreen,
  came: async () => (await loaded(import("../exchange/brought-in.js"))).cameScreen,
  devices: async () => (await loaded(import("../sync/devices.js"))).devicesScreen,
  changes: async () => (await loaded(import("../collection/changes.js"))).changesScreen,
  editor: async () => (await loaded(import("../range/editor.js"))).editorScreen,
  ranges: async () => (await loaded(import("../range/ranges.js"))).rangesScreen,
  moved: async () => (await loaded(import("../range/moved-names.js"))).movedScreen,
  export: async () => (await loaded(import("../exchange/export.js"))).exportScreen,
  formations: async () => (await loaded(import("../collection/formations.js"))).formationsScreen,
  import: async () => (await loaded(import("../exchange/import.js"))).importScreen,
  print: async () => (await loaded(import("../exchange/print.js"))).printScreen,
  settle: async () => (await loaded(import("../sync/settle.js"))).settleScreen,
  sighting: async () => (await loaded(import("../range/sightings.js"))).sightingScreen,
  sightings: async () => (await loaded(import("../range/sightings.js"))).sightingsScreen,
  steps: async () => (await loaded(import("../first-steps/steps.js"))).stepsScreen,
  trash: async () => (await loaded(import("../collection/trash.js"))).trashScreen,
};

/** The function of a screen; where it cannot be loaded, one that says so. */
export async function laterScreen(screen) {
  try {
    await withLook();
    return await SCREENS[screen]();
  } catch (error) {
    if (!(error instanceof NotLoaded)) throw error;
    console.warn(error.cause);
    return () =>
      el(
        "section",
        { class: "shelf" },
        heading(1, "Not on this device yet"),
        el("p", {}, error.message),
        button("Try again", () => location.reload(), { class: "main" }),
      );
  }
}
