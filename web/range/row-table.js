/**
 * The items or the variants of a range of one's own as a table: a cell for each field and each
 * thing to look at, the keyboard from cell to cell, several rows changed at once.
 */
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { gone } from "../collection/piece.js";
import { dateText, readDay } from "../parts/days.js";
import { button, el, heading } from "../parts/element.js";
import { goTo, redraw } from "../parts/navigation.js";
import { saveChange, saver } from "../parts/saving.js";
import { announce } from "../parts/status.js";
import { renumbered } from "./held-pieces.js";
import { itemTitle } from "./item-title.js";
import { keepRows, newItem, newVariant, rowsOf, seenField } from "./own-range.js";
import {
  A_VARIANT_WITHOUT_A_NAME_YET,
  ADD_A_VARIANT,
  ADD_AN_ITEM,
  CHANGE_THEM,
  HOW_TO_GO_ABOUT,
  ITEM,
  ITEM_FIRST,
  ITEMS_AS_A_TABLE,
  MADE,
  NAME,
  NEW_ITEM,
  NEW_VARIANT,
  NOT_RECORDED,
  notSaved,
  NUMBER,
  numberTaken,
  ofAllOfThem,
  ONE_OF_SEVERAL,
  OPEN,
  openName,
  rowsChanged,
  rowsFollow,
  SEVERAL,
  SEVERAL_ROWS_CHANGED,
  severalOf,
  SHOW_MORE,
  TABLE,
  VARIANTS_AS_A_TABLE,
  WHAT_IT_IS,
  WHAT_IT_IS_CALLED,
  WHAT_TO_CHANGE,
  WHO_SAYS_SO,
} from "./row-words.js";

const SLICE = 40;

/** What a table has as columns: [field, label, options or null]. */
function columnsOf(range, type) {
  const named = (sort) => rowsOf(range, sort).map(({ id, name, what }) => [id, name || what]);
  const first =
    type === "range_item"
      ? [
          ["number", NUMBER, null],
          ["name", NAME, null],
          ["kind", WHAT_IT_IS, named("range_kind")],
        ]
      : [
          ["item", ITEM, rowsOf(range, "range_item").map((item) => [item.id, itemTitle(item)])],
          ["name", WHAT_IT_IS_CALLED, null],
        ];
  const states = rowsOf(range, "range_state");
  const looks = rowsOf(range, "range_feature").map((feature) => [
    seenField(feature.id),
    feature.name,
    states.filter((state) => state.feature === feature.id).map(({ id, name }) => [id, name]),
  ]);
  return [
    ...first,
    ["years", MADE, null],
    ["source", WHO_SAYS_SO, named("range_source")],
    ...looks,
  ];
}

/** The table of the items (`type`: range_item) or variants of a range. */
export function tableScreen(_, { range, type }) {
  const whole = record(range);
  if (!whole || whole.trashed !== "") return gone();
  const items = type === "range_item";
  const columns = columnsOf(range, type);
  const there = rowsOf(range, type);
  const ticked = new Set();
  const body = el("tbody", {});
  const more = button(SHOW_MORE, () => slice(), { class: "plain wide" });
  const several = el("div", { class: "row" });
  let shown = 0;
  function slice() {
    body.append(...there.slice(shown, shown + SLICE).map((entry) => line(entry, columns, tick)));
    shown = Math.min(shown + SLICE, there.length);
    more.hidden = shown >= there.length;
  }
  const tick = (id, on) => {
    ticked[on ? "add" : "delete"](id);
    several.replaceChildren(...(ticked.size > 1 ? atOnce([...ticked], columns) : []));
  };
  const add = () => run(() => added(range, type, body, columns, tick));
  body.addEventListener("keydown", (event) => fromRowToRow(event, more, slice, add));
  slice();
  return el(
    "section",
    { class: "shelf row-wide" },
    el("p", { class: "kicker" }, whole.name),
    heading(1, items ? ITEMS_AS_A_TABLE : VARIANTS_AS_A_TABLE),
    el("p", { class: "quiet" }, HOW_TO_GO_ABOUT),
    several,
    el(
      "div",
      { class: "row-table", role: "region", "aria-label": TABLE, tabindex: "0" },
      el(
        "table",
        {},
        el(
          "thead",
          {},
          el(
            "tr",
            {},
            el("th", { scope: "col" }, SEVERAL),
            columns.map(([, label]) => el("th", { scope: "col" }, label)),
            el("td", {}),
          ),
        ),
        body,
      ),
    ),
    more,
    button(items ? ADD_AN_ITEM : ADD_A_VARIANT, add, { class: "plain" }),
  );
}

/** What a row is called for who hears the table. */
function called(row) {
  return row.type === "range_item" ? itemTitle(row) : row.name || A_VARIANT_WITHOUT_A_NAME_YET;
}

function line(row, columns, tick) {
  const name = called(row);
  const box = el("input", {
    type: "checkbox",
    "aria-label": severalOf(name),
    onchange: () => tick(row.id, box.checked),
  });
  const screen = row.type === "range_item" ? "entry" : "version";
  return el(
    "tr",
    {},
    el("td", { "data-name": SEVERAL }, box),
    columns.map((column) => el("td", { "data-name": column[1] }, cell(row, column, name))),
    el(
      "td",
      {},
      button(OPEN, () => goTo(screen, { id: row.id }), {
        class: "plain",
        "aria-label": openName(name),
      }),
    ),
  );
}

