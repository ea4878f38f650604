import { el } from "./element.js";
import { field } from "./fields.js";
import { notSaved, MONEY_PROBLEMS } from "./first-words.js";
import { priceKeys, withKeypad } from "./keypad.js";
import { moneyText } from "./money.js";

/** Where money is typed, with large keys for it. */
export function moneyInput({ engine }, value) {
  const control = el("input", {
    type: "text",
    autocomplete: "off",
    autocapitalize: "off",
    spellcheck: "false",
    value: value ? value.typed || moneyText(engine, value) : "",
  });
  return withKeypad(control, priceKeys);
}

/** A field for money. What cannot be read stays in the field, with a sentence, and is not saved. */
export function moneyField(state, label, value, save, hint = "") {
  const control = moneyInput(state, value);
  return field(
    label,
    control,
    () => {
      const { money, problem } = state.engine.read_money(control.value, state.settings.currency);
      if (problem !== "" && problem !== "empty") return notSaved(MONEY_PROBLEMS[problem]);
      return save(problem === "" ? money : null);
    },
    { hint },
  );
}
