/** Makes operations of what was changed on this phone: ids, clocks and parents for its entries. */
import { same } from "../data/record-shapes.js";
import { loadRules } from "./merging-rules.js";
import { SILENT, recordOf, written } from "./operation-forms.js";
import { pace } from "./pace.js";
import { operationsOf, remergeAll } from "./records-from-operations.js";
import { atPace, ownEntry } from "./sync-state.js";
import { AS_IT_WAS_ON_THIS_PHONE } from "./words.js";

const [sealing, checking] = [pace(), pace()];

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

/** The next entries of the journal; gives whether there are more. */
export async function sealSome(there, state, rules, touched, most = sealing.most()) {
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
