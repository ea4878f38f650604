/** A table on the screen that comes little by little, and is whole on paper. */
import { button } from "../parts/element.js";
import { SHOW_MORE } from "../parts/first-words.js";

const ENOUGH = 100; // rows that come onto the screen at once

/**
 * Puts these bodies into a table. The browser lays it out as a whole: so on the screen a long one
 * has the first of them, and further ones whenever its end is scrolled to (`more`, a button there).
 * `whole()` puts all of them there, shown on paper only; it is done before the page is printed.
 */
export function unfolding(table, bodies) {
  const hidden = [...bodies];
  const end = table.tFoot;
  const whole = () => {
    for (const body of hidden) if (!body.isConnected) table.insertBefore(body, end);
  };
  const unfold = () => {
    for (let rows = 0; rows < ENOUGH && hidden.length > 0;) {
      const body = hidden.shift();
      body.classList.remove("later");
      if (!body.isConnected) table.insertBefore(body, end);
      rows += body.rows.length;
    }
    more.hidden = hidden.length === 0;
  };
  const more = button(SHOW_MORE, unfold, { class: "plain wide" });
  unfold();
  if (hidden.length === 0) return { more, whole };
  for (const body of hidden) body.classList.add("later");
  beforePaper(table, whole);
  const observer = new IntersectionObserver(
    (seen) => {
      if (!seen.some(({ isIntersecting }) => isIntersecting) || !more.isConnected) return;
      unfold();
      observer.unobserve(more); // it would say nothing as long as the end stays near
      observer.observe(more);
    },
    { rootMargin: "600px" },
  );
  observer.observe(more);
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
