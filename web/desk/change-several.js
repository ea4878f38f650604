/** One field of several records changed at once, with what it would change told before. */
import { record, setting } from "../data/records.js";
import { same } from "../data/record-shapes.js";
import { button, el } from "../parts/element.js";
import { choice, textField } from "../parts/fields.js";
import { moneyField } from "../parts/money.js";
import { sheet } from "../parts/sheet.js";
import { dateText, readDay } from "../parts/days.js";
import { valueText } from "../parts/field-words.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { redraw } from "../parts/navigation.js";

const NOTHING = Symbol("nothing chosen yet");
const BOXED = [
  ["", "Not noted"],
  ["yes", "Boxed"],
  ["no", "No box"],
];
const PURPOSE = [
  ["", "Part of the collection"],
  ["spare", "A spare, for parts"],
  ["donor", "A donor: parts taken from it"],
];
const YES = [
  ["", "No"],
  ["yes", "Yes"],
];
const URGENCY = [
  ["3", "Urgent"],
  ["2", "Ordinary"],
  ["1", "No hurry"],
];

/**
 * The fields that can be changed together: [id, label, control(app, label, take)]; `take` gets the
 * value.
 */
const FIELDS = {
  piece: [
    ["condition", "Condition", scale],
    ["boxed", "Box", list(BOXED)],
    ["box_condition", "Condition of the box", scale],
    ["where", "Where it was bought", text],
    ["when", "When it was bought", day],
    ["paid", "Price paid", money],
    ["asking", "What to ask for it", money],
    ["purpose", "Kept as", list(PURPOSE)],
    ["kept", "Keep both", list(YES, (value) => value === "yes")],
    ["notes", "Notes", text],
  ],
  want: [
    ["least", "Lowest condition", scale],
    ["box", "Only with its box", list(YES)],
    ["most", "Most to pay", money],
    ["urgency", "How urgent", list(URGENCY, Number)],
    ["notes", "Notes", text],
  ],
};

function list(options, read = (value) => value) {
  const open = [["?", "Choose"], ...options.map(([key, name]) => [`=${key}`, name])];
  return (_app, label, take) =>
    choice(label, open, "?", (value) => take(value === "?" ? NOTHING : read(value.slice(1))));
}

function scale(state, label, take) {
  const words = state.engine.conditions().map((word) => [word, word]);
  return list([["", "Not noted"], ...words])(state, label, take);
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
    const { day: found, wrong } = readDay(typed);
    take(wrong === "" ? found : NOTHING);
    return wrong === "" ? false : wrong;
  };
  return emptied(textField(label, "", read), "", take);
}

/** What is typed, or nothing at all. */
function emptied(whole, nothing, take) {
  return [whole, button("Empty it", () => take(nothing), { class: "plain" })];
}

/** The sheet where a field of these records is changed. `one`: piece or want. */
export function openBulk(state, ids, one) {
  const records = ids.map(record).filter((found) => found && found.trashed === "");
  const below = el("div", { class: "stack" });
  const said = el("p", { role: "status" });
  const save = button("Change", () => apply(), { class: "main wide" });
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
    const found = FIELDS[one].find(([name]) => name === id);
    below.replaceChildren(...(found ? [found[2](state, found[1], take)].flat() : []));
    preview();
    return false;
  }

  function changing() {
    return records.filter((found) => !same(found[field] ?? null, value));
  }

  function preview() {
    const some = value === NOTHING ? [] : changing();
    save.textContent = some.length === 0 ? "Change" : `Change ${some.length}`;
    said.textContent = value === NOTHING ? "" : previewText(state, records, some, field, value);
  }

  function apply() {
    const some = value === NOTHING ? [] : changing();
    if (some.length === 0) {
      if (value === NOTHING) said.textContent = "Choose a field and what to set it to first.";
      return;
    }
    const [, name] = FIELDS[one].find(([id]) => id === field);
    const edits = some.map((found) => setting(found.id, field, found[field] ?? null, value));
    shut();
    run(async () => {
      const counted = `${some.length} ${some.length === 1 ? one : `${one}s`}`;
      const what = `${name} of ${counted} changed`;
      if (await saveChange(what, edits, { said: `${what}.` })) await redraw();
    });
  }

  const shut = sheet(
    `Change ${records.length} ${records.length === 1 ? one : `${one}s`}`,
    choice(
      "Which field",
      [["", "Choose"], ...FIELDS[one].map(([id, label]) => [id, label])],
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
  if (some.length === 0) return `Nothing changes: all ${records.length} have it already.`;
  const before = new Map();
  for (const found of some) {
    const held = valueText(state, found[field]);
    before.set(held, (before.get(held) ?? 0) + 1);
  }
  const most = [...before].sort((a, b) => b[1] - a[1]).slice(0, 4);
  const left = before.size > most.length ? ", and others" : "";
  const had = `Now there: ${most.map(([held, count]) => `${held} (${count})`).join(", ")}${left}.`;
  const rest = there === 0 ? "" : ` ${there} ${there === 1 ? "has" : "have"} it already.`;
  return `${some.length} of ${records.length} change to: ${to}.${rest} ${had}`;
}
