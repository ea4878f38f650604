/** The rules of syncing: `identify/core` compiled, the same that the server and the tests use. */
import { loadFurther } from "../data/engine.js";

/** @import { MergingModule } from "../data/engine-types.d.ts" */

let loading = null;

/**
 * The module merging.js; the gate, by which records are made of operations, is then here too.
 * @returns {Promise<MergingModule>}
 */
export function loadRules() {
  loading ??= both().catch((error) => {
    loading = null;
    throw error;
  });
  return loading;
}

async function both() {
  const rules = import(new URL("../merging.js", import.meta.url).href);
  await loadFurther();
  return rules;
}
