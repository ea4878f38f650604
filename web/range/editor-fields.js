/**
 * The controls of the editor: what can be written in each field of a pack, with what is wrong
 * beside it.
 */
import { dateText } from "../parts/days.js";
import { button, el } from "../parts/element.js";
import { listed } from "./editor-draft.js";

export const YEARS = "1957, 1957~ (about), 1957? (uncertain), 1957/1961, 195X, ../1959 or 1958-03";

const NAMED = { items: "number" };

/** What an entry is called in lists: [name, more]. */
export function entryName(draft, table, { fields }) {
  const text = (name) => String(fields[name] ?? "");
  if (table === "items") return [`${text("number")} ${text("name")}`, readYears(text("years"))];
  if (table === "variants") return [`${text("item")}: ${text("name")}`, readYears(text("years"))];
  if (table === "changes") {
    const from = text("from") === "" ? "since the range began" : `from ${readYears(text("from"))}`;
    return [
      `${nameOf(draft, "feature", text("feature"))}: ` +
        `${stateName(draft, text("feature"), text("state"))}`,
      from,
    ];
  }
  if (table === "sources") return [text("what") || text("id"), text("id")];
  if (table === "cautions") return [text("text"), ""];
  if (table === "moves") return [`${text("from")} → ${text("to") || "no more"}`, text("what")];
  return [text("name") || text("id"), text("id")];
}

/** Years as people say them; "" for none. */
export function readYears(text) {
  return text === "" ? "" : dateText(text);
}

function nameOf(draft, table, id) {
  const found = draft.entries(table).find(({ fields }) => fields[NAMED[table] ?? "id"] === id);
  return found?.fields.name || id;
}

function stateName(draft, feature, state) {
  const found = draft.entries("feature").find(({ fields }) => fields.id === feature);
  return listed(found?.fields.states).find(({ id }) => id === state)?.name ?? state;
}

/** [[value, label]] of what a table holds, to choose from. */
export function optionsOf(draft, table) {
  return draft.entries(table).map(({ fields }) => {
    const id = fields[NAMED[table] ?? "id"] ?? "";
    return [
      id,
      table === "items" ? `${id} ${fields.name ?? ""}` : `${fields.name ?? fields.what ?? id}`,
    ];
  });
}

/** A select with these options, and whatever else stands there now. */
export function select(value, options, save, props = {}) {
  const there = options.some(([key]) => key === value) ? options : [...options, [value, value]];
  const node = el(
    "select",
    { ...props, onchange: () => save(node.value) },
    there.map(([key, label]) =>
      el("option", { value: key, selected: key === value }, label || "–"),
    ),
  );
  return node;
}

/**
 * A control for a field, as the server tells it: [name, label, sort, hint]. `save` gets the new
 * value, `typed` what is being typed before it is left.
 * @param {(now: any) => void} [typed]
 */
export function control(draft, entry, [name, , sort], save, props = {}, typed = () => {}) {
  const value = entry.fields[name];
  const text = value === undefined || value === null ? "" : String(value);
  const [what, table] = sort.split(":");
  if (what === "one") {
    const none = [["", "Not noted"]];
    return select(
      text,
      [...none, ...optionsOf(draft, table)],
      (now) => save(now || blank(table)),
      props,
    );
  }
  if (what === "state")
    return select(text, [["", "Not noted"], ...statesOf(draft, entry.fields.feature)], save, props);
  if (what === "words") {
    const words = table.split("|").map((one) => [one, one]);
    return select(text, words, save, props);
  }
  if (what === "long") {
    const now = () => area.value.trim();
    const area = el(
      "textarea",
      { rows: 2, ...props, onchange: () => save(now()), oninput: () => typed(now()) },
      text,
    );
    return area;
  }
  const now = () => (what === "number" ? numbered(input.value.trim()) : input.value.trim());
  const input = el("input", {
    type: "text",
    autocomplete: "off",
    spellcheck: what === "id" || what === "years" ? "false" : null,
    autocapitalize: what === "id" || what === "years" ? "off" : null,
    inputmode: what === "number" ? "decimal" : null,
    value: text,
    ...props,
    onchange: () => save(now()),
    oninput: () => typed(now()),
  });
  return input;
}

/** In TOML a part that is not said is left out; in a table the cell is blank. */
function blank(table) {
  return table === "parts" ? null : "";
}

function numbered(text) {
  const number = Number(text.replace(",", "."));
  return text !== "" && Number.isFinite(number) ? number : text;
}

/** The states of a feature, as options; `none` is always one. */
export function statesOf(draft, id) {
  const found = draft.entries("feature").find(({ fields }) => fields.id === id);
  const states = listed(found?.fields.states).map((state) => [state.id, state.name]);
  return states.some(([key]) => key === "none") ? states : [...states, ["none", "There is none"]];
}

/** Ticks for a list of ids; `save` gets the list. */
export function tickList(legend, options, values, save, hint = "") {
  const boxes = options.map(([key]) =>
    el("input", {
      type: "checkbox",
      value: key,
      checked: values.includes(key),
      onchange: () => save(boxes.filter((box) => box.checked).map((box) => box.value)),
    }),
  );
  return el(
    "fieldset",
    { class: "tick-list" },
    el("legend", {}, legend),
    hint === "" ? null : el("p", { class: "quiet" }, hint),
    options.map(([, label], place) => el("label", {}, boxes[place], label)),
  );
}

/** What a cell says of a feature: blank, not recorded, one state, or one of several. */
export function cellControl(draft, entry, feature, save, props) {
  const states = statesOf(draft, feature.id);
  const text = String(entry.fields[feature.id] ?? "");
  const several = text.includes("|");
  const box = el("div", {});
  const ticks = () =>
    tickList(
      "One of these",
      states,
      text.split("|").map((one) => one.trim()),
      (now) => save(now.join("|")),
    );
  const choice = select(
    several ? "|" : text,
    [
      ["", "As the item or the running changes say"],
      ["?", "Not recorded"],
      ...states,
      ["|", "One of several…"],
    ],
    (now) => {
      if (now === "|") box.replaceChildren(ticks());
      else {
        box.replaceChildren();
        save(now);
      }
    },
    props,
  );
  if (several) box.append(ticks());
  return { control: choice, below: box };
}

/** A list of rows that can be added to and taken from; `row(value, place)` draws one. */
export function rowList(label, values, row, more, fresh, save) {
  return el(
    "fieldset",
    { class: "tick-list editor-rows" },
    el("legend", {}, label),
    values.map((value, place) =>
      el(
        "div",
        { class: "editor-row" },
        row(value, place, (now) => save(values.map((one, at) => (at === place ? now : one)))),
        button("Take away", () => save(values.filter((_, at) => at !== place)), {
          class: "plain",
          "aria-label": `Take away: ${label}, ${place + 1}`,
        }),
      ),
    ),
    button(more, () => save([...values, fresh]), { class: "plain" }),
  );
}
