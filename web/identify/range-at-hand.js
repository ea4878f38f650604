/** The range that is looked in, and the piece in it. */
import { loadPack } from "../data/packs.js";
import { keep, mended, packOf } from "../data/piece-at-hand.js";
import { changeSettings } from "../data/settings.js";
import { put, state } from "../data/state.js";
import { meanwhile } from "../data/work-ahead.js";
import { loaded } from "../parts/loaded-later.js";
import { show } from "../parts/navigation.js";
import { setAside } from "../parts/say.js";
import { notice } from "../parts/status.js";
import { tellStored } from "../parts/storage-trouble.js";
import { comparing } from "./looks-like-this.js";
import { assess } from "./reasoning.js";

const LARGE = 50_000; // issues of a range: to reason about more of them would hold the screen up
let ahead = () => [];

/** `work` gives what is worked out ahead, once a thread is there for it. */
export function onThread(work) {
  ahead = work;
}

/** Opens a range; the first one when there is none of that name. */
export async function openRange(id) {
  const entry = state.list.find((range) => range.id === id) ?? state.list[0];
  put({ opening: entry.id });
  const { pack, ready } = await loadPack(state.engine, entry);
  if (pack === state.pack) return;
  state.thread?.close();
  const large = pack.rows.kind.length >= LARGE;
  put({ entry, pack, ready, thread: large ? undefined : null });
  if (large) threaded(pack);
}

/** Has a large range reasoned about beside the screen, as soon as that can be done. */
async function threaded(pack) {
  let thread = null;
  try {
    const { startThread } = await loaded(import("./large-range.js"));
    thread = await startThread(state);
  } catch (error) {
    console.warn(error);
  }
  if (state.pack !== pack || state.thread) return thread?.close();
  put({ thread });
  meanwhile(ahead());
}

/** Chooses the range that pieces are looked for in from now on. */
export async function chooseRange(id) {
  await openRange(id);
  await changeSettings({ range: id });
  tellStored();
  show(false);
  document.getElementById("range").focus();
}

/** A session over all ranges, carried over to the one range that is left, as soon as one is. */
export async function narrowed(session) {
  if (!state.pack.packs) return session;
  const left = state.engine.settled(state.ready, session);
  if (left === "") return session;
  const { ready } = await loadPack(
    state.engine,
    state.list.find((range) => range.id === left),
  );
  return state.engine.narrowed(ready, session);
}

/** Opens the range that the piece is looked for in; with no piece, the chosen one. */
export async function openFor(piece) {
  const id = piece ? packOf(piece) : state.settings.range;
  if (id === state.pack.id || (id === "" && !piece)) return piece;
  await openRange(id);
  return piece ? mended(state.engine, state, piece).piece : piece;
}

/** Takes up a piece: opens its range, and makes it fit if the range has changed since. */
export async function adopt(piece) {
  await openRange(packOf(piece));
  const { piece: fitting, dropped } = mended(state.engine, state, piece);
  const view = await assess(fitting);
  await comparing(view);
  put({ view, piece: fitting });
  if (dropped.length > 0) notice(setAside(state.pack, dropped));
  if (fitting !== piece) await keep(fitting);
}
