/**
 * What a piece runs on, and its ends: wheels, bogies, axles, buffers, couplings; what hangs below
 * the floor. Text of SVG.
 */
import { BARE, circle, line, path, rect } from "./portrait-shapes.js";

const RAIL = 61;
const METAL = "#a9b0b4";
const DARK = "#26292b";

/** Where the wheels stand: [[x, radius], ...] and the spans that bogies hold. */
export function wheelsOf(plan, body) {
  const [from, to] = body.driven ?? [body.left + 6, body.right - 6];
  const at = (share) => from + (to - from) * share;
  const big = body.driven ? Math.min(8.4, (to - from) / 9) : 6;
  const small = 5;
  const axlesOf = (center, count) => {
    const half = count === 3 ? 11 : 8;
    const step = (2 * half) / (count - 1);
    return Array.from({ length: count }, (_, n) => [center - half + n * step, count === 3 ? 5 : 6]);
  };
  const span = body.right - body.left;
  const pair = (count) => {
    const centers = [body.left + span * 0.18, body.right - span * 0.18];
    return {
      wheels: centers.flatMap((center) => axlesOf(center, count)),
      bogies: centers.map((center) => [center, count === 3 ? 17 : 14]),
    };
  };
  switch (plan) {
    case "two":
      return {
        wheels: [
          [at(0.2), big],
          [at(0.8), big],
        ],
        bogies: [],
      };
    case "three":
      return {
        wheels: [
          [at(0.14), big],
          [at(0.48), big],
          [at(0.82), big],
        ],
        rods: body.driven ? [[at(0.14), at(0.82)]] : [],
        bogies: [],
      };
    case "two_three":
      return {
        wheels: [
          [at(0.05), small],
          [at(0.21), small],
          [at(0.42), big],
          [at(0.66), big],
          [at(0.9), big],
        ],
        rods: [[at(0.42), at(0.9)]],
        bogies: [[at(0.13), at(0.16) - at(0)]],
      };
    case "two_lead":
      return {
        wheels: [
          [at(0.06), small],
          [at(0.22), small],
          [at(0.5), big],
          [at(0.82), big],
        ],
        rods: [[at(0.5), at(0.82)]],
        bogies: [],
      };
    case "two_both":
      return {
        wheels: [
          [at(0.06), small],
          [at(0.34), big],
          [at(0.66), big],
          [at(0.94), small],
        ],
        rods: [[at(0.34), at(0.66)]],
        bogies: [],
      };
    case "three_and_three":
      return pair(3);
    case "two_and_two":
      return pair(2);
    default:
      return { wheels: [], bogies: [] };
  }
}

/** A wheel by how it is made; "" is not recorded. */
export function wheel(look, x, radius) {
  const y = RAIL - radius;
  const spokes = (colour) =>
    [0, 45, 90, 135]
      .map((turn) => {
        const [dx, dy] = [
          Math.cos((turn * Math.PI) / 180) * radius,
          Math.sin((turn * Math.PI) / 180) * radius,
        ];
        return line(x - dx, y - dy, x + dx, y + dy, 0.8, colour);
      })
      .join("");
  switch (look) {
    case "cast":
      return circle(x, y, radius, "#7d8488") + circle(x, y, radius * 0.3, "#5a6064", BARE);
    case "black":
      return circle(x, y, radius, DARK) + circle(x, y, radius * 0.3, "#4a4f52", BARE);
    case "bright":
      return circle(x, y, radius, "#d9dee1") + circle(x, y, radius * 0.74, DARK, BARE);
    case "spokes":
      return (
        circle(x, y, radius, "#ffffff", ' stroke-width="1.6"') +
        spokes("") +
        circle(x, y, 1.4, DARK)
      );
    case "tin":
      return (
        circle(x, y, radius, "#c4cacd") +
        circle(x, y, radius * 0.68, "#a9b0b4") +
        circle(x, y, 0.9, DARK, BARE)
      );
    case "zinc":
      return (
        circle(x, y, radius, "#8f9698") +
        path(
          `M${x - radius * 0.7} ${y - radius * 0.4}` +
            `l${radius * 0.6} ${radius * 0.5}` +
            `l${radius * 0.2} ${radius * 0.6}`,
          "none",
          ' stroke-width=".8"',
        ) +
        circle(x, y, 1, DARK, BARE)
      );
    case "plated":
      return (
        circle(x, y, radius, "#eef1f3") +
        circle(x, y, radius * 0.76, "#71787c") +
        circle(x, y, 1, DARK, BARE)
      );
    default:
      return circle(x, y, radius, "none", ' stroke-opacity=".45"');
  }
}

