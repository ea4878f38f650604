/**
 * What stands on a piece or at its ends and can be of several sorts: chimney, dome, smoke plates,
 * pantograph, yellow ends; the roof of a coach or a van, planks, what is at the ends of a coach
 * for walking through. Text of SVG; "" as a look: nothing is recorded.
 */
import { BARE, circle, line, path, rect } from "./portrait-shapes.js";

const COAL = "#1b1e20";
const BRASS = "#d8ab3c";
const YELLOW = "#f3cf2f";

/** A chimney whose middle stands at x, on the smokebox at y; `k`: how wide the engine is drawn. */
export function chimney(look, x, y, k) {
  const half = 3.5 * k;
  switch (look) {
    case "straight":
      return rect(x - half, y - 12.4, 2 * half, 12.4, COAL);
    case "rimmed":
      return (
        rect(x - half, y - 12.4, 2 * half, 12.4, COAL) +
        rect(x - half - 2, y - 13.4, 2 * half + 4, 3, COAL, 1)
      );
    case "wide":
      return path(
        `M${x - 2 * k} ${y}L${x - 7 * k} ${y - 12.8}H${x + 7 * k}L${x + 2 * k} ${y}Z`,
        COAL,
      );
    default:
      return path(
        `M${x - half} ${y}V${y - 10}H${x - half - k}V${y - 12.4}` +
          `H${x + half + k}V${y - 10}H${x + half}V${y}Z`,
        COAL,
      );
  }
}

/** A dome whose middle stands at x, on a boiler of this colour at y. */
export function dome(look, x, y, k, colour) {
  const shape = (fill) =>
    path(`M${x - 4 * k} ${y}V${y - 3}Q${x} ${y - 8} ${x + 4 * k} ${y - 3}V${y}Z`, fill);
  switch (look) {
    case "bright":
      return shape(BRASS);
    case "painted":
      return shape(colour) + line(x - 5 * k, y, x + 5 * k, y, 1.4);
    case "none":
      return "";
    default:
      return shape(colour);
  }
}

/** Plates beside the smokebox, which reaches from x to x + wide and down to y. */
export function smokePlates(look, x, y, wide, colour) {
  return look === "plates" ? rect(x, y - 23, wide, 23, colour, 0.8) : "";
}

/** What collects the current, on a roof at y. */
export function pantograph(look, x, y) {
  const wire = (d) => path(d, "none", ' stroke-width="1.2"');
  switch (look) {
    case "diamond":
      return (
        wire(`M${x - 6} ${y - 9}H${x + 6}M${x} ${y}L${x - 8} ${y - 4.4}L${x} ${y - 8.6}`) +
        wire(`M${x} ${y}L${x + 8} ${y - 4.4}L${x} ${y - 8.6}`)
      );
    case "single":
      return wire(`M${x + 6} ${y}L${x - 6} ${y - 4}L${x + 2} ${y - 9}M${x - 4} ${y - 9}H${x + 8}`);
    case "pole":
      return wire(`M${x + 4} ${y}L${x + 24} ${y - 7}`) + circle(x + 24.6, y - 7.4, 1.3, COAL);
    default:
      return "";
  }
}

/** Yellow at the front, seen from the side: at the left of a body from `top` to the frame. */
export function warning(look, left, top) {
  const high = 45 - top;
  switch (look) {
    case "panel":
      return rect(left + 0.6, top + high * 0.4, 2.4, high * 0.5, YELLOW, 0, BARE);
    case "whole":
      return rect(left + 0.6, top, 4.4, high, YELLOW, 0.6, BARE);
    case "stripes":
      return [0.15, 0.45, 0.75]
        .map((part) => {
          const y = top + high * part;
          return line(left + 0.8, y + 3, left + 5, y, 1.5, YELLOW);
        })
        .join("");
    default:
      return "";
  }
}

export const ROOF = 6; // how high a level roof is above its eaves

/** A roof above `eaves` whose top is level, not the curve that is seen from the end. */
export function levelRoof(left, right, eaves) {
  const top = eaves - ROOF;
  return (
    `M${left} ${eaves}Q${left + 1} ${top} ${left + 9} ${top}` +
    `H${right - 9}Q${right - 1} ${top} ${right} ${eaves}Z`
  );
}

/**
 * What a roof above `eaves` is by its shape: [its outline, what is drawn on it]; `curve`: its
 * outline where nothing is recorded.
 */
export function roofShapes(left, right, eaves, curve) {
  const top = eaves - ROOF;
  const [from, to] = [left + 10, right - 10];
  const lights = Array.from({ length: 8 }, (_, n) => from + ((to - from) * (n + 0.5)) / 8)
    .map((x) => rect(x - 2, top - 3.3, 4, 2, "#f7f7f5", 0, ' stroke-width=".5"'))
    .join("");
  return {
    arc: [curve, line(left + 12, eaves - 2.5, right - 12, eaves - 2.5, 0.6)],
    clerestory: [
      `${levelRoof(left, right, eaves)}M${from} ${top}V${top - 4.6}H${to}V${top}Z`,
      lights,
    ],
    flat: [`M${left} ${eaves}V${eaves - 2.4}H${right}V${eaves}Z`, ""],
  };
}

/** What is for walking through at an end of a coach at x; `out`: -1 at its left, 1 at its right. */
export function gangway(look, x, out) {
  switch (look) {
    case "bellows": {
      const deep = (n) => x + out * (n % 2 === 0 ? 3.6 : 1);
      const folds = Array.from({ length: 12 }, (_, n) => `L${deep(n)} ${22 + 2 * n}`);
      return path(`M${x} 22${folds.join("")}L${x} 44Z`, COAL);
    }
    case "plate":
      return rect(out < 0 ? x - 2 : x, 22, 2, 22, "#8b9296");
    default:
      return "";
  }
}

/** The planks of a side between left and right, top and bottom. */
export function planks(look, left, right, top, bottom) {
  const count = { three: 3, five: 5, seven: 7 }[look] ?? 5;
  const high = (bottom - top) / count;
  const width = look === "" ? 0.7 : 0.9; // five are drawn, thinner, where nothing is recorded
  return Array.from({ length: count - 1 }, (_, n) => top + high * (n + 1))
    .map((y) => line(left, y, right, y, width))
    .join("");
}
