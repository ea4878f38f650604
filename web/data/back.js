/**
 * The browser's Back button: one history entry for each step of the piece, so that Back takes back
 * exactly one. An entry's state is {step, screen}.
 */

/** The entry the browser stands at. */
export function here() {
  return { step: 0, screen: "identify", ...history.state };
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
export function pushScreen(screen) {
  history.pushState({ step: here().step, screen }, "");
}

/** Goes back by `steps` entries, and resolves when the browser is there. */
export function goBack(steps) {
  if (steps < 1) return Promise.resolve();
  return new Promise((resolve) => {
    window.addEventListener("popstate", () => resolve(), { once: true });
    setTimeout(resolve, 500); // where there are not that many entries, nothing is reported
    history.go(-steps);
  });
}

/** Calls `moved` with the entry whenever Back or Forward was used. */
export function onMoved(moved) {
  window.addEventListener("popstate", () => moved(here()));
}
