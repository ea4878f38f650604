/** What a screen draws where there is nothing yet: the place that waits, in dashes. */
import { svg } from "./element.js";

const RAIL = "M8 70h144";
const COACH = "M28 58V28h104v30zM40 36h14v10H40zM66 36h14v10H66zM92 36h14v10H92z";
const WHEELS = "M48 58a6 6 0 1 0 .1 0M112 58a6 6 0 1 0 .1 0";

/** Of each: what is there, and what is not there yet. */
const PICTURES = {
  shelf: ["M8 70h144M20 70v6M140 70v6", `${COACH}${WHEELS}`],
  wanted: [
    `${RAIL}M72 43h16M80 35v16`,
    "M28 58V28h104v30zM48 58a6 6 0 1 0 .1 0M112 58a6 6 0 1 0 .1 0",
  ],
  notebook: [
    "M48 8h64v66H48zM40 18h14M40 34h14M40 50h14M40 66h14M104 74l22-40 8 4-22 40-9 5z",
    "M64 22h36M64 36h36M64 50h24",
  ],
  twins: [
    "M10 62h140M22 54V34h52v20zM30 40h8v6h-8zM44 40h8v6h-8zM58 40h8v6h-8z" +
      "M34 54a4 4 0 1 0 .1 0M62 54a4 4 0 1 0 .1 0",
    "M86 54V34h52v20zM98 54a4 4 0 1 0 .1 0M126 54a4 4 0 1 0 .1 0",
  ],
  train: [
    "M8 66h144M16 58V38h22V28h18v30zM56 44h3M24 58a4 4 0 1 0 .1 0M46 58a4 4 0 1 0 .1 0M58 54h6" +
      "M64 58V36h36v22zM72 58a4 4 0 1 0 .1 0M92 58a4 4 0 1 0 .1 0M100 54h6",
    "M106 58V36h38v22zM114 58a4 4 0 1 0 .1 0M136 58a4 4 0 1 0 .1 0",
  ],
  lens: ["M74 12a26 26 0 1 0 .1 0M93 57l20 19", "M60 44V32h28v12z"],
  question: [
    `${RAIL}M28 58V28h104v30zM48 58a6 6 0 1 0 .1 0M112 58a6 6 0 1 0 .1 0`,
    "M73 38a7 7 0 1 1 9 6q-2 1-2 5M80 53v.1",
  ],
  number: [
    `${RAIL}M28 58V28h104v30zM48 58a6 6 0 1 0 .1 0M112 58a6 6 0 1 0 .1 0`,
    "M56 36h48v14H56z",
  ],
  devices: ["M20 24h66v44H20zM10 76h86", "M112 26h28v50h-28zM123 68h6"],
  bin: ["M52 22h56M70 22v-8h20v8M58 22l5 54h34l5-54", "M72 36l2 28M88 36l-2 28"],
};

/** The picture `name` of PICTURES. */
export function emptyPicture(name) {
  const [there, waiting] = PICTURES[name];
  return svg(
    "svg",
    { class: "empty", viewBox: "0 0 160 84", "aria-hidden": "true", focusable: "false" },
    svg("path", { d: there }),
    svg("path", { d: waiting, class: "waiting" }),
  );
}
