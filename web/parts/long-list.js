import { here } from "../data/back-button.js";
import { inTurns } from "../data/in-turns.js";
import { button, el } from "./element.js";
import { SHOW_MORE } from "./first-words.js";
import { onListLeft } from "./navigation.js";

const SLICE = 40;
const left = new Map(); // by screen and label, how a list stood when its screen was left

onListLeft(leaveList);

/** Where a list stands in the app; two screens may call theirs the same. */
function placeOf(label) {
  const { screen, depth } = here();
  return `${depth} ${screen} ${label}`;
}

/**
 * A list is left: where it stood, so that what is far from sight need not be laid out at once.
 * Gives what is remembered of it; null for one that is not of the screen that the browser stands
 * at.
 */
function leaveList(list) {
  const { place, drawn } = list.dataset;
  if (place !== placeOf(list.ariaLabel)) return null;
  const rows = [...list.children];
  const slices = [];
  for (let n = 0; n < rows.length; n += SLICE) {
    const { top } = rows[n].getBoundingClientRect();
    const last = rows[Math.min(n + SLICE, rows.length) - 1];
    slices.push({ top, height: last.getBoundingClientRect().bottom - top });
  }
  left.set(place, { drawn: rows.length, width: innerWidth, slices });
  return { drawn: Number(drawn) };
}

/** Whether a slice was so near that it is drawn before anything else. */
const near = ({ top, height }) => top + height > -innerHeight && top < 2 * innerHeight;

/**
 * The list with so many entries to begin with as were drawn when it was left, made in turns. Those
 * far from sight come after it is painted; until then their place is kept, as high as they were.
 */
export async function longListFrom(label, values, row, drawn = 0) {
  const place = placeOf(label);
  const was = left.get(place);
  const same = was?.drawn === drawn && was.width === innerWidth && drawn <= values.length;
  const far = (n) => same && !near(was.slices[Math.floor(n / SLICE)]);
  const made = await inTurns(values.slice(0, drawn), (value, n) => (far(n) ? null : row(value, n)));
  const [list, more] = longList(label, values, row, made, same ? was.slices : []);
  list.dataset.place = place;
  return [list, more];
}

/**
 * A long list, drawn a slice at a time as it is scrolled to. `row(value, place)` makes one entry;
 * `made`: those that are made already, null for one that waits in its slice's place.
 */
export function longList(label, values, row, made = [], slices = []) {
  const list = el("ul", { class: "found rows", "aria-label": label });
  const more = button(SHOW_MORE, () => draw(SLICE), { class: "plain wide" });
  const waiting = [];
  let drawn = 0;
  const entries = (from, to) =>
    values
      .slice(from, to)
      .map((value, place) => el("li", {}, made[from + place] ?? row(value, from + place)));
  function add(nodes, count) {
    list.append(...nodes);
    drawn += count;
    more.hidden = drawn >= values.length;
    list.dataset.drawn = String(drawn);
  }
  function draw(count) {
    add(entries(drawn, drawn + count), Math.min(count, values.length - drawn));
  }
  function keepPlace(from, to, { height, top }) {
    const node = el("li", { "aria-hidden": "true" });
    node.style.height = `${height}px`;
    waiting.push({ node, from, to, away: Math.abs(top) });
    add([node], to - from);
  }
  /**
   * One slice a frame: together they would hold the screen up. What is near sight by now is first.
   */
  function come() {
    if (waiting.length === 0 || !list.isConnected) return;
    const inSight = waiting.findIndex(({ node }) => near(node.getBoundingClientRect()));
    const [{ node, from, to }] = waiting.splice(Math.max(0, inSight), 1);
    node.replaceWith(...entries(from, to));
    requestAnimationFrame(come);
  }
  for (let n = 0; n < made.length; n += SLICE) {
    const end = Math.min(n + SLICE, made.length);
    if (made[n] === null) keepPlace(n, end, slices[n / SLICE]);
    else draw(end - n);
  }
  waiting.sort((one, other) => one.away - other.away);
  if (drawn < SLICE) draw(SLICE - drawn);
  new IntersectionObserver(
    (seen) => {
      if (seen.some(({ isIntersecting }) => isIntersecting) && more.isConnected) draw(SLICE);
    },
    { rootMargin: "600px" },
  ).observe(more);
  const there = new IntersectionObserver(
    () => {
      if (!list.isConnected) return; // it may be put into the page long after it was made
      there.disconnect();
      come();
    },
    { rootMargin: "600px" },
  );
  if (waiting.length > 0) there.observe(list);
  return [list, more];
}

/** An entry of a list: lines of text, and a picture. */
export function entry(lines, open, picture = null) {
  const [first, ...others] = lines;
  const text = el(
    "span",
    { class: "lines" },
    el("strong", {}, first),
    others.filter(Boolean).map((line) => el("span", { class: "quiet" }, line)),
  );
  return button([text, picture], open, { class: "hit" });
}
