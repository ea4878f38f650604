/**
 * What was read of a spreadsheet, and what its columns, rows and sums are: guessed, to be
 * confirmed.
 */
import { button, el, heading } from "../parts/element.js";
import { choice, ticks } from "../parts/fields.js";
import { ranges } from "../data/known-ranges.js";
import {
  ANOTHER_FILE,
  CHOOSE,
  columnNumber,
  columnOf,
  daysOf,
  fileRows,
  LEAVE_IT_OUT,
  NONE,
  NOTHING_IN_IT,
  ORDERS_OF_DAYS,
  PRICES_ARE_IN,
  RANGES_TO_LOOK_IN,
  rowNumber,
  sayHowDatesAre,
  SEE_WHAT_CHANGES,
  SHEET,
  SORTS_OF_ROWS,
  THE_COLUMNS,
  WHAT_EACH_WAS_READ_AS,
  WHAT_THE_ROWS_ARE,
  WHICH_ROW_HAS_THE_HEADINGS,
  WRITTEN_BY_THIS_APP,
} from "./import-words.js";

const SAMPLES = 3;
const HEADS = 8;

/** The nodes of this stage; `job` is changed by what is chosen. */
export function columnNodes(state, job, act) {
  const { table, file } = job;
  const set = (name) => (value) => {
    job[name] = value;
    return false;
  };
  const wrong = el("p", { class: "wrong", role: "alert" });
  const go = () => {
    const missing = job.columns.find(({ order, field }) => order === "ask" && field !== "");
    wrong.textContent = missing ? sayHowDatesAre(missing.name) : "";
    if (!missing) act.run();
  };
  return [
    heading(2, fileRows(file.name, table.rows.length)),
    table.notes.length === 0
      ? ""
      : el(
          "ul",
          { class: "plain-list" },
          table.notes.map((text) => el("li", {}, text)),
        ),
    table.sheets.length > 1
      ? choice(
          SHEET,
          table.sheets.map((name) => [name, name]),
          table.sheet,
          (sheet) => again(act, file, { sheet }),
        )
      : "",
    table.own ? el("p", {}, WRITTEN_BY_THIS_APP) : guessed(table, file, job, act),
    table.own ? "" : choice(WHAT_THE_ROWS_ARE, SORTS_OF_ROWS, job.as, set("as")),
    ranges().length < 2
      ? ""
      : ticks(
          RANGES_TO_LOOK_IN,
          ranges().map(({ id, name }) => [id, name]),
          job.packs,
          (some) => {
            job.packs = some;
            return false;
          },
        ),
    choice(
      PRICES_ARE_IN,
      state.engine.currencies().map(({ code }) => [code, code]),
      job.currency,
      set("currency"),
    ),
    wrong,
    button(SEE_WHAT_CHANGES, go, { class: "main wide" }),
    button(ANOTHER_FILE, () => act.back("file"), { class: "plain wide" }),
  ].flat();
}

function again(act, file, more) {
  act.read(file, more);
  return false;
}

/** The columns one by one, and which row names them. */
function guessed(table, file, job, act) {
  const rows = [
    ...new Set([table.header, ...Array.from({ length: HEADS }, (_, n) => n + 1)]),
  ].filter((row) => row > 0);
  const sheet = table.sheets.length > 1 ? { sheet: table.sheet } : {};
  return [
    choice(
      WHICH_ROW_HAS_THE_HEADINGS,
      [["0", NONE], ...rows.sort((a, b) => a - b).map((row) => [String(row), rowNumber(row)])],
      String(table.header),
      (header) => again(act, file, { ...sheet, header }),
    ),
    heading(2, THE_COLUMNS),
    el("p", { class: "quiet" }, WHAT_EACH_WAS_READ_AS),
    el(
      "ol",
      { class: "import-columns" },
      job.columns.map((column, place) => el("li", {}, columnFields(table, job, column, place))),
    ),
  ];
}

function columnFields(table, job, column, place) {
  const samples = [
    ...new Set(table.rows.map(({ cells }) => cells[place] ?? "").filter(Boolean)),
  ].slice(0, SAMPLES);
  const options = [["", LEAVE_IT_OUT], ...table.fields.map(({ id, name }) => [id, name])];
  const put = (change) => {
    job.columns = job.columns.map((before, n) => (n === place ? { ...before, ...change } : before));
    return false;
  };
  const why = column.field === "" ? "" : column.why;
  const days =
    column.order === ""
      ? null
      : choice(
          daysOf(column.name || columnNumber(place + 1)),
          column.order === "ask" ? [["ask", CHOOSE], ...ORDERS_OF_DAYS] : ORDERS_OF_DAYS,
          column.order,
          (order) => put({ order }),
        );
  return [
    choice(
      column.name || columnOf(place + 1),
      options,
      column.field,
      (field) => put({ field }),
      why,
    ),
    el("p", { class: "quiet samples" }, samples.length === 0 ? NOTHING_IN_IT : samples.join(" · ")),
    days,
  ].filter(Boolean);
}
