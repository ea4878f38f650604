/**
 * One entry of a pack as a form: a control for each field, with what is wrong and what it reads as.
 */
import { drawing } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { sheet } from "../parts/sheet.js";
import { announce } from "../parts/status.js";
import { questionCard } from "../identify/question.js";
import { listed } from "./editor-draft.js";
import {
  YEARS,
  cellControl,
  control,
  optionsOf,
  readYears,
  rowList,
  select,
  statesOf,
  tickList,
} from "./editor-fields.js";
import { run } from "../data/queue.js";
import { goTo, redraw } from "../parts/navigation.js";

const FIXED = ["sources", "kinds", "parts", "feature"]; // whose ids stay once they are in a file
const NOTHING = { answers: [], scope: { kind: "", items: [] }, able: [], missing: [] };
let count = 0;

/** {nodes, told: shows what is wrong at the fields}. */
export function entryForm(draft, table, key) {
  const places = new Map(); // field -> what shows its mistakes
  const general = el("div", {});
  const entry = draft.entry(table, key);
  const set = (name, value) => draft.set(table, key, name, value);
  const anew = (name, value) =>
    run(async () => {
      set(name, value);
      await redraw();
    });
  const context = { draft, table, key, entry, set, anew, places };
  const fields = draft.model.fields[table].map((field) => oneField(context, field)).filter(Boolean);
  const told = () => {
    const mine = draft.mistakes.filter((one) => one.table === table && one.key === key);
    for (const [name, place] of places)
      show(
        place,
        mine.filter((one) => one.column === name),
      );
    const rest = mine.filter((one) => !places.has(one.column));
    general.replaceChildren(...rest.map((one) => el("p", { class: "wrong" }, one.text)));
  };
  const extra = table === "items" || table === "variants" ? lookedAt(context) : null;
  return {
    told,
    nodes: [
      general,
      table === "items" ? variantsLink(context) : null,
      ...fields,
      extra,
      drawingsOf(context),
      table === "feature"
        ? button("Show the question as the phone does", () => preview(draft, key, table), {
            class: "plain wide",
          })
        : null,
    ],
  };
}

function show({ box, control: one }, mistakes) {
  box.replaceChildren(...mistakes.map(({ text }) => el("p", { class: "wrong" }, text)));
  if (!one) return;
  one.toggleAttribute("aria-invalid", mistakes.length > 0);
  if (mistakes.length > 0) one.setAttribute("aria-invalid", "true");
}

/** A label, a control, what it reads as, and the place for what is wrong with it. */
function labelled({ places }, name, label, one, { hint = "", words = null, below = null } = {}) {
  count += 1;
  one.id = `editor-${count}`;
  const box = el("div", { id: `editor-wrong-${count}` });
  const said = el("p", { class: "quiet", id: `editor-hint-${count}` }, hint);
  one.setAttribute("aria-describedby", `${said.id} ${box.id}`);
  places.set(name, { box, control: one });
  return el(
    "div",
    { class: "field" },
    el("div", { class: "field-head" }, el("label", { for: one.id }, label)),
    one.matches("select") ? el("span", { class: "pick" }, one) : one,
    words,
    said,
    below,
    box,
  );
}

function oneField(context, field) {
  const { draft, table, entry, set, anew, places } = context;
  const [name, label, sort, hint = ""] = field;
  const value = entry.fields[name];
  const grouped = (node) => {
    const box = el("div", {});
    places.set(name, { box });
    return el("div", {}, node, box);
  };
  if (sort === "kinds" || sort === "cell:kinds") {
    const cell = sort !== "kinds";
    const values = cell
      ? String(value ?? "")
          .split(";")
          .map((one) => one.trim())
      : listed(value);
    const save = (now) => set(name, cell ? now.join(";") : now.length > 0 ? now : null);
    return grouped(tickList(label, optionsOf(draft, "kinds"), values, save, hint));
  }
  if (sort === "truth") {
    const save = (now) => set(name, now.length > 0 ? true : null);
    return grouped(tickList("Is it real?", [["yes", label]], value === true ? ["yes"] : [], save));
  }
  if (sort === "states") return grouped(stateRows(context, label, listed(value)));
  if (sort === "pairs") return grouped(pairRows(context, label, listed(value)));
  if (sort === "when") return grouped(whenRows(context, value ?? {}));
  const fixed = sort === "id" && FIXED.includes(table) && !entry.added;
  const words =
    sort === "years" ? el("p", { class: "quiet reads" }, readYears(String(value ?? ""))) : null;
  const typed = (now) => {
    draft.set(table, context.key, name, now === "" && leftOut(table, field) ? null : now, true);
    if (words) words.textContent = readYears(String(now));
  };
  const save = (now) => {
    typed(now);
    if (name === "feature" || name === "kind") anew(name, now);
    if (name === "name" && entry.added) suggestId(context, now);
  };
  const one = control(draft, entry, field, save, { readonly: fixed }, typed);
  const about = fixed
    ? "Stays as it is: saved pieces hold it"
    : sort === "years"
      ? [hint, YEARS].filter(Boolean).join(". ")
      : hint;
  return labelled(context, name, label, one, { hint: about, words });
}

