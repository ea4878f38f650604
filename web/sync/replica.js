/**
 * What syncing changes in the phone's storage. Every function is one strict transaction or several,
 * each of which leaves everything whole. What is decided is decided by the rules (rules.js).
 *
 *   kept "sync"  {device, n, clock, sealed: place of the journal up to which it is sealed, checked,
 *                epoch, after, last: where the last pull ended, round, names: {device: name},
 *                touched}
 *   heads        {record, heads}
 *   clashes      {record, clashes, brought_back, reopened}
 *   announced    a photo that operations tell of: {id, full, small (SHA-256), ..., gone, held}
 */
import { newId, same } from "../data/record-shapes.js";
import { look, problem, read, together } from "../data/store.js";
import { rowOf } from "../data/aside.js";
import { ASIDE } from "../data/gate.js";
import { SILENT, entryOf, operationOf, recordOf, written } from "./operation-forms.js";
import { operationsOf, remergeAll } from "./records-from-operations.js";
import { loadRules } from "./merging-rules.js";
import { pace } from "./pace.js";
import { A_DEVICES_NAME, AS_IT_WAS_ON_THIS_PHONE } from "./words.js";

const STORES = ["kept", "records", "journal", "heads", "clashes", "announced"];
const KEY = "sync";
const [sealing, checking, taking] = [pace(), pace(), pace()];

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

