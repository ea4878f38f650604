/** A table on the screen that comes little by little, and is whole on paper. */
import { button } from "../parts/element.js";
import { SHOW_MORE } from "../parts/first-words.js";

const ENOUGH = 100; // rows that come onto the screen at first

/**
 * Puts these bodies into a table. The browser lays it out as a whole: so on the screen a long one
 * has the first of them, and one more whenever its end is scrolled to (`more`, a button there).
 * `whole()` puts all of them there, shown on paper only; it is done before the page is printed.
 */
export function unfolding(table, bodies) {
  const hidden = [...bodies];
  const end = table.tFoot;
  for (let rows = 0; rows < ENOUGH && hidden.length > 0;) {
    const body = hidden.shift();
    table.insertBefore(body, end);
    rows += body.rows.length;
  }
  const whole = () => {
    for (const body of hidden) if (!body.isConnected) table.insertBefore(body, end);
  };
  const unfold = () => {
    const next = hidden.shift();
    next?.classList.remove("later");
    if (next && !next.isConnected) table.insertBefore(next, end);
    more.hidden = hidden.length === 0;
  };
  const more = button(SHOW_MORE, unfold, { class: "plain wide", hidden: hidden.length === 0 });
  if (hidden.length === 0) return { more, whole };
  for (const body of hidden) body.classList.add("later");
  beforePaper(table, whole);
  new IntersectionObserver(
    (seen) => {
      if (seen.some(({ isIntersecting }) => isIntersecting) && more.isConnected) unfold();
    },
    { rootMargin: "600px" },
  ).observe(more);
  return { more, whole };
}

const wholes = new WeakMap();

/** Calls this before the page is printed, as long as the table is there; holds neither of them. */
function beforePaper(table, whole) {
  wholes.set(table, whole);
  const there = new WeakRef(table);
  const act = () => {
    const now = there.deref();
    if (now?.isConnected) wholes.get(now)();
    else removeEventListener("beforeprint", act);
  };
  addEventListener("beforeprint", act);
}
