/**
 * Where syncing stands on this phone, and the transactions that change it: strict ones, each of
 * which leaves everything whole. What is decided is decided by the rules (merging-rules.js).
 *
 *   kept "sync"  {device, n, clock, sealed: place of the journal up to which it is sealed, checked,
 *                epoch, after, last: where the last pull ended, round, names: {device: name},
 *                touched}
 *   heads        {record, heads}
 *   clashes      {record, clashes, brought_back, reopened}
 *   announced    a photo that operations tell of: {id, full, small (SHA-256), ..., gone, held}
 */
import { newId } from "../data/record-shapes.js";
import { problem, read, together } from "../data/store.js";
import { loadRules } from "./merging-rules.js";
import { A_DEVICES_NAME } from "./words.js";

const STORES = ["kept", "records", "journal", "heads", "clashes", "announced"];
const KEY = "sync";

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
    round: 0, // one more whenever the server is found to be another, or an older one
    names: {},
    touched: "",
  };
}

/** Where syncing stands. */
export async function readState() {
  return { ...fresh(), ...(await read("kept", KEY)) };
}

/** One transaction over all that syncing touches; `act(there, state)` changes `state` in place. */
export async function inOne(act) {
  let given;
  const kept = await together(STORES, async (there) => {
    const state = { ...fresh(), ...(await there.get("kept", KEY)) };
    given = await act(there, state);
    await there.put("kept", state, KEY);
  });
  if (kept !== "disk") throw new NotStored(problem());
  return given;
}

/** The same at a pace: `act(there, state, most)` does so many, and gives whether there are more. */
export async function atPace(own, act) {
  let [more, took] = [false, 0];
  await inOne(async (there, state) => {
    const began = performance.now(); // what waits before is not this one's work
    more = await act(there, state, own.most());
    took = performance.now() - began;
  });
  own.took(took, more);
  return more;
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
export async function nameIt(there, state, name) {
  state.names = { ...state.names, [state.device]: name };
  await there.put("journal", {
    ...ownEntry(`r${state.device.slice(1)}`, "device", A_DEVICES_NAME),
    before: null,
    after: { name, device: state.device },
  });
}

/** An entry that is sent, and that nobody undoes. */
export function ownEntry(record, type, what) {
  const time = new Date().toISOString();
  return { time, record, type, group: newId("g"), what, undoes: "", side: true, send: true };
}

/** What the server holds now is known under this name. */
export async function markNow() {
  const rules = await loadRules();
  return rules.mark_of(await readState());
}
