/**
 * What was read of a spreadsheet, and what its columns, rows and sums are: guessed, to be
 * confirmed.
 */
import { button, el, heading } from "../parts/element.js";
import { choice, ticks } from "../parts/fields.js";
import { ranges } from "../data/known-ranges.js";

const SORTS = [
  ["piece", "Pieces of the collection"],
  ["want", "Wants"],
  ["note", "Notes of stalls"],
];
const ORDERS = [
  ["day", "Day first: 12/5 is 12 May"],
  ["month", "Month first: 12/5 is 5 December"],
];
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
    wrong.textContent = missing
      ? `First say how the dates in “${missing.name}” are written: the column does not show it.`
      : "";
    if (!missing) act.run();
  };
  return [
    heading(2, `${file.name}: ${table.rows.length} rows`),
    table.notes.length === 0
      ? ""
      : el(
          "ul",
          { class: "plain-list" },
          table.notes.map((text) => el("li", {}, text)),
        ),
    table.sheets.length > 1
      ? choice(
          "Sheet",
          table.sheets.map((name) => [name, name]),
          table.sheet,
          (sheet) => again(act, file, { sheet }),
        )
      : "",
    table.own
      ? el("p", {}, "This app wrote it, so its columns are known.")
      : guessed(table, file, job, act),
    table.own ? "" : choice("What the rows are", SORTS, job.as, set("as")),
    ranges().length < 2
      ? ""
      : ticks(
          "Ranges to look in",
          ranges().map(({ id, name }) => [id, name]),
          job.packs,
          (some) => {
            job.packs = some;
            return false;
          },
        ),
    choice(
      "Prices with no currency are in",
      state.engine.currencies().map(({ code }) => [code, code]),
      job.currency,
      set("currency"),
    ),
    wrong,
    button("See what changes", go, { class: "main wide" }),
    button("Another file", () => act.back("file"), { class: "plain wide" }),
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
      "Which row has the headings",
      [["0", "None"], ...rows.sort((a, b) => a - b).map((row) => [String(row), `Row ${row}`])],
      String(table.header),
      (header) => again(act, file, { ...sheet, header }),
    ),
    heading(2, "The columns"),
    el(
      "p",
      { class: "quiet" },
      "What each was read as. Change what is wrong. A column that you leave out is not imported.",
    ),
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
  const options = [["", "Leave it out"], ...table.fields.map(({ id, name }) => [id, name])];
  const put = (change) => {
    job.columns = job.columns.map((one, n) => (n === place ? { ...one, ...change } : one));
    return false;
  };
  const why = column.field === "" ? "" : column.why;
  const days =
    column.order === ""
      ? null
      : choice(
          `Days of ${column.name || `column ${place + 1}`}`,
          column.order === "ask" ? [["ask", "Choose"], ...ORDERS] : ORDERS,
          column.order,
          (order) => put({ order }),
        );
  return [
    choice(
      column.name || `Column ${place + 1}`,
      options,
      column.field,
      (field) => put({ field }),
      why,
    ),
    el(
      "p",
      { class: "quiet samples" },
      samples.length === 0 ? "Nothing in it." : samples.join(" · "),
    ),
    days,
  ].filter(Boolean);
}
