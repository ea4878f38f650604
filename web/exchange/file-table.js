/**
 * A file of any sort as a table: the platform unpacks and decodes it, the engine says what it is
 * and what is odd about it (identify/core/importing).
 */
import { NoZip, unzipped } from "../parts/zip.js";
import { turns } from "../data/turns.js";
import { CANNOT_BE_READ_ANY_MORE } from "./import-words.js";
import { listRules, NoList } from "./list-rules.js";
import { workbookTable } from "./workbook.js";

/** @import { FileTable, TablesModule } from "../data/engine-types.d.ts" */

const BEGINNING = 400; // bytes that tell which sort of file it is
const CHUNK = 32_768; // bytes that become characters at once
const ROWS = 200; // parsed before the screen may have its turn
const ABOVE = String.fromCharCode(...Array.from({ length: 128 }, (_, n) => 128 + n));

/**
 * The table in a file. `sheet`: which one of a workbook, "" for the first that has rows. Throws
 * NoList.
 * @returns {Promise<FileTable>}
 */
export async function tableOfFile(file, sheet = "") {
  const rules = await listRules();
  refuse(rules.too_heavy(file.size));
  const bytes = await bytesOf(file);
  const start = await raw(bytes.subarray(0, BEGINNING));
  refuse(rules.no_table_in(start, file.size));
  const sort = rules.sort_of_file(start);
  if (sort === "workbook") return checked(rules, await workbook(rules, bytes, sheet));
  const { text, notes } = await decoded(rules, bytes);
  if (sort === "json") return checked(rules, rules.records_table(text));
  const table = await tableOfText(text);
  table.notes.unshift(...notes);
  return rules.is_own(table.rows[0].cells) ? table : rules.without_sheet_errors(table);
}

/**
 * The table in a text. Throws NoList.
 * @returns {Promise<FileTable>}
 */
export async function tableOfText(text) {
  const rules = await listRules();
  refuse(rules.no_text_in(text));
  const parsing = rules.begun_table(text);
  const turn = turns();
  while (!rules.parsed_whole(parsing)) {
    rules.parse_on(parsing, ROWS);
    // oxlint-disable-next-line no-await-in-loop -- one piece after the other
    await turn();
  }
  return checked(rules, rules.table_parsed(parsing));
}

/** What is in a file: it may be gone, or changed since it was chosen. */
async function bytesOf(file) {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch (error) {
    throw error instanceof DOMException ? new NoList(CANNOT_BE_READ_ANY_MORE) : error;
  }
}

function refuse(sentence) {
  if (sentence !== "") throw new NoList(sentence);
}

function checked(rules, table) {
  refuse(table.wrong || rules.too_large(table.rows));
  return table;
}

/** Each byte as the character of its number. */
async function raw(bytes) {
  const turn = turns();
  const parts = [];
  for (let at = 0; at < bytes.length; at += CHUNK) {
    // oxlint-disable-next-line prefer-spread -- spreading bytes takes ten times as long
    parts.push(String.fromCharCode.apply(null, bytes.subarray(at, at + CHUNK)));
    // oxlint-disable-next-line no-await-in-loop -- one piece after the other
    await turn();
  }
  return parts.join("");
}

/** @param {TablesModule} rules */
async function decoded(rules, bytes) {
  const whole = await raw(bytes);
  const [encoding, name] = rules.encoding_of(whole);
  const text = encoding.startsWith("utf-32")
    ? utf32(bytes, encoding.endsWith("le"))
    : new TextDecoder(encoding).decode(bytes);
  return rules.text_of_file(whole, text, name, ABOVE);
}

/** What TextDecoder does not know. */
function utf32(bytes, little) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let text = "";
  for (let at = 0; at + 4 <= bytes.length; at += 4) {
    const code = view.getUint32(at, little);
    text += code > 0x10ffff ? "\ufffd" : String.fromCodePoint(code);
  }
  return text;
}

async function workbook(rules, bytes, sheet) {
  try {
    const files = unzipped(bytes);
    const mimetype = files.has("mimetype") ? await raw(await files.get("mimetype")()) : "";
    refuse(rules.no_workbook_in([...files.keys()], mimetype));
    return await workbookTable(rules, files, sheet);
  } catch (error) {
    throw error instanceof NoZip ? new NoList(error.message) : error;
  }
}
