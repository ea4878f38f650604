/**
 * A drawing as a list of plain shapes: read from SVG, moved, and written as the pack's other
 * drawings are.
 */
import { attributesLetIn } from "../parts/drawing.js";
import { SHAPE_NAMES } from "./own-words.js";

const SVG = "http://www.w3.org/2000/svg";
const WIDTH = 120;
const HEIGHT = 80;
const ROOT = {
  viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
  fill: "none",
  stroke: "currentColor",
  "stroke-width": "2.5",
  "stroke-linecap": "round",
  "stroke-linejoin": "round",
};
const AROUND = "1.5"; // how thick the lines are: of what is only there to find the place
const MARK = "4"; // of what to look at
const POINTS = {
  line: ["x1", "y1", "x2", "y2"],
  rect: ["x", "y"],
  circle: ["cx", "cy"],
  ellipse: ["cx", "cy"],
  text: ["x", "y"],
};

/** The shapes of a drawing: [{tag, attributes, mark, text}]; [] where it has none. */
export function shapesOf(svg) {
  const root = new DOMParser().parseFromString(svg || "<svg/>", "image/svg+xml").documentElement;
  const out = [];
  if (root.namespaceURI !== SVG) return out;
  const own = Object.fromEntries(attributesLetIn(root));
  const given = Object.fromEntries(
    Object.entries(own).filter(
      ([name, value]) => !(name in ROOT) || (name !== "viewBox" && ROOT[name] !== value),
    ),
  );
  for (const name of ["viewBox", "width", "height", "class"]) delete given[name];
  walk(root, given, false, out);
  return out;
}

/** The view box of a drawing; the usual one where it has none. */
export function boxOf(svg) {
  return /viewBox="([\d\s.-]+)"/.exec(svg)?.[1] ?? ROOT.viewBox;
}

function walk(node, given, mark, out) {
  for (const child of node.children) {
    const { class: named, transform, ...own } = Object.fromEntries(attributesLetIn(child));
    const all = { ...given, ...own };
    const transforms = [given.transform, transform].filter(Boolean).join(" ");
    if (transforms !== "") all.transform = transforms;
    const marked = mark || named === "mark";
    if (child.localName === "g") walk(child, all, marked, out);
    else if (child.localName in SHAPE_NAMES)
      out.push({ tag: child.localName, attributes: all, mark: marked, text: child.textContent });
  }
}

/** The same shape, moved. */
export function moved(shape, dx, dy) {
  const { tag, attributes } = shape;
  const now = { ...attributes };
  if (attributes.transform || !(tag in POINTS || "points" in attributes)) {
    const rest = (attributes.transform ?? "").replace(
      /^translate\(([-\d.]+) ([-\d.]+)\) ?/,
      (_, x, y) => {
        dx += Number(x);
        dy += Number(y);
        return "";
      },
    );
    now.transform = `translate(${short(dx)} ${short(dy)}) ${rest}`.trim();
  } else if ("points" in attributes) {
    const flat = attributes.points
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    now.points = flat.map((number, place) => short(number + (place % 2 === 0 ? dx : dy))).join(" ");
  } else {
    for (const name of POINTS[tag])
      now[name] = short(Number(attributes[name] ?? 0) + (/^(c?x|x\d)$/.test(name) ? dx : dy));
  }
  return { ...shape, attributes: now };
}

/** The same shape, filled with a colour; "" with nothing. */
export function filled(shape, colour) {
  const { fill: _, ...attributes } = shape.attributes;
  return { ...shape, attributes: colour === "" ? attributes : { ...attributes, fill: colour } };
}

/** A number as it is written in a drawing. */
export function short(number) {
  return String(Math.round(number * 10) / 10);
}

/**
 * A new shape between two points; null where there is too little of it to see.
 * @param {string} tag
 * @param {number[]} from
 * @param {number[]} to
 * @param {boolean} mark
 */
