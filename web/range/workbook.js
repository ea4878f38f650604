/**
 * The first table of an XLSX workbook (ECMA-376), each cell as the text that a person would type
 * for it: dates by year, month and day, noughts in front where the format puts them.
 */
import { NoZip } from "../parts/zip.js";
import { NO_BOOK, NO_SHEET_WITH_CELLS } from "./list-words.js";

const DAY = 86_400_000;
const BUILT_IN_DATES = [14, 15, 16, 17, 18, 19, 20, 21, 22, 45, 46, 47];
const SYMBOL = /\[\$([^\-\]]*)[^\]]*\]|([£€$¥])|"([^"]*)"/;
const MONEY = /^([£€$¥]|[A-Z]{3})$/;
const CELL = /^([A-Z]{1,3})(\d+)$/;

/** A row of cells that knows its number in the file: what stands between others may be left out. */
export function numbered(cells, line) {
  return Object.assign(cells, { line });
}

/**
 * The rows of the first sheet that has any, each with its number there (`line`). `files`: of the
 * workbook (`unzipped`).
 */
export async function workbookRows(files) {
  const xml = async (name) => {
    const file = files.get(name.replace(/^\//, ""));
    return file ? parsedXml(await file()) : null;
  };
  const book = await xml("xl/workbook.xml");
  const links = await xml("xl/_rels/workbook.xml.rels");
  if (!book || !links) throw new NoZip(NO_BOOK);
  const targets = new Map(
    tags(links, "Relationship").map((one) => [one.getAttribute("Id"), one.getAttribute("Target")]),
  );
  const shared = tags(await xml("xl/sharedStrings.xml"), "si").map(textOf);
  const formats = formatsOf(await xml("xl/styles.xml"));
  const from1904 = tags(book, "workbookPr").some((one) =>
    ["1", "true"].includes(one.getAttribute("date1904")),
  );
  for (const sheet of tags(book, "sheet")) {
    const target = targets.get(sheet.getAttribute("r:id")) ?? "";
    const path = target.startsWith("/") ? target : `xl/${target}`;
    // oxlint-disable-next-line no-await-in-loop -- only until one has rows
    const rows = rowsOf(await xml(path), { shared, formats, from1904 });
    if (rows.length > 0) return rows;
  }
  throw new NoZip(NO_SHEET_WITH_CELLS);
}

function parsedXml(bytes) {
  const text = new TextDecoder().decode(bytes);
  if (/<!DOCTYPE|<!ENTITY/i.test(text)) throw new NoZip(NO_BOOK);
  const root = new DOMParser().parseFromString(text, "text/xml");
  if (root.querySelector("parsererror")) throw new NoZip(NO_BOOK);
  return root;
}

function tags(node, name) {
  return node ? [...node.getElementsByTagNameNS("*", name)] : [];
}

/** The text of a shared or inline string, without how it is said aloud. */
function textOf(node) {
  return tags(node, "t")
    .filter((one) => one.parentNode.localName !== "rPh")
    .map((one) => one.textContent)
    .join("");
}

/** The number format of each style. */
function formatsOf(styles) {
  const own = new Map(
    tags(styles, "numFmt").map((one) => [
      one.getAttribute("numFmtId"),
      one.getAttribute("formatCode"),
    ]),
  );
  const [list] = tags(styles, "cellXfs");
  return tags(list, "xf").map((one) => {
    const id = one.getAttribute("numFmtId") ?? "0";
    return own.get(id) ?? (BUILT_IN_DATES.includes(Number(id)) ? "yyyy-mm-dd" : "");
  });
}

function rowsOf(sheet, about) {
  const rows = [];
  let line = 0;
  for (const row of tags(sheet, "row")) {
    line = Number(row.getAttribute("r") ?? line + 1);
    const cells = [];
    for (const cell of tags(row, "c")) {
      const named = CELL.exec(cell.getAttribute("r") ?? "");
      const place = named ? columnOf(named[1]) : cells.length;
      while (cells.length < place) cells.push("");
      cells[place] = cellText(cell, about);
    }
    while (cells.length > 0 && cells.at(-1).trim() === "") cells.pop();
    if (cells.length > 0) rows.push(numbered(cells, line));
  }
  return rows;
}

/** The place of a column, from 0: A, B, ..., AA. */
function columnOf(letters) {
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

function cellText(cell, { shared, formats, from1904 }) {
  const sort = cell.getAttribute("t") ?? "n";
  if (sort === "inlineStr") return textOf(cell);
  const [held] = tags(cell, "v");
  const text = held?.textContent ?? "";
  if (text === "" || sort === "e") return "";
  if (sort === "s") return shared[Number(text)] ?? "";
  if (sort === "b") return text === "1" ? "yes" : "no";
  if (sort === "str") return text;
  if (sort === "d") return text.replace(/T00:00(:00)?(\.0+)?Z?$/, "");
  const number = Number(text);
  const format = formats[Number(cell.getAttribute("s") ?? 0)] ?? "";
  return isDate(format) ? dateOf(number, from1904) : numberText(number, format);
}

/** Whether a format shows a day or a time: what stands in quotes or brackets does not count. */
function isDate(format) {
  const [first] = format.replace(/"[^"]*"|\[(?!hh?\]|mm?\]|ss?\])[^\]]*\]/gi, "").split(";");
  return /(?<![_\\])[dmhys]/i.test(first);
}

function dateOf(number, from1904) {
  const whole = from1904 ? number + 1462 : number < 60 ? number + 1 : number; // 1900 had no 29 Feb
  const date = new Date(Math.round((whole - 25_569) * DAY));
  if (Number.isNaN(date.getTime())) return String(number);
  const [day, time] = date.toISOString().split("T");
  if (number < 1) return time.slice(0, 8);
  return time.startsWith("00:00:00") ? day : `${day} ${time.slice(0, 5)}`;
}

/** A number with what its format adds: noughts in front, or the currency. */
function numberText(number, format) {
  const plain = String(Math.round(number * 1e10) / 1e10);
  const [first] = format.split(";");
  if (/^0{2,}$/.test(first)) return plain.padStart(first.length, "0");
  const symbol = (SYMBOL.exec(first) ?? []).slice(1).find(Boolean)?.trim() ?? "";
  if (!MONEY.test(symbol)) return plain;
  const cents = Math.round(number * 100) / 100;
  const whole = Number.isInteger(number) || cents !== Math.round(number * 1e10) / 1e10;
  return `${symbol}${whole ? plain : number.toFixed(2)}`;
}
