/**
 * A range of one's own as a zip of the folder that people keep who like files, and such a zip as a
 * range: `identify/reference/README.md` says what is in it.
 */
import { CannotGoOn } from "../data/engine.js";
import { kit } from "../data/packs.js";
import { share } from "../exchange/hand-out.js";
import { NoZip, unzipped, zipped } from "../parts/zip.js";
import { everyRow, rangingRules } from "./keep-compiled.js";
import { plainWord } from "./own-range.js";
import { PHOTO } from "./small-photo.js";
import { fileNotRead, FOLDER_PART_NOT_HERE, inLine, NO_RANGE_IN_IT } from "./words.js";

const TABLES = ["items", "variants", "changes", "sources", "moves"];
const DRAWING = /^drawings\/([\w-]+)\.(svg|jpg)$/;
const JPEG = "jpg";
const MOST_DRAWING = 100_000; // characters of one

/** A folder that cannot be read, said in a sentence. */
export class NoFolder extends Error {}

/** Gives a range of one's own as a zip: to another app where the phone can, else to save. */
export async function handOnFolder(range) {
  const ranging = await rangingRules();
  const rows = ranging.rows_of_records(range, everyRow(range.id));
  const folder = plainWord(range.name);
  const texts = ranging.files_of_rows(rows).map(({ id, text }) => [id, encoded(text)]);
  const drawn = rows.drawings.map(({ id, text }) => [
    `drawings/${id}.${text.startsWith(PHOTO) ? JPEG : "svg"}`,
    text.startsWith(PHOTO) ? fromUrl(text) : encoded(text),
  ]);
  const zip = await zipped([...texts, ...drawn].map(([name, data]) => [`${folder}/${name}`, data]));
  await share(new File([zip], `${folder}.zip`, { type: "application/zip" }), range.name);
}

const encoded = (text) => new TextEncoder().encode(text);

function fromUrl(url) {
  return Uint8Array.from(atob(url.slice(PHOTO.length)), (sign) => sign.charCodeAt(0));
}

function asUrl(bytes) {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return PHOTO + btoa(text);
}

/**
 * {rows, unknown: [[file, column]], unread: how many names in it mean nothing, large: how many
 * drawings are too large} of a zipped folder. Throws NoFolder.
 */
export async function rowsOfFolder(file) {
  const ranging = await rangingRules();
  try {
    const files = inFolder(unzipped(new Uint8Array(await file.arrayBuffer())));
    const texts = await textsOf(files);
    const drawings = await drawingsOf(files);
    const fitting = drawings.filter(({ text }) => text.length <= MOST_DRAWING);
    const { rows, unknown } = ranging.rows_of_folder({
      ...(await taken(ranging, texts)),
      id: plainWord(texts.folder || file.name.replace(/\.zip$/i, "")),
      drawings: fitting,
      ...(await fromKit()),
    });
    const large = drawings.length - fitting.length;
    return { rows, unknown, unread: ranging.names_unknown(rows), large };
  } catch (error) {
    throw error instanceof NoZip ? new NoFolder(error.message) : error;
  }
}

/** The files of the folder that holds range.toml, by their names in it; "" has the folder's. */
function inFolder(files) {
  const names = [...files.keys()].filter((name) => /(^|\/)range\.toml$/.test(name));
  const [shortest] = names.sort((a, b) => a.length - b.length);
  if (!shortest) throw new NoFolder(NO_RANGE_IN_IT);
  const root = shortest.slice(0, -"range.toml".length);
  const inside = [...files].filter(([name]) => name.startsWith(root));
  const folder = root.split("/").at(-2) ?? "";
  return { folder, files: new Map(inside.map(([name, file]) => [name.slice(root.length), file])) };
}

async function textsOf({ folder, files }) {
  const text = async (name) => {
    const file = files.get(name);
    return file ? new TextDecoder().decode(await file()) : "";
  };
  const names = ["range.toml", "features.toml", ...TABLES.map((table) => `${table}.csv`)];
  const texts = await Promise.all(names.map(async (name) => [name, await text(name)]));
  return { folder, ...Object.fromEntries(texts) };
}

/** The TOML and the tables, taken apart. */
async function taken(ranging, texts) {
  const { parse } = await tomlReader();
  const read = (name) => {
    try {
      return JSON.parse(JSON.stringify(parse(texts[name]))); // dates as texts
    } catch (error) {
      const place = error.line ? inLine(error.line) : "";
      throw new NoFolder(fileNotRead(name, place));
    }
  };
  const tables = TABLES.map((table) => {
    const text = texts[`${table}.csv`].replace(/^\ufeff/, "");
    const parsing = ranging.unparsed(text, ",");
    ranging.parse_on(parsing, text.length); // a row is a sign at least
    const [head = [], ...rows] = parsing.rows;
    return [table, [head.map((name) => name.toLowerCase()), ...rows]];
  });
  return {
    about: read("range.toml"),
    looks: read("features.toml"),
    ...Object.fromEntries(tables),
  };
}

async function tomlReader() {
  try {
    return await import(new URL("../toml.js", import.meta.url).href);
  } catch {
    throw new CannotGoOn(FOLDER_PART_NOT_HERE);
  }
}

async function drawingsOf({ files }) {
  const named = [...files]
    .map(([name, file]) => [DRAWING.exec(name), file])
    .filter(([drawing]) => drawing);
  const read = async ([[, id, ending], file]) => {
    const bytes = await file();
    return { id, text: ending === JPEG ? asUrl(bytes) : new TextDecoder().decode(bytes) };
  };
  return Promise.all(named.map(read));
}

/** The kit as folders pick from it. */
async function fromKit() {
  const { kinds, parts, features, drawings } = await kit();
  const byId = (list) => Object.fromEntries(list.map((row) => [row.id, row]));
  const bare = features.map(({ part, states, ...feature }) => ({
    ...feature,
    ...(part ? { part: part.id } : {}),
    states: states.map(({ drawing: _, ...state }) => state),
  }));
  const drawn = [
    ...kinds.map(({ id, drawing }) => [`kind-${id}`, drawing]),
    ...features.flatMap(({ id, states }) =>
      states.map((state) => [`${id}-${state.id}`, state.drawing]),
    ),
    ...Object.entries(drawings),
  ];
  return {
    written: {
      kinds: byId(kinds.map(({ drawing: _, ...kind }) => kind)),
      parts: byId(parts),
      feature: byId(bare),
    },
    drawn: Object.fromEntries(drawn),
  };
}
