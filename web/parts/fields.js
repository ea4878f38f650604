import { el } from "./element.js";
import { announce } from "./status.js";
import { SAVED_HERE } from "./first-words.js";

let count = 0;

/**
 * A labelled control that saves itself when it was changed. `commit()` gives true when saved, a
 * sentence when the value is not right, false when it could not be saved.
 */
export function field(label, control, commit, { hint = "" } = {}) {
  count += 1;
  control.id = `field-${count}`;
  const saved = el("span", { class: "saved" });
  const said = el("p", { class: "quiet", id: `said-${count}` }, hint);
  control.setAttribute("aria-describedby", said.id);
  let turns = 0;
  control.addEventListener("change", async () => {
    saved.textContent = "";
    const turn = (turns += 1);
    const done = await commit();
    if (turn !== turns) return; // it was changed again meanwhile
    const wrong = typeof done === "string";
    said.textContent = wrong ? done : hint;
    said.className = wrong ? "wrong" : "quiet";
    if (wrong) announce(done);
    control.toggleAttribute("aria-invalid", wrong);
    if (wrong) control.setAttribute("aria-invalid", "true");
    if (done === true) saved.textContent = SAVED_HERE;
  });
  return el(
    "div",
    { class: "field" },
    el("div", { class: "field-head" }, el("label", { for: control.id }, label), saved),
    control.matches("select") ? el("span", { class: "pick" }, control) : control,
    said,
  );
}

/** A line of text. */
export function textField(label, value, save, options = /** @type {any} */ ({})) {
  const { hint, ...props } = options;
  const control = el("input", { type: "text", autocomplete: "off", value, ...props });
  return field(label, control, () => save(control.value.trim()), { hint });
}

/** Several lines of text. */
export function longField(label, value, save) {
  const control = el("textarea", { rows: 3 }, value);
  return field(label, control, () => save(control.value.trim()));
}

/** One of a list: options [[value, label]]. */
export function choice(label, options, value, save, hint) {
  const control = el(
    "select",
    {},
    options.map(([key, name]) => el("option", { value: key, selected: key === value }, name)),
  );
  return field(label, control, () => save(control.value), { hint });
}

/** Ticks: options [[value, label]], `values` the ticked ones; saves the list of those ticked. */
export function ticks(label, options, values, save) {
  const boxes = options.map(([key]) =>
    el("input", { type: "checkbox", value: key, checked: values.includes(key) }),
  );
  const saved = el("span", { class: "saved" });
  let turns = 0;
  const commit = async () => {
    saved.textContent = "";
    const turn = (turns += 1);
    const done = await save(boxes.filter((box) => box.checked).map((box) => box.value));
    if (done === true && turn === turns) saved.textContent = SAVED_HERE;
  };
  for (const box of boxes) box.addEventListener("change", commit);
  return el(
    "fieldset",
    { class: "tick-list" },
    el("legend", {}, label, saved),
    options.map(([, name], place) => el("label", {}, boxes[place], name)),
  );
}
