/**
 * Bringing in a spreadsheet: which file, what its columns are, what it would do, and then doing it.
 */
import { latest } from "../data/journal.js";
import { button, el, heading } from "../parts/element.js";
import { fileButton } from "../parts/file-button.js";
import { announce } from "../parts/status.js";
import { columnNodes } from "./import-columns.js";
import { noteOwned, packsOf } from "./import-owned.js";
import { leftButton, rowNodes } from "./import-rows.js";
import { countText, counts, editsOf, matchRows, readTable } from "./import-run.js";
import { NoList } from "./list-rules.js";
import { ranges } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { goTo, redraw } from "../parts/navigation.js";
import {
  ANOTHER_FILE,
  CHOOSE_A_FILE,
  IMPORT_A_LIST,
  importedCount,
  importedFromFile,
  LIST_KEPT_ELSEWHERE,
  LOOK_AT_THEM,
  LOOKING_AT_EACH_ROW,
  noneOfRows,
  OR_DRAG_IT_HERE,
  READING_THE_FILE,
  ROWS_LOOKED_AT,
  rowsOf,
  rowsRead,
  STOP,
  UNDO_TAKES_ALL_BACK,
} from "./import-words.js";

const LOOKED = 5; // changes of others may have come between

/**
 * {stage: file | columns | running | rows | done, table, file, as, columns, currency, packs, found,
 * ready, written, group, wrong}.
 */
/** @type {any} */
let job = { stage: "file", wrong: "" };

/** The screen; where it stands is kept while other screens are looked at. */
export function importScreen(state) {
  const body = el("div", { class: "import" });
  const act = {
    draw: () => body.replaceChildren(...stageNodes(state, act)),
    read: (file, more) => run(() => taken(state, act, file, more)),
    run: () => look(state, act),
    stop: () => Object.assign(job, { stopped: true }),
    write: () => write(),
    back(stage) {
      job = stage === "file" ? { stage, wrong: "" } : { ...job, stage };
      act.draw();
      body.querySelector("h2")?.focus();
    },
  };
  act.draw();
  return el("section", { class: "shelf import-screen" }, heading(1, IMPORT_A_LIST), body);
}

function stageNodes(state, act) {
  const wrong = job.wrong === "" ? [] : [el("p", { class: "warn", role: "alert" }, job.wrong)];
  const nodes = {
    file: () => fileNodes(act),
    columns: () => columnNodes(state, job, act),
    running: () => runningNodes(),
    rows: () => rowNodes(state, job, act),
    done: () => doneNodes(act),
  };
  return [...wrong, ...nodes[job.stage]()];
}

function fileNodes(act) {
  const drop = el(
    "div",
    {
      class: "drop",
      ondragover: (event) => {
        event.preventDefault();
        event.stopPropagation();
        drop.classList.add("dropping");
      },
      ondragleave: () => drop.classList.remove("dropping"),
      ondrop: (event) => {
        event.preventDefault();
        event.stopPropagation();
        const [file] = event.dataTransfer.files;
        if (file) act.read(file);
      },
    },
    fileButton(CHOOSE_A_FILE, (file) => act.read(file), {
      accept:
        ".csv,.tsv,.txt,.xlsx,text/csv," +
        "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    }),
    el("p", { class: "quiet" }, OR_DRAG_IT_HERE),
  );
  return [el("p", {}, LIST_KEPT_ELSEWHERE), drop, el("p", { class: "reading", role: "status" })];
}

/** Reads the file, or says what is wrong with it; what was read before stays then. */
async function taken(state, act, file, more = {}) {
  const before = job;
  const line = document.querySelector(".reading");
  if (line) line.textContent = READING_THE_FILE;
  try {
    const fresh = before.file !== file;
    const all = ranges().map(({ id }) => id);
    const table = await readTable(file, all, more);
    job = {
      stage: "columns",
      wrong: "",
      file,
      table,
      as: table.own ? "" : (!fresh && before.as) || table.type || "piece",
      columns: table.columns,
      currency: fresh ? state.settings.currency : before.currency,
      packs: fresh ? all : before.packs,
    };
    announce(rowsRead(table.rows.length));
  } catch (error) {
    if (!(error instanceof NoList)) throw error;
    job = { ...before, wrong: error.message };
  }
  act.draw();
}

function runningNodes() {
  const { length } = job.table.rows;
  return [
    heading(2, LOOKING_AT_EACH_ROW),
    el("progress", { max: length, value: 0, "aria-label": ROWS_LOOKED_AT }),
    el("p", { class: "progress-text" }, noneOfRows(length)),
    button(STOP, () => Object.assign(job, { stopped: true }), { class: "plain wide" }),
  ];
}

/** Looks what every row would do, with the bar that says how far it is. */
async function look(state, act) {
  const mine = { ...job, stage: "running", stopped: false, wrong: "" };
  job = mine;
  act.draw();
  const { length } = job.table.rows;
  const tell = (done) => {
    /** @type {HTMLProgressElement} */
    const bar = document.querySelector(".import progress");
    if (bar) {
      bar.value = done;
      document.querySelector(".progress-text").textContent = rowsOf(done, length);
    }
  };
  let matched = null;
  let ready = null;
  try {
    matched = await matchRows(job, tell, () => job !== mine || mine.stopped);
    ready = matched ? await packsOf(matched.rows) : null;
  } catch (error) {
    if (job === mine) act.back("columns");
    throw error;
  }
  if (job !== mine) return;
  if (matched) noteOwned(state, ready, matched.rows);
  job = matched
    ? { ...job, stage: "rows", matched, ready, show: "" }
    : { ...job, stage: "columns" };
  if (matched) announce(countText(counts(matched.rows)));
  act.draw();
  focusHeading();
}

function focusHeading() {
  /** @type {HTMLElement} */
  const top = document.querySelector(".import h2");
  top?.focus();
}

/** Writes it all as one change, which one Undo takes back. */
function write() {
  return run(async () => {
    const edits = editsOf(job.matched.rows, job.table.own);
    const what = importedFromFile(edits.length, job.file.name);
    if (!(await saveChange(what, edits, { said: `${what}.` }))) return;
    const mine = (await latest(LOOKED)).find((entry) => entry.what === what && entry.undoes === "");
    job = { ...job, stage: "done", written: edits.length, group: mine?.group ?? "" };
    await redraw();
    focusHeading();
  });
}

function doneNodes(act) {
  const { group, file } = job;
  return [
    heading(2, importedCount(job.written)),
    el("p", {}, UNDO_TAKES_ALL_BACK),
    leftButton(job) ?? "",
    button(LOOK_AT_THEM, () => goTo("came", { group, file: file.name }), {
      class: "main wide",
    }),
    button(ANOTHER_FILE, () => act.back("file"), { class: "plain wide" }),
  ];
}
