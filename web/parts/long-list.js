import { photo } from "../data/kept-photos.js";
import { button, el } from "./element.js";
import { SHOW_MORE } from "./first-words.js";

const SLICE = 40;

/**
 * A long list, drawn a slice at a time as it is scrolled to. `row(value, place)` makes one entry.
 */
export function longList(label, values, row, first = SLICE) {
  const list = el("ul", { class: "found rows", "aria-label": label });
  const more = button(SHOW_MORE, () => draw(SLICE), { class: "plain wide" });
  let drawn = 0;
  function draw(count) {
    const next = values.slice(drawn, drawn + count);
    list.append(...next.map((value, place) => el("li", {}, row(value, drawn + place))));
    drawn += next.length;
    more.hidden = drawn >= values.length;
    list.dataset.drawn = drawn;
  }
  draw(Math.max(first, SLICE));
  new IntersectionObserver(
    (seen) => {
      if (seen.some((one) => one.isIntersecting) && more.isConnected) draw(SLICE);
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

/** The small picture of a photo; it comes when it is read. */
export function thumb(id, alt = "") {
  const image = el("img", { class: "thumb", alt, width: 64, height: 64 });
  photo(id).then((found) => {
    if (!found) return;
    const url = URL.createObjectURL(found.small);
    image.addEventListener("load", () => URL.revokeObjectURL(url), { once: true });
    image.src = url;
  });
  return image;
}
