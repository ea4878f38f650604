/**
 * The text of a backup, made and read a row at a time: never the whole of it is held at once, for
 * with photos it is longer than a text may be.
 */
import { inTurns } from "./in-turns.js";
import { turns } from "./turns.js";

const LISTS = ["records", "journal", "photos"];
const HEAD = /^\{"format":(\d+),"kind":"identify backup","made":"[^"]*",$/;

/** A file under way: `add(texts)` puts rows into the list that `list(name)` began. */
export function begunFile(format, made) {
  /** @type {BlobPart[]} */
  const parts = [`{"format":${format},"kind":"identify backup","made":"${made}",`];
  let before = "";
  const list = (name) => {
    parts.push(`${parts.length > 1 ? "\n]," : "\n"}"${name}":[\n`);
    before = "";
  };
  const add = (texts) => {
    if (texts.length === 0) return;
    // a blob lies with the browser, outside the tab
    parts.push(new Blob([before, texts.join(",\n")]));
    before = ",\n";
  };
  const end = () => new Blob([...parts, "\n]}\n"], { type: "application/json" });
  return { list, add, end };
}

/**
 * What a file written as above holds: {format, and each list, its rows as `take[list]` makes them;
 * null ones are left out}; null where it is written in another way.
 * @returns {Promise<any>}
 */
export async function rowsOf(file, take) {
  const rows = Object.fromEntries(LISTS.map((name) => [name, []]));
  const turn = turns();
  let format = 0;
  let [at, ended] = [-1, false];
  for await (const line of linesOf(file)) {
    if (format === 0) {
      format = Number(HEAD.exec(line)?.[1] ?? 0);
      if (format === 0) return null;
    } else if (line === `${at < 0 ? "" : "],"}"${LISTS[at + 1]}":[`) at += 1;
    else if (line === "]}" && at === LISTS.length - 1) ended = true;
    else if (line !== "") {
      if (at < 0 || ended) return null;
      const row = parsed(line.endsWith(",") ? line.slice(0, -1) : line);
      if (row === undefined) return null;
      const made = await take[LISTS[at]](row);
      if (made !== null) rows[LISTS[at]].push(made);
      await turn();
    }
  }
  return ended ? { format, ...rows } : null;
}

/**
 * The same of a file that was read as a whole.
 * @returns {Promise<any>}
 */
export async function rowsIn(whole, take) {
  const listed = (name) => (Array.isArray(whole[name]) ? whole[name] : []);
  const rows = { format: whole.format };
  for (const name of LISTS) {
    const made = await inTurns(listed(name), take[name]);
    rows[name] = made.filter((row) => row !== null);
  }
  return rows;
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

async function* linesOf(file) {
  const reader = file.stream().getReader();
  const decoder = new TextDecoder();
  let parts = [];
  try {
    for (let ended = false; !ended;) {
      const { done, value } = await reader.read();
      const lines = decoder.decode(value, { stream: !done }).split("\n");
      for (const line of lines.slice(0, -1)) {
        parts.push(line);
        yield parts.join("");
        parts = [];
      }
      parts.push(lines[lines.length - 1]);
      ended = done;
    }
    yield parts.join("");
  } finally {
    reader.cancel().catch(() => {}); // nothing more is asked for
  }
}
