/**
 * The table of an XLSX workbook (ECMA-376), each cell as the text that a person would type for it:
 * dates by year, month and day, noughts in front where the format puts them.
 */
import { turns } from "../data/turns.js";
import { NoZip } from "../parts/zip.js";
import {
  NO_BOOK,
  NO_SHEET_WITH_CELLS,
  noSuchSheet,
  tooManyCells,
  wouldTake,
} from "./import-words.js";

const DAY = 86_400_000;
const BUILT_IN_DATES = [14, 15, 16, 17, 18, 19, 20, 21, 22, 45, 46, 47];
const SYMBOL = /\[\$([^\-\]]*)[^\]]*\]|([£€$¥])|"([^"]*)"/;
const CELL = /^([A-Z]{1,3})(\d+)$/;

const AT_ONCE = 1000; // rows, or texts, that are parsed before the screen may have its turn
const MOST_XML = 60_000_000; // bytes of one sheet
const MOST_CELLS = 2_000_000; // looked at, empty ones too
const MOST_COLUMNS = 500;
const FURTHER_ROWS = 20_000; // of a table, and one more to tell that there are more

/**
 * The table on a sheet of a workbook: the first that has rows where `asked` is "". `files`: of the
 * workbook (`unzipped`). Throws NoZip.
 */
