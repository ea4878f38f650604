/** One field of several records changed at once, with what it would change told before. */
import { record, setting } from "../data/records.js";
import { same } from "../data/record-shapes.js";
import { button, el } from "../parts/element.js";
import { choice, textField } from "../parts/fields.js";
import { moneyField } from "../parts/money-field.js";
import { sheet } from "../parts/sheet.js";
import { dateText, readDay } from "../parts/days.js";
import { valueText } from "../parts/field-words.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { redraw } from "../parts/navigation.js";
import {
  AND_OTHERS,
  BOX,
  BOXED_OR_NOT,
  CHANGE,
  changeCount,
  changeThese,
  changeTo,
  CHOOSE,
  CHOOSE_A_FIELD_FIRST,
  CONDITION,
  CONDITION_OF_THE_BOX,
  countChanged,
  EMPTY_IT,
  HOW_URGENT,
  itAlready,
  KEEP_BOTH,
  KEPT_AS,
  KEPT_AS_WHAT,
  LOWEST_CONDITION,
  MOST_TO_PAY,
  NOT_NOTED,
  NOTES,
  nothingChanges,
  nowThere,
  ONLY_WITH_ITS_BOX,
  PRICE_PAID,
  URGENCIES,
  WHAT_TO_ASK_FOR_IT,
  WHEN_IT_WAS_BOUGHT,
  WHERE_IT_WAS_BOUGHT,
  WHICH_FIELD,
  YES_OR_NO,
} from "./words.js";

const NOTHING = Symbol("nothing chosen yet");

/**
 * The fields that can be changed together: [id, label, control(app, label, take)]; `take` gets the
 * value.
 */
const FIELDS = {
  piece: [
    ["condition", CONDITION, scale],
    ["boxed", BOX, list(BOXED_OR_NOT)],
    ["box_condition", CONDITION_OF_THE_BOX, scale],
    ["where", WHERE_IT_WAS_BOUGHT, text],
    ["when", WHEN_IT_WAS_BOUGHT, day],
    ["paid", PRICE_PAID, money],
    ["asking", WHAT_TO_ASK_FOR_IT, money],
    ["purpose", KEPT_AS, list(KEPT_AS_WHAT)],
    ["kept", KEEP_BOTH, list(YES_OR_NO, (value) => value === "yes")],
    ["notes", NOTES, text],
  ],
  want: [
    ["least", LOWEST_CONDITION, scale],
    ["box", ONLY_WITH_ITS_BOX, list(YES_OR_NO)],
    ["most", MOST_TO_PAY, money],
    ["urgency", HOW_URGENT, list(URGENCIES, Number)],
    ["notes", NOTES, text],
  ],
};

function list(options, read = (value) => value) {
  const open = [["?", CHOOSE], ...options.map(([key, name]) => [`=${key}`, name])];
  return (_app, label, take) =>
    choice(label, open, "?", (value) => take(value === "?" ? NOTHING : read(value.slice(1))));
}

function scale(state, label, take) {
  const words = state.engine.conditions().map((word) => [word, word]);
  return list([["", NOT_NOTED], ...words])(state, label, take);
}

function text(_app, label, take) {
  const whole = textField(label, "", take);
  const control = whole.querySelector("input");
  control.addEventListener("input", () => take(control.value.trim()));
  return emptied(whole, "", take);
}

function money(state, label, take) {
  return emptied(moneyField(state, label, null, take), null, take);
}

function day(_app, label, take) {
  const read = (typed) => {
    const { day: date, wrong } = readDay(typed);
    take(wrong === "" ? date : NOTHING);
    return wrong === "" ? false : wrong;
  };
  return emptied(textField(label, "", read), "", take);
}

/** What is typed, or nothing at all. */
function emptied(whole, nothing, take) {
  return [whole, button(EMPTY_IT, () => take(nothing), { class: "plain" })];
}

/** The sheet where a field of these records is changed. `one`: piece or want. */
export function openBulk(state, ids, kind) {
  const records = ids.map(record).filter((kept) => kept && kept.trashed === "");
  const below = el("div", { class: "stack" });
  const said = el("p", { role: "status" });
  const save = button(CHANGE, () => apply(), { class: "main wide" });
  let field = "";
  let value = NOTHING;

  const take = (given) => {
    value = given;
    preview();
    return false;
  };

  function chosen(id) {
    field = id;
    value = NOTHING;
    const entry = FIELDS[kind].find(([name]) => name === id);
    below.replaceChildren(...(entry ? [entry[2](state, entry[1], take)].flat() : []));
    preview();
    return false;
  }

  function changing() {
    return records.filter((kept) => !same(kept[field] ?? null, value));
  }

  function preview() {
    const some = value === NOTHING ? [] : changing();
    save.textContent = some.length === 0 ? CHANGE : changeCount(some.length);
    said.textContent = value === NOTHING ? "" : previewText(state, records, some, field, value);
  }

  function apply() {
    const some = value === NOTHING ? [] : changing();
    if (some.length === 0) {
      if (value === NOTHING) said.textContent = CHOOSE_A_FIELD_FIRST;
      return;
    }
    const [, name] = FIELDS[kind].find(([id]) => id === field);
    const edits = some.map((kept) => setting(kept.id, field, kept[field] ?? null, value));
    shut();
    run(async () => {
      const counted = `${some.length} ${some.length === 1 ? kind : `${kind}s`}`;
      const what = countChanged(name, counted);
      if (await saveChange(what, edits, { said: `${what}.` })) await redraw();
    });
  }

  const shut = sheet(
    changeThese(records.length, records.length === 1 ? kind : `${kind}s`),
    choice(
      WHICH_FIELD,
      [["", CHOOSE], ...FIELDS[kind].map(([id, label]) => [id, label])],
      "",
      chosen,
    ),
    below,
    said,
    save,
  );
}

function previewText(state, records, some, field, value) {
  const to = field === "when" ? dateText(value) : valueText(state, value);
  const there = records.length - some.length;
  if (some.length === 0) return nothingChanges(records.length);
  const before = new Map();
  for (const kept of some) {
    const held = valueText(state, kept[field]);
    before.set(held, (before.get(held) ?? 0) + 1);
  }
  const most = [...before].sort((a, b) => b[1] - a[1]).slice(0, 4);
  const left = before.size > most.length ? AND_OTHERS : "";
  const had = nowThere(most.map(([held, count]) => `${held} (${count})`).join(", "), left);
  const rest = there === 0 ? "" : itAlready(there, there === 1 ? "has" : "have");
  return changeTo(some.length, records.length, to, rest, had);
}