/** In TOML, what is not needed and blank is not written. */
function leftOut(table, [name]) {
  return (
    ["caption", "title"].includes(name) ||
    (["material", "replaced"].includes(name) && ["range", "parts"].includes(table))
  );
}

/** An id made of the name, until one is written. */
function suggestId({ draft, table, key, anew }, name) {
  const { fields } = draft.entry(table, key);
  if (!("id" in fields) || fields.id !== "") return;
  const stem = table === "variants" ? `${fields.item} ${name}` : name;
  const id = slug(stem).slice(0, 30).replace(/_$/, "");
  if (id !== "") anew("id", id);
}

function slug(text) {
  const plain = text
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase();
  return plain
    .replace(/[^a-z0-9]+/g, "_")
    .replace(/^_+|_+$/g, "")
    .replace(/^(?=\d)/, "x");
}

function variantsLink({ draft, entry }) {
  const { number } = entry.fields;
  const found = draft.entries("variants").filter(({ fields }) => fields.item === number);
  return button(
    `Its variants (${found.length})`,
    () => goTo("editor", { pack: draft.id, table: "variants", of: number }),
    { class: "plain wide" },
  );
}

/** What can be seen on an item or a variant, feature by feature. */
function lookedAt(context) {
  const { draft, table, entry, set } = context;
  const item =
    table === "items"
      ? entry
      : draft.entries("items").find(({ fields }) => fields.number === entry.fields.item);
  const kind = item?.fields.kind ?? "";
  const having = draft
    .entries("feature")
    .map(({ fields }) => fields)
    .filter(({ id, kinds }) => id && (!Array.isArray(kinds) || kinds.includes(kind)));
  const said = having.filter(({ id }) => (entry.fields[id] ?? "") !== "");
  const rest = having.filter((one) => !said.includes(one));
  const one = (feature) => {
    const { control: made, below } = cellControl(
      draft,
      entry,
      feature,
      (value) => set(feature.id, value),
      {},
    );
    const reads =
      table === "variants" && (item?.fields[feature.id] ?? "") !== ""
        ? `The item says: ${item.fields[feature.id]}`
        : "";
    return labelled(context, feature.id, feature.name || feature.id, made, { hint: reads, below });
  };
  return [
    heading(2, "What can be seen on it"),
    said.map(one),
    el("details", {}, el("summary", {}, `Further features (${rest.length})`), rest.map(one)),
  ];
}

/** Goes to a drawing, which it shows. */
function drawingButton({ draft, table, key }, name, title, disabled = false) {
  const words = draft.drawing(name) === "" ? "Draw it" : "Drawing";
  return button(
    [drawing({ drawings: draft.drawings() }, name), el("span", {}, words)],
    () => goTo("editor", { pack: draft.id, table, key, drawing: name, title }),
    { class: "plain", "aria-label": `Drawing of ${title}`, disabled },
  );
}

const OF_THE_RANGE = [
  ["none", "There is none"],
  ["range-gauge", "The gauge, for asking which range it is"],
  ["range-material", "The material, for asking which range it is"],
];

