import { el } from "./element.js";
import { percent } from "./say.js";

/** A chance as a figure and a bar; `after`: what the figure says, such as " sure". */
export function chance(value, after = "") {
  const bar = el("span", { class: "chance-bar" });
  bar.style.inlineSize = `${Math.round(Math.min(1, Math.max(0, value)) * 1000) / 10}%`;
  return el(
    "span",
    { class: "chance" },
    el("span", { class: "chance-figure" }, percent(value), after),
    el("span", { class: "chance-track", "aria-hidden": "true" }, bar),
  );
}
