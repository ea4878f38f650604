/** What a spreadsheet would do, row by row, with what is to be chosen; nothing is written yet. */
import { record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { choice, ticks } from "../parts/fields.js";
import { longList } from "../parts/long-list.js";
import { title } from "../parts/piece-names.js";
import { percent } from "../parts/say.js";
import { announce } from "../parts/status.js";
import { clashesOf, countText, counts, fate, leftRows, takeable, unsure } from "./import-run.js";
import { noteOwned } from "./import-owned.js";
import { failedFile } from "./server-files.js";
import { fieldName, valueText } from "../parts/field-words.js";
import { packsAtHand } from "../data/known-ranges.js";

const FATES = {
  new: "new",
  changed: "changed",
  same: "here already",
  back: "taken out of the bin",
  trash: "in the bin here: left there",
  out: "left out",
  open: "not imported until you choose a number",
  failed: "cannot be imported",
};
const OWNED = { item: "you have one already", variant: "you have this variant already" };
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
  const { rows, notes } = job.found;
  const said = el("p", { role: "status" });
  const hint = el("p", { class: "quiet" });
  const list = el("div", {});
  const changed = (row) => {
    noteOwned(state, job.ready, [row]);
    sums();
  };
  const go = button("", () => act.write(), { class: "main wide" });
  const left = el("div", {});
  const all = button("Take the likeliest for all of them", () => takeAll(), {
    class: "plain wide",
  });

  const sums = () => {
    const found = counts(rows);
    const open = rows.filter(unsure).length;
    said.textContent = countText(found);
    hint.textContent =
      open === 0
        ? ""
        : `${open} ${open === 1 ? "is" : "are"} not sure. What you do not choose is imported in ` +
          "your own words.";
    all.hidden = open === 0;
    const count = found.new + found.changed + found.back;
    go.textContent = count === 0 ? "There is nothing to import" : `Import ${count}`;
    go.disabled = count === 0;
    left.replaceChildren(leftButton(job) ?? "");
  };
  const draw = () => {
    const some = job.show === "" ? rows : rows.filter(SHOWN[job.show]);
    const count = `${some.length} of ${rows.length} rows`;
    list.replaceChildren(
      el("p", { class: "quiet" }, count),
      ...longList("Rows", some, (row) => rowNode(state, row, changed)),
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
    heading(2, "What changes"),
    said,
    hint,
    notes.length === 0 ? "" : remarks(notes),
    trashTick(rows, takeBack) ?? "",
    go,
    left,
    button("Back to the columns", () => act.back("columns"), { class: "plain wide" }),
    choice("Show", shownOptions(rows), job.show, (value) => {
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
  const text =
    some.length === 1
      ? "Take this 1 out of the bin and import it"
      : `Take these ${some.length} out of the bin and import them`;
  return ticks(
    "In the bin here",
    [["back", text]],
    some.every(({ back }) => back) ? ["back"] : [],
    save,
  );
}

function remarks(notes) {
  return el(
    "details",
    {},
    el(
      "summary",
      {},
      notes.length === 1 ? "1 remark on the numbers" : `${notes.length} remarks on the numbers`,
    ),
    el(
      "ul",
      { class: "plain-list" },
      notes.map((text) => el("li", {}, text)),
    ),
  );
}

function shownOptions(rows) {
  const names = {
    choose: "To choose",
    new: "New",
    changed: "Changed",
    problems: "Not all could be read",
    same: "Here already",
    trash: "In the bin here",
    failed: "Not imported",
  };
  const counted = Object.entries(names).map(([id, name]) => [
    id,
    `${name} (${rows.filter(SHOWN[id]).length})`,
  ]);
  return [["", `All rows (${rows.length})`], ...counted];
}

/** The rows that are not brought in, as a file; null where there is none. */
export function leftButton({ found, table, file }) {
  const left = leftRows(found.rows);
  if (left.length === 0) return null;
  const header = table.columns.map(({ name }) => name);
  return button(
    `Save the ${left.length === 1 ? "row" : `${left.length} rows`} left out as a file`,
    () => failedFile({ name: file.name, header, rows: left, format: "csv" }),
    { class: "plain wide" },
  );
}

function rowNode(state, row, tell) {
  const what = el("strong", {});
  const name = () => {
    what.textContent = `Row ${row.row}: ${nameOf(row)}`;
    becomes.textContent = [FATES[fate(row)], OWNED[row.owned]].filter(Boolean).join(": ");
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
    : el("p", { class: "import-read" }, `Read as: ${lines.join(" · ")}`);
}

function nameOf(row) {
  if (row.same) return title(packsAtHand, record(row.same.id));
  const found = row.candidates[row.pick];
  if (found) return candidateName(found);
  return row.record?.called || row.cells.find((cell) => cell.trim() !== "") || "nothing in it";
}

function candidateName({ item, name, which }) {
  return [`${item} ${name}`, which].filter(Boolean).join(", ");
}

/** Which item a row means: the best three, none of them, or leave it out. */
function picking(row, changed) {
  if (row.record === null && !row.if_chosen) return null;
  const none = row.record === null ? "Choose" : "Something else: keep my words";
  const options = [
    ...row.candidates.map((one, n) => [String(n), `${candidateName(one)} (${percent(one.sure)})`]),
    ["-1", none],
    ["out", "Leave this row out"],
  ];
  return choice(`Row ${row.row} is`, options, row.out ? "out" : String(row.pick), (value) => {
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
        `Row ${row.row}, ${fieldName(field).toLowerCase()}`,
        [
          ["", "Leave it as it is here for now"],
          ["ours", "Keep what is here"],
          ["theirs", "Take what is in the file"],
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
