/**
 * The engine in a thread of its own, for a large range: the screen is not held up while it reasons.
 * It is told {number, ...} and answers {number, ...}, one after another:
 *
 *   {open: addresses or texts of the packs, version}  -> {}           reads the range
 *   {session, study}  -> {view, years}   `study`: what the records mean, left out where nothing is
 *   kept
 *                                        or where it is as before; `years`: of the answer card,
 *                                        else null
 */
import * as engine from "./engine.js";

let ready = null;
let study = null;

async function pack(part) {
  if (!part.startsWith("{")) return (await fetch(part)).json();
  return JSON.parse(part);
}

async function open({ open: parts, version }) {
  const packs = await Promise.all(parts.map(pack));
  const range = packs.length > 1 ? engine.join(packs) : packs[0];
  if (range.version !== version) throw new Error("another version of the range");
  ready = engine.prepare(range);
  return {};
}

function reason({ session, study: given }) {
  if (given !== undefined) study = given;
  const view = study ? engine.assess_studied(ready, session, study) : engine.assess(ready, session);
  const years = view.stop !== "" || !view.question ? engine.seen_years(ready, session) : null;
  return { view, years };
}

let last = Promise.resolve();
addEventListener("message", ({ data }) => {
  last = last
    .then(() => (data.open ? open(data) : reason(data)))
    .then((answer) => postMessage({ number: data.number, ...answer }))
    .catch((error) => postMessage({ number: data.number, problem: String(error) }));
});
