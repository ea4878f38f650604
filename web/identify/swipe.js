/** A swipe across the piece at hand brings up the next one of those at hand. */
const FAR = 90; // pixels across
const EDGE = 28; // from the sides browsers go back and forward

/**
 * Hears of swipes to the left on this element; what is scrolled sideways keeps its own. `next` is
 * called for each.
 * @param {HTMLElement} on
 * @param {() => any} next
 */
export function swipes(on, next) {
  let from = null;
  on.addEventListener(
    "touchstart",
    ({ touches, target }) => {
      const { clientX: x, clientY: y } = touches[0];
      const inside = x > EDGE && x < innerWidth - EDGE;
      from = touches.length === 1 && inside && !sideways(target) ? { x, y } : null;
    },
    { passive: true },
  );
  on.addEventListener(
    "touchend",
    ({ changedTouches }) => {
      if (!from) return;
      const { clientX, clientY } = changedTouches[0];
      const across = from.x - clientX;
      if (across > FAR && Math.abs(clientY - from.y) < across / 3) next();
      from = null;
    },
    { passive: true },
  );
}

/** Whether it lies in something that is itself wider than it shows, or is typed in. */
function sideways(target) {
  for (let node = target; node && node.id !== "screen"; node = node.parentElement)
    if (node.scrollWidth > node.clientWidth + 1 && getComputedStyle(node).overflowX !== "visible")
      return true;
  return target.closest("input, select, textarea") !== null;
}
