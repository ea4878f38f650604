/** A list from a file (CSV, XLSX) or from the clipboard, as rows of cells. */
import { tableOfFile, tableOfText } from "../exchange/file-table.js";
import { NoList } from "../exchange/list-rules.js";
import { NO_LIST_IN_IT, tooManyRows } from "./list-words.js";

const MOST_ROWS = 2000;
const TOP = 10; // rows among which the headings are looked for

/**
 * The rows of a file, those that say something, each with its number in the file (`line`). Throws
 * NoList.
 */
export async function rowsOfFile(file) {
  return sound(await tableOfFile(file));
}

/** The rows of a text that was pasted. Throws NoList. */
export async function rowsOfText(text) {
  return sound(await tableOfText(text));
}

/** A row of cells that knows its number in the file: what stands between others may be left out. */
function numbered(cells, line) {
  return Object.assign(cells, { line });
}

function sound({ rows }) {
  const full = rows.map(({ row, cells }) =>
    numbered(
      cells.map((cell) => cell.trim()),
      row,
    ),
  );
  if (full.length < 2) throw new NoList(NO_LIST_IN_IT);
  if (full.length > MOST_ROWS) throw new NoList(tooManyRows(full.length.toLocaleString("en-GB")));
  return full.slice(headingsAt(full));
}

/** The row that names the columns: the first of those at the top that is as wide as most. */
function headingsAt(rows) {
  const wide = (row) => row.filter((cell) => cell !== "").length;
  const most = Math.max(...rows.map(wide));
  const at = rows.slice(0, TOP).findIndex((row) => wide(row) > most / 2);
  return at < 0 || at > rows.length - 2 ? 0 : at;
}
