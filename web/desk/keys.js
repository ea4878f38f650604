/**
 * The keyboard at a desk: what single keys do, the sheet that lists them, and their switch. Those
 * of the table are in grid.js, 1 to 9 at a question in web/identify/question.js (`keyChooses`).
 */
import { changeSettings } from "../data/settings.js";
import { el, heading } from "../parts/element.js";
import { sheet, sheetOpen } from "../parts/sheet.js";
import { goTo } from "../parts/navigation.js";
import { undoLast } from "../parts/saving.js";
import { KEYS, KEYS_OF, KEYS_WHILE_NOT_TYPING, USE_SINGLE_KEYS } from "./words.js";

const TYPING = "input, select, textarea, [contenteditable]";

/** Makes the keys work from now on. */
export function startKeys(state) {
  document.documentElement.dataset.keys = state.settings.keys ? "on" : "off";
  document.addEventListener("keydown", (event) => {
    const target = /** @type {Element} */ (event.target);
    if (event.defaultPrevented || event.altKey || sheetOpen() || target.closest(TYPING)) return;
    const act = event.ctrlKey || event.metaKey ? withCtrl(event) : alone(state, event);
    if (!act) return;
    event.preventDefault();
    act();
  });
}

function withCtrl({ key, shiftKey }) {
  const shelf = document.querySelector("#screen > .shelf") !== null;
  return key.toLowerCase() === "z" && !shiftKey && shelf ? undoLast : null;
}

function alone(state, { key }) {
  if (!state.settings.keys) return null;
  if (key === "?") return () => openKeys(state);
  if (key === "/") return () => search();
  const control = { Delete: "Delete", e: "e", E: "e" }[key];
  /** @type {HTMLElement} */
  const target = control && document.querySelector(`[data-key="${control}"]`);
  return target ? () => target.click() : null;
}

function search() {
  /** @type {HTMLInputElement} */
  const field = document.querySelector('#screen [type="search"]');
  if (field) field.select();
  else goTo("find").then(() => document.getElementById("everything")?.focus());
}

/** The sheet that lists the keys. */
export function openKeys(state) {
  const box = el("input", {
    type: "checkbox",
    checked: state.settings.keys,
    onchange: async () => {
      document.documentElement.dataset.keys = box.checked ? "on" : "off";
      await changeSettings({ keys: box.checked });
    },
  });
  sheet(
    KEYS,
    el("p", {}, KEYS_WHILE_NOT_TYPING),
    KEYS_OF.map(([title, keys]) => [
      heading(3, title),
      el(
        "dl",
        { class: "keys" },
        keys.map(([key, what]) => [el("dt", {}, key), el("dd", {}, what)]),
      ),
    ]),
    el("div", { class: "tick-list" }, el("label", {}, box, USE_SINGLE_KEYS)),
  );
}
