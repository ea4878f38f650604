/** Does one thing after another. */
let queue = Promise.resolve();
let stepping = 0;
let tell = console.error;

/** `trouble` is told what went wrong with an action. */
export function onTrouble(trouble) {
  tell = trouble;
}

/**
 * Does something after all that was asked for before; what goes wrong is told.
 * @returns {Promise<any>} what `action` gives
 */
export function run(action) {
  queue = queue.then(action).catch((error) => tell(error));
  return queue;
}

/** The same for what moves the piece on or back. */
export function step(action) {
  stepping += 1;
  return run(action).finally(() => {
    stepping -= 1;
  });
}

/** Is the piece being moved on or back, so that the screen is not yet what is known? */
export function stepUnderway() {
  return stepping > 0;
}

/** The same for a tap: one that comes while the last step is still being stored is not meant. */
export function tap(action) {
  return stepping > 0 ? queue : step(action);
}
