/** Boxes: a set in its box, and the box of a piece beside it. Text of SVG. */
import { BARE, circle, line, path, rect } from "./portrait-shapes.js";

/** A board by how a box looks, with what is on it. */
export function lid(look, [x, y, wide, high], plain) {
  const part = (dx, dy, dw, dh, fill, round = 0) =>
    rect(x + wide * dx, y + high * dy, wide * dw, high * dh, fill, round);
  switch (look) {
    case "label":
      return (
        rect(x, y, wide, high, "#d9b981", 1) + (plain ? "" : part(0.25, 0.28, 0.5, 0.44, "#f7f7f5"))
      );
    case "picture":
      return (
        rect(x, y, wide, high, "#e7d3a4", 1) + (plain ? "" : part(0.1, 0.14, 0.8, 0.72, "#9cc3d6"))
      );
    case "stripe":
      return (
        rect(x, y, wide, high, "#7f929c", 1) +
        path(
          `M${x + wide * 0.1} ${y + high}L${x + wide * 0.3} ${y}` +
            `H${x + wide * 0.46}L${x + wide * 0.26} ${y + high}Z`,
          "#f2f4f5",
          BARE,
        )
      );
    case "window":
      return rect(x, y, wide, high, "#a9b6bd", 1) + part(0.14, 0.2, 0.72, 0.6, "#dceaf0", 1);
    case "covered":
      return (
        rect(x, y, wide, high, "#3b3340", 1) +
        (plain ? "" : part(0.36, 0.36, 0.28, 0.28, "#efe3c0"))
      );
    case "plain":
      return (
        rect(x, y, wide, high, "#a5825a", 1) +
        (plain ? "" : circle(x + wide / 2, y + high / 2, high * 0.22, "none"))
      );
    case "bright":
      return (
        rect(x, y, wide, high, "#7f929c", 1) +
        path(`M${x} ${y + high}L${x + wide} ${y}V${y + high}Z`, "#f2f4f5", BARE)
      );
    default:
      return rect(x, y, wide, high, "none", 1, ' stroke-opacity=".45" stroke-dasharray="2 1.5"');
  }
}

/** The picture on the lid of a set, within [x, y, wide, high]. */
function picture(look, [x, y, wide, high]) {
  const sky = (colour) => rect(x, y, wide, high, colour, 1);
  const train = (dark) =>
    rect(x + wide * 0.3, y + high * 0.42, wide * 0.4, high * 0.16, dark, 1, BARE) +
    rect(x + wide * 0.24, y + high * 0.36, wide * 0.05, high * 0.22, dark, 0, BARE);
  switch (look) {
    case "bridge":
      return (
        sky("#a9cfe0") +
        train("#4a5157") +
        path(
          `M${x} ${y + high * 0.6}H${x + wide}M${x + 4} ${y + high}` +
            `q${wide * 0.12} ${-high * 0.6} ${wide * 0.24} 0` +
            `q${wide * 0.12} ${-high * 0.6} ${wide * 0.24} 0` +
            `q${wide * 0.12} ${-high * 0.6} ${wide * 0.24} 0`,
          "none",
          ' stroke-width="1.4"',
        )
      );
    case "station":
      return (
        sky("#e8d6a6") +
        train("#4a5157") +
        rect(x + wide * 0.04, y + high * 0.62, wide * 0.92, high * 0.14, "#8b9296") +
        path(
          `M${x + wide * 0.5} ${y + high * 0.34}` +
            `L${x + wide * 0.56} ${y + high * 0.14}H${x + wide * 0.92}` +
            `L${x + wide * 0.97} ${y + high * 0.34}Z`,
          "#9aa5ab",
        )
      );
    case "night":
      return (
        sky("#1e2a4a") +
        circle(x + wide * 0.82, y + high * 0.28, high * 0.14, "#f4e7a8", BARE) +
        rect(x + wide * 0.2, y + high * 0.5, wide * 0.5, high * 0.22, "#0d1322", 1, BARE) +
        [0.26, 0.36, 0.46, 0.56]
          .map((at) =>
            rect(x + wide * at, y + high * 0.55, wide * 0.06, high * 0.08, "#f4d35e", 0, BARE),
          )
          .join("")
      );
    case "photo":
      return (
        sky("#f7f7f5") +
        rect(x + 2, y + 2, wide - 4, high - 4, "#b9c7a4") +
        train("#4a5157") +
        line(x + 2, y + high * 0.66, x + wide - 2, y + high * 0.66, 1)
      );
    default:
      return "";
  }
}

