/** A list from a file (CSV, XLSX) or from the clipboard, as rows of cells. */
import { NoZip, unzipped } from "../parts/zip.js";
import { numbered, workbookRows } from "./workbook.js";
import { NO_LIST_IN_IT, NOT_A_LIST, TOO_LARGE_FOR_A_LIST, tooManyRows } from "./list-words.js";

const MOST = 20_000_000; // bytes
const MOST_ROWS = 2000;
const DELIMITERS = ["\t", ";", "|", ","];
const TRIED = 300;
const TOP = 10; // rows among which the headings are looked for

/** A list that cannot be read, said in a sentence. */
export class NoList extends Error {}

/**
 * The rows of a file, those that say something, each with its number in the file (`line`). Throws
 * NoList.
 */
export async function rowsOfFile(file) {
  if (file.size > MOST) throw new NoList(TOO_LARGE_FOR_A_LIST);
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    try {
      return sound(await workbookRows(unzipped(bytes)));
    } catch (error) {
      throw error instanceof NoZip ? new NoList(error.message) : error;
    }
  }
  const text = decoded(bytes);
  if (text.includes("\0")) throw new NoList(NOT_A_LIST);
  return sound(parsed(text, delimiterOf(text)));
}

/** The rows of a text that was pasted. Throws NoList. */
export function rowsOfText(text) {
  return sound(parsed(text, delimiterOf(text)));
}

function sound(rows) {
  const full = rows
    .map((row, place) =>
      numbered(
        row.map((cell) => cell.trim()),
        row.line ?? place + 1,
      ),
    )
    .filter((row) => row.some((cell) => cell !== ""));
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

function decoded(bytes) {
  const wide = { "255 254": "utf-16le", "254 255": "utf-16be" }[`${bytes[0]} ${bytes[1]}`];
  if (wide) return new TextDecoder(wide).decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** What parts the cells: the mark that gives most rows the same number of them. */
function delimiterOf(text) {
  const start = text.slice(0, 400_000);
  let [best, chosen] = [0, ","];
  for (const mark of DELIMITERS) {
    const rows = parsed(start, mark)
      .slice(0, TRIED)
      .filter((row) => row.some((cell) => cell !== ""));
    const counts = new Map();
    for (const { length } of rows)
      if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
    if (counts.size === 0) continue;
    const [width, count] = [...counts].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0];
    const even = count / rows.length + (rows[0].length === width ? 0.25 : 0);
    const score = even + 0.02 * Math.min(width, 10);
    if (score > best) [best, chosen] = [score, mark];
  }
  return chosen;
}

/** The cells of a text, in quotation marks where a mark or a line end is meant (RFC 4180). */
export function parsed(text, mark) {
  const rows = [];
  let row = [];
  let cell = "";
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at];
    if (quoted) {
      if (sign !== '"') cell += sign;
      else if (text[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else quoted = false;
    } else if (sign === '"' && cell === "") quoted = true;
    else if (sign === mark || sign === "\n" || sign === "\r") {
      row.push(cell);
      cell = "";
      if (sign === mark) continue;
      if (sign === "\r" && text[at + 1] === "\n") at += 1;
      rows.push(row);
      row = [];
    } else cell += sign;
  }
  if (cell !== "" || row.length > 0) rows.push([...row, cell]);
  return rows;
}
