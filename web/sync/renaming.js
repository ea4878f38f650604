/** This phone goes on under another name where a copy of it went another way. */
import { newId } from "../data/record-shapes.js";
import { loadRules } from "./merging-rules.js";
import { remergeAll } from "./records-from-operations.js";
import { sealSome } from "./sealing.js";
import { inOne, nameIt } from "./sync-state.js";

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

/** Another id for this device, and for what no server holds under the old one. */
export async function renameOwn(there, state, rules, moved, touched) {
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