/** The same at a pace: `act(there, state, most)` does so many, and gives whether there are more. */
async function atPace(own, act) {
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
async function nameIt(there, state, name) {
  state.names = { ...state.names, [state.device]: name };
  await there.put("journal", {
    ...ownEntry(`r${state.device.slice(1)}`, "device", A_DEVICES_NAME),
    before: null,
    after: { name, device: state.device },
  });
}

/** An entry that is sent, and that nobody undoes. */
function ownEntry(record, type, what) {
  const time = new Date().toISOString();
  return { time, record, type, group: newId("g"), what, undoes: "", side: true, send: true };
}

/**
 * Makes operations of the entries that are none yet. Gives the ids of records that changed by it.
 */
export async function seal() {
  const rules = await loadRules();
  const touched = new Set();
  for (let more = true; more;) {
    more = await atPace(sealing, (there, state, most) =>
      sealSome(there, state, rules, touched, most),
    );
  }
  for (let more = true; more;) {
    more = await atPace(checking, (there, state, most) =>
      checkSome(there, state, rules, touched, most),
    );
  }
  return [...touched];
}

const toSeal = ({ op, side, send, after }) => !op && (!side || send || after?.gone === true);

async function sealSome(there, state, rules, touched, most = sealing.most()) {
  const { values, last, more } = await there.after("journal", state.sealed, most);
  state.sealed = last;
  await sealThese(there, state, rules, values.filter(toSeal), touched);
  return more;
}

/** Gives entries an id, a clock and parents, in their order. */
async function sealThese(there, state, rules, entries, touched) {
  const ids = [...new Set(entries.map(({ record }) => record))];
  const rows = await Promise.all(ids.map((id) => there.get("heads", id)));
  const times = entries.map(({ record, time }) => ({ record, time: Date.parse(time) || 0 }));
  const { n, clock, ops, heads } = rules.sealed(state, times, rows.filter(Boolean));
  Object.assign(state, { n, clock });
  const puts = ops.map(({ id: op, parents, wall, count }, place) =>
    there.put("journal", { ...entries[place], op, parents, wall, count, held: "" }),
  );
  await Promise.all([...puts, ...heads.map((row) => there.put("heads", row))]);
  const silent = new Set(
    entries.filter(({ type }) => SILENT.includes(type)).map(({ record }) => record),
  );
  const open = await Promise.all(ids.map((id) => there.get("clashes", id)));
  const again = ids.filter((id, place) => open[place] || silent.has(id));
  await remergeAll(there, state, rules, again, touched);
}

/**
 * On a phone that was used before it was first sealed: where the operations do not come to the
 * record as it
 * stands, one more says so.
 */
async function checkSome(there, state, rules, touched, most) {
  if (state.checked === true) return false;
  while (await sealSome(there, state, rules, touched));
  const some = await there.keysAfter("records", state.checked || "", most);
  const stand = await Promise.all(some.map((id) => there.get("records", id)));
  const fit = stand.filter(Boolean); // the gate has set the others aside
  const missing = await Promise.all(fit.map((now) => asItWas(there, rules, now)));
  const entries = missing.filter(Boolean);
  const stored = [];
  for (const entry of entries) stored.push({ ...entry, seq: await there.put("journal", entry) });
  await sealThese(there, state, rules, stored, touched);
  state.checked = some.length < most ? true : some[some.length - 1];
  return state.checked !== true;
}

async function asItWas(there, rules, now) {
  const entries = await operationsOf(there, now.id);
  const known = entries.length > 0;
  const merged = known ? recordOf(now.id, rules.merged(entries.map(written(rules))), entries) : {};
  const names = [...new Set([...Object.keys(now), ...Object.keys(merged)])].filter(
    (name) => name !== "changed" && !same(now[name] ?? null, merged[name] ?? null),
  );
  if (known && names.length === 0) return null;
  const picked = (from) =>
    Object.fromEntries(names.filter((name) => name in from).map((name) => [name, from[name]]));
  return {
    ...ownEntry(now.id, now.type, AS_IT_WAS_ON_THIS_PHONE),
    time: now.changed,
    before: known ? picked(merged) : null,
    after: picked(now),
  };
}

/** How many operations are to be asked for at once. */
export function pageNow() {
  return taking.most();
}

/**
 * Takes in a page of the server's operations; `asked`: where the pull began. Gives {touched: ids of
 * the records that changed, again: this one has to be asked for anew}.
 */
export async function takeIn(answer, asked) {
  const rules = await loadRules();
  const touched = new Set();
  let again = false;
  await atPace(taking, async (there, state, most) => {
    again = await takePage(there, state, rules, answer, asked, touched);
    return answer.ops.length >= most;
  });
  return { touched: [...touched], again };
}

async function takePage(there, state, rules, answer, asked, touched) {
  while (await sealSome(there, state, rules, touched));
  if (rules.is_late(state, asked)) return true;
  Object.assign(state, rules.pulled(state, answer));
  const mark = rules.mark_of(state);
  const makers = answer.ops.map((op) => (shown) => entryOf(op, shown, mark));
  return takeThese(there, state, rules, makers, touched);
}

/** Takes in entries of a backup file that are operations. Gives the ids of records that changed. */
export async function takeEntries(entries) {
  const rules = await loadRules();
  const touched = new Set(await seal());
  for (let at = 0; at < entries.length;) {
    let end = at;
    await atPace(taking, async (there, state, most) => {
      end = at + most;
      const makers = entries.slice(at, end).map(({ seq, ...entry }) => () => ({
        ...entry,
        side: true,
        pulled: !SILENT.includes(entry.type),
        held: "",
      }));
      while (await sealSome(there, state, rules, touched));
      await takeThese(there, state, rules, makers, touched);
      return end < entries.length;
    });
    at = end;
  }
  return [...touched];
}

/** What the server holds now is known under this name. */
export async function markNow() {
  const rules = await loadRules();
  return rules.mark_of(await readState());
}

/** The places in the journal of the operations that this server does not hold. */
export async function unsent(mark) {
  return look(["journal"], async (there) => await there.othersKeys("journal", "held", mark));
}

/** The operations at these places; null where there is none. */
export async function operations(keys) {
  const entries = await look(
    ["journal"],
    async (there) => await Promise.all(keys.map((key) => there.get("journal", key))),
  );
  return entries.map((entry) => (entry ? operationOf(entry) : null));
}

/**
 * Operations that the server does not take are not sent to it again, and set aside: [{id, why}].
 * What they changed here stays.
 */
export function leaveOut(refused, mark) {
  return inOne(async (there) => {
    for (const { id, why } of refused) {
      for (const entry of await there.where("journal", "op", id)) {
        await there.put("journal", { ...entry, held: mark });
        await there.put(ASIDE, rowOf("sent", { id, value: operationOf(entry), why }));
      }
    }
  });
}

/**
 * An operation of this phone's own that no server has yet, its clock brought within reach; null
 * where it is none such.
 */
export async function withinReach(id) {
  const rules = await loadRules();
  return inOne(async (there, state) => {
    const [entry] = await there.where("journal", "op", id);
    if (!entry || entry.held !== "" || rules.parts_of_id(id).device !== state.device) return null;
    const brought = { ...entry, ...rules.in_reach(entry.wall, entry.count) };
    await there.put("journal", brought);
    await remergeAll(there, state, rules, [entry.record], new Set());
    return operationOf(brought);
  });
}

/**
 * The server holds other operations under these ids: a copy of this phone went another way. This
 * phone goes on under another name. Gives the ids of the records that changed.
 */
export async function fork(ids) {
  const rules = await loadRules();
  const touched = new Set();
  await inOne(async (there, state) => {
    while (await sealSome(there, state, rules, touched));
    await renameOwn(there, state, rules, ids, touched);
  });
  return [...touched];
}

/**
 * Puts entries among the operations that are known: `given`, functions that make one of the record
 * as
 * it is shown. Gives true when this phone has another id since, as a copy of it went another way.
 */
async function takeThese(there, state, rules, given, touched) {
  const once = new Map(given.map((make) => [make(null).op, make]));
  const makers = [...once.values()];
  const made = makers.map((make) => make(null));
  const known = await Promise.all(made.map(({ op }) => there.where("journal", "op", op)));
  const ops = made.map((entry, place) => {
    const { op: id, wall, count } = entry;
    return {
      id,
      device: rules.parts_of_id(id).device,
      wall,
      count,
      here: standing(rules, known[place], entry),
    };
  });
  const { clock, take, known: places, moved, fork: forked } = rules.met(state, ops, Date.now());
  if (forked) await renameOwn(there, state, rules, moved, touched);
  state.clock = clock;
  const puts = places
    .map((place) => ({ ...known[place][0], held: made[place].held || known[place][0].held }))
    .filter(({ held }, at) => held !== known[places[at]][0].held);
  for (const { op, held } of puts) if (held !== "") there.remove(ASIDE, `sent ${op}`);
  const ids = [...new Set(take.map((place) => made[place].record))];
  const before = await Promise.all(ids.map((id) => there.get("records", id)));
  const shown = new Map(ids.map((id, place) => [id, before[place] ?? null]));
  for (const place of take) {
    const { record, fields = made[place].after } = made[place];
    puts.push(makers[place](shown.get(record)));
    shown.set(record, { ...shown.get(record), ...fields });
  }
  await Promise.all(puts.map((entry) => there.put("journal", entry)));
  await remergeAll(there, state, rules, ids, touched);
  return forked;
}

/** What is known here under an operation's id: "", "same" or "other". */
function standing(rules, [known], entry) {
  if (!known) return "";
  return rules.same_operation(compared(rules, known), compared(rules, entry)) ? "same" : "other";
}

function compared(rules, entry) {
  return rules.comparable(operationOf(entry));
}

/** Another id for this device, and for what no server holds under the old one. */
async function renameOwn(there, state, rules, moved, touched) {
  const keys = new Set(await there.othersKeys("journal", "held", rules.mark_of(state)));
  for (const op of moved)
    for (const { seq } of await there.where("journal", "op", op)) keys.add(seq);
  const order = [...keys].sort((a, b) => a - b);
  const stored = await Promise.all(order.map((key) => there.get("journal", key)));
  const entries = stored.filter(Boolean); // the gate has set the others aside
  const ops = entries.map(({ op: id, parents, held }) => ({
    id,
    device: rules.parts_of_id(id).device,
    parents,
    held,
  }));
  const name = state.names[state.device];
  const { device, n, after, last, ops: renamed } = rules.forked(state, newId("d"), ops, moved);
  Object.assign(state, { device, n, after, last });
  const puts = renamed.map(({ place, id: op, parents }) => ({
    ...entries[place],
    op,
    parents,
    held: "",
  }));
  await Promise.all(puts.map((entry) => there.put("journal", entry)));
  if (name) await nameIt(there, state, name);
  await remergeAll(there, state, rules, new Set(puts.map(({ record }) => record)), touched);
}
