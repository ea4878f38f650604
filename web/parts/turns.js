/** Long work in turns with the screen. */
const AT_ONCE = 12; // milliseconds of work before the screen has its turn

/**
 * A function to be awaited between pieces of work: it gives the screen its turn when that is due,
 * and says so.
 */
export function takingTurns() {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < AT_ONCE) return false;
    await new Promise((done) => setTimeout(done));
    since = performance.now();
    return true;
  };
}
