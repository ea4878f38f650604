import { inTurns } from "../data/in-turns.js";
import { button, el } from "./element.js";
import { SHOW_MORE } from "./first-words.js";

const SLICE = 40;

/** The list with so many entries to begin with as were drawn when it was left, made in turns. */
export async function longListFrom(label, values, row, drawn = 0) {
  return longList(label, values, row, await inTurns(values.slice(0, drawn), row));
}

/**
 * A long list, drawn a slice at a time as it is scrolled to. `row(value, place)` makes one entry;
 * `made`: those that are made already.
 */
export function longList(label, values, row, made = []) {
  const list = el("ul", { class: "found rows", "aria-label": label });
  const more = button(SHOW_MORE, () => draw(SLICE), { class: "plain wide" });
  let drawn = 0;
  function add(rows) {
    list.append(...rows.map((node) => el("li", {}, node)));
    drawn += rows.length;
    more.hidden = drawn >= values.length;
    list.dataset.drawn = String(drawn);
  }
  function draw(count) {
    add(values.slice(drawn, drawn + count).map((value, place) => row(value, drawn + place)));
  }
  add(made);
  if (drawn < SLICE) draw(SLICE - drawn);
  new IntersectionObserver(
    (seen) => {
      if (seen.some(({ isIntersecting }) => isIntersecting) && more.isConnected) draw(SLICE);
    },
    { rootMargin: "600px" },
  ).observe(more);
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
