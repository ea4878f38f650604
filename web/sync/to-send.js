/** What the server does not hold yet, and what becomes of what it refuses. */
import { rowOf } from "../data/aside.js";
import { ASIDE } from "../data/gate.js";
import { look } from "../data/store.js";
import { loadRules } from "./merging-rules.js";
import { operationOf } from "./operation-forms.js";
import { remergeAll } from "./records-from-operations.js";
import { inOne } from "./sync-state.js";

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
