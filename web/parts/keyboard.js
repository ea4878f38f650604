/**
 * The keyboard on the screen lies over the page (on an iPhone nothing else tells): what is being
 * typed in, and a sheet, stay above it.
 *
 *   --keyboard  how high it is
 *   --covered   how much of the page's own window it covers: less where what is seen was moved down
 */
const LEAST = 80; // px: less is a bar of the browser's
const ROOM = 12;

/** Begins to follow it. */
export function followKeyboard() {
  const view = window.visualViewport;
  view?.addEventListener("resize", () => measured() > 0 && reveal());
  view?.addEventListener("scroll", measured); // an iPhone moves what is seen over the page
}

function measured() {
  const { height, offsetTop, scale } = window.visualViewport;
  const under = scale > 1.01 ? 0 : Math.round(window.innerHeight - height);
  const keyboard = under < LEAST ? 0 : under;
  const { style } = document.documentElement;
  style.setProperty("--keyboard", `${keyboard}px`);
  style.setProperty("--covered", `${Math.max(0, keyboard - Math.round(offsetTop))}px`);
  return keyboard;
}

/** What is being typed in is brought in sight, of a sheet above its foot. */
function reveal() {
  const { height, offsetTop } = window.visualViewport;
  const field = document.activeElement;
  if (!field.matches("input, textarea, select")) return;
  const sheet = field.closest(".sheet-body");
  const within = sheet?.getBoundingClientRect() ?? { top: 0, bottom: Infinity };
  const [first, last] = [
    Math.max(offsetTop, within.top),
    Math.min(offsetTop + height, within.bottom),
  ];
  const { top, bottom } = field.getBoundingClientRect();
  const by = Math.max(bottom + ROOM - last, Math.min(0, top - ROOM - first));
  if (by !== 0) (sheet ?? window).scrollBy({ top: by });
}
