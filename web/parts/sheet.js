import { button, el, heading } from "./element.js";
import { CLOSE } from "./first-words.js";

let open = null;

/**
 * Opens a sheet from the bottom with a title, content and a Close button. Gives a function that
 * shuts it.
 */
export function sheet(title, ...content) {
  closeSheet();
  const top = heading(2, title, { id: "sheet-title", autofocus: true });
  const dialog = el(
    "dialog",
    { class: "sheet", "aria-labelledby": "sheet-title" },
    el("div", { class: "sheet-body" }, top, ...content),
    el(
      "div",
      { class: "sheet-foot" },
      button(CLOSE, () => dialog.close(), { class: "plain" }),
    ),
  );
  dialog.addEventListener("click", (event) => {
    if (event.target === dialog) dialog.close();
  });
  dialog.addEventListener("close", () => {
    if (open === dialog) open = null;
    dialog.remove();
  });
  document.body.append(dialog);
  open = dialog;
  dialog.showModal();
  return () => dialog.close();
}

/** Shuts the sheet that is open; false when none is. */
export function closeSheet() {
  if (!open) return false;
  open.close();
  return true;
}

/** Is a sheet open? */
export function sheetOpen() {
  return open !== null;
}
