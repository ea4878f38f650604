/** The list of reference packs, and the packs themselves. */
import { CannotGoOn } from "./engine.js";
import { read } from "./store.js";
import {
  ANY_RANGE,
  damagedWhat,
  EVERY_RANGE_AT_ONCE,
  NO_RANGE_HERE,
  noSignalFor,
  rangeNamed,
  rangeNotRead,
  siteGaveError,
  THE_DATE_MARKS,
  THE_LIST_OF_RANGES,
  THE_SHELF_OF_FEATURES,
  THE_TABLES_OF_MARKS,
} from "./first-words.js";

/** @import { Engine, EngineModule } from "./engine-types.d.ts" */
/** @import { MarkTables, MarkUsed, Pack } from "./engine-types.d.ts" */

const at = (path) => new URL(`../${path}`, import.meta.url);
const loaded = new Map();
const ALL = "all";
/** Under which the list of ranges added from files is kept; the text of each is apart. */
export const OWN = "ranges";
export const ownKey = (id) => `range ${id}`;
let marks = null;
let shelf = null;
let merged = null;

/** All ranges at once, as one entry of the list. */
function together(list) {
  return {
    id: ALL,
    name: ANY_RANGE,
    version: list.map(({ version }) => version).join(" "),
    about: EVERY_RANGE_AT_ONCE,
    first: Math.min(...list.map(({ first }) => first || Infinity)),
    last: Math.max(...list.map(({ last }) => last)),
    gauge: "",
    invented: list.every(({ invented }) => invented),
    parts: list,
  };
}

/**
 * The ranges that can be chosen, once the storage is open: [{id, name, version, about, first, last,
 * gauge, invented}]; last, all of them at once.
 */
export async function packList(opened) {
  const served = await json("packs/index.json", THE_LIST_OF_RANGES);
  await opened;
  const list = withOwn(served, ownIn(await read("kept", OWN)));
  if (!Array.isArray(list) || list.length === 0) {
    throw new CannotGoOn(NO_RANGE_HERE);
  }
  return list.length > 1 ? [...list, together(list)] : list;
}

/** The lines of the list of ranges added from files that can be read, whatever is kept there. */
export function ownIn(kept) {
  const sound = (line) =>
    ["id", "name", "version"].every((name) => typeof line?.[name] === "string");
  return Array.isArray(kept) ? kept.filter(sound) : [];
}

/** The ranges with those added from files, which stand in for others of the same id. */
function withOwn(served, own) {
  const ids = own.map(({ id }) => id);
  return Array.isArray(served) ? [...served.filter(({ id }) => !ids.includes(id)), ...own] : served;
}

/**
 * One pack as it was compiled; all of them joined by the engine.
 * @param {EngineModule} engine
 * @param {any} entry
 * @returns {Promise<Pack>}
 */
export async function rawPack(engine, entry) {
  const key = `${entry.id} ${entry.version}`;
  if (!loaded.has(key)) {
    const pack = entry.parts
      ? engine.join(await Promise.all(entry.parts.map((part) => rawPack(engine, part))))
      : entry.own
        ? parsed(await read("kept", ownKey(entry.id)))
        : await json(`packs/${entry.id}.json`, rangeNamed(entry.name));
    if (pack?.format !== 1) throw unreadable(entry);
    loaded.set(key, { pack, ready: null });
  }
  return loaded.get(key).pack;
}

/**
 * One pack: {pack: as compiled, ready: as the engine takes it}.
 * @param {EngineModule} engine
 * @param {any} entry
 * @returns {Promise<{ pack: Pack; ready: Engine }>}
 */
export async function loadPack(engine, entry) {
  const pack = await rawPack(engine, entry);
  const held = loaded.get(`${entry.id} ${entry.version}`);
  try {
    held.ready ??= engine.prepare(pack);
  } catch {
    throw unreadable(entry);
  }
  return held;
}

/**
 * The tables that marks are read by.
 * @returns {Promise<MarkTables>}
 */
export async function markTables() {
  marks ??= await json("packs/marks.json", THE_TABLES_OF_MARKS);
  return marks;
}

/**
 * The date marks that are merged into ranges of a country.
 * @returns {Promise<MarkUsed[]>}
 */
export async function dateMarks() {
  merged ??= await json("packs/date-marks.json", THE_DATE_MARKS);
  return merged;
}

/** The shelf that a range of one's own picks from: {kinds, features, drawings}. */
export async function kit() {
  shelf ??= await json("packs/kit.json", THE_SHELF_OF_FEATURES);
  return shelf;
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function unreadable({ name }) {
  return new CannotGoOn(rangeNotRead(name));
}

async function json(path, what) {
  let response;
  try {
    response = await fetch(at(path));
  } catch {
    throw new CannotGoOn(noSignalFor(what));
  }
  if (!response.ok) throw new CannotGoOn(siteGaveError(what, response.status));
  try {
    return await response.json();
  } catch {
    throw new CannotGoOn(damagedWhat(what));
  }
}
