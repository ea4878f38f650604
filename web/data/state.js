/**
 * What the app knows and shows: one place, that every screen is drawn from.
 *
 *   engine    the compiled engine
 *   list      the ranges that can be looked in, as `packList` gives them
 *   entry, pack, ready  the range that is looked in: its line of the list, its pack, and what the
 *             engine made of it
 *   thread    what reasons about a large range beside the screen; null: nothing does; undefined: it
 *             is starting
 *   opening   the id of the range that was opened last, whether it came or not
 *   settings  what the person has chosen (settings.js)
 *   piece     the piece at hand (piece-at-hand.js), null at the start
 *   view      what the engine says of it
 *   tray      the other pieces at hand (tray.js)
 *   former    the piece that was left when one started again
 */
export const state = {
  engine: null,
  list: [],
  entry: null,
  pack: null,
  ready: null,
  thread: null,
  opening: "",
  settings: null,
  piece: null,
  view: null,
  former: null,
  tray: [],
};

/** Puts something else in its place: the only way in which the state changes. */
export function put(changes) {
  Object.assign(state, changes);
}
