/**
 * What syncing changes in the phone's storage. Every function is one strict transaction or several,
 * each of which leaves everything whole. What is decided is decided by the rules (rules.js).
 *
 *   kept "sync"  {device, n, clock, sealed: place of the journal up to which it is sealed, checked,
 *                epoch, after, last: where the last pull ended, names: {device: name}, touched}
 *   heads        {record, heads}
 *   clashes      {record, clashes, brought_back, reopened}
 *   announced    a photo that operations tell of: {id, full, small (SHA-256), ..., gone, held}
 */
import { scrubbed } from "../data/records.js";
import { newId, same } from "../data/shapes.js";
import { look, problem, read, together } from "../data/store.js";
import { entryOf, fieldsOf, operationOf, recordOf, ruledOf } from "./material.js";
import { loadRules } from "./rules.js";

const STORES = ["kept", "records", "journal", "heads", "clashes", "announced"];
const SLICE = 200;
const CHECKED = 50;
const KEY = "sync";
const QUIET = new Set(["trashed", "gone", "made"]); // nobody is asked about these

/** The phone could not store it; nothing has happened. */
export class NotStored extends Error {}

function fresh() {
  return {
    device: newId("d"),
    n: 0,
    clock: { wall: 0, count: 0 },
    sealed: 0,
    checked: false,
    epoch: "",
    after: 0,
    last: "",
    names: {},
    touched: "",
  };
}

/** Where syncing stands. */
export async function readState() {
  return { ...fresh(), ...(await read("kept", KEY)) };
}

/** One transaction over all that syncing touches; `act(there, state)` changes `state` in place. */
async function inOne(act, more = []) {
  let given;
  const kept = await together([...STORES, ...more], async (there) => {
    const state = { ...fresh(), ...(await there.get("kept", KEY)) };
    given = await act(there, state);
    await there.put("kept", state, KEY);
  });
  if (kept !== "disk") throw new NotStored(problem());
  return given;
}

/** Notes something about where syncing stands. */
export function setState(change) {
  return inOne((_, state) => {
    Object.assign(state, change);
  });
}

/** The device is paired: {id, token, name}. */
export async function joined(pairing) {
  await inOne(async (there, state) => {
    await there.put("kept", pairing, "paired");
    await nameIt(there, state, pairing.name);
  });
}

/** Tells other devices what this one is called now. */
export async function nameHere(name) {
  const { names, device } = await readState();
  if (names[device] !== name) await inOne((there, state) => nameIt(there, state, name));
}

/** An operation tells the name: entries of other devices come with the operation's device only. */
async function nameIt(there, state, name) {
  state.names = { ...state.names, [state.device]: name };
  await there.put("journal", {
    ...ownEntry(`r${state.device.slice(1)}`, "device", "The device’s name"),
    before: null,
    after: { name, device: state.device },
  });
}

/** An entry that is sent, and that nobody undoes. */
function ownEntry(record, type, what) {
  const time = new Date().toISOString();
  return { time, record, type, group: newId("g"), what, undoes: "", side: true, send: true };
}

/** Makes operations of the entries that are none yet. Gives the ids of records that changed by it. */
export async function seal() {
  const rules = await loadRules();
  const touched = new Set();
  for (let more = true; more; ) {
    more = await inOne((there, state) => sealSome(there, state, rules, touched));
  }
  for (let more = true; more; ) {
    more = await inOne((there, state) => checkSome(there, state, rules, touched));
  }
  return [...touched];
}

const toSeal = ({ op, side, send, after }) => !op && (!side || send || after?.gone === true);

async function sealSome(there, state, rules, touched) {
  const found = await there.after("journal", state.sealed, SLICE);
  if (found.length === 0) return false;
  state.sealed = found[found.length - 1].seq;
  await sealThese(there, state, rules, found.filter(toSeal), touched);
  return found.length === SLICE;
}

async function sealThese(there, state, rules, entries, touched) {
  throw new Error("rules");
}

/**
 * On a phone that was used before it was first sealed: where the operations do not come to the record as it
 * stands, one more says so.
 */
async function checkSome(there, state, rules, touched) {
  if (state.checked === true) return false;
  while (await sealSome(there, state, rules, touched));
  const ids = await there.keys("records");
  const start = state.checked === false ? 0 : ids.findIndex((id) => id > state.checked);
  const some = start < 0 ? [] : ids.slice(start, start + CHECKED);
  const entries = [];
  for (const id of some) {
    const entry = await asItWas(there, rules, await there.get("records", id));
    if (entry) entries.push(entry);
  }
  for (const entry of entries) entry.seq = await there.put("journal", entry);
  await sealThese(there, state, rules, entries, touched);
  state.checked = some.length < CHECKED ? true : some[some.length - 1];
  return state.checked !== true;
}

