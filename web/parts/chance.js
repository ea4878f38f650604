import { el } from "./element.js";
import { percent } from "./say.js";

/** A chance as a figure and a bar. */
export function chance(value) {
  const bar = el("span", { class: "chance-bar" });
  bar.style.inlineSize = `${Math.round(Math.min(1, Math.max(0, value)) * 1000) / 10}%`;
  return el(
    "span",
    { class: "chance" },
    el("span", { class: "chance-figure" }, percent(value)),
    el("span", { class: "chance-track", "aria-hidden": "true" }, bar),
  );
}