/** Track as it lies in a set, along y. */
function track(look, from, to, y) {
  const across = (step, colour, wide, high) =>
    Array.from({ length: Math.floor((to - from) / step) }, (_, n) =>
      rect(from + n * step, y, wide, high, colour, 0, BARE),
    ).join("");
  const rail = (rest = "") => line(from, y, to, y, 1.4, "", rest);
  switch (look) {
    case "fibre":
      return rect(from, y, to - from, 2.2, "#4d3a2a", 0, BARE) + rail();
    case "grey_base":
      return (
        path(`M${from} ${y + 3.4}L${from + 2} ${y}H${to - 2}L${to} ${y + 3.4}Z`, "#a4abae") + rail()
      );
    case "open":
      return across(5, "#26292b", 2.6, 2.6) + rail();
    case "two_two":
      return across(24, "#7d8488", 3.4, 3) + rail();
    case "two_three":
      return across(14, "#7d8488", 3.4, 3) + rail();
    case "three":
      return (
        across(14, "#7d8488", 3.4, 3) + rail() + line(from, y - 1.8, to, y - 1.8, 0.8, "#d8ab3c")
      );
    case "none":
      return "";
    default:
      return rail(' stroke-opacity=".35" stroke-dasharray="2 2"');
  }
}

/** What feeds the track. */
function controller(look, x, y) {
  switch (look) {
    case "lamp_board":
      return (
        rect(x, y + 6, 15, 5, "#7a5230") +
        circle(x + 7.5, y + 2.6, 3.6, "#f4e7a8") +
        rect(x + 6, y + 5, 3, 2, "#8b9296")
      );
    case "resistance":
      return (
        rect(x, y + 2, 15, 9, "#8b9296", 1) +
        [3, 6, 9, 12].map((dx) => circle(x + dx, y + 8.6, 0.8, "#1b1d1f", BARE)).join("") +
        line(x + 7, y + 5, x + 11, y - 1, 1.6)
      );
    case "transformer":
      return (
        rect(x, y, 15, 11, "#2a2d30", 1.4) +
        circle(x + 7.5, y + 4.4, 2.6, "#c9d0d5") +
        path(`M${x + 15} ${y + 8}q3 0 3 3`, "none", ' stroke-width="1.2"')
      );
    default:
      return "";
  }
}

const TRAINS = {
  goods: ["engine", "wagon", "wagon", "guards_van"],
  passenger: ["engine", "short_coach", "short_coach"],
  express: ["engine", "coach", "coach"],
  streamliner: ["streamlined_engine", "smooth_coach"],
};

/** A set in its box: the lid behind, the train before it. `mini(body, first)` draws a piece. */
export function set({ look, contents }, mini) {
  const inside = contents.length > 0 ? contents : (TRAINS[look("train")] ?? ["engine"]);
  const bodies = /coach|wagon|van|saloon/.test(inside[0]) ? ["engine", ...inside] : inside;
  const shown = picture(look("lid"), [32, 8, 56, 25]);
  const box = lid(look("box"), [5, 4, 110, 33], shown !== "");
  const ramp = path("M5 37L2 62H118L115 37Z", "none", ' stroke-opacity=".6"');
  const small = bodies.slice(0, 5);
  const wide = Math.min(0.34, 0.92 / small.length);
  const power = controller(look("controller"), 99, 42);
  const room = power === "" ? 108 : 92;
  const step = Math.min(40, room / small.length);
  const start = 6 + (room - step * small.length) / 2;
  const k = Math.min(wide, step / 118);
  const train = small
    .map(
      (body, n) =>
        `<g transform="translate(${(start + n * step).toFixed(1)} ${(57 - 61 * k).toFixed(1)}) ` +
        `scale(${k.toFixed(3)})"` +
        ` stroke-width="2.4">${mini(body, n === 0)}</g>`,
    )
    .join("");
  const wound =
    {
      clockwork:
        circle(109, 52, 2, "#d8ab3c") + circle(113, 52, 2, "#d8ab3c") + line(111, 53, 111, 58, 1.2),
      electric: path("M111 47l-2.6 5h2.4l-1.6 5 4.6 -6.4h-2.4l1.8 -3.6Z", "#ecc233"),
    }[look("power")] ?? "";
  return box + shown + ramp + track(look("track"), 6, 6 + room, 57) + train + (power || wound);
}
