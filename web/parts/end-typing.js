/** Ends typing, so that what stands in a field is saved before the screen goes. */
export function endTyping() {
  const active = /** @type {HTMLElement} */ (document.activeElement);
  if (active?.matches("input, textarea, select")) active.blur();
}