/** The drawings that belong to a kind or to the range as a whole. */
function drawingsOf(context) {
  const { table, entry } = context;
  const { id, name } = entry.fields;
  const drawings = { kinds: [[`kind-${id}`, name || id]], range: OF_THE_RANGE }[table];
  if (!drawings) return null;
  return el(
    "div",
    { class: "editor-rows" },
    heading(2, "Drawings"),
    drawings.map(([key, title]) =>
      el(
        "div",
        { class: "editor-state" },
        el("p", {}, title),
        drawingButton(context, key, title, table === "kinds" && !id),
      ),
    ),
  );
}

function stateRows(context, label, states) {
  const { draft, entry, anew } = context;
  const feature = entry.fields.id;
  const held = new Set(listed(entry.was.states).map(({ id }) => id));
  const row = (state, place, save) => {
    const name = el("input", {
      type: "text",
      value: state.name ?? "",
      "aria-label": `Name of state ${place + 1}`,
      autocomplete: "off",
      onchange: () => {
        const id = state.id || slug(name.value);
        save({ ...state, id, name: name.value.trim() });
      },
    });
    const caption = el("input", {
      type: "text",
      value: state.caption ?? "",
      "aria-label": `Caption of state ${place + 1}, at most three words`,
      placeholder: "At most three words",
      autocomplete: "off",
      onchange: () => {
        const { caption: _, ...rest } = state;
        const words = caption.value.trim();
        save(words === "" ? rest : { ...rest, caption: words });
      },
    });
    const id = el("input", {
      type: "text",
      value: state.id ?? "",
      "aria-label": `Id of state ${place + 1}`,
      autocomplete: "off",
      autocapitalize: "off",
      readonly: held.has(state.id) && state.id !== "",
      onchange: () => save({ ...state, id: id.value.trim() }),
    });
    const draw = drawingButton(
      context,
      `${feature}-${state.id}`,
      state.name || state.id,
      !feature || !state.id,
    );
    return el("div", { class: "editor-state" }, name, caption, id, draw);
  };
  return rowList(label, states, row, "Add a state", { id: "", name: "" }, (now) => {
    const gone = states.filter(({ id }) => id && !now.some((one) => one.id === id));
    for (const { id } of gone)
      if (draft.drawing(`${feature}-${id}`) !== "") draft.draw(`${feature}-${id}`, "");
    anew("states", now);
  });
}

function pairRows({ draft, entry, anew }, label, pairs) {
  const states = statesOf(draft, entry.fields.id);
  const options = [["", "Choose"], ...states];
  const row = (pair, place, save) =>
    ["one", "the other"].map((which, side) =>
      el(
        "span",
        { class: "pick" },
        select(
          pair[side] ?? "",
          options,
          (now) => save(side === 0 ? [now, pair[1] ?? ""] : [pair[0] ?? "", now]),
          {
            "aria-label": `Taken for one another, ${place + 1}, ${which}`,
          },
        ),
      ),
    );
  return rowList(label, pairs, row, "Add a pair", ["", ""], (now) =>
    anew("mistaken", now.length > 0 ? now : null),
  );
}

function whenRows({ draft, entry, anew }, when) {
  const others = optionsOf(draft, "feature").filter(([id]) => id !== entry.fields.id);
  const rows = Object.entries(when);
  const save = (now) => anew("when", now.length > 0 ? Object.fromEntries(now) : null);
  const row = ([feature, states], place, saved) => [
    el(
      "span",
      { class: "pick" },
      select(feature, [["", "Choose a feature"], ...others], (now) => saved([now, []]), {
        "aria-label": `Asked only where, ${place + 1}`,
      }),
    ),
    feature === ""
      ? null
      : tickList("is one of", statesOf(draft, feature), states, (now) => saved([feature, now])),
  ];
  return rowList("Asked only where another feature", rows, row, "Add a condition", ["", []], save);
}

/** The question as it is asked on the phone, to look at only. */
function preview(draft, key, table) {
  const { pack, feature } = draft.feature(draft.entry(table, key));
  const none = () => {};
  const act = {
    answer: none,
    missing: none,
    why: none,
    answers: none,
    seller: none,
    note: none,
    widen: none,
    suggested: none,
    number: none,
    anything: none,
  };
  const card = questionCard(
    { pack, feature, session: NOTHING, chosen: false, expected: null },
    act,
  );
  sheet("As the phone asks it", el("div", { class: "card editor-preview", inert: true }, card));
  announce(pack.features[0].question);
}
