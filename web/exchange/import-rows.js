/** What a spreadsheet would do, row by row, with what is to be chosen; nothing is written yet. */
import { record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { choice, ticks } from "../parts/fields.js";
import { longList } from "../parts/long-list.js";
import { title } from "../parts/piece-names.js";
import { percent } from "../parts/say.js";
import { announce } from "../parts/status.js";
import {
  clashesOf,
  countText,
  counts,
  fate,
  leftFile,
  leftRows,
  takeable,
  unsure,
} from "./import-run.js";
import { run } from "../data/queue.js";
import { noteOwned } from "./import-owned.js";
import { download } from "./hand-out.js";
import { fieldName, valueText } from "../parts/field-words.js";
import { packsAtHand } from "../data/known-ranges.js";
import {
  allRows,
  BACK_TO_THE_COLUMNS,
  CHANGED,
  CHOOSE,
  FATES,
  HAVE_ALREADY,
  HERE_ALREADY,
  importCount,
  IN_THE_BIN_HERE,
  KEEP_WHAT_IS_HERE,
  LEAVE_IT_FOR_NOW,
  LEAVE_THIS_ROW_OUT,
  NEW,
  NOT_ALL_COULD_BE_READ,
  NOT_IMPORTED,
  NOTHING_IN_THE_ROW,
  ONE_REMARK,
  openAreNotSure,
  readAsWhat,
  remarkCount,
  rowCount,
  rowField,
  rowIs,
  rowName,
  ROWS,
  rowsOf,
  saveLeftOut,
  SHOW,
  SOMETHING_ELSE_KEEP_MY_WORDS,
  TAKE_ONE_OUT,
  TAKE_THE_LIKELIEST,
  TAKE_WHAT_IS_IN_THE_FILE,
  takeTheseOut,
  THERE_IS_NOTHING_TO_IMPORT,
  TO_CHOOSE,
  WHAT_CHANGES,
} from "./import-words.js";

const CELLS = 6;

const SHOWN = {
  choose: unsure,
  new: (row) => fate(row) === "new",
  changed: (row) => fate(row) === "changed",
  problems: ({ problems }) => problems.length > 0,
  same: (row) => fate(row) === "same",
  trash: ({ trashed }) => trashed,
  failed: (row) => ["failed", "open", "out"].includes(fate(row)),
};

/** The nodes of this stage. */
export function rowNodes(state, job, act) {
  const { rows, notes } = job.matched;
  const said = el("p", { role: "status" });
  const hint = el("p", { class: "quiet" });
  const list = el("div", {});
  const changed = (row) => {
    noteOwned(state, job.ready, [row]);
    sums();
  };
  const go = button("", () => act.write(), { class: "main wide" });
  const left = el("div", {});
  const all = button(TAKE_THE_LIKELIEST, () => takeAll(), {
    class: "plain wide",
  });

  const sums = () => {
    const fates = counts(rows);
    const open = rows.filter(unsure).length;
    said.textContent = countText(fates);
    hint.textContent = open === 0 ? "" : openAreNotSure(open, open === 1 ? "is" : "are");
    all.hidden = open === 0;
    const count = fates.new + fates.changed + fates.back;
    go.textContent = count === 0 ? THERE_IS_NOTHING_TO_IMPORT : importCount(count);
    go.disabled = count === 0;
    left.replaceChildren(leftButton(job) ?? "");
  };
  const draw = () => {
    const some = job.show === "" ? rows : rows.filter(SHOWN[job.show]);
    const count = rowsOf(some.length, rows.length);
    list.replaceChildren(
      el("p", { class: "quiet" }, count),
      ...longList(ROWS, some, (row) => rowNode(state, row, changed)),
    );
    return count;
  };
  const takeAll = () => {
    for (const row of rows.filter(unsure)) {
      if (row.same === null) row.pick = 0;
      row.looked = row.same === null;
    }
    noteOwned(state, job.ready, rows);
    sums();
    draw();
  };

  const takeBack = ([on]) => {
    for (const row of rows.filter(takeable)) row.back = on !== undefined;
    sums();
    draw();
    announce(said.textContent);
    return false;
  };

  job.show ||= rows.some(unsure) ? "choose" : "";
  sums();
  draw();
  return [
    heading(2, WHAT_CHANGES),
    said,
    hint,
    notes.length === 0 ? "" : remarks(notes),
    trashTick(rows, takeBack) ?? "",
    go,
    left,
    button(BACK_TO_THE_COLUMNS, () => act.back("columns"), { class: "plain wide" }),
    choice(SHOW, shownOptions(rows), job.show, (value) => {
      job.show = value;
      announce(draw());
      return false;
    }),
    all,
    list,
  ];
}

/** One tick for all rows whose records can be taken out of the bin; null where there is none. */
function trashTick(rows, save) {
  const some = rows.filter(takeable);
  if (some.length === 0) return null;
  const text = some.length === 1 ? TAKE_ONE_OUT : takeTheseOut(some.length);
  return ticks(
    IN_THE_BIN_HERE,
    [["back", text]],
    some.every(({ back }) => back) ? ["back"] : [],
    save,
  );
}

function remarks(notes) {
  return el(
    "details",
    {},
    el("summary", {}, notes.length === 1 ? ONE_REMARK : remarkCount(notes.length)),
    el(
      "ul",
      { class: "plain-list" },
      notes.map((text) => el("li", {}, text)),
    ),
  );
}

function shownOptions(rows) {
  const names = {
    choose: TO_CHOOSE,
    new: NEW,
    changed: CHANGED,
    problems: NOT_ALL_COULD_BE_READ,
    same: HERE_ALREADY,
    trash: IN_THE_BIN_HERE,
    failed: NOT_IMPORTED,
  };
  const counted = Object.entries(names).map(([id, name]) => [
    id,
    `${name} (${rows.filter(SHOWN[id]).length})`,
  ]);
  return [["", allRows(rows.length)], ...counted];
}

/** The rows that are not brought in, as a file; null where there is none. */
export function leftButton({ matched, table }) {
  const left = leftRows(matched.rows);
  if (left.length === 0) return null;
  const header = table.columns.map(({ name }) => name);
  return button(
    saveLeftOut(left.length === 1 ? "row" : rowCount(left.length)),
    () => run(async () => download(await leftFile(header, left))),
    { class: "plain wide" },
  );
}

function rowNode(state, row, tell) {
  const what = el("strong", {});
  const name = () => {
    what.textContent = rowName(row.row, nameOf(row));
    becomes.textContent = [FATES[fate(row)], HAVE_ALREADY[row.owned]].filter(Boolean).join(": ");
  };
  const becomes = el("span", { class: "quiet" });
  const changed = () => {
    tell(row);
    name();
  };
  const cells = row.cells.filter((cell) => cell.trim() !== "").slice(0, CELLS);
  const box = el(
    "div",
    { class: "import-row" },
    el("div", { class: "row" }, what, becomes),
    el("p", { class: "quiet" }, cells.join(" · ")),
    row.failed === "" ? null : el("p", {}, row.failed),
    readAs(state, row),
    row.same === null ? picking(row, changed) : changes(state, row, changed),
    row.problems.length === 0
      ? null
      : el(
          "ul",
          { class: "plain-list" },
          row.problems.map(({ sentence }) => el("li", {}, sentence)),
        ),
  );
  name();
  return box;
}

/**
 * What will be written of a new row where that is not what its cells say; null where it is the
 * same.
 */
function readAs(state, row) {
  const { came } = row.same === null ? (row.record ?? row.if_chosen ?? {}) : {};
  if (!came) return null;
  const plain = (text) => text.toLowerCase().replace(/\s+/g, " ");
  const lines = Object.entries(came.values)
    .filter(([name]) => name !== "item")
    .map(([name, value]) => [name, valueText(state, value), came.cells[name] ?? ""])
    .filter(([name, text, cell]) =>
      cell === "" ? name === "box_condition" && text !== "nothing" : plain(text) !== plain(cell),
    )
    .map(([name, text]) => `${fieldName(name).toLowerCase()} ${text}`);
  return lines.length === 0
    ? null
    : el("p", { class: "import-read" }, readAsWhat(lines.join(" · ")));
}

function nameOf(row) {
  if (row.same) return title(packsAtHand, record(row.same.id));
  const candidate = row.candidates[row.pick];
  if (candidate) return candidateName(candidate);
  return row.record?.called || row.cells.find((cell) => cell.trim() !== "") || NOTHING_IN_THE_ROW;
}

function candidateName({ item, name, which }) {
  return [`${item} ${name}`, which].filter(Boolean).join(", ");
}

/** Which item a row means: the best three, none of them, or leave it out. */
function picking(row, changed) {
  if (row.record === null && !row.if_chosen) return null;
  const none = row.record === null ? CHOOSE : SOMETHING_ELSE_KEEP_MY_WORDS;
  const options = [
    ...row.candidates.map((candidate, n) => [
      String(n),
      `${candidateName(candidate)} (${percent(candidate.sure)})`,
    ]),
    ["-1", none],
    ["out", LEAVE_THIS_ROW_OUT],
  ];
  return choice(rowIs(row.row), options, row.out ? "out" : String(row.pick), (value) => {
    row.out = value === "out";
    if (!row.out) row.pick = Number(value);
    row.looked = true;
    changed();
    return false;
  });
}

/** What a row changes in the record that is here, and what was changed on both sides. */
function changes(state, row, changed) {
  if (fate(row) === "trash") return null; // nothing of it is changed
  const { sets, before } = row.same;
  const lines = Object.keys(sets)
    .filter((name) => name !== "came" && !(name === "trashed" && row.back))
    .map(
      (name) =>
        `${fieldName(name)}: ${valueText(state, before[name])} → ${valueText(state, sets[name])}`,
    );
  return [
    lines.length === 0
      ? null
      : el(
          "ul",
          { class: "plain-list" },
          lines.map((line) => el("li", {}, line)),
        ),
    clashesOf(row).map(({ field, sentence }) =>
      choice(
        rowField(row.row, fieldName(field).toLowerCase()),
        [
          ["", LEAVE_IT_FOR_NOW],
          ["ours", KEEP_WHAT_IS_HERE],
          ["theirs", TAKE_WHAT_IS_IN_THE_FILE],
        ],
        row.sides[field] ?? "",
        (side) => {
          row.sides[field] = side;
          changed();
          return false;
        },
        sentence,
      ),
    ),
  ];
}
