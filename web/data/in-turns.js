/** What goes through all there is, without holding the screen up. */
import { turns } from "./turns.js";

/**
 * What is worked out for the latest wish only: `work`, which can ask whether it still is, gives
 * it; `take` gets it unless there was another wish meanwhile. Gives whether it was taken.
 */
export function heldBack() {
  let wish = 0;
  return async (work, take) => {
    const own = (wish += 1);
    const result = await work(() => own === wish);
    if (own === wish) take(result);
    return own === wish;
  };
}

/** What `act(value, place)` makes of each, in order, the screen having its turn in between. */
export async function inTurns(values, act) {
  const turn = turns();
  const out = [];
  for (let n = 0; n < values.length; n += 1) {
    const made = act(values[n], n);
    out.push(made instanceof Promise ? await made : made);
    if (n % 16 === 15) await turn();
  }
  return out;
}
