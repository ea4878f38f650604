/** Compiled ranges that are kept on this device beside those that came with the app. */
import { packsAtHand } from "../data/known-ranges.js";
import { OWN, ownIn, ownKey, packList } from "../data/packs.js";
import { put } from "../data/state.js";
import { together } from "../data/store.js";

/** Keeps a range (text null: takes it away), all at once; `entry` is its line of the list. */
export async function stored(entry, text) {
  const kept = await together(["kept"], async (there) => {
    const others = ownIn(await there.get("kept", OWN)).filter(({ id }) => id !== entry.id);
    await there.put("kept", text === null ? others : [...others, entry], OWN);
    if (text === null) await there.remove("kept", ownKey(entry.id));
    else await there.put("kept", text, ownKey(entry.id));
  });
  return kept !== "";
}

/** The lists of ranges as they are now. */
export async function refresh() {
  put({ list: await packList() });
  packsAtHand.clear();
}
