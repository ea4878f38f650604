/**
 * Makes records of their operations, within a transaction: the record, what is to be settled,
 * photos.
 */
import { furtherHere } from "../data/engine.js";
import { scrubbed } from "../data/records.js";
import { same } from "../data/record-shapes.js";
import { fieldsOf, recordOf, written } from "./operation-forms.js";

/** @import { Merged, MergingModule } from "../data/engine-types.d.ts" */

const QUIET = new Set(["trashed", "gone", "made"]); // nobody is asked about these

/** All entries of a record that are operations. */
export async function operationsOf(there, id) {
  return (await there.where("journal", "record", id)).filter(({ op }) => op);
}

/**
 * All at once: each waits for the disk less than one after another would.
 * @param {any} there
 * @param {any} state
 * @param {MergingModule} rules
 * @param {Iterable<string>} ids
 * @param {Set<string>} touched
 */
export function remergeAll(there, state, rules, ids, touched) {
  return Promise.all([...ids].map((id) => remerge(there, state, rules, id, touched)));
}

/**
 * Makes the record of all its operations, and notes what is to be settled.
 * @param {any} there
 * @param {any} state
 * @param {MergingModule} rules
 * @param {string} id
 * @param {Set<string>} touched
 */
async function remerge(there, state, rules, id, touched) {
  const entries = await operationsOf(there, id);
  const merged = rules.merged(entries.map(written(rules)));
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
    } else if (Object.keys(entry.before ?? {}).length > 0 || entry.settles) {
      const { settles, ...left } = entry;
      await there.put("journal", { ...left, fields: fieldsOf(entry), before: entry.before && {} });
    }
  }
}

/**
 * @param {any} there
 * @param {string} id
 * @param {Merged} merged
 */
async function announce(there, id, merged) {
  const fields = Object.fromEntries(merged.fields.map(([name, text]) => [name, JSON.parse(text)]));
  const old = await there.get("announced", id);
  const { is_sum } = furtherHere();
  const gone = merged.gone || !is_sum(fields.full) || !is_sum(fields.small);
  await there.put("announced", { ...fields, id, gone, held: old?.held ?? "" });
}

/**
 * @param {any} state
 * @param {Merged} merged
 */
function nameOther(state, merged) {
  const fields = new Map(merged.fields.map(([name, text]) => [name, JSON.parse(text)]));
  const [device, name] = [fields.get("device"), fields.get("name")];
  if (typeof device !== "string" || typeof name !== "string") return;
  state.names = { ...state.names, [device]: name };
}

/**
 * @param {any} there
 * @param {string} id
 * @param {Merged} merged
 */
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
