/* Runs before the first paint, so that a dark screen never flashes white. The rest is done by
   settings/light-switch.js. */
(() => {
  let chosen = "";
  try {
    chosen = localStorage.getItem("light") ?? "";
  } catch {
    // Storage is refused: the device decides.
  }
  const wishes = (what) => matchMedia(`(prefers-${what})`).matches;
  const bright = wishes("contrast: more") ? "sun" : "day";
  const device = wishes("color-scheme: dark") ? "dark" : bright;
  document.documentElement.dataset.light = chosen === "" ? device : chosen;
})();
