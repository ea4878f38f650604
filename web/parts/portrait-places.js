/** What stands beside the line, as text of SVG: bodies as `portrait-drawing.js` says. */
import { circle, line, path, rect } from "./portrait-shapes.js";

const PLACE = {
  panes: [],
  doors: [],
  over: "",
  roof: "",
  horns: null,
  plan: "",
  front: null,
  numbers: [null, null],
  standing: true,
};

/** What stands beside the line. */
export function building(sort, { colour }) {
  const plain = "#d5dade"; // of a colour that is not recorded
  switch (sort) {
    case "signal":
      return {
        ...PLACE,
        left: 40,
        right: 80,
        body:
          rect(57, 8, 5, 50, colour) +
          path("M62 12H96V20H62Z", plain) +
          rect(88, 12, 3.5, 8, "#f6f6f4") +
          circle(66, 26, 4, "#f6f6f4") +
          path("M57 8L59.5 3L62 8Z", plain) +
          [1, 2, 3, 4, 5].map((n) => line(54, 20 + n * 6, 57, 20 + n * 6)).join(""),
        base: rect(42, 57, 36, 4, "BASE"),
        side: [57, 24, 5, 32],
        mark: [60, 40, 5],
      };
    case "station":
      return {
        ...PLACE,
        left: 6,
        right: 114,
        body: rect(22, 28, 76, 26, colour) + rect(30, 13, 6, 10, colour),
        roof: "M16 28L28 17H92L104 28Z",
        panes: [
          [28, 34, 9, 9],
          [41, 34, 9, 9],
          [70, 34, 9, 9],
          [83, 34, 9, 9],
        ],
        doors: [[55, 34, 10, 20]],
        over: path("M14 28H106L102 32H18Z", "#d5dade"),
        base: rect(4, 54, 112, 7, "BASE"),
        side: [22, 44, 76, 10],
        mark: [60, 25, 50],
        plaque: true,
      };
    case "signal_box":
      return {
        ...PLACE,
        left: 24,
        right: 96,
        body: rect(34, 36, 44, 22, colour) + rect(32, 22, 48, 14, "#f6f6f4"),
        roof: "M28 22L38 11H74L84 22Z",
        panes: [
          [35, 25, 9, 8],
          [46, 25, 9, 8],
          [57, 25, 9, 8],
          [68, 25, 9, 8],
        ],
        doors: [[50, 44, 9, 14]],
        over:
          path("M80 36L96 58M84 36L98 55", "none") +
          [0, 1, 2, 3]
            .map((n) => line(83 + n * 3.6, 40 + n * 5, 87 + n * 3.6, 40 + n * 5))
            .join(""),
        base: rect(24, 57, 78, 4, "BASE"),
        side: [34, 38, 44, 20],
        mark: [56, 41, 40],
        plaque: true,
      };
    case "crossing":
      return {
        ...PLACE,
        left: 6,
        right: 114,
        body:
          path("M34 61L46 46H74L86 61Z", colour) +
          line(6, 52, 114, 52, 1.6) +
          line(6, 57, 114, 57, 1.6),
        over: [10, 78]
          .map(
            (x) =>
              rect(x, 28, 32, 14, "#f6f6f4") +
              path(`M${x} 42L${x + 32} 28M${x} 28L${x + 32} 42M${x} 35H${x + 32}`, "none") +
              circle(x + 16, 35, 4.4, plain) +
              rect(x < 50 ? x - 3 : x + 32, 22, 3, 30, "#f6f6f4"),
          )
          .join(""),
        base: rect(4, 58, 112, 3, "BASE"),
        side: [44, 47, 32, 12],
        mark: [60, 55, 20],
      };
    case "buffer_stop":
      return {
        ...PLACE,
        left: 30,
        right: 90,
        body:
          path("M40 57L52 24H58L50 57Z", colour) +
          path("M78 57L58 30L54 33L70 57Z", colour) +
          rect(36, 24, 26, 8, colour),
        over:
          rect(29, 25, 8, 6, "#8b9296") +
          rect(26, 23.5, 3.4, 9, "#8b9296", 1) +
          circle(66, 19, 3.4, "#f6f6f4"),
        base: rect(24, 56, 76, 5, "BASE"),
        side: [38, 26, 22, 5],
        mark: [60, 40, 20],
      };
    case "building":
      return {
        ...PLACE,
        left: 20,
        right: 100,
        body: rect(28, 30, 64, 30, colour),
        roof: "M22 30L38 16H82L98 30Z",
        panes: [
          [35, 36, 10, 9],
          [75, 36, 10, 9],
        ],
        doors: [[54, 42, 12, 18]],
        side: [28, 46, 64, 14],
        mark: [60, 36, 24],
      };
    default:
      return {
        ...PLACE,
        left: 16,
        right: 104,
        body: rect(18, 22, 84, 34, colour, 6),
        side: [20, 26, 80, 28],
        mark: [60, 40, 50],
      };
  }
}