export function drawn(tag, from, to, mark) {
  const [x1, y1] = from;
  const [x2, y2] = to;
  const [width, height] = [Math.abs(x2 - x1), Math.abs(y2 - y1)];
  if (width + height < 2) return null;
  const middle = { cx: short((x1 + x2) / 2), cy: short((y1 + y2) / 2) };
  const attributes = {
    line: { x1: short(x1), y1: short(y1), x2: short(x2), y2: short(y2) },
    rect: {
      x: short(Math.min(x1, x2)),
      y: short(Math.min(y1, y2)),
      width: short(width),
      height: short(height),
    },
    circle: { ...middle, r: short(Math.max(width, height) / 2) },
    ellipse: { ...middle, rx: short(width / 2), ry: short(height / 2) },
  }[tag];
  return { tag, attributes, mark, text: "" };
}

/** A line through these points: with corners, or drawn by hand and made simpler. */
export function through(points, mark, free) {
  if (points.length < 2) return null;
  if (!free) {
    const flat = points.map(([x, y]) => `${short(x)} ${short(y)}`).join(" ");
    return { tag: "polyline", attributes: { points: flat }, mark, text: "" };
  }
  const [first, ...rest] = simpler(points, 0.8);
  const d =
    `M${short(first[0])} ` +
    `${short(first[1])}L${rest.map(([x, y]) => `${short(x)} ${short(y)}`).join(" ")}`;
  return { tag: "path", attributes: { d }, mark, text: "" };
}

/**
 * The points that matter: none of the others is further off than `most` (Ramer 1972; Douglas and
 * Peucker 1973).
 */
function simpler(points, most) {
  if (points.length < 3) return points;
  const [a, b] = [points[0], points[points.length - 1]];
  const off = points.map((point) => distance(point, a, b));
  const far = off.indexOf(Math.max(...off));
  if (off[far] <= most) return [a, b];
  return [
    ...simpler(points.slice(0, far + 1), most).slice(0, -1),
    ...simpler(points.slice(far), most),
  ];
}

function distance([x, y], [x1, y1], [x2, y2]) {
  const long = Math.hypot(x2 - x1, y2 - y1);
  if (long === 0) return Math.hypot(x - x1, y - y1);
  return Math.abs((x2 - x1) * (y1 - y) - (x1 - x) * (y2 - y1)) / long;
}

/** The drawing as SVG text, on lines as in the pack's other drawings. */
export function svgOf(shapes, title, box) {
  const root = Object.entries({ ...ROOT, viewBox: box });
  const runs = [];
  for (const shape of shapes) {
    if (runs.length === 0 || runs[runs.length - 1].mark !== shape.mark)
      runs.push({ mark: shape.mark, shapes: [] });
    runs[runs.length - 1].shapes.push(shape);
  }
  const lines = runs.flatMap(({ mark, shapes: some }) => [
    mark ? `  <g class="mark" stroke-width="${MARK}">` : `  <g stroke-width="${AROUND}">`,
    ...some.map((shape) => `    ${leaf(shape)}`),
    "  </g>",
  ]);
  return [
    `<svg xmlns="${SVG}" ${written(root)}>`,
    `  <title>${escaped(title)}</title>`,
    ...lines,
    "</svg>",
    "",
  ].join("\n");
}

function leaf({ tag, attributes, text }) {
  const inside = written(Object.entries(attributes));
  return tag === "text" ? `<text ${inside}>${escaped(text)}</text>` : `<${tag} ${inside}/>`;
}

function written(pairs) {
  return pairs.map(([name, value]) => `${name}="${escaped(value)}"`).join(" ");
}

function escaped(text) {
  return String(text).replace(
    /[&<>"]/g,
    (mark) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[mark],
  );
}

/** The shape as an element, for the pad. */
export function elementOf({ tag, attributes, mark, text }) {
  const node = document.createElementNS(SVG, tag);
  node.setAttribute("stroke-width", mark ? MARK : AROUND);
  for (const [name, value] of Object.entries(attributes)) node.setAttribute(name, value);
  if (mark) node.setAttribute("class", "mark");
  if (tag === "text") node.textContent = text;
  return node;
}

/** An empty pad to draw on. */
export function pad(box) {
  const node = document.createElementNS(SVG, "svg");
  for (const [name, value] of Object.entries({ ...ROOT, viewBox: box }))
    node.setAttribute(name, value);
  return node;
}
