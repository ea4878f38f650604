/**
 * The keyboard on the screen lies over the page (on an iPhone nothing else tells): what is being
 * typed in, and a sheet, stay above it.
 */
const LEAST = 80; // px: less is a bar of the browser's
const ROOM = 12;

/** Begins to follow it. */
export function followKeyboard() {
  window.visualViewport?.addEventListener("resize", follow);
}

function follow() {
  const { height, offsetTop, scale } = window.visualViewport;
  const under = scale > 1.01 ? 0 : Math.round(window.innerHeight - height - offsetTop);
  const covered = under < LEAST ? 0 : under;
  document.documentElement.style.setProperty("--covered", `${covered}px`);
  const field = document.activeElement;
  if (covered === 0 || !field.matches("input, textarea, select")) return;
  const { top, bottom } = field.getBoundingClientRect();
  const by = Math.max(bottom + ROOM - (offsetTop + height), Math.min(0, top - ROOM - offsetTop));
  if (by !== 0) (field.closest(".sheet-body") ?? window).scrollBy({ top: by });
}
