/**
 * Light for the sun, dark for the evening, or as the device has it. light.js sets the first one.
 */
const DARK = matchMedia("(prefers-color-scheme: dark)");
const COLOURS = { sun: "#ffffff", dark: "#0c0f10" };
let chosen = stored();

function stored() {
  try {
    return localStorage.getItem("light") ?? "";
  } catch {
    return "";
  }
}

/** What was chosen: "sun", "dark", or "" for as the device has it. */
export function lightChosen() {
  return chosen;
}

/** Chooses "sun", "dark" or "" (as the device has it). */
export function chooseLight(choice) {
  chosen = choice;
  try {
    if (choice === "") localStorage.removeItem("light");
    else localStorage.setItem("light", choice);
  } catch {
    // Storage is refused: it holds until the page is left.
  }
  showLight();
}

/** Calls `act` whenever the light changes, as long as it gives true. */
export function onLight(act) {
  const changed = () => act() || document.removeEventListener("light", changed);
  document.addEventListener("light", changed);
}

/** From the one to the other, whatever was chosen. */
export function switchLight() {
  chooseLight(document.documentElement.dataset.light === "dark" ? "sun" : "dark");
}

/** Puts the light on the page, and keeps in step with the device. */
export function startLight() {
  DARK.addEventListener("change", showLight);
  showLight();
}

function showLight() {
  const light = chosen === "" ? (DARK.matches ? "dark" : "sun") : chosen;
  document.documentElement.dataset.light = light;
  document.querySelector("meta[name=theme-color]").setAttribute("content", COLOURS[light]);
  const other = light === "dark" ? "Switch to light, for the sun" : "Switch to dark";
  document.getElementById("light").setAttribute("aria-label", other);
  document.dispatchEvent(new Event("light"));
}
