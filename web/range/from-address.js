/**
 * What lies at an address: a range, or the ranges of a published folder. Everything that can be
 * wrong is a sentence.
 */
import { rangeIn, rangeOfRows } from "./check-range.js";
import { rowsKept } from "./kept-ranges.js";
import {
  ADDRESS_FIRST,
  ANOTHER_RANGE_THERE,
  answeredWithAnError,
  BEGINS_WITH_HTTP,
  cannotBeUsed,
  LETS_ONLY_SOME_IN,
  NO_LONGER_THERE,
  NO_SIGNAL,
  NOT_AN_ADDRESS,
  NOT_PUBLISHED,
  NOTHING_AT_THIS_ADDRESS,
  SEVERAL_THERE,
  TOLD,
} from "./following-words.js";

/** @import { Pack, RangeRows } from "../data/engine-types.d.ts" */

/**
 * What came of it: `rows`, `made` where a range came as what was written down; `problem` a
 * sentence, `kind` what sort of one; `dated`: since when it lies there, where its host says so.
 * @typedef {{ pack?: Pack; text?: string; rows?: RangeRows; made?: string; dated?: string;
 *   problem?: string; kind?: string }} Answer
 */

const MOST = 40_000_000; // bytes
const NAME = /^[a-z][a-z0-9_]*$/;
const LIST = "packs/index.json";

/** Why the address did not answer as it should. */
function statusTold(status) {
  if (status === 404 || status === 410) return NOTHING_AT_THIS_ADDRESS;
  if (status === 401 || status === 403) return LETS_ONLY_SOME_IN;
  return answeredWithAnError(status);
}

/** The address that was typed, whole; {problem} where it is none. */
export function readAddress(typed) {
  const text = typed.trim();
  if (text === "") return { problem: ADDRESS_FIRST };
  const plain = /^[a-z][a-z0-9+.-]*:/i.test(text) ? text : `https://${text}`;
  let url;
  try {
    url = new URL(plain);
  } catch {
    url = null;
  }
  const named = url && /^https?:$/.test(url.protocol) && url.hostname.includes(".");
  if (!named && url?.origin !== location.origin) return { problem: NOT_AN_ADDRESS };
  if (url.protocol === "http:" && url.origin !== location.origin)
    return {
      problem: BEGINS_WITH_HTTP,
    };
  url.hash = "";
  return { address: url.href };
}

/**
 * The text at an address, {text}, or {problem, kind}.
 * @returns {Promise<Answer>}
 */
async function fetched(address) {
  if (!navigator.onLine) return { kind: "offline", problem: NO_SIGNAL };
  const worker = new Worker(new URL("../fetch-range.js", import.meta.url), { type: "module" });
  const answer = await new Promise((resolve) => {
    worker.onmessage = ({ data }) => resolve(data);
    worker.onerror = () => resolve({ problem: "no answer" });
    worker.postMessage({ address, most: MOST });
  });
  worker.terminate();
  const { text = "", dated = "", problem, status } = answer;
  if (problem) return { kind: problem, problem: TOLD[problem] ?? statusTold(status) };
  if (/^\s*</.test(text)) return { kind: "page", problem: TOLD.page };
  return { text, dated: timeOf(dated) };
}

/** A date of HTTP as records have it; "" for none. */
function timeOf(text) {
  const time = Date.parse(text);
  return Number.isNaN(time) ? "" : new Date(time).toISOString();
}

/** The ranges that a published folder lists; null where this is no such list. */
function listed(text) {
  let list;
  try {
    list = JSON.parse(text);
  } catch {
    return null;
  }
  if (!Array.isArray(list)) return null;
  const sound = (line) =>
    typeof line?.name === "string" && typeof line.version === "string" && NAME.test(line.id);
  return list.filter(sound);
}

/** Where the ranges of a published folder are listed; null for the address of one file. */
function listAt(address) {
  const url = new URL(address);
  const last = url.pathname.split("/").at(-1);
  if (last.endsWith(".json")) return null;
  if (!last.includes(".") && last !== "") url.pathname += "/";
  url.search = "";
  return new URL(LIST, url).href;
}

/**
 * What lies at an address: {ranges: [{id, name, version, ...}], folder} of a published folder,
 * {edition} of a single range, or {problem}.
 * @returns {Promise<Answer & { ranges?: any[]; folder?: string; edition?: Answer }>}
 */
export async function lookAt(address) {
  const place = listAt(address);
  const list = place ? await fetched(place) : null;
  const ranges = list?.text ? listed(list.text) : null;
  if (ranges?.length > 0) return { ranges, folder: new URL("../", place).href };
  if (list?.kind === "offline") return list;
  const there = await fetched(address);
  if (there.text === undefined)
    return there.kind === "status" && list && list.kind !== "status" ? list : there;
  const inside = listed(there.text);
  if (inside?.length > 0) return { ranges: inside, folder: new URL("../", address).href };
  return { edition: await checkedText(there) };
}

/**
 * The range in a text, or {problem}, as a sentence of its own.
 * @param {Answer} answer
 * @returns {Promise<Answer>}
 */
async function checkedText({ text, dated }) {
  const seen = await rangeIn(text);
  const whole = seen.rows ? { ...seen, ...(await rangeOfRows(seen.rows)) } : seen;
  if (!whole.problem) return { ...whole, dated };
  return { problem: cannotBeUsed(whole.problem) };
}

/**
 * One of the ranges of a published folder: {pack, text}, or {problem}.
 * @returns {Promise<Answer>}
 */
export async function fromFolder(folder, id) {
  const there = await fetched(new URL(`packs/${id}.json`, folder).href);
  if (there.text === undefined) return there;
  const edition = await checkedText(there);
  if (edition.problem || edition.pack.id === id) return edition;
  return { problem: ANOTHER_RANGE_THERE };
}

/**
 * What was written down of one of them: {rows}, or {problem}.
 * @returns {Promise<Answer>}
 */
export async function rowsFromFolder(folder, id) {
  const there = await fetched(new URL(`packs/${id}.rows.json`, folder).href);
  if (there.text === undefined && there.kind === "status")
    return {
      problem: NOT_PUBLISHED,
    };
  if (there.text === undefined) return there;
  const edition = await rangeIn(there.text);
  return edition.rows ? edition : { problem: TOLD.cut };
}

/**
 * Whether there is another edition than `entry`, the line of a followed range: {same: true},
 * {edition}, or {problem, kind}. Rows that are the same are the same edition, though a newer app
 * compiles another range of them.
 * @returns {Promise<Answer & { same?: boolean; edition?: Answer }>}
 */
export async function newerOf({ id, version, follows }) {
  const { folder, address } = follows;
  if (!folder) {
    const seen = await lookAt(address);
    if (seen.problem) return seen;
    const { edition } = seen;
    if (!edition) return { problem: SEVERAL_THERE };
    if (edition.problem) return edition;
    if (edition.pack.id !== id) return { problem: ANOTHER_RANGE_THERE };
    if (edition.rows && JSON.stringify(edition.rows) === (await rowsKept(id)))
      return { same: true };
    return edition.pack.version === version ? { same: true } : { edition };
  }
  const list = await fetched(new URL(LIST, folder).href);
  if (list.text === undefined) return list;
  const line = (listed(list.text) ?? []).find((row) => row.id === id);
  if (!line) return { problem: NO_LONGER_THERE };
  if (line.version === version) return { same: true };
  const edition = await fromFolder(folder, id);
  if (edition.problem) return edition;
  return edition.pack.version === version ? { same: true } : { edition };
}
