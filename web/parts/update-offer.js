import { updateWaiting, useUpdate } from "../data/update.js";
import { button, el } from "./element.js";

/** The offer of a new version; null when there is none. */
export function updateOffer() {
  if (!updateWaiting()) return null;
  return el(
    "div",
    { class: "offer" },
    el("p", {}, "A new version is ready. Your piece stays where it is."),
    button("Use it now", useUpdate, { class: "main wide" }),
  );
}
