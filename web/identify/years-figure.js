import { el, svg } from "../parts/element.js";
import { madeYears } from "../parts/say.js";
import { chanceOfYears } from "./words.js";

/** @import { Years } from "../data/engine-types.d.ts" */

const HEIGHT = 56;
const STEP = 10;

/**
 * The likely years as a sentence, with a bar for each year beneath it.
 * @param {Years} years
 */
export function yearsFigure(years) {
  const shown = years.chances.filter(([year]) => year >= years.earliest && year <= years.latest);
  const caption = el("figcaption", { class: "years-text" }, madeYears(years));
  if (shown.length < 2) return el("figure", { class: "years" }, caption);
  const bars = el("div", { class: "years-bars" }, chart(years, shown), scale(shown));
  bars.style.maxInlineSize = `${shown.length * 2}rem`;
  return el("figure", { class: "years" }, caption, bars);
}

function chart(years, shown) {
  const top = Math.max(...shown.map(([, value]) => value));
  const first = shown[0][0];
  const width = (shown[shown.length - 1][0] - first + 1) * STEP;
  const bars = shown.map(([year, value]) => {
    const height = Math.max(1.5, (value / top) * HEIGHT);
    const likely = year >= years.first && year <= years.last;
    return svg("rect", {
      class: likely ? "year likely" : "year",
      x: (year - first) * STEP + 1,
      y: HEIGHT - height,
      width: STEP - 2,
      height,
    });
  });
  return svg(
    "svg",
    {
      class: "years-chart",
      viewBox: `0 0 ${width} ${HEIGHT}`,
      preserveAspectRatio: "none",
      role: "img",
      "aria-label": described(shown),
    },
    bars,
  );
}

function described(shown) {
  const likeliest = [...shown]
    .sort((a, b) => b[1] - a[1])
    .slice(0, 5)
    .sort((a, b) => a[0] - b[0]);
  const listed = likeliest
    .map(([year, value]) => `${year}: ${Math.round(value * 100)}%`)
    .join(", ");
  return chanceOfYears(shown[0][0], shown[shown.length - 1][0], listed);
}

function scale(shown) {
  const last = shown.length - 1;
  return el(
    "div",
    { class: "years-scale", "aria-hidden": "true" },
    el("span", {}, String(shown[0][0])),
    el("span", {}, String(shown[last][0])),
  );
}
