/** The rules of syncing: `identify/core` compiled, the same that the server and the tests use. */
/** @import { MergingModule } from "../data/engine-types.d.ts" */

let loading = null;

/**
 * The module merging.js.
 * @returns {Promise<MergingModule>}
 */
export function loadRules() {
  loading ??= import(new URL("../merging.js", import.meta.url).href).catch((error) => {
    loading = null;
    throw error;
  });
  return loading;
}