/** The side of a bogie over its wheels. */
export function bogie(look, [center, half]) {
  const [left, wide] = [center - half, 2 * half];
  switch (look) {
    case "pressed":
      return (
        path(`M${left} 50H${left + wide}L${left + wide - 4} 54H${left + 4}Z`, METAL) +
        circle(center, 52, 0.8, DARK, BARE)
      );
    case "plain":
      return rect(left, 50, wide, 5.5, "#4a4f52", 1);
    case "sprung":
      return (
        rect(left, 50, wide, 3.4, "#3a3f43", 1) +
        [left + 3, left + wide - 7]
          .map(
            (x) =>
              rect(x, 52, 4.4, 5.6, "#5a6064", 0.8) +
              line(x, 54, x + 4.4, 55, 0.6) +
              line(x, 55.6, x + 4.4, 56.6, 0.6),
          )
          .join("") +
        path(`M${center - 5} 56q5 2.6 10 0`, "none")
      );
    default:
      return rect(left, 50, wide, 5, "none", 1, ' stroke-opacity=".45"');
  }
}

/** What an axle runs in: over a wheel of a wagon, a coach with four wheels or a tender. */
export function axle(look, x, radius) {
  const y = RAIL - radius;
  switch (look) {
    case "punched":
      return (
        path(`M${x - 5} 47L${x - 2.6} ${y + 3}H${x + 2.6}L${x + 5} 47Z`, METAL) +
        circle(x, y, 1.1, DARK, BARE)
      );
    case "moulded":
      return (
        path(`M${x - 6.5} 48.5q6.5 4 13 0`, "none", ' stroke-width="1.4"') +
        rect(x - 2.2, y - 3.4, 4.4, 6, "#4a4f52", 0.6)
      );
    case "soldered":
      return (
        path(
          `M${x - 5} 47L${x - 1.6} ${y + 2.4}H${x + 1.6}L${x + 5} 47` +
            `L${x + 2.6} 47L${x} ${y - 2}L${x - 2.6} 47Z`,
          METAL,
        ) +
        circle(x - 4.4, 48, 1, "#d9dee1") +
        circle(x + 4.4, 48, 1, "#d9dee1")
      );
    case "pressed":
      return (
        path(`M${x - 7} 46.5H${x + 7}L${x + 2} ${y + 2.6}H${x - 2}Z`, "#5a6064") +
        circle(x, y, 0.9, "#d9dee1", BARE)
      );
    case "cast":
      return (
        path(`M${x - 6.5} 48q6.5 5 13 0`, "none", ' stroke-width="2.2"') +
        rect(x - 3, y - 4, 6, 7.4, METAL, 1)
      );
    default:
      return "";
  }
}

/** A buffer that sticks out of the left end; the right one is its mirror image. */
export function buffer(look, x) {
  const head = (fill, rest = "") => rect(x - 5, 43.4, 1.6, 5.6, fill, 0.8, rest);
  switch (look) {
    case "turned":
      return rect(x - 3.6, 45, 4, 2.4, "#dfe4e7") + head("#dfe4e7");
    case "sprung":
      return (
        rect(x - 1.8, 44.4, 2, 3.6, "#dfe4e7") +
        line(x - 3.6, 46.2, x - 1.8, 46.2, 1.2) +
        rect(x - 5.2, 43.4, 1.6, 5.6, "#dfe4e7", 0.8)
      );
    case "moulded":
      return rect(x - 3.6, 44.6, 4, 3.2, DARK) + head(DARK);
    case "pressed":
      return path(`M${x} 44L${x - 4.4} 43.4V49L${x} 48.4Z`, "none");
    case "diecast":
      return rect(x - 4, 44, 4.4, 4.4, "#7d8488") + head("#7d8488");
    default:
      return rect(x - 4, 44.6, 4, 3.2, "none", 0, ' stroke-opacity=".45"');
  }
}

