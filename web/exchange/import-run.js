/** Bringing in a spreadsheet: how it is read, and what is written in the end. No DOM here. */
import { ChangedElsewhere, everything, making } from "../data/records.js";
import { readyRange } from "../data/known-ranges.js";
import { blank, same } from "../data/record-shapes.js";
import {
  CANNOT_BE_IMPORTED,
  HERE_ALREADY_UNCHANGED,
  IN_THE_BIN_AND_LEFT,
  LEFT_OUT,
  leftOutFile,
  TAKEN_OUT_OF_THE_BIN,
  TO_BE_CHOSEN,
  YOU_LEFT_IT_OUT,
} from "./import-words.js";
import { turns } from "../data/turns.js";
import { tableOfFile } from "./file-table.js";
import { listRules } from "./list-rules.js";

/** @import { Reference } from "../data/engine-types.d.ts" */

/**
 * The items of some ranges, as rows are held against them.
 * @returns {Promise<Reference>}
 */
async function referenceOf(ids) {
  const rules = await listRules();
  const engines = await Promise.all(ids.map((id) => readyRange(id)));
  return rules.new_reference(engines.filter(Boolean));
}

/**
 * A file as a table with guessed columns. `ids`: of the ranges; `more`: {sheet, header} where they
 * were chosen. Throws NoList.
 */
export async function readTable(file, ids, { sheet = "", header = "-1" } = {}) {
  const rules = await listRules();
  const table = await tableOfFile(file, sheet);
  const reference = await referenceOf(ids);
  const heads = rules.headed(table, Number(header));
  const turn = turns();
  const shares = [];
  for (let place = 0; place < heads.names.length; place += 1) {
    const cells = rules.cells_below(heads.rows, place, heads.names.length);
    shares.push(rules.column_shares(cells, reference));
    // oxlint-disable-next-line no-await-in-loop -- one column after the other
    await turn();
  }
  return rules.table_read(table, heads, shares, file.name);
}

/**
 * What each row would do: {rows, notes}. `job`: {table, as, columns, currency, packs}; `tell(done)`
 * now and then; `stopped()`: true gives null.
 */
export async function matchRows({ table, as, columns, currency, packs }, tell, stopped) {
  const rules = await listRules();
  const turn = turns();
  const about = rules.new_importing(await referenceOf(packs), as, currency, columns);
  const fields = columns.map(({ field }) => field);
  const names = [];
  for (const row of table.rows) {
    names.push(rules.name_of_row(as, fields, row));
    // oxlint-disable-next-line no-await-in-loop -- one row after the other
    await turn();
  }
  const { keys, notes } = rules.keys_of(as, names, table.rows);
  const held = new Map();
  for (const entry of everything().filter(({ gone }) => !gone)) {
    held.set(`record:${entry.id}`, entry);
    if (entry.came?.key) held.set(entry.came.key, entry);
  }
  const rows = [];
  for (const [n, row] of table.rows.entries()) {
    if (stopped()) return null;
    const existing = held.get(keys[n]) ?? null;
    const matched = rules.row_matched(about, { ...row, key: keys[n] }, existing);
    const trashed = Boolean(existing?.trashed);
    rows.push({ ...matched, cells: row.cells, trashed, ...begun(matched) });
    // oxlint-disable-next-line no-await-in-loop -- one row after the other
    if (await turn()) tell(rows.length);
  }
  tell(rows.length);
  return { rows, notes };
}

/** The rows that are left out as a file, each with what is wrong. */
export async function leftFile(header, rows) {
  const rules = await listRules();
  const text = rules.rows_given_back(header, rows);
  const day = new Date().toISOString().slice(0, 10);
  return new File([text], leftOutFile(day), { type: "text/csv" });
}

/**
 * What the person can choose of a row: which candidate (-1: none), left out, whose side of each
 * clash.
 */
function begun({ chosen }) {
  return { pick: chosen, out: false, sides: {} };
}

/**
 * What becomes of a row as it stands: new, changed, same, trash (its record is there, and stays),
 * back (it is taken out
 * of there), out, open (a want without an item), failed.
 */
export function fate(row) {
  if (row.out) return "out";
  if (row.trashed) return row.back ? "back" : "trash";
  if (row.failed !== "") {
    if (row.if_chosen === null || row.if_chosen === undefined) return "failed";
    return row.pick < 0 ? "open" : "new";
  }
  if (row.same === null) return "new";
  const taken = row.same.clashes.some(({ field }) => row.sides[field]);
  return Object.keys(row.same.sets).length > 0 || taken ? "changed" : "same";
}

