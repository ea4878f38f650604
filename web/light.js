/* Runs before the first paint, so that a dark screen never flashes white. settings/light-switch.js does the rest. */
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
