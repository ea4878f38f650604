/** Work done a slice at a time: between two of them the screen can take a tap. */
const SPARE = 12; // ms that work may take before the screen has its turn

/**
 * To be awaited between pieces of work: lets the screen have its turn where work has gone on for
 * long, and gives whether it did. Not within a transaction.
 */
export function turns() {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < SPARE) return false;
    await new Promise((resolve) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = resolve;
      port2.postMessage(null);
    });
    since = performance.now();
    return true;
  };
}
