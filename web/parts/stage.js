import { el } from "./element.js";

/** Lays nodes out where nobody sees or hears them, and throws them away. */
export function layOut(nodes) {
  const stage = el("div", { class: "stage", inert: true }, nodes);
  document.getElementById("screen").after(stage);
  stage.getBoundingClientRect();
  stage.remove();
}
