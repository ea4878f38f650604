/**
 * The bodies of coaches, vans and wagons, as text of SVG. Each gives what `portrait-drawing.js`
 * says of a body, between `left` and `right`; the rails are at 61.
 */
import { ROOF, levelRoof, planks, roofShapes } from "./portrait-fittings.js";
import { line, path, rect } from "./portrait-shapes.js";

const COACH = { top: 19, bottom: 46 };

function evenly(count, from, to, width) {
  const step = (to - from) / count;
  return Array.from({ length: count }, (_, n) => from + step * n + (step - width) / 2);
}

/** The side of a coach: [windows, doors, lines] by its sort, in shares of its length. */
function openings(sort, x, long) {
  const at = (share) => x + long * share;
  const pane = (from, to, top = 23, high = 10) => [at(from), top, at(to) - at(from), high];
  const row = (count, from, to, width) =>
    evenly(count, at(from), at(to), width * long).map((left) => [left, 23, width * long, 10]);
  const door = (from, to) => [at(from), 21, at(to) - at(from), 25];
  switch (sort) {
    case "compartment_coach": {
      const doors = evenly(6, at(0.02), at(0.98), long * 0.05);
      return {
        panes: doors.flatMap((left) => [
          [left + 0.6, 23, long * 0.05 - 1.2, 10],
          [left - long * 0.043, 23, long * 0.032, 10],
          [left + long * 0.061, 23, long * 0.032, 10],
        ]),
        doors: doors.map((left) => [left, 21, long * 0.05, 25]),
      };
    }
    case "brake_coach":
    case "short_brake_coach":
      return {
        panes: [...row(3, 0.04, 0.52, 0.11), pane(0.86, 0.92)],
        doors: [door(0.56, 0.64), door(0.64, 0.72), door(0.94, 0.985)],
        bulge: [at(0.76), 22, long * 0.06, 20],
      };
    case "dining_coach":
      return {
        panes: [...row(3, 0.07, 0.6, 0.15), pane(0.66, 0.72, 22, 5), pane(0.75, 0.81, 22, 5)],
        doors: [door(0.015, 0.06), door(0.84, 0.9)],
      };
    case "sleeper":
      return {
        panes: evenly(6, at(0.07), at(0.93), long * 0.1).flatMap((left) => [
          [left, 23, long * 0.035, 10],
          [left + long * 0.06, 23, long * 0.035, 10],
        ]),
        doors: [door(0.015, 0.055), door(0.945, 0.985)],
      };
    case "mail_coach":
      return {
        panes: [pane(0.05, 0.1, 22, 5), pane(0.47, 0.53, 22, 5)],
        doors: [door(0.16, 0.28), door(0.28, 0.4), door(0.6, 0.72), door(0.72, 0.84)],
        bulge: [at(0.89), 24, long * 0.05, 16],
      };
    case "saloon":
      return {
        panes: row(4, 0.08, 0.92, 0.17),
        doors: [door(0.015, 0.06), door(0.94, 0.985)],
        lamps: true,
      };
    case "smooth_coach":
      return { panes: row(6, 0.07, 0.86, 0.11), doors: [door(0.015, 0.055)] };
    case "short_coach":
      return { panes: row(4, 0.03, 0.97, 0.15), doors: [door(0.485, 0.515)] };
    default:
      return { panes: row(5, 0.08, 0.92, 0.12), doors: [door(0.015, 0.06), door(0.94, 0.985)] };
  }
}

/** A coach. */
export function coach(sort, { extent, colour }) {
  const four = sort.startsWith("short_");
  const inset = four ? 24 : extent === "short" ? 17 : 8;
  const [left, right] = [inset, 120 - inset];
  const { top, bottom } = COACH;
  const roof = levelRoof(left, right, top);
  const tail =
    sort === "smooth_coach"
      ? `H${right - 12}Q${right} ${top} ${right} ${bottom}`
      : `H${right}V${bottom}`;
  const long = right - left;
  return {
    left,
    right,
    body: path(`M${left} ${bottom}V${top}${tail}Z`, colour),
    roof,
    roofs: roofShapes(left, right, top, roof),
    ...openings(sort, left, long),
    side: [left, top, sort === "smooth_coach" ? long - 9 : long, bottom - top],
    over: "",
    mark: [60, 39.5, long * 0.4],
    numbers: [
      [left + long * 0.16, 40.5],
      [left + long * 0.84, 40.5],
    ],
    plan: four ? "two" : "two_and_two",
    front: [left, 40],
    horns: [[left + 10, top - ROOF]],
    gangways:
      sort === "smooth_coach"
        ? [[left, -1]]
        : [
            [left, -1],
            [right, 1],
          ],
    boards: true,
    gear: true,
    spots: {
      roof_shape: [left + long * 0.7, top - ROOF, 9],
      gangway: [left, 33, 8],
      footboards: [left + long * 0.33, 51, 7],
      under_gear: [66, 53, 9],
    },
  };
}

const ribs = (left, right, top, bottom, count) =>
  evenly(count, left, right, 0)
    .map((x) => line(x, top, x, bottom))
    .join("");

const BELOW = { footboards: [45, 51, 7] };

