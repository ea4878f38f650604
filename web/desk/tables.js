/**
 * The collection, the wants and the duplicates as wide tables, with what can be done to several at
 * once.
 */
import { here } from "../data/back-button.js";
import { record, trashing } from "../data/records.js";
import { button, el } from "../parts/element.js";
import { moneyText } from "../parts/money.js";
import { itemPlace, title, variantText } from "../parts/piece-names.js";
import { recordPortrait } from "../parts/record-picture.js";
import { dateText } from "../parts/days.js";
import { openBulk } from "./change-several.js";
import { grid, newState } from "./grid.js";
import { openKeys } from "./keys.js";
import { packsAtHand, ranges } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { goTo, redraw } from "../parts/navigation.js";

const PURPOSES = { spare: "spare", donor: "donor" };
const URGENCY = { 3: "urgent", 2: "", 1: "no hurry" };
const BOX = { yes: "boxed", no: "no box" };

const TABLES = {
  collection: { label: "Pieces", one: "piece", columns: pieceColumns, standing: newState() },
  wants: { label: "Wants", one: "want", columns: wantColumns, standing: newState() },
  duplicates: {
    label: "Duplicates",
    one: "piece",
    columns: duplicateColumns,
    standing: newState(),
  },
};

/** The screens whose list can be a table. */
export const TABLED = Object.keys(TABLES);

/**
 * What draws the list of a screen as a table: (app, records or groups, rows drawn before).
 */
export function tableOf(screen) {
  return (state, found, drawn) => tableNodes(state, TABLES[screen], found, drawn);
}

function tableNodes(state, { label, one, columns, standing }, found, drawn) {
  if (left(label)) standing.selected.clear();
  const groups = found[0]?.part_with ? found : null;
  const records = groups ? groups.flatMap(copies) : found;
  const bar = el("div", { class: "grid-bar", role: "group", "aria-label": "Selected" });
  const draw = () => bar.replaceChildren(...barNodes(state, { one, standing }));
  draw();
  if (records.length === 0) return [];
  return [
    bar,
    ...grid({
      label,
      columns: columns(state, groups),
      records,
      standing,
      drawn,
      act: { open: ({ id }) => goTo(one, { id }), changed: draw },
    }),
  ];
}

/**
 * Whether one comes to the table from another screen: not from its own list, nor from a row that
 * was opened.
 */
function left(label) {
  const there = document.querySelector(`#screen [aria-label="${label}"]`);
  return !there && !here().row;
}

function barNodes(state, { one, standing }) {
  const { size } = standing.selected;
  const ids = [...standing.selected];
  const named = `${size} ${size === 1 ? one : `${one}s`}`;
  const hint = el(
    "span",
    { class: "quiet", id: "grid-hint" },
    size === 0
      ? "Click a row to select it, with Shift or Ctrl for several; its name opens it."
      : `${named} selected.`,
  );
  if (size === 0) return [hint, button("Keys", () => openKeys(state), { class: "plain" })];
  return [
    hint,
    button("Change a field", () => openBulk(state, ids, one), {
      class: "main",
      "data-key": "e",
    }),
    button("To the bin", () => toTrash(standing, named), {
      class: "plain",
      "data-key": "Delete",
    }),
    button("Keys", () => openKeys(state), { class: "plain" }),
  ];
}

/** Puts what is selected into the bin, with an Undo. */
function toTrash(standing, named) {
  const ids = [...standing.selected].filter((id) => record(id)?.trashed === "");
  return run(async () => {
    const said = `${named} in the bin.`;
    if (
      !(await saveChange(
        `${named} to the bin`,
        ids.map((id) => trashing(id)),
        { said },
      ))
    )
      return;
    standing.selected.clear();
    await redraw();
  });
}

/** The copies of a duplicate: those to part with, then the best one. */
function copies({ keep: best, part_with: ids }) {
  return [...ids, best].map(record);
}

function opener(text) {
  return button(text, () => {}, { class: "link", tabindex: "-1" });
}