export async function workbookTable(rules, files, asked) {
  const part = async (name) => {
    const file = files.get(name.replace(/^\//, ""));
    return file ? textOfPart(await file()) : "";
  };
  const xml = async (name) => {
    const text = await part(name);
    return text === "" ? null : parsedXml(text);
  };
  const book = await xml("xl/workbook.xml");
  const links = await xml("xl/_rels/workbook.xml.rels");
  if (!book || !links) throw new NoZip(NO_BOOK);
  const targets = new Map(
    tags(links, "Relationship").map((tag) => [tag.getAttribute("Id"), tag.getAttribute("Target")]),
  );
  const about = {
    shared: sharedTexts(await part("xl/sharedStrings.xml")),
    formats: formatsOf(await xml("xl/styles.xml")),
    from1904: tags(book, "workbookPr").some((tag) =>
      ["1", "true"].includes(tag.getAttribute("date1904")),
    ),
  };
  const sheets = tags(book, "sheet").map((tag) => ({
    name: tag.getAttribute("name") ?? "",
    target: targets.get(tag.getAttribute("r:id")) ?? "",
  }));
  const names = sheets.map(({ name }) => name);
  if (asked !== "" && !names.includes(asked)) throw new NoZip(noSuchSheet(asked, names.join(", ")));
  if (names.length === 0) throw new NoZip(NO_SHEET_WITH_CELLS);
  let table = { rows: [], notes: [] };
  let sheet = "";
  for (const { name, target } of sheets) {
    if (asked === "" ? table.rows.length > 0 : name !== asked) continue;
    const path = target.startsWith("/") ? target : `xl/${target}`;
    // oxlint-disable-next-line no-await-in-loop -- only until one has rows
    table = await tableOfSheet(rules, name, await part(path), about);
    sheet = name;
  }
  if (asked === "") table.notes.push(...rules.sheets_said(sheet, names));
  return { ...table, sheet, sheets: names, wrong: "" };
}

/** The texts that cells share, by their places; parsed as far as they are asked for. */
function sharedTexts(text) {
  const pieces = inPieces(text, "si");
  const texts = [];
  return (place) => {
    while (texts.length <= place) {
      const { value, done } = pieces.next();
      if (done) return "";
      for (const tag of tags(parsedXml(value), "si")) texts.push(textOf(tag));
    }
    return texts[place] ?? "";
  };
}

/** The rows of a sheet that say something, and what is odd about its cells. */
async function tableOfSheet(rules, name, text, about) {
  const turn = turns();
  const sheet = { name, rows: [], errors: [], empty: [], formulas: 0, looked: 0, line: 0 };
  let last = null;
  for (const piece of inPieces(text, "row")) {
    last = parsedXml(piece);
    if (tags(last, "row").some((row) => !takeRow(rules, sheet, row, about))) break;
    // oxlint-disable-next-line no-await-in-loop -- one piece after the other
    await turn();
  }
  const { rows, errors, formulas, empty } = sheet;
  const kept = new Set(rows.map(({ row }) => row));
  const merged = tags(last, "mergeCell")
    .map((tag) => tag.getAttribute("ref") ?? "")
    .filter((ref) => touches(ref, kept));
  const notes = [
    ...rules.errors_said(errors),
    ...rules.merged_said(merged),
    ...rules.formulas_said(formulas, empty),
  ];
  return { rows, notes };
}

/** Takes a row of a sheet; gives whether there may be more: what is too much the engine tells. */
function takeRow(rules, sheet, row, about) {
  const before = sheet.line;
  sheet.line = Number(row.getAttribute("r") ?? before + 1);
  sheet.looked += Math.max(1, sheet.line - before);
  const cells = [];
  for (const cell of row.children) {
    if (cell.localName !== "c") continue;
    const named = CELL.exec(cell.getAttribute("r") ?? "");
    const place = named ? columnOf(named[1]) : cells.length;
    sheet.looked += Math.max(1, place + 1 - cells.length);
    if (sheet.looked > MOST_CELLS) throw new NoZip(tooManyCells(sheet.name));
    while (cells.length < place) cells.push("");
    cells[place] = cellText(rules, cell, about);
    const where = `${rules.column_letters(place)}${sheet.line}`;
    const wrong = cell.getAttribute("t") === "e" ? inside(cell, "v") : "";
    if (wrong !== "") sheet.errors.push([where, wrong]);
    if ([...cell.children].some(({ localName }) => localName === "f")) {
      sheet.formulas += 1;
      if (wrong === "" && cells[place] === "") sheet.empty.push(where);
    }
  }
  while (cells.length > 0 && cells.at(-1).trim() === "") cells.pop();
  if (cells.length > 0) sheet.rows.push({ row: sheet.line, cells });
  return cells.length <= MOST_COLUMNS && sheet.rows.length <= FURTHER_ROWS;
}

/** Whether one of the rows is among those of merged cells: A1:D1. */
function touches(ref, kept) {
  const [top, bottom] = (ref.match(/\d+/g) ?? []).map(Number);
  for (let row = top; row <= Math.min(bottom ?? top, top + FURTHER_ROWS); row += 1)
    if (kept.has(row)) return true;
  return false;
}

/** What stands in the first part of a cell that is called so, "" for none. */
function inside(cell, name) {
  return tags(cell, name)[0]?.textContent ?? "";
}

function textOfPart(bytes) {
  if (bytes.length > MOST_XML) throw new NoZip(wouldTake(Math.round(bytes.length / 1e6)));
  const text = new TextDecoder().decode(bytes);
  if (/<!DOCTYPE|<!ENTITY/i.test(text)) throw new NoZip(NO_BOOK);
  return text;
}

function parsedXml(text) {
  const root = new DOMParser().parseFromString(text, "text/xml");
  if (root.querySelector("parsererror")) throw new NoZip(NO_BOOK);
  return root;
}

/**
 * A long part of a workbook as several that hold AT_ONCE of the elements of this name each: the
 * browser parses a text in one go, and the screen would stand still. What comes behind them is in
 * the last one.
 */
function* inPieces(text, name) {
  const begun = new RegExp(`<([\\w.-]+:)?${name}[\\s/>]`).exec(text);
  const end = `</${begun?.[1] ?? ""}${name}>`;
  const last = text.lastIndexOf(end) + end.length;
  if (!begun || last < begun.index) {
    if (text !== "") yield text;
    return;
  }
  const [head, tail] = [text.slice(0, begun.index), text.slice(last)];
  const closed = tail.slice(tail.indexOf("</"));
  let from = begun.index;
  while (from < last) {
    let to = from;
    for (let n = 0; n < AT_ONCE && to < last; n += 1) to = text.indexOf(end, to) + end.length;
    yield head + text.slice(from, to) + (to < last ? closed : tail);
    from = to;
  }
}

function tags(node, name) {
  return node ? [...node.getElementsByTagNameNS("*", name)] : [];
}

/** The text of a shared or inline string, without how it is said aloud. */
function textOf(node) {
  return tags(node, "t")
    .filter((tag) => tag.parentNode.localName !== "rPh")
    .map((tag) => tag.textContent)
    .join("");
}

/** The number format of each style. */
function formatsOf(styles) {
  const own = new Map(
    tags(styles, "numFmt").map((tag) => [
      tag.getAttribute("numFmtId"),
      tag.getAttribute("formatCode"),
    ]),
  );
  const [list] = tags(styles, "cellXfs");
  return tags(list, "xf").map((tag) => {
    const id = tag.getAttribute("numFmtId") ?? "0";
    return own.get(id) ?? (BUILT_IN_DATES.includes(Number(id)) ? "yyyy-mm-dd" : "");
  });
}

/** The place of a column, from 0: A, B, ..., AA. */
function columnOf(letters) {
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

function cellText(rules, cell, { shared, formats, from1904 }) {
  const sort = cell.getAttribute("t") ?? "n";
  if (sort === "inlineStr") return textOf(cell);
  const text = inside(cell, "v");
  if (text === "" || sort === "e") return "";
  if (sort === "s") return shared(Number(text));
  if (sort === "b") return text === "1" ? "yes" : "no";
  if (sort === "str") return text;
  if (sort === "d") return text.replace(/T00:00(:00)?(\.0+)?Z?$/, "");
  const number = Number(text);
  const format = formats[Number(cell.getAttribute("s") ?? 0)] ?? "";
  return isDate(format) ? dateOf(number, from1904) : numberText(rules, number, format);
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
function numberText(rules, number, format) {
  const plain = String(Math.round(number * 1e10) / 1e10);
  const [first] = format.split(";");
  if (/^0{2,}$/.test(first)) return plain.padStart(first.length, "0");
  const symbol = (SYMBOL.exec(first) ?? []).slice(1).find(Boolean)?.trim() ?? "";
  if (rules.written_as(symbol.toUpperCase(), "marks").length === 0) return plain;
  const cents = Math.round(number * 100) / 100;
  const whole = Number.isInteger(number) || cents !== Math.round(number * 1e10) / 1e10;
  return `${symbol}${whole ? plain : number.toFixed(2)}`;
}