/** The roof of a van, drawn as the curve that is seen from its end. */
function curved(left, right, height) {
  const roof = `M${left} 21Q60 ${height} ${right} 21Z`;
  return {
    roof,
    roofs: roofShapes(left, right, 21, roof),
    spots: { roof_shape: [76, 16, 9], ...BELOW },
  };
}

/** A wagon: what stands on its frame. */
export function wagon(sort, { colour, second, fitted }) {
  const [left, right] = [22, 98];
  const base = {
    left,
    right,
    side: [left + 2, 28, right - left - 4, 18],
    mark: [60, 38, 46],
    numbers: [
      [left + 14, 42],
      [right - 14, 42],
    ],
    plan: "two",
    front: [left, 40],
    boards: true,
    spots: BELOW,
    roof: "",
    panes: [],
    doors: [],
    over: "",
    horns: null,
  };
  switch (sort) {
    case "van":
    case "cattle_wagon":
      return {
        ...base,
        body: path(`M24 46V21H96V46Z`, colour),
        ...curved(22, 98, 9),
        doors: sort === "van" ? [[46, 23, 28, 23]] : [[50, 23, 20, 23]],
        over:
          sort === "van"
            ? line(60, 23, 60, 46) + ribs(24, 46, 21, 46, 2) + ribs(74, 96, 21, 46, 2)
            : rect(25, 23, 24, 6, "#1b1d1f") +
              rect(71, 23, 24, 6, "#1b1d1f") +
              line(24, 26, 96, 26),
        side: [24, 21, 72, 25],
        mark: [60, 38, 44],
        moves: [46, 23, 6, 10.5],
      };
    case "tank_wagon":
      return {
        ...base,
        body:
          path("M28 46L32 38H88L92 46Z", "#3a3f43") +
          rect(24, 21, 72, 21, colour, 9) +
          rect(54, 15.5, 12, 6, colour, 2),
        over: line(40, 21.5, 40, 41.5) + line(80, 21.5, 80, 41.5),
        side: [34, 24, 52, 15],
        mark: [60, 32, 38],
        shine: [32, 25, 56],
      };
    case "hopper":
      return {
        ...base,
        body: path("M24 20H96V30L76 46H44L24 30Z", colour),
        over: ribs(32, 88, 20, 34, 4) + path("M54 46L57 52H63L66 46Z", "#3a3f43"),
        side: [24, 20, 72, 12],
        mark: [60, 33, 36],
        numbers: [
          [36, 29],
          [84, 29],
        ],
        heap: [26, 94, 20],
        moves: [55, 46, 10, 6],
      };
    case "flat_wagon":
      return {
        ...base,
        body: rect(22, 42, 76, 5, colour),
        side: [24, 42, 72, 5],
        mark: [60, 44.6, 60],
        low: true,
        numbers: [
          [32, 44.8],
          [88, 44.8],
        ],
        bed: 42,
      };
    case "timber_wagon":
      return {
        ...base,
        body:
          rect(22, 42, 76, 5, colour) +
          [28, 50, 70, 92].map((x) => rect(x - 1.2, 24, 2.4, 18, colour)).join(""),
        side: [24, 42, 72, 5],
        mark: [60, 44.6, 60],
        low: true,
        bed: 42,
      };
    case "guards_van":
      return {
        ...base,
        body:
          path("M24 46V21H78V46Z", colour) +
          rect(78, 35, 18, 11, colour) +
          [80, 88, 95].map((x) => rect(x - 0.8, 21, 1.6, 14, "#3a3f43")).join(""),
        ...curved(21, 99, 11),
        panes: [
          [29, 25, 7, 7],
          [66, 25, 7, 7],
        ],
        doors: [],
        bulge: [46, 24, 10, 14],
        over: rect(30, 10.5, 3, 5, "#3a3f43"),
        side: [24, 21, 54, 25],
        mark: [51, 41, 40],
        numbers: [
          [32, 41],
          [70, 41],
        ],
      };
    case "crane":
      return {
        ...base,
        body:
          rect(22, 42, 76, 5, colour) +
          path("M42 42V28H66V42Z", colour) +
          path("M62 30L12 10L10 12.5L60 36Z", second || "none") +
          line(11, 12, 11, 24, 1.2) +
          path("M11 24q3 1 1.5 3.6q-2 1.6 -3.5 -.4", "none"),
        panes: [[47, 31, 8, 6]],
        side: [42, 28, 24, 14],
        mark: [60, 44.6, 60],
        low: true,
        front: [left, 44],
      };
    default: {
      const steel = sort === "steel_wagon";
      return {
        ...base,
        body: rect(24, 26, 72, 20, colour),
        over: steel
          ? ribs(24, 96, 26, 46, 6) + rect(24, 25, 72, 2.4, colour)
          : fitted("planks", (look) => planks(look, 24, 96, 26, 46)) + ribs(24, 96, 26, 46, 2),
        side: [24, 26, 72, 20],
        mark: [60, 37, 44],
        heap: [26, 94, 26],
        moves: [86, 27, 9, 19],
        spots: steel ? BELOW : { planks: [36, 35, 9], ...BELOW },
      };
    }
  }
}