async function asItWas(there, rules, now) {
  const entries = await operationsOf(there, now.id);
  const known = entries.length > 0;
  const merged = known ? recordOf(now.id, rules.merged(entries.map(ruledOf)), entries) : {};
  const names = [...new Set([...Object.keys(now), ...Object.keys(merged)])].filter(
    (name) => name !== "changed" && !same(now[name] ?? null, merged[name] ?? null),
  );
  if (known && names.length === 0) return null;
  const picked = (from) =>
    Object.fromEntries(names.filter((name) => name in from).map((name) => [name, from[name]]));
  return {
    ...ownEntry(now.id, now.type, "As it was on this phone"),
    time: now.changed,
    before: known ? picked(merged) : null,
    after: picked(now),
  };
}

/** All entries of a record that are operations. */
async function operationsOf(there, id) {
  return (await there.where("journal", "record", id)).filter(({ op }) => op);
}

/** Makes the record of all its operations, and notes what is to be settled. */
async function remerge(there, state, rules, id, touched) {
  const entries = await operationsOf(there, id);
  const merged = rules.merged(entries.map(ruledOf));
  await there.put("heads", { record: id, heads: merged.heads });
  await scrub(there, entries, merged.scrub);
  if (merged.type === "photo") return announce(there, id, merged);
  if (merged.type === "device") return nameOther(state, merged);
  const before = await there.get("records", id);
  const after = recordOf(id, merged, entries);
  if (!same(before, after)) {
    await there.put("records", after);
    touched.add(id);
  }
  await noteClashes(there, id, merged);
}

async function scrub(there, entries, ids) {
  if (ids.length === 0) return;
  const out = new Set(ids);
  for (const entry of entries) {
    if (out.has(entry.op)) {
      if (!entry.scrubbed) await there.put("journal", scrubbed(entry));
    } else if (Object.keys(entry.before ?? {}).length > 0) {
      await there.put("journal", { ...entry, fields: fieldsOf(entry), before: {} });
    }
  }
}

async function announce(there, id, merged) {
  const fields = Object.fromEntries(
    merged.fields.map(([name, text]) => [name, JSON.parse(text)]),
  );
  const old = await there.get("announced", id);
  const gone = merged.gone || typeof fields.full !== "string" || typeof fields.small !== "string";
  await there.put("announced", { ...fields, id, gone, held: old?.held ?? "" });
}

function nameOther(state, merged) {
  const fields = new Map(merged.fields.map(([name, text]) => [name, JSON.parse(text)]));
  const [device, name] = [fields.get("device"), fields.get("name")];
  if (typeof device !== "string" || typeof name !== "string") return;
  state.names = { ...state.names, [device]: name };
}

async function noteClashes(there, id, merged) {
  const old = await there.get("clashes", id);
  const clashes = merged.gone ? [] : merged.clashes.filter(({ field }) => !QUIET.has(field));
  const reopened = (merged.gone ? [] : (old?.reopened ?? [])).filter(
    ({ field }) => !clashes.some((clash) => clash.field === field),
  );
  const row = { record: id, clashes, brought_back: merged.brought_back, reopened };
  if (clashes.length + reopened.length > 0 || row.brought_back) await there.put("clashes", row);
  else if (old) await there.remove("clashes", id);
}

/** Takes in operations from elsewhere. Gives the ids of the records that changed. */
export async function takeIn(answer) {
  throw new Error("rules");
}

/** The places in the journal of the operations that this server does not hold. */
export async function unsent(epoch) {
  let keys;
  await look(["journal"], async (there) => {
    keys = await there.othersKeys("journal", "held", epoch);
  });
  return keys;
}

/** The operations at these places. */
export async function operations(keys) {
  let found;
  await look(["journal"], async (there) => {
    found = await Promise.all(keys.map((key) => there.get("journal", key)));
  });
  return found.map(operationOf);
}

/** The server holds these operations. */
export function markHeld(ids, epoch) {
  return inOne(async (there) => {
    for (const id of ids) {
      for (const entry of await there.where("journal", "op", id)) {
        if (entry.held !== epoch) await there.put("journal", { ...entry, held: epoch });
      }
    }
  });
}

/** The server holds something else under these ids: a copy of this phone went another way. */
export async function fork(ids) {
  throw new Error(`rules ${ids}`);
}

/** Takes in entries of a backup file that are operations. Gives the ids of records that changed. */
export async function takeEntries(entries) {
  throw new Error(`rules ${entries.length}`);
}
