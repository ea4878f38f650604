/** Marks what the line of the first steps names, and brings it into view. */
const NAMED = /“(.+?)”/;
const MARK = "guide-mark";
const EDGE = 12; // px between what is marked and the edge of what can be seen
const BARS = ".unsure, .finish, #places";

/**
 * Marks what a line speaks of, and scrolls to it where it has not been marked before. `tap`: the
 * answer of that name; `at`: a selector; neither: whatever is called as the line says in quotation
 * marks. Nothing is marked where
 * the screen has no such thing.
 */
export function point({ text, at = "", tap = "" }) {
  const root = document.querySelector("dialog.sheet") ?? document.body;
  const node = tap === "" ? named(root, text, at) : answer(root, tap);
  const before = document.querySelector(`.${MARK}`);
  if (before === node) return;
  before?.classList.remove(MARK);
  if (!node) return;
  node.classList.add(MARK);
  if (root.matches("dialog")) node.scrollIntoView({ block: "nearest" });
  else show(node);
}

function answer(root, name) {
  return [...root.querySelectorAll("main .state")].find(
    (choice) => (choice.querySelector(".name") ?? choice).textContent.trim() === name,
  );
}

function named(root, text, at) {
  if (at !== "") return root.querySelector(at);
  const name = text.match(NAMED)?.[1];
  const all = root.querySelectorAll("main button, main summary, main label, dialog button");
  const match = [...all].find((node) => node.textContent.trim() === name);
  return match?.closest(".field") ?? match ?? null;
}

/** Scrolls no further than is needed, so that what stands beside it stays in view. */
function show(node) {
  const guide = document.getElementById("guide");
  const { top, bottom } = node.getBoundingClientRect();
  const stays = getComputedStyle(guide).top === "0px";
  const least = (stays ? guide.offsetHeight : 0) + EDGE;
  const bar = node.closest(BARS);
  const inBar = bar !== null && atBottom(bar);
  const most = inBar ? innerHeight : lowest() - EDGE;
  if (top < least && !inBar) scrollBy(0, top - least);
  else if (bottom > most) scrollBy(0, Math.min(bottom - most, top - least));
}

/** Whether a bar stays at the bottom of the window. */
function atBottom(bar) {
  const { position, bottom } = getComputedStyle(bar);
  return ["sticky", "fixed"].includes(position) && bottom !== "auto" && !bottom.startsWith("-");
}

/** Where the bars begin that stay at the bottom of the window. */
function lowest() {
  const bars = [.../** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(BARS))];
  return bars.filter(atBottom).reduce((top, bar) => top - bar.offsetHeight, innerHeight);
}
