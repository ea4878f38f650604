/** What is on a body: windows, roof fittings, lining, lettering. Text of SVG. */
import { against, isLight } from "./portrait-colours.js";
import { BARE, circle, letters, line, path, rect } from "./portrait-shapes.js";

const DARK = "#1b1d1f";

/** A window by what is in it, and what is behind it. */
export function pane(look, [x, y, wide, high], inside) {
  const glass = { none: DARK, flat: "#dbe7ec", flush: "#c3dcea", tinted: "#86c0ad" }[look];
  if (glass === undefined) return rect(x, y, wide, high, "#f7f7f5", 0.6, ' fill-opacity=".55"');
  const seats =
    inside === "seats"
      ? rect(x + wide * 0.2, y + high * 0.55, wide * 0.6, high * 0.45, "#6b7074", 0.8, BARE)
      : "";
  const shown = rect(x, y, wide, high, glass, look === "none" ? 0 : 0.6);
  if (look === "flat")
    return (
      shown +
      seats +
      rect(x + 0.9, y + 0.9, wide - 1.8, high - 1.8, "none", 0, ' stroke-width=".5"')
    );
  if (look === "flush" || look === "tinted")
    return (
      shown + seats + line(x + wide * 0.25, y + high - 1.4, x + wide * 0.6, y + 1.4, 0.9, "#ffffff")
    );
  return shown + seats;
}

/** Horns, each on its foot. */
export function horns(look, places) {
  const horn = ([x, y]) =>
    ({
      metal: path(
        `M${x} ${y}V${y - 3.4}M${x - 5} ${y - 3.4}H${x + 4}`,
        "none",
        ' stroke-width="1"',
      ),
      plastic:
        path(`M${x} ${y}V${y - 3}`, "none", ' stroke-width="2"') +
        path(`M${x - 6} ${y - 6}V${y - 1.6}L${x + 4} ${y - 2.8}V${y - 4.6}Z`, DARK),
      moulded: path(
        `M${x - 5} ${y + 0.6}Q${x - 4} ${y - 4.4} ${x} ${y - 4.4}` +
          `Q${x + 4} ${y - 4.4} ${x + 5} ${y + 0.6}Z`,
        "#8b9296",
      ),
    })[look] ?? "";
  return places.map(horn).join("");
}

/** What is on the front to show the train's code, or to hold a lamp. */
export function front(look, [x, y], panel) {
  switch (look) {
    case "lamps":
      return line(x, y + 2, x - 3, y + 2, 1) + rect(x - 5, y - 2.4, 3.4, 4.6, "#f3d25a", 0.8);
    case "discs":
      return (
        line(x, y, x - 2, y, 1) +
        circle(x - 2.6, y, 2.6, "#ffffff") +
        circle(x - 2.6, y - 7, 2.6, "#ffffff")
      );
    case "panel":
      return (
        rect(...panel, "#1b1d1f", 0.6) +
        rect(panel[0] + 0.9, panel[1] + 1, panel[2] - 1.8, panel[3] - 2, "#ffffff", 0, BARE)
      );
    case "socket":
      return circle(x - 1.6, y, 1.7, "#ffffff");
    case "upright":
      return rect(x - 2.4, y - 5, 1.5, 6, "#5a6064") + line(x, y, x - 2, y, 1);
    default:
      return "";
  }
}

/** Rivets, seams or tabs along the sides of a rectangle. */
export function joins(look, [x, y, wide, high], colour) {
  const along = (step, mark) =>
    Array.from({ length: Math.floor((wide - 2) / step) + 1 }, (_, n) =>
      mark(x + 1 + n * step),
    ).join("");
  switch (look) {
    case "raised":
      return along(3, (at) =>
        (high < 8 ? [y + 1] : [y + 1.2, y + high - 1.3])
          .map((down) => circle(at, down, 0.55, colour, BARE))
          .join(""),
      );
    case "solder":
      return (
        line(x + 1, y, x + 1, y + high, 1.6, "#b9c0c4") +
        line(x + wide - 1, y, x + wide - 1, y + high, 1.6, "#b9c0c4")
      );
    case "tabs":
      return along(12, (at) => rect(at, y + high - 1.6, 3.4, 1.6, "#b9c0c4"));
    default:
      return "";
  }
}

