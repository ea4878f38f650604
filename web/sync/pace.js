/**
 * How much goes into one transaction. Each waits for the disk once, however much is in it, so more
 * at a time is quicker; but a tap that comes meanwhile waits until it is over. So it is as much as
 * is done in a time that nobody notices, more or less from one to the next as the phone is quick.
 * The wait for the disk does not count: fewer at a time would only make more of it.
 */
const UNNOTICED = 30; // ms
const [LEAST, FIRST, MOST] = [5, 25, 400];
const CHANGE = 2; // times as much at most, and half at least

/**
 * A pace of its own for one sort of work: {most: how many are to go into the next transaction,
 * took(ms, whole): the last one took so long, and was a `whole` one or the last few}.
 */
export function pace() {
  let most = FIRST;
  return {
    most: () => most,
    took(ms, whole = true) {
      const times = Math.min(Math.max(UNNOTICED / ms, 1 / CHANGE), whole ? CHANGE : 1);
      most = Math.round(Math.min(Math.max(most * times, LEAST), MOST));
    },
  };
}
