/** A date or years as people write them; once saved, they stand there as they were understood. */
import { dateText, readDay } from "./days.js";
import { textField } from "./fields.js";
import { announce } from "./status.js";
import { savedAs } from "./words.js";
import { notSaved } from "./first-words.js";

/** `save` takes EDTF, "" for nothing. */
export function dateField(label, value, save, options = /** @type {any} */ ({})) {
  const read = async (text) => {
    const { day, wrong } = readDay(text);
    if (wrong !== "") return notSaved(wrong);
    const kept = await save(day);
    const words = dateText(day);
    if (kept === true && words !== text) {
      whole.querySelector("input").value = words;
      if (words !== "") announce(savedAs(words));
    }
    return kept;
  };
  const whole = textField(label, dateText(value ?? ""), read, options);
  return whole;
}
