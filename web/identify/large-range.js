/** The thread beside the screen that reasons about a large range: see ../thread.js. */
import { yearsCame } from "../data/work-ahead.js";
import { ownKey } from "../data/packs.js";
import { read } from "../data/store.js";

const at = (path) => new URL(`../${path}`, import.meta.url).href;

/**
 * Starts it for a range. Gives `view(session, about, study)`, a promise of what the engine says,
 * and
 * `close`. `about` names what the records mean, `found`. Rejects where the thread cannot do it: the
 * screen's own engine then does.
 */
export async function startThread({ entry, pack }) {
  const worker = new Worker(at("thread.js"), { type: "module" });
  const waiting = new Map();
  let number = 0;
  let sent = "";
  let closed = false;

  function ask(what) {
    if (closed) return Promise.reject(new Error("closed"));
    number += 1;
    return new Promise((resolve, reject) => {
      waiting.set(number, { resolve, reject });
      worker.postMessage({ number, ...what });
    });
  }

  function answered({ number: of, problem, ...answer }) {
    const { resolve, reject } = waiting.get(of);
    waiting.delete(of);
    if (problem) reject(new Error(problem));
    else resolve(answer);
  }

  function close() {
    closed = true;
    worker.terminate();
    for (const { reject } of waiting.values()) reject(new Error("closed"));
    waiting.clear();
  }

  worker.onmessage = ({ data }) => answered(data);
  worker.onerror = close;

  async function view(session, about, study) {
    const known = about === sent;
    sent = about;
    const { view: seen, years } = await ask(known ? { session } : { session, study });
    if (years) yearsCame(session, years);
    return seen;
  }

  const parts = (entry.parts ?? [entry]).map(({ id, own }) =>
    own ? read("kept", ownKey(id)) : at(`packs/${id}.json`),
  );
  try {
    await ask({ open: await Promise.all(parts), version: pack.version });
  } catch (error) {
    close();
    throw error;
  }
  return { view, close };
}