/** A coupling at the left end. */
export function coupling(look, x) {
  switch (look) {
    case "bar":
      return path(`M${x + 4} 52H${x - 5}v-2.2l-1.6 1`, "none", ' stroke-width="1.5"');
    case "loop":
      return (
        line(x + 4, 52, x, 52, 1.2) +
        path(`M${x} 52L${x - 6} 50.4v3.4Z`, "none", ' stroke-width="1"')
      );
    case "claw":
      return path(`M${x + 4} 51H${x - 3}v-2.6h-4v7h4v-2H${x + 4}Z`, DARK);
    case "narrow_claw":
      return path(`M${x + 4} 51.4H${x - 3.4}v-2h-2.4v4.4h2.4v-1H${x + 4}Z`, DARK);
    case "link":
      return (
        path(`M${x + 3} 51H${x - 2}q-1.6 0 -1.6 2`, "none", ' stroke-width="1.2"') +
        rect(x - 5.2, 52.6, 2.6, 6, "none", 1.3, ' stroke-width="1.1"')
      );
    case "tin_hook":
      return path(
        `M${x + 4} 51H${x - 6}L${x - 3.4} 54.4H${x - 1}L${x - 2.4} 52.8H${x + 4}Z`,
        METAL,
      );
    case "wide_hook":
      return (
        path(`M${x + 4} 51H${x - 6}L${x - 3.4} 54.4H${x - 1}L${x - 2.4} 52.8H${x + 4}Z`, METAL) +
        rect(x - 2, 48.6, 1.8, 8, METAL)
      );
    default:
      return line(x + 3, 52, x - 4, 52, 1.2, "", ' stroke-opacity=".35"');
  }
}

/** From where to where there is room below the floor: between the bogies, or the outer wheels. */
function roomBelow({ wheels, bogies }) {
  if (bogies.length === 2) {
    const [[left, half], [right]] = bogies;
    return [left + half + 2, right - half - 2];
  }
  const [first, last] = [wheels[0], wheels.at(-1)];
  return [first[0] + first[1] + 2, last[0] - last[1] - 2];
}

/** What hangs below the floor of a coach, between its wheels. */
export function underGear(look, run) {
  if (run.wheels.length < 2) return "";
  const [from, to] = roomBelow(run);
  const wide = to - from;
  switch (look) {
    case "boxes":
      return (
        rect(from, 48.6, wide * 0.3, 7.6, "#3a3f43") +
        rect(from + wide * 0.36, 48.6, wide * 0.2, 5.6, "#3a3f43") +
        rect(from + wide * 0.64, 49.4, wide * 0.34, 5.4, "#5a6064", 2.4)
      );
    case "rods": {
      const [first, second] = [from + wide * 0.3, to - wide * 0.3];
      return (
        path(`M${from} 48.6L${first} 55.6H${second}L${to} 48.6`, "none", ' stroke-width="1.3"') +
        line(first, 48.6, first, 55.6, 1.3) +
        line(second, 48.6, second, 55.6, 1.3)
      );
    }
    default:
      return "";
  }
}

/** The steps below the doors of a piece between left and right. */
export function footboards(look, { left, right }, run) {
  const board = (from, to, y) => rect(from, y, to - from, 1.5, "#5a6064");
  const upper = board(left + 1, right - 1, 50.4);
  if (look === "one") return upper;
  if (look !== "two" || run.wheels.length < 2) return "";
  const [from, to] = roomBelow(run);
  const lower = board(from, to, 57);
  const held = [from + 2, to - 2].map((x) => line(x, 51.9, x, 57, 0.9)).join("");
  return upper + held + lower;
}
