/**
 * The browser's Back button: one history entry for each step of the piece, so that Back takes back
 * exactly one. An entry's state is {step, screen, depth, ...}: `depth` counts the screens that lie
 * over the piece; further fields say what the screen shows.
 */

/** The entry the browser stands at. */
export function here() {
  return { step: 0, screen: "identify", depth: 0, ...history.state };
}

/**
 * Adds entries until there is one for every step. Browsers skip entries that no tap made, so after
 * a start the missing ones are added at the first tap.
 */
export function deepen(steps) {
  if (here().screen !== "identify") return;
  for (let step = here().step + 1; step <= steps; step += 1) {
    history.pushState({ step, screen: "identify" }, "");
  }
}

/** Goes to another screen, from which Back leads here again. */
export function pushScreen(screen, params = {}) {
  const { step, depth } = here();
  history.pushState({ ...params, step, screen, depth: depth + 1 }, "");
}

/** Notes something on the entry the browser stands at, such as how far it was scrolled. */
export function remember(more) {
  history.replaceState({ ...here(), ...more }, "");
}

/**
 * Goes back past all other screens, to the piece. Browsers let go of the oldest of many entries
 * (Chromium beyond 50): where it is not there any more, it stands in place of this screen.
 */
export async function backToPiece() {
  await goBack(here().depth);
  const { screen, step } = here();
  if (screen === "identify") return;
  history.replaceState({ step, screen: "identify" }, "");
  window.dispatchEvent(new PopStateEvent("popstate"));
}

let going = false;

/** Goes back by `steps` entries, and resolves when the browser is there. */
export async function goBack(steps) {
  if (steps < 1) return;
  going = true;
  await new Promise((resolve) => {
    window.addEventListener("popstate", resolve, { once: true });
    setTimeout(resolve, 500); // where there are not that many entries, nothing is reported
    history.go(-steps);
  });
  going = false;
}

/** Is it the app itself that goes back, and not the person? */
export function goingBack() {
  return going;
}

/**
 * Calls `moved` with the entry whenever Back or Forward was used; a link that arrives is neither.
 */
export function onMoved(moved) {
  window.addEventListener("popstate", () => location.hash === "" && moved(here()));
}
