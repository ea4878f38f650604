import { everything, reread } from "../data/records.js";
import { useToken } from "../data/server.js";
import { readSettings } from "../data/settings.js";
import { together } from "../data/store.js";
import { forgetKnown } from "../data/what-was-known.js";

const STORES = ["kept", "records", "photos", "journal", "heads", "clashes", "announced", "aside"];

/** Takes everything off this device that the collector kept on it, and opens the app anew. */
export async function wipe() {
  const settings = { ...(await readSettings()), paired: false };
  const ids = everything().map(({ id }) => id);
  const kept = await together(STORES, async (there) => {
    for (const store of STORES) await there.empty(store);
    await there.put("kept", settings, "settings");
  });
  if (kept === "") return; // tried again at the next contact
  forgetKnown();
  useToken("");
  await reread(ids); // other windows forget too
  history.replaceState(null, "", "#revoked");
  location.reload();
}
