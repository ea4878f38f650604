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
import {
  ASKING,
  AT_LEAST,
  BOUGHT,
  BOX,
  BOX_IN_A_TABLE,
  boxStanding,
  CHANGE_A_FIELD,
  CONDITION,
  DUPLICATES,
  HOW_TO_SELECT,
  inTheBinNamed,
  KEEP_THE_BEST,
  KEPT_AS,
  KEYS,
  MOST_TO_PAY,
  NAME,
  NOTES,
  NUMBER,
  PAID,
  PART_WITH,
  PIECES,
  SELECTED,
  selectedNamed,
  TO_DO,
  TO_THE_BIN,
  toTheBinNamed,
  URGENCY,
  URGENCY_IN_A_TABLE,
  VARIANT,
  WANTS,
  WHERE,
} from "./words.js";

const PURPOSES = { spare: "spare", donor: "donor" };

const TABLES = {
  collection: { label: PIECES, single: "piece", columns: pieceColumns, standing: newState() },
  wants: { label: WANTS, single: "want", columns: wantColumns, standing: newState() },
  duplicates: {
    label: DUPLICATES,
    single: "piece",
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
  return (state, given, drawn) => tableNodes(state, TABLES[screen], given, drawn);
}

function tableNodes(state, { label, single, columns, standing }, given, drawn) {
  if (left(label)) standing.selected.clear();
  const groups = given[0]?.part_with ? given : null;
  const records = groups ? groups.flatMap(copies) : given;
  const bar = el("div", { class: "grid-bar", role: "group", "aria-label": SELECTED });
  const draw = () => bar.replaceChildren(...barNodes(state, { single, standing }));
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
      act: { open: ({ id }) => goTo(single, { id }), changed: draw },
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

function barNodes(state, { single, standing }) {
  const { size } = standing.selected;
  const ids = [...standing.selected];
  const named = `${size} ${size === 1 ? single : `${single}s`}`;
  const hint = el(
    "span",
    { class: "quiet", id: "grid-hint" },
    size === 0 ? HOW_TO_SELECT : selectedNamed(named),
  );
  if (size === 0) return [hint, button(KEYS, () => openKeys(state), { class: "plain" })];
  return [
    hint,
    button(CHANGE_A_FIELD, () => openBulk(state, ids, single), {
      class: "main",
      "data-key": "e",
    }),
    button(TO_THE_BIN, () => toTrash(standing, named), {
      class: "plain",
      "data-key": "Delete",
    }),
    button(KEYS, () => openKeys(state), { class: "plain" }),
  ];
}

/** Puts what is selected into the bin, with an Undo. */
function toTrash(standing, named) {
  const ids = [...standing.selected].filter((id) => record(id)?.trashed === "");
  return run(async () => {
    const said = inTheBinNamed(named);
    if (
      !(await saveChange(
        toTheBinNamed(named),
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
function pictured(kept, name) {
  return el("span", { class: "pictured" }, recordPortrait(kept, 40), opener(name));
}

/** Number, name and variant, which every table begins with. */
function what() {
  const packOf = ({ pack }) => packsAtHand.get(pack);
  const order = new Map(ranges().map(({ id }, n) => [id, n * 1e6]));
  const at = (kept) => {
    const place = itemPlace(packOf(kept), kept.item);
    return (order.get(kept.pack) ?? 9e8) + (place < 0 ? 5e5 : place);
  };
  const name = (kept) => {
    const full = title(packsAtHand, kept);
    return kept.item !== "" && full.startsWith(`${kept.item} `)
      ? full.slice(kept.item.length + 1)
      : full;
  };
  return [
    { id: "number", name: NUMBER, cell: ({ item }) => item, key: at },
    { id: "name", name: NAME, wide: true, cell: (kept) => pictured(kept, name(kept)), key: name },
    {
      id: "variant",
      name: VARIANT,
      wide: true,
      cell: (kept) => variantText(packsAtHand, kept),
      key: (kept) => variantText(packsAtHand, kept),
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
    cell: (kept) => moneyText(state.engine, kept[id]),
    key: (kept) => worth(kept[id]),
  };
}

function condition(state, id = "condition", name = CONDITION) {
  const key = (kept) => state.engine.condition_rank(kept[id] ?? "") || "";
  return { id, name, cell: (kept) => kept[id] ?? "", key };
}

const boxed = {
  id: "boxed",
  name: BOX,
  cell: ({ boxed: has, box_condition: standing }) =>
    has === "yes" && standing ? boxStanding(standing) : (BOX_IN_A_TABLE[has] ?? ""),
  key: ({ boxed: has }) => ({ yes: 1, no: 2 })[has] ?? "",
};

function pieceColumns(state) {
  return [
    ...what(),
    condition(state),
    boxed,
    money(state, "paid", PAID),
    {
      id: "when",
      name: BOUGHT,
      cell: ({ when }) => dateText(when ?? ""),
      key: ({ when }) => when ?? "",
    },
    {
      id: "where",
      name: WHERE,
      wide: true,
      cell: ({ where }) => where ?? "",
      key: ({ where }) => where ?? "",
    },
    money(state, "asking", ASKING),
    {
      id: "purpose",
      name: KEPT_AS,
      cell: ({ purpose }) => PURPOSES[purpose] ?? "",
      key: ({ purpose }) => purpose ?? "",
    },
  ];
}

function wantColumns(state) {
  return [
    ...what(),
    condition(state, "least", AT_LEAST),
    {
      id: "box",
      name: BOX,
      cell: ({ box }) => BOX_IN_A_TABLE[box] ?? "",
      key: ({ box }) => box ?? "",
    },
    money(state, "most", MOST_TO_PAY),
    {
      id: "urgency",
      name: URGENCY,
      cell: ({ urgency }) => URGENCY_IN_A_TABLE[urgency] ?? "",
      key: ({ urgency }) => -urgency,
    },
    {
      id: "notes",
      name: NOTES,
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
    name: TO_DO,
    cell: ({ id }) => (best.has(id) ? KEEP_THE_BEST : PART_WITH),
    key: ({ id }) => (best.has(id) ? 2 : 1),
  };
  const [number, name, variant, standing, box, paid, , , asking] = pieceColumns(state);
  return [number, name, variant, part, standing, box, paid, asking];
}
