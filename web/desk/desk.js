/** What a wide window has besides the phone's screens. */
import { here } from "../data/back-button.js";
import { endTyping } from "../parts/end-typing.js";
import { WIDE } from "../parts/wide-window.js";
import { beside } from "./candidates-beside.js";
import { startDrop } from "./drop-photos.js";
import { startKeys } from "./keys.js";
import { withLook } from "../parts/later-styles.js";
import { TABLED } from "./tables.js";
import { run } from "../data/queue.js";
import { drawBeside } from "../identify/identify.js";
import { collectionOpen, redraw } from "../parts/navigation.js";

let opened = null;

/**
 * Opens it once, and draws what looks otherwise in a window of another width. What is being typed
 * is kept first.
 */
export async function openDesk(state) {
  opened ??= begun(state);
  await opened;
  const { screen } = here();
  endTyping();
  if (TABLED.includes(screen)) await run(redraw);
  else if (screen === "identify" && WIDE.matches) await run(() => addBeside(state));
}

async function begun(state) {
  await withLook();
  await collectionOpen();
  drawBeside(beside);
  startKeys(state);
  startDrop();
}

/** The question itself stays as it is, with what was ticked on it. */
function addBeside(state) {
  const screen = document.getElementById("screen");
  if (state.piece && !screen.querySelector(".beside")) screen.append(beside(state));
}
