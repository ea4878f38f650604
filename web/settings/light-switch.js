import { LIGHT_NAMES, switchTo } from "./first-words.js";

/**
 * Light by day, dark for a dim hall, black on white for the sun, or as the device has it. light.js
 * sets the first one.
 */
const DARK = matchMedia("(prefers-color-scheme: dark)");
const SHARP = matchMedia("(prefers-contrast: more)");
const NEXT = { day: "dark", dark: "sun", sun: "day" };
let chosen = stored();

function stored() {
  try {
    return localStorage.getItem("light") ?? "";
  } catch {
    return "";
  }
}

/** What was chosen: "day", "dark", "sun", or "" for as the device has it. */
export function lightChosen() {
  return chosen;
}

/** Chooses "day", "dark", "sun" or "" (as the device has it). */
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

/** To the next of the three, whatever was chosen. */
export function switchLight() {
  chooseLight(NEXT[document.documentElement.dataset.light]);
}

/** Puts the light on the page, and keeps in step with the device. */
export function startLight() {
  for (const wish of [DARK, SHARP]) wish.addEventListener("change", showLight);
  showLight();
}

function showLight() {
  const device = DARK.matches ? "dark" : SHARP.matches ? "sun" : "day";
  const light = chosen === "" ? device : chosen;
  const root = document.documentElement;
  root.dataset.light = light;
  const ground = getComputedStyle(root).getPropertyValue("--ground").trim();
  document.querySelector("meta[name=theme-color]").setAttribute("content", ground);
  document.getElementById("light").setAttribute("aria-label", switchTo(LIGHT_NAMES[NEXT[light]]));
  document.dispatchEvent(new Event("light"));
}