/** A name with its picture before it; a photo is shown on the record's own screen. */
function pictured(one, name) {
  return el("span", { class: "pictured" }, recordPortrait(one, 40), opener(name));
}

/** Number, name and variant, which every table begins with. */
function what() {
  const packOf = ({ pack }) => packsAtHand.get(pack);
  const order = new Map(ranges().map(({ id }, n) => [id, n * 1e6]));
  const at = (one) => {
    const place = itemPlace(packOf(one), one.item);
    return (order.get(one.pack) ?? 9e8) + (place < 0 ? 5e5 : place);
  };
  const name = (one) => {
    const full = title(packsAtHand, one);
    return one.item !== "" && full.startsWith(`${one.item} `)
      ? full.slice(one.item.length + 1)
      : full;
  };
  return [
    { id: "number", name: "Number", cell: ({ item }) => item, key: at },
    { id: "name", name: "Name", wide: true, cell: (one) => pictured(one, name(one)), key: name },
    {
      id: "variant",
      name: "Variant",
      wide: true,
      cell: (one) => variantText(packsAtHand, one),
      key: (one) => variantText(packsAtHand, one),
    },
  ];
}

/** The worth of a sum for sorting: by currency, then by amount in 48ths of the minor unit. */
function worth(sum) {
  if (!sum) return "";
  const amount = 48 * sum.minor + (sum.over ?? 0);
  return `${sum.currency} ${String(amount).padStart(16, "0")}`;
}

function money(state, id, name) {
  return {
    id,
    name,
    cell: (one) => moneyText(state.engine, one[id]),
    key: (one) => worth(one[id]),
  };
}

function condition(state, id = "condition", name = "Condition") {
  const key = (one) => state.engine.condition_rank(one[id] ?? "") || "";
  return { id, name, cell: (one) => one[id] ?? "", key };
}

const boxed = {
  id: "boxed",
  name: "Box",
  cell: ({ boxed: has, box_condition: standing }) =>
    has === "yes" && standing ? `box ${standing}` : (BOX[has] ?? ""),
  key: ({ boxed: has }) => ({ yes: 1, no: 2 })[has] ?? "",
};

function pieceColumns(state) {
  return [
    ...what(),
    condition(state),
    boxed,
    money(state, "paid", "Paid"),
    {
      id: "when",
      name: "Bought",
      cell: ({ when }) => dateText(when ?? ""),
      key: ({ when }) => when ?? "",
    },
    {
      id: "where",
      name: "Where",
      wide: true,
      cell: ({ where }) => where ?? "",
      key: ({ where }) => where ?? "",
    },
    money(state, "asking", "Asking"),
    {
      id: "purpose",
      name: "Kept as",
      cell: ({ purpose }) => PURPOSES[purpose] ?? "",
      key: ({ purpose }) => purpose ?? "",
    },
  ];
}

function wantColumns(state) {
  return [
    ...what(),
    condition(state, "least", "At least"),
    { id: "box", name: "Box", cell: ({ box }) => BOX[box] ?? "", key: ({ box }) => box ?? "" },
    money(state, "most", "Most to pay"),
    {
      id: "urgency",
      name: "Urgency",
      cell: ({ urgency }) => URGENCY[urgency] ?? "",
      key: ({ urgency }) => -urgency,
    },
    {
      id: "notes",
      name: "Notes",
      wide: true,
      cell: ({ notes }) => notes.split("\n")[0],
      key: ({ notes }) => notes,
    },
  ];
}

function duplicateColumns(state, groups) {
  const best = new Set((groups ?? []).map((group) => group.keep));
  const part = {
    id: "part",
    name: "To do",
    cell: ({ id }) => (best.has(id) ? "keep: the best" : "part with"),
    key: ({ id }) => (best.has(id) ? 2 : 1),
  };
  const [number, name, variant, standing, box, paid, , , asking] = pieceColumns(state);
  return [number, name, variant, part, standing, box, paid, asking];
}