/** The control of a cell, and what is wrong with what was typed. */
function cell(row, [field, label, options], name) {
  const wrong = el("p", { class: "wrong" });
  const keep = field === "number" ? null : saver(row.id, field, label);
  const props = { "aria-label": `${label}: ${name}` };
  const settle = async (control, value) => {
    const done = await (field === "number" ? numbered(row, value) : keep(value));
    said(control, wrong, typeof done === "string" ? done : "");
  };
  if (options) {
    const list = field.startsWith("seen_");
    const now = list ? (row[field] ?? []) : row[field];
    const several = list && now.length > 1; // one of these: changed on the card
    const known = several ? [["several", ONE_OF_SEVERAL], ...options] : options;
    const shown = several ? "several" : list ? (now[0] ?? "") : now;
    const all = shown === "?" ? [["?", NOT_RECORDED], ...known] : known;
    const change = () => {
      if (control.value !== "several")
        settle(control, list ? [control.value].filter(Boolean) : control.value);
    };
    const control = choices(all, shown, props, change, field !== "item");
    return [control, wrong];
  }
  const years = field === "years";
  const control = el("input", {
    type: "text",
    autocomplete: "off",
    value: years ? dateText(row.years) : row[field],
    ...props,
    onchange: () => {
      const text = control.value.trim();
      if (!years) return settle(control, text);
      const read = readDay(text);
      if (read.wrong !== "") return said(control, wrong, notSaved(read.wrong));
      control.value = dateText(read.day);
      return settle(control, read.day);
    },
  });
  return [control, wrong];
}

/** `none`: whether none of them can be chosen; where nothing is, it is shown all the same. */
function choices(options, now, props, onchange, none = true) {
  const known = options.some(([value]) => value === now);
  const blank = el("option", { value: "", selected: !known, disabled: !none }, "–");
  return el(
    "select",
    { ...props, onchange },
    none || !known ? blank : null,
    options.map(([value, words]) => el("option", { value, selected: value === now }, words)),
  );
}

function said(control, place, text) {
  place.textContent = text;
  control.toggleAttribute("aria-invalid", text !== "");
  if (text !== "") {
    control.setAttribute("aria-invalid", "true");
    announce(text);
  }
}

function numbered(row, text) {
  const twin = rowsOf(row.range, "range_item").find(
    (item) => item.id !== row.id && text !== "" && item.number === text,
  );
  return twin ? numberTaken(itemTitle(twin)) : renumbered(row.id, text);
}

/** A new row at the end, with its first cell to type in. */
async function added(range, type, body, columns, tick) {
  const rows = rowsOf(range, type);
  const before = rows[rows.length - 1];
  let made;
  if (type === "range_item") {
    const item = newItem(range, { number: "", name: "", kind: before?.kind ?? "" });
    made = [item, newVariant(item, {})];
  } else {
    const item = record(before?.item) ?? rowsOf(range, "range_item")[0];
    if (!item) {
      announce(ITEM_FIRST);
      return;
    }
    made = [newVariant(item, {})];
  }
  if (!(await keepRows(type === "range_item" ? NEW_ITEM : NEW_VARIANT, made))) return;
  const row = line(record(made[0].id), columns, tick);
  body.append(row);
  row.children[1].firstElementChild.focus();
}

/** Arrow up and down, and Enter, from row to row. */
function fromRowToRow(event, more, slice, add) {
  const step = { ArrowUp: -1, ArrowDown: 1, Enter: event.shiftKey ? -1 : 1 }[event.key];
  const from = event.target.closest("td");
  const choosing = event.target.matches("select") && event.key !== "Enter";
  if (!step || !from || choosing || event.target.matches("button")) return;
  event.preventDefault();
  const at = [...from.parentElement.children].indexOf(from);
  const beside = () =>
    step < 0 ? from.parentElement.previousElementSibling : from.parentElement.nextElementSibling;
  if (!beside() && step > 0 && !more.hidden) slice();
  const to = beside();
  if (to) to.children[at].firstElementChild.focus();
  else if (step > 0 && event.key === "Enter") {
    event.target.blur(); // what was typed is saved before the next row begins
    add();
  }
}

/** One field of several rows, set to one value. */
function atOnce(ids, columns) {
  const fields = columns.filter(([field]) => field !== "number");
  const place = el("span", { class: "pick" });
  const which = el(
    "select",
    { "aria-label": WHAT_TO_CHANGE, onchange: () => draw() },
    fields.map(([field, label]) => el("option", { value: field }, label)),
  );
  let control;
  const draw = () => {
    const [field, label, options] = fields.find(([name]) => name === which.value);
    const none = field !== "item"; // no variant without one
    const props = { "aria-label": ofAllOfThem(label) };
    control = options
      ? choices(options, none ? "" : options[0]?.[0], props, () => {}, none)
      : el("input", { type: "text", autocomplete: "off", ...props });
    place.replaceChildren(control);
  };
  const change = () =>
    run(async () => {
      const field = which.value;
      let value = control.value.trim();
      if (field === "years") {
        const read = readDay(value);
        if (read.wrong !== "") return announce(read.wrong);
        value = read.day;
      }
      const now = field.startsWith("seen_") ? [value].filter(Boolean) : value;
      const edits = ids.map((id) => ({ id, alter: (before) => ({ ...before, [field]: now }) }));
      const notice = { said: rowsChanged(ids.length) };
      if (await saveChange(SEVERAL_ROWS_CHANGED, edits, notice)) await redraw();
    });
  draw();
  return [
    el("span", {}, rowsFollow(ids.length)),
    el("span", { class: "pick" }, which),
    place,
    button(CHANGE_THEM, change, { class: "main" }),
  ];
}
