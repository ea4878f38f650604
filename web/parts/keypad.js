/** Large keys of our own for what is typed at a stall: numbers, prices, tables. */
import { button, el } from "./element.js";
import { KEY_NAMES, KEYS } from "./first-words.js";

const TOUCHED = matchMedia("(pointer: coarse)");
let open = null;
let entered = null; // the field that the keys are for
let touching = false;

document.addEventListener("pointerdown", () => (touching = true), { capture: true });
for (const end of ["pointerup", "pointercancel"])
  document.addEventListener(end, () => (touching = false), { capture: true });
document.addEventListener("focusin", ({ target }) => open && target !== entered && leave(open));

/**
 * Gives a field a keypad where there is a finger and no mouse. `keys`: what can be typed, a list of
 * characters, asked for when the field is entered.
 */
export function withKeypad(field, keys) {
  let before = "";
  const plain = field.inputMode;
  field.dataset.keypad = "";
  field.inputMode = TOUCHED.matches ? "none" : plain;
  field.addEventListener("focus", () => {
    if (!TOUCHED.matches || field.inputMode !== "none") return;
    before = field.value;
    shut();
    entered = field;
    open = keypad(field, keys(), plain);
    (field.closest("dialog") ?? document.body).append(open);
    document.body.classList.add("keying");
  });
  field.addEventListener("blur", () => {
    if (field.inputMode === "none") leave(open);
    else if (TOUCHED.matches) field.inputMode = "none";
    if (field.dataset.keyed === undefined) return;
    delete field.dataset.keyed;
    if (field.value !== before) field.dispatchEvent(new Event("change", { bubbles: true }));
  });
  return field;
}

function shut() {
  open?.remove();
  open = null;
  document.body.classList.remove("keying");
}

/** The next field on the screen that has keys; null for none. */
function following(field) {
  const within = field.closest("dialog") ?? document.getElementById("screen");
  const all = [...within.querySelectorAll("[data-keypad]")];
  return all[all.indexOf(field) + 1] ?? null;
}

/** The tap that leaves the field meets what it was meant for: until then nothing moves. */
function leave(pad) {
  if (touching) setTimeout(() => pad === open && shut(), 300);
  else shut();
}

function keypad(field, keys, plain) {
  const key = (sign) =>
    button(sign, () => pressed(field, sign, plain), {
      class: KEY_NAMES[sign] ? `key wide-key key-${sign}` : "key",
      "aria-label": KEY_NAMES[sign] ?? null,
    });
  // the field keeps the focus: what is typed stands where the keys put it
  return el(
    "div",
    {
      class: "keypad",
      role: "region",
      "aria-label": KEYS,
      onpointerdown: (event) => event.preventDefault(),
      onmousedown: (event) => event.preventDefault(),
    },
    [...keys, ...Object.keys(KEY_NAMES).filter((sign) => sign !== "Next" || following(field))].map(
      key,
    ),
  );
}

function pressed(field, sign, plain) {
  if (sign === "Done") return field.blur();
  if (sign === "Next") return following(field)?.focus();
  if (sign === "abc") {
    shut();
    field.inputMode = plain || "text";
    field.blur();
    field.inputMode = plain || "text";
    field.focus();
    return;
  }
  const [from, to] = [field.selectionStart, field.selectionEnd];
  if (sign === "⌫") field.setRangeText("", from === to ? Math.max(0, from - 1) : from, to, "end");
  else field.setRangeText(sign, from, to, "end");
  field.dataset.keyed = "";
  field.dispatchEvent(new Event("input", { bubbles: true }));
}

/** The keys for a price: 4.50, £4 or 12/6. */
export function priceKeys() {
  return [..."1234567890./£"];
}

const MOST = 14;
const lettersOf = new WeakMap();

/** The keys for the numbers of a range: the figures, and the letters that its numbers have. */
export function numberKeys(pack) {
  if (!lettersOf.has(pack)) {
    const counts = new Map();
    for (const { number } of pack.items)
      for (const sign of new Set(number.toUpperCase().replace(/[\d\s]/g, "")))
        counts.set(sign, (counts.get(sign) ?? 0) + 1);
    const signs = [...counts].sort((a, b) => b[1] - a[1]).slice(0, MOST);
    lettersOf.set(pack, signs.map(([sign]) => sign).sort());
  }
  return [..."1234567890", ...lettersOf.get(pack)];
}
