import { updateWaiting, useUpdate } from "../data/update.js";
import { button, el } from "./element.js";
import { NEW_VERSION_READY, USE_IT_NOW } from "./first-words.js";

/** The offer of a new version; null when there is none. */
export function updateOffer() {
  if (!updateWaiting()) return null;
  return el(
    "div",
    { class: "offer" },
    el("p", {}, NEW_VERSION_READY),
    button(USE_IT_NOW, useUpdate, { class: "main wide" }),
  );
}
