/** Is a text a range? The same check for a file and for what was fetched from an address. */
import { dateMarks } from "../data/packs.js";
import { state } from "../data/state.js";
import { fits } from "./json-schema.js";
import { compiled } from "./keep-compiled.js";
import {
  A_TABLE_IS_MISSING,
  ASK_AGAIN,
  CALLED_ALL,
  contradictsItself,
  notARange,
  NOTHING_WRITTEN_IN_IT,
  notReadAsARange,
  rangeIsDamaged,
  wasChanged,
} from "./following-words.js";

/** @import { Pack, RangeRows } from "../data/engine-types.d.ts" */

const VERSION = /,"version":"([0-9a-f]{16})"\}\s*$/;

/**
 * What a text is: a compiled range {pack, text}, the rows of one {rows, made}, or {problem: a
 * sentence}.
 * @param {string} text
 * @returns {Promise<{ pack?: Pack; text?: string; rows?: RangeRows; made?: string;
 *   problem?: string }>}
 */
export async function rangeIn(text) {
  let file;
  try {
    file = JSON.parse(text);
  } catch {
    return { problem: notARange(ASK_AGAIN) };
  }
  if (file?.kind === "identify range") {
    const { items, range } = file.rows ?? {};
    if (!Array.isArray(items) || typeof range?.name !== "string")
      return { problem: rangeIsDamaged(ASK_AGAIN) };
    return { rows: file.rows, made: typeof file.made === "string" ? file.made : "" };
  }
  const problem = await problemOf(file);
  if (problem) return { problem };
  if ((await digest(text)) !== file.version) return { problem: wasChanged(ASK_AGAIN) };
  return { pack: file, text: text.trim() };
}

/** Why this cannot be identified from, "" where it can. */
async function problemOf(pack) {
  const schema = await (await fetch(new URL("../packs/schema.json", import.meta.url))).json();
  const place = fits(schema, pack);
  if (place !== "") return notReadAsARange(place);
  if (pack.id === "all") return CALLED_ALL;
  try {
    const ready = state.engine.prepare(pack);
    state.engine.assess(ready, state.engine.new_session(ready));
  } catch (error) {
    console.warn(error);
    return contradictsItself(ASK_AGAIN);
  }
  return "";
}

/**
 * The compiled range of rows that came, {pack, text}, or {problem}.
 * @param {RangeRows} rows
 */
export async function rangeOfRows(rows) {
  try {
    if (!holdsTogether(rows)) throw new Error(A_TABLE_IS_MISSING);
    const { pack, text } = await compiled(structuredClone(rows), await dateMarks());
    if (!pack) return { problem: NOTHING_WRITTEN_IN_IT };
    const problem = await problemOf(JSON.parse(text));
    return problem ? { problem } : { pack, text };
  } catch (error) {
    console.warn(error);
    return { problem: contradictsItself(ASK_AGAIN) };
  }
}

/** The version that a compiled range should have: made of everything but the version. */
async function digest(text) {
  const bare = text.replace(VERSION, "}");
  const sum = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(bare));
  return [...new Uint8Array(sum)]
    .slice(0, 8)
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("");
}

// the fields of rows that are lists: what is none there would be lost without a word
const LISTS = {
  kinds: [],
  parts: [],
  cautions: ["kinds"],
  features: ["kinds", "when", "mistaken", "states"],
  sources: [],
  items: ["other_years", "contains", "carried", "cells"],
  variants: ["other_years", "cells"],
  changes: ["kinds", "items", "other_from"],
  moves: [],
  drawings: [],
};

/** Whether all tables are there, and every list is one. */
export function holdsTogether(rows) {
  return Object.entries(LISTS).every(
    ([table, fields]) =>
      Array.isArray(rows[table]) &&
      rows[table].every((row) => fields.every((field) => Array.isArray(row?.[field]))),
  );
}
