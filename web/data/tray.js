/**
 * The pieces at hand besides the one on the screen: what is left is kept with all its steps. Each
 * is a piece as `piece-at-hand.js` says, with
 *
 *   left  when it was left
 *   told  what was known of it then: {name, variants: places in its range, kind, word: of the
 *         verdict, verdict: in words, asked}
 */
import { sound } from "./piece-at-hand.js";
import { put, state } from "./state.js";
import { read, write } from "./store.js";

const KEY = "tray";
const MOST = 60; // a large box and more

/** The pieces that were kept, the latest first. */
export async function restoredTray() {
  const kept = await read("kept", KEY);
  return Array.isArray(kept) ? kept.filter(sound) : [];
}

/** Puts a piece among those at hand. */
export function layAside(piece) {
  const others = state.tray.filter(({ id }) => id !== piece.id);
  return keepTray([piece, ...others].slice(0, MOST));
}

/** Takes a piece from among those at hand. */
export function takeFrom(id) {
  return keepTray(state.tray.filter((piece) => piece.id !== id));
}

/** Keeps these, and no others. */
export function keepTray(tray) {
  put({ tray });
  return write("kept", KEY, tray);
}
