/** What the seller says, held against what was seen. */
const known = new WeakMap();

/**
 * The claim of a step held against its answers: null for none, else {claim, judged (null: it cannot
 * be used)}.
 */
export function heldClaim({ engine, ready }, step) {
  if (!step.claim) return null;
  if (!known.has(step)) {
    const claim = engine.read_claim(ready, step.claim);
    const judged = claim.problem === "" ? engine.judge(ready, step.session, claim) : null;
    known.set(step, { claim, judged });
  }
  return known.get(step);
}
