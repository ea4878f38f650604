/**
 * What lies at an address: a range, or the ranges of a published folder. Everything that can be
 * wrong is a sentence.
 */
import { rangeIn, rangeOfRows } from "./check-range.js";

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

/** What an address lacks, in sentences: the problems of fetch-range.js. */
const TOLD = {
  address:
    "The app cannot fetch from this address. It has to begin with https and hold no password.",
  "no answer":
    "Nothing that this app may read answers at this address. Compare it letter by letter, and " +
    "try again later.",
  closed:
    "Something answers at this address, but it does not let other apps read it. Whoever keeps " +
    "the range has to allow that: ask them.",
  large: "What lies at this address is larger than 40 MB: too large to be a range.",
  cut: "What came from this address ended too early. Try again where the signal is better.",
  slow: "This address takes too long to answer. Try again later.",
  page: "There is a page at this address, and no range. Ask whoever keeps it for the range’s own.",
};

/** Why the address did not answer as it should. */
function statusTold(status) {
  if (status === 404 || status === 410)
    return "There is nothing at this address, or no longer. Ask whoever keeps the range.";
  if (status === 401 || status === 403)
    return "This address lets only some people in. Ask whoever keeps the range for an open one.";
  return `The address answered with an error (${status}). Try again later.`;
}

/** The address that was typed, whole; {problem} where it is none. */
export function readAddress(typed) {
  const text = typed.trim();
  if (text === "") return { problem: "Type or paste an address first." };
  const plain = /^[a-z][a-z0-9+.-]*:/i.test(text) ? text : `https://${text}`;
  let url;
  try {
    url = new URL(plain);
  } catch {
    url = null;
  }
  const named = url && /^https?:$/.test(url.protocol) && url.hostname.includes(".");
  if (!named && url?.origin !== location.origin)
    return { problem: "This is not an address. It looks like https://trains.example.org/range" };
  if (url.protocol === "http:" && url.origin !== location.origin)
    return {
      problem:
        "This address begins with http, which anybody on the way can change. Put https in its " +
        "place.",
    };
  url.hash = "";
  return { address: url.href };
}

/**
 * The text at an address, {text}, or {problem, kind}.
 * @returns {Promise<Answer>}
 */
async function fetched(address) {
  if (!navigator.onLine)
    return { kind: "offline", problem: "There is no signal. Try again where there is one." };
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
  let found;
  try {
    found = JSON.parse(text);
  } catch {
    return null;
  }
  if (!Array.isArray(found)) return null;
  const sound = (one) =>
    typeof one?.name === "string" && typeof one.version === "string" && NAME.test(one.id);
  return found.filter(sound);
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
 * {found} of a single range, or {problem}.
 * @returns {Promise<Answer & { ranges?: any[]; folder?: string; found?: Answer }>}
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
  return { found: await checkedText(there) };
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
  return { problem: `What lies at this address cannot be used: ${whole.problem}` };
}

/**
 * One of the ranges of a published folder: {pack, text}, or {problem}.
 * @returns {Promise<Answer>}
 */
export async function fromFolder(folder, id) {
  const there = await fetched(new URL(`packs/${id}.json`, folder).href);
  if (there.text === undefined) return there;
  const found = await checkedText(there);
  if (found.problem || found.pack.id === id) return found;
  return { problem: "What lies at this address is another range than it was. Ask its keeper." };
}

/**
 * What was written down of one of them: {rows}, or {problem}.
 * @returns {Promise<Answer>}
 */
export async function rowsFromFolder(folder, id) {
  const there = await fetched(new URL(`packs/${id}.rows.json`, folder).href);
  if (there.text === undefined && there.kind === "status")
    return {
      problem:
        "This range can be used, but what is written down in it was not published. Ask whoever " +
        "keeps it for the range as a file.",
    };
  if (there.text === undefined) return there;
  const found = await rangeIn(there.text);
  return found.rows ? found : { problem: TOLD.cut };
}

/**
 * Whether there is another edition than `entry`, the line of a followed range: {same: true},
 * {found}, or {problem, kind}.
 * @returns {Promise<Answer & { same?: boolean; found?: Answer }>}
 */
export async function newerOf({ id, version, follows }) {
  const { folder, address } = follows;
  if (!folder) {
    const seen = await lookAt(address);
    if (seen.problem) return seen;
    const { found } = seen;
    if (!found)
      return { problem: "There are several ranges at this address now. Follow one again." };
    if (found.problem) return found;
    if (found.pack.id !== id)
      return { problem: "What lies at this address is another range than it was. Ask its keeper." };
    return found.pack.version === version ? { same: true } : { found };
  }
  const list = await fetched(new URL(LIST, folder).href);
  if (list.text === undefined) return list;
  const line = (listed(list.text) ?? []).find((one) => one.id === id);
  if (!line)
    return { problem: "This range is no longer among those at its address. Ask whoever keeps it." };
  if (line.version === version) return { same: true };
  const found = await fromFolder(folder, id);
  if (found.problem) return found;
  return found.pack.version === version ? { same: true } : { found };
}
