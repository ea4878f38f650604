/* Runs before the first paint, so that a dark screen never flashes white. The rest is done by
   settings/light-switch.js. */
(() => {
  let chosen = "";
  try {
    chosen = localStorage.getItem("light") ?? "";
  } catch {
    // Storage is refused: the device decides.
  }
  const device = matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "sun";
  document.documentElement.dataset.light = chosen === "" ? device : chosen;
})();
