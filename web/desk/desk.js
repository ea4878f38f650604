/** What a wide window has besides the phone's screens. */
import { here } from "../data/back-button.js";
import { endTyping } from "../parts/fields.js";
import { WIDE } from "../parts/wide-window.js";
import { beside } from "./candidates-beside.js";
import { startDrop } from "./drop-photos.js";
import { startKeys } from "./keys.js";
import { withLook } from "../parts/later-styles.js";
import { TABLED } from "./tables.js";

let opened = null;

/**
 * Opens it once, and draws what looks otherwise in a window of another width. What is being typed
 * is
 * kept first.
 */
export async function openDesk(app) {
  opened ??= begun(app);
  await opened;
  const { screen } = here();
  endTyping();
  if (TABLED.includes(screen)) await app.run(async () => (await app.shelf()).keep.redraw());
  else if (screen === "identify" && WIDE.matches) await app.run(() => addBeside(app));
}

async function begun(app) {
  await withLook();
  const { keep } = await app.shelf();
  app.beside = () => beside(app);
  startKeys(app, keep);
  startDrop(keep);
}

/** The question itself stays as it is, with what was ticked on it. */
function addBeside(app) {
  const screen = document.getElementById("screen");
  if (app.piece && !screen.querySelector(".beside")) screen.append(beside(app));
}