/** Lines, a band or another upper half. */
export function lining(look, [x, y, wide, high], upper, colour) {
  switch (look) {
    case "line":
      return (
        line(x, y + 1.6, x + wide, y + 1.6, 0.9, colour) +
        line(x, y + high - 2.6, x + wide, y + high - 2.6, 0.9, colour)
      );
    case "band":
      return rect(x, y + high * 0.56, wide, Math.max(2.6, high * 0.17), colour, 0, BARE);
    case "two_tone":
      return upper
        ? rect(...upper, colour, 0, BARE)
        : rect(x, y, wide, high * 0.54, colour, 0, BARE);
    default:
      return "";
  }
}

/** How a panel catches the light by its finish. */
export function finish(look, [x, y, wide, high]) {
  switch (look) {
    case "enamel":
      return rect(
        x + 1,
        y + 1.4,
        wide - 2,
        Math.min(3, high * 0.16),
        "#ffffff",
        1.2,
        `${BARE} fill-opacity=".45"`,
      );
    case "litho":
      return (
        rect(
          x + 1.6,
          y + 1.6,
          wide - 3.2,
          high - 3.2,
          "none",
          0,
          ' stroke="#f3dc9a" stroke-width=".6"',
        ) +
        [1, 2, 3]
          .map((n) =>
            line(x + (wide * n) / 4, y + 2, x + (wide * n) / 4, y + high - 2, 0.5, "#f3dc9a"),
          )
          .join("")
      );
    case "thin":
      return Array.from({ length: Math.floor(wide / 6) }, (_, n) =>
        line(
          x + 2 + n * 6,
          y + high - 2,
          x + 5 + n * 6,
          y + 2,
          0.8,
          "#ffffff",
          ' stroke-opacity=".3"',
        ),
      ).join("");
    default:
      return "";
  }
}

/**
 * Lettering as it is put `on` a colour: {colour, film(x, y, wide, high), sunk}. Where its colour is
 * not recorded, it has one that can be read.
 */
export function lettering(look, lettered, on) {
  const gold = isLight(on) ? "#8a6410" : "#f0c445";
  const colour = lettered || (look === "foil" ? gold : against(on));
  const film = (x, y, wide, high) =>
    look === "transfer"
      ? rect(
          x - wide / 2,
          y - high / 2,
          wide,
          high,
          "#ffffff",
          1,
          ` fill-opacity=".22" stroke-width=".4" stroke-dasharray="1.4 1"`,
        )
      : "";
  return { colour, film, sunk: look === "foil" };
}

/** The emblem or name in the middle of the side. */
export function emblem(look, [x, y, most], name, { colour, film, sunk }) {
  const edge = ` stroke="${colour}" stroke-width=".8"`;
  const under = sunk ? line(x - 4, y + 4.6, x + 4, y + 4.6, 0.7, colour) : "";
  const text = look.startsWith("letters: ") ? look.slice(9) : name;
  switch (look.startsWith("letters: ") ? "words" : look) {
    case "crest":
      return (
        film(x, y, 12, 10.5) +
        path(
          `M${x - 3.6} ${y - 4}H${x + 3.6}V${y}` +
            `Q${x + 3.4} ${y + 3} ${x} ${y + 4.4}` +
            `Q${x - 3.4} ${y + 3} ${x - 3.6} ${y}Z`,
          colour,
          BARE,
        ) +
        under
      );
    case "roundel":
      return (
        film(x, y, 11, 10.5) +
        circle(x, y, 3.9, "none", ` stroke="${colour}" stroke-width="1.6"`) +
        circle(x, y, 1.5, colour, BARE) +
        under
      );
    case "initials":
      return (
        film(x, y, 18, 8.5) +
        [-5.6, 0, 5.6].map((dx) => rect(x + dx - 2, y - 3.2, 4, 6.4, colour, 0.8, BARE)).join("") +
        under
      );
    case "winged_wheel":
      return (
        film(x, y, 22, 9) +
        circle(x, y, 3, "none", edge) +
        [-1, 1]
          .map((way) =>
            path(
              `M${x + way * 3.6} ${y - 1}q${way * 3} -4 ${way * 6.6} -3` +
                `q${way * -1} 3 ${way * -6.6} 4Z`,
              colour,
              BARE,
            ),
          )
          .join("") +
        under
      );
    case "words":
      return (
        film(x, y, Math.min(most, Math.max(text.length, 8) * 3.2), 7) +
        (text === ""
          ? [0, 1]
              .map((n) =>
                line(x - 9, y - 1.2 + n * 2.6, x + 9 - n * 5, y - 1.2 + n * 2.6, 1.1, colour),
              )
              .join("")
          : letters(text, x, y + 1.9, 5.4, most, colour)) +
        (sunk ? line(x - most * 0.2, y + 3.2, x + most * 0.2, y + 3.2, 0.6, colour) : "")
      );
    default:
      return "";
  }
}

