/** Compiled ranges that are kept on this device beside those that came with the app. */
import { packsAtHand } from "../data/known-ranges.js";
import { OWN, ownIn, ownKey, packList } from "../data/packs.js";
import { put } from "../data/state.js";
import { read, together } from "../data/store.js";

const rowsKey = (id) => `rows ${id}`;

/**
 * Keeps a range (text null: takes it away), all at once; `entry` is its line of the list, `rows`
 * what was written down of it, as text, where it came so.
 */
export async function stored(entry, text, rows = null) {
  const kept = await together(["kept"], async (there) => {
    const others = ownIn(await there.get("kept", OWN)).filter(({ id }) => id !== entry.id);
    await there.put("kept", text === null ? others : [...others, entry], OWN);
    if (text === null) await there.remove("kept", ownKey(entry.id));
    else await there.put("kept", text, ownKey(entry.id));
    if (text === null || rows === null) await there.remove("kept", rowsKey(entry.id));
    else await there.put("kept", rows, rowsKey(entry.id));
  });
  return kept !== "";
}

/** What was written down of a range that came so: its rows as text; null for another. */
export async function rowsKept(id) {
  return (await read("kept", rowsKey(id))) ?? null;
}

/** Notes something in the line of a range that is kept. */
export async function noted(id, changes) {
  await together(["kept"], async (there) => {
    const lines = ownIn(await there.get("kept", OWN));
    const line = (entry) => (entry.id === id ? { ...entry, ...changes } : entry);
    await there.put("kept", lines.map(line), OWN);
  });
  await refresh();
}

/** The lists of ranges as they are now. */
export async function refresh() {
  put({ list: await packList() });
  packsAtHand.clear();
}