/**
 * Can the row's record be taken out of the bin? Not where the row cannot be read, or says itself
 * that it is there.
 */
export function takeable({ trashed, same: stored, record }) {
  return trashed && stored !== null && !record.trashed;
}

/**
 * What was changed here and in the file; that the record is in the bin here is asked for all at
 * once.
 */
export function clashesOf({ trashed, same: { clashes } }) {
  return trashed ? clashes.filter(({ field }) => field !== "trashed") : clashes;
}

/** Is there something to choose of a row that nobody chose yet? */
export function unsure(row) {
  if (row.out || row.looked || (row.trashed && !row.back)) return false;
  if (row.same === null) return row.pick < 0 && row.candidates.length > 0;
  return clashesOf(row).some(({ field }) => !row.sides[field]);
}

/** The edits that bring the rows in. `own`: the file was written by this app. */
export function editsOf(rows, own) {
  return rows.flatMap((row) => {
    const what = fate(row);
    if (what === "new") return [making(newRecord(row))];
    return ["changed", "back"].includes(what) ? [changing(row, own)] : [];
  });
}

/** The record that a new row becomes. */
export function newRecord(row) {
  const record = structuredClone(row.record ?? row.if_chosen);
  if (row.pick !== row.chosen) choose(record, row.candidates[row.pick]?.sets ?? row.none);
  const { type, id, ...fields } = record;
  return { ...blank(type, fields), ...(id ? { id } : {}) };
}

/** Puts the chosen item in the record, or takes the one out that was not meant. */
function choose(record, fields) {
  Object.assign(record, fields);
  if (record.came) record.came.values.item = { ...record.came.values.item, ...fields };
}

/** A change that is made only if the record still is as it was shown. */
function changing(row, own) {
  const { id, sets, before } = row.same;
  const { sides, record, back } = row;
  const clashes = clashesOf(row);
  return {
    id,
    alter(now) {
      const moved = (name) => !same(now[name] ?? null, before[name] ?? null);
      if (!now || now.gone || Object.keys(before).some(moved)) throw new ChangedElsewhere(now);
      if (
        clashes.some(
          ({ field, ours }) =>
            sides[field] && field !== "item" && !same(now[field] ?? null, ours ?? null),
        )
      )
        throw new ChangedElsewhere(now);
      const after = { ...now, ...structuredClone(sets) };
      for (const { field, theirs, cell } of clashes) {
        if (sides[field] === "theirs")
          Object.assign(after, field === "item" ? theirs : { [field]: theirs });
        if (sides[field] && !own) settle(after, record, field, cell, theirs);
      }
      if (back) after.trashed = "";
      return after;
    },
  };
}

/** A clash that was settled is not asked again: the file's cell is known from now on. */
function settle(after, record, field, cell, theirs) {
  const came = structuredClone(after.came ?? { key: record.came.key, cells: {}, values: {} });
  came.cells[field] = cell;
  came.values[field] = theirs;
  after.came = came;
}

/** The rows that are not brought in, for a file of them: [{row, cells, wrong}]. */
export function leftRows(rows) {
  return rows
    .filter((row) => ["failed", "open", "out"].includes(fate(row)))
    .map(({ row, cells, failed, out }) => ({
      row,
      cells,
      wrong: [out ? YOU_LEFT_IT_OUT : failed],
    }));
}

/** How many rows meet which fate. */
export function counts(rows) {
  const fates = { new: 0, changed: 0, back: 0, same: 0, trash: 0, out: 0, open: 0, failed: 0 };
  for (const row of rows) fates[fate(row)] += 1;
  return fates;
}

/** The same in a sentence. */
export function countText(fates) {
  const said = [
    [fates.new, "new"],
    [fates.changed, "changed"],
    [fates.back, TAKEN_OUT_OF_THE_BIN],
    [fates.same, HERE_ALREADY_UNCHANGED],
    [fates.trash, IN_THE_BIN_AND_LEFT],
    [fates.open, TO_BE_CHOSEN],
    [fates.failed, CANNOT_BE_IMPORTED],
    [fates.out, LEFT_OUT],
  ].filter(([count]) => count > 0);
  return `${said.map(([count, what]) => `${count} ${what}`).join(" · ")}.`;
}