/** The running number, as text or, where it is not recorded, as a bar. */
export function number(text, [x, y], colour, plate) {
  const wide = Math.max(7, text.length * 1.9);
  const back = plate ? rect(x - wide / 2 - 1, y - 2.4, wide + 2, 4.6, "#d8ab3c", 0.6) : "";
  const ink = plate ? "#1b1d1f" : colour;
  if (text === "") return back + line(x - 3, y, x + 3, y, 1.2, ink);
  return back + letters(text, x, y + 1.2, 3.4, 15, ink);
}

/** A keyhole, and the key in it. */
export function winding(side, key, [x, y]) {
  if (side === "") return "";
  const hole =
    side === "left"
      ? circle(x, y, 2.4, "#f7f7f5") + path(`M${x} ${y - 1.2}l1 2.6h-2Z`, DARK, BARE)
      : circle(x, y, 2.4, "none", ' stroke-dasharray="1 .8"');
  const shaft = line(x, y, x, y - 5, 1.2);
  const made =
    {
      fixed: circle(x, y, 1.2, DARK) + rect(x - 4.4, y - 1.2, 8.8, 2.4, "#d8ab3c", 1.2),
      ears:
        shaft + circle(x - 2.2, y - 6.6, 1.8, "#d8ab3c") + circle(x + 2.2, y - 6.6, 1.8, "#d8ab3c"),
      wire: shaft + path(`M${x - 3} ${y - 5}h6v-3h-6Z`, "none", ' stroke-width="1.1"'),
      cast: shaft + path(`M${x - 3.6} ${y - 5}h7.2l-1.4 -4h-4.4Z`, "#8b9296"),
    }[key] ?? "";
  return hole + made;
}

/** What lies on a wagon. */
export function load(kind, { bed, heap }) {
  if (bed === undefined && heap === undefined) return "";
  const [from, to, y] = heap ?? [30, 90, bed];
  switch (kind) {
    case "logs":
      return [0, 1, 2]
        .map((n) => rect(26 + n * 2, y - 6 - n * 5.2, 68 - n * 4, 5.2, "#b08353", 2.4))
        .join("");
    case "container":
      return (
        rect(34, y - 20, 52, 20, "#f7f7f5", 1, ' fill-opacity=".75"') +
        [1, 2, 3, 4].map((n) => line(34 + n * 10.4, y - 20, 34 + n * 10.4, y)).join("")
      );
    case "drums":
      return [44, 74]
        .map(
          (x) =>
            circle(x, y - 11, 11, "#b08353") +
            circle(x, y - 11, 5, "#8a6239") +
            circle(x, y - 11, 1.4, DARK),
        )
        .join("");
    default:
      return path(
        `M${from} ${y}` +
          `Q${from + (to - from) * 0.22} ${y - 8} ${(from + to) / 2 - 6} ${y - 6}` +
          `Q${(from + to) / 2 + 8} ${y - 10} ${to - 8} ${y - 4}` +
          `L${to} ${y}Z`,
        "#26292b",
      );
  }
}
