/** What is in home.js, loaded when it is first wanted; the app keeps it on the phone all the same. */
import { button, el, heading } from "../parts/element.js";
import { notice } from "../parts/status.js";
import { WIDE } from "../parts/wide.js";

const MISSING = "This part of the app could not be loaded. With a signal, try again.";

/** The screens there: each gives its function. */
const SCREENS = {
  backup: async () => (await import("../home/backup.js")).backupScreen,
  came: async () => (await import("../home/came.js")).cameScreen,
  devices: async () => (await import("../home/devices.js")).devicesScreen,
  changes: async () => (await import("../home/changes.js")).changesScreen,
  editor: async () => (await import("../home/editor.js")).editorScreen,
  ranges: async () => (await import("../home/ranges.js")).rangesScreen,
  moved: async () => (await import("../home/moved.js")).movedScreen,
  export: async () => (await import("../home/export.js")).exportScreen,
  formations: async () => (await import("../home/formations.js")).formationsScreen,
  import: async () => (await import("../home/import.js")).importScreen,
  print: async () => (await import("../home/print.js")).printScreen,
  settle: async () => (await import("../home/settle.js")).settleScreen,
  sighting: async () => (await import("../home/sighting.js")).sightingScreen,
  sightings: async () => (await import("../home/sighting.js")).sightingsScreen,
  steps: async () => (await import("../home/steps.js")).stepsScreen,
  trash: async () => (await import("../home/trash.js")).trashScreen,
};

/** The function of a screen; where it cannot be loaded, one that says so. */
export async function laterScreen(screen) {
  try {
    const { withLook } = await import("../home/look.js");
    await withLook();
    return await SCREENS[screen]();
  } catch (error) {
    console.warn(error);
    return () =>
      el(
        "section",
        { class: "shelf" },
        heading(1, "Not on this device yet"),
        el("p", {}, MISSING),
        button("Try again", () => location.reload(), { class: "main" }),
      );
  }
}

/** The sheet where a number on the piece gives its year. */
export async function datedNumber(app, what) {
  await told(async () => (await import("../home/dated-number.js")).openDatedNumber(app, what));
}

/** Looks what moved in ranges of which another version is here than the records were made with. */
export async function lookAtMoved(app, keep) {
  await told(async () => (await import("../home/moved.js")).lookAtMoved(app, keep));
}

/** Puts the demo collection in. */
export async function takeDemo(app, keep) {
  await told(async () => (await import("../home/demo.js")).takeDemo(app, keep));
}

/** Leads through one of the first steps. */
export async function guided(app, use) {
  await told(async () => (await import("../home/guide.js")).openGuide(app, use));
}

const TABLES = ["collection", "wants", "duplicates"];

/** In a wide window, what draws the list of a screen as a table; else nothing. */
export async function wideList(screen) {
  if (!WIDE.matches || !TABLES.includes(screen)) return undefined;
  try {
    const { withLook } = await import("../home/look.js");
    await withLook();
    return (await import("../home/tables.js")).tableOf(screen);
  } catch (error) {
    console.warn(error);
    return undefined;
  }
}

/** What a wide window has besides: keys, photos dragged in, the candidates beside the question. */
export async function watchWide(app) {
  const open = () =>
    told(async () => (await import("../home/wide.js")).openWide(app, TABLES));
  WIDE.addEventListener("change", open);
  if (WIDE.matches) await open();
}

/** Does something of home.js, or says that it is not there. */
async function told(act) {
  try {
    await act();
  } catch (error) {
    console.warn(error);
    notice(MISSING);
  }
}
