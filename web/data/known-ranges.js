/** The ranges that the records speak of. */
import { CannotGoOn } from "./engine.js";
import { loadPack, rawPack } from "./packs.js";
import { everything } from "./records.js";
import { state } from "./state.js";

/** The packs that were read, by their ids: what pieces, wants and notes are named by. */
export const packsAtHand = new Map();

/** The ranges there are, without the choice of all at once. */
export function ranges() {
  return state.list.filter((range) => !range.parts);
}

/** A range as the engine takes it; null where it is not on this device. */
export async function readyRange(id) {
  const entry = ranges().find((range) => range.id === id);
  if (!entry) return null;
  return unlessBroken(async () => {
    const { ready } = await loadPack(state.engine, entry);
    packsAtHand.set(id, ready.pack);
    return ready;
  });
}

/**
 * Reads the packs that the records speak of, as far as they are not here: records come by sync too.
 * Gives the ids of those packs.
 */
export async function readPacks() {
  const used = new Set(everything().map((kept) => kept.pack));
  const missing = ranges().filter(({ id }) => used.has(id) && !packsAtHand.has(id));
  await Promise.all(
    missing.map((range) =>
      unlessBroken(async () => packsAtHand.set(range.id, await rawPack(state.engine, range))),
    ),
  );
  return used;
}

/** What `load` gives; null where a pack cannot be read: the records can all the same. */
async function unlessBroken(load) {
  try {
    return await load();
  } catch (error) {
    if (error instanceof CannotGoOn) return null;
    throw error;
  }
}
