/** What was set aside because it does not fit through the gate, or is not taken by the server. */
import { ASIDE } from "./gate.js";
import { loadFurther } from "./engine.js";
import { look, together } from "./store.js";

/** Everything set aside: [{key, from, value, why, time}], the latest first. */
export async function allAside() {
  const rows = await look([ASIDE], async (there) => await there.all(ASIDE));
  if (rows.length === 0) return rows;
  const { fault_words } = await loadFurther();
  return rows
    .map(({ fault, why, ...row }) => ({ ...row, why: why ?? fault_words(fault) }))
    .sort((a, b) => (a.time < b.time ? 1 : -1));
}

/** How much is set aside. */
export async function countAside() {
  const rows = await look([ASIDE], async (there) => await there.all(ASIDE));
  return rows.length;
}

/** Sets something aside, once for each id: [{id, value, why}]. */
export function putAside(from, rows) {
  return together([ASIDE], (there) =>
    Promise.all(rows.map((row) => there.put(ASIDE, rowOf(from, row)))),
  );
}

/** What is kept of it. */
export function rowOf(from, { id, value, why }) {
  return { key: `${from} ${id}`, from, value, why, time: new Date().toISOString() };
}

/** Takes it away from there for good. */
export function throwAway(key) {
  return together([ASIDE], (there) => there.remove(ASIDE, key));
}
