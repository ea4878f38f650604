/**
 * The controls of the editor: what can be written in each field of a pack, with what is wrong
 * beside it.
 */
import { dateText } from "../parts/days.js";
import { button, el } from "../parts/element.js";
import { listed } from "./editor-draft.js";

export const YEARS = "1957, 1957~ (about), 1957? (uncertain), 1957/1961, 195X, ../1959 or 1958-03";
const SAID = "source years; source years";

/** The fields of each table: [name, label, sort, hint]. */
export const FIELDS = {
  range: [
    ["name", "Name", "text", "What people call the range"],
    ["maker", "Maker", "text"],
    ["gauge_mm", "Gauge in mm", "number"],
    ["scale", "Scale", "text"],
    ["material", "What the bodies are made of", "text", "May be left out"],
    ["country", "Country", "text", "Two capitals, such as GB"],
    ["years", "Life of the range", "years"],
    ["about", "About it", "long", "One paragraph, shown in the app"],
    ["invented", "This range was made up", "truth"],
  ],
  kinds: [
    ["id", "Id", "id"],
    ["name", "Name", "text"],
    ["plural", "Name of several", "text"],
  ],
  parts: [
    ["id", "Id", "id"],
    ["name", "Name", "text"],
    ["swap", "Chance that it was replaced", "number", "From 0 to 1, of pieces met at a stall"],
    ["replaced", "What a replaced one means for the price", "long"],
  ],
  cautions: [
    ["kinds", "For these kinds", "kinds", "None ticked: for every kind"],
    ["text", "Caution", "long"],
  ],
  feature: [
    ["id", "Id", "id"],
    ["name", "Name", "text", "Short, for lists"],
    ["question", "Question", "text"],
    ["where", "Where to look", "text"],
    ["part", "Part it is on", "one:parts", "None: on the piece itself, which cannot be swapped"],
    ["seconds", "Seconds it takes to look", "number"],
    ["needs", "What it needs", "needs"],
    ["kinds", "Kinds that have it", "kinds", "None ticked: every kind"],
    ["states", "What can be seen", "states"],
    ["mistaken", "Taken for one another", "pairs"],
    ["when", "Asked only where", "when"],
  ],
  sources: [
    ["id", "Id", "id"],
    ["what", "What it is", "text"],
    ["year", "Year", "years"],
    ["trust", "How far its years are to be trusted", "text", "From 0 to 1"],
  ],
  items: [
    ["number", "Number", "text", "As printed on the box end"],
    ["name", "Name", "text"],
    ["kind", "Kind", "one:kinds"],
    ["years", "Years", "years"],
    ["source", "Source of the years", "one:sources"],
    ["other_years", "What other sources say", "text", SAID],
    ["formation", "Formation", "text", "A name shared by pieces that belong together"],
    ["contains", "Contains (boxed set)", "text", "Numbers of items, separated by ;"],
    ["carried", "Printed on the piece", "text", "Running numbers or names, separated by ;"],
    ["note", "Note", "long"],
  ],
  variants: [
    ["id", "Id", "id"],
    ["item", "Item", "one:items"],
    ["name", "Name", "text"],
    ["years", "Years", "years", "Blank: as the item"],
    ["source", "Source of the years", "one:sources"],
    ["other_years", "What other sources say", "text", SAID],
    ["common", "How often it is met", "text", "1 is ordinary, 0.2 seldom"],
    ["note", "Note", "long"],
  ],
  changes: [
    ["feature", "Feature", "one:feature"],
    ["state", "State that was fitted", "state"],
    ["from", "From", "years", "Blank: since the range began"],
    ["to", "To", "years", "Blank: until the next change of the same feature"],
    ["kinds", "Only these kinds", "cell:kinds", "None ticked: every kind that has the feature"],
    ["items", "Only these items", "text", "Numbers, separated by ;"],
    ["source", "Source", "one:sources"],
    ["other_from", "What other sources say", "text", SAID],
    ["note", "Note", "long"],
  ],
  moves: [
    ["what", "What", "what"],
    ["from", "Was called", "text"],
    ["to", "Is called now", "text", "Blank: it is no more"],
    ["note", "Note", "long"],
  ],
};

const NEEDS = ["nothing", "loupe", "body off"];
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
 * A control for a field. `save` gets the new value, `typed` what is being typed before it is left.
 * @param {(now: any) => void} [typed]
 */
export function control(draft, entry, [name, , sort], save, props = {}, typed = () => {}) {
  const value = entry.fields[name];
  const text = value === undefined || value === null ? "" : String(value);
  const [what, table] = sort.split(":");
  if (what === "one") {
    const none = [["", "Not said"]];
    return select(
      text,
      [...none, ...optionsOf(draft, table)],
      (now) => save(now || blank(table)),
      props,
    );
  }
  if (what === "state")
    return select(text, [["", "Not said"], ...statesOf(draft, entry.fields.feature)], save, props);
  if (what === "needs")
    return select(
      text,
      NEEDS.map((one) => [one, one]),
      save,
      props,
    );
  if (what === "what")
    return select(
      text,
      [
        ["item", "item"],
        ["variant", "variant"],
      ],
      save,
      props,
    );
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
