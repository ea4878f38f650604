/**
 * What the next tap will need, worked out while the person looks. An answer then only has to be
 * drawn.
 */
/** @import { Engine, EngineModule, SeenYears, Session } from "./engine-types.d.ts" */

const MOST = 60;
const known = new Map();
let round = 0;

/** What `work` gives for this key, or its promise; worked out once, and kept for a while. */
export function foreseen(key, work) {
  if (!known.has(key)) {
    const answer = work();
    if (answer instanceof Promise) answer.catch(() => known.delete(key));
    known.set(key, answer);
    if (known.size > MOST) known.delete(known.keys().next().value);
  }
  return known.get(key);
}

const yearsOf = (session) => `years ${JSON.stringify(session)}`;

/**
 * What the engine’s `seen_years` gives for a session.
 * @param {{ engine: EngineModule; ready: Engine }} app
 * @param {Session} session
 * @returns {SeenYears[]}
 */
export function seenYears({ engine, ready }, session) {
  return foreseen(yearsOf(session), () => engine.seen_years(ready, session));
}

/**
 * Keeps what was worked out of it elsewhere.
 * @param {Session} session
 * @param {SeenYears[]} years
 */
export function yearsCame(session, years) {
  foreseen(yearsOf(session), () => years);
}

/**
 * Does these things one by one while the browser has nothing else to do, after the screen that is
 * being drawn. What is left of an earlier list is dropped. What goes wrong here is told when it is
 * asked for in earnest.
 */
export function meanwhile(acts) {
  const own = (round += 1);
  const idle = window.requestIdleCallback ?? ((then) => setTimeout(then, 200));
  const next = async () => {
    if (own !== round || acts.length === 0) return;
    try {
      await acts.shift()();
    } catch (error) {
      console.warn(error);
    }
    idle(next);
  };
  requestAnimationFrame(() => setTimeout(idle, 0, next));
}
