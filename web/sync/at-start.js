import { withLook } from "../parts/later-styles.js";
import { takeSecret } from "./pairing.js";
import { warnOnce } from "./server-standing.js";
import { startSync } from "./sync.js";
import { notice } from "../parts/status.js";
import { collectionOpen, goTo } from "../parts/navigation.js";
import { UNPAIRED_FROM_AFAR } from "./words.js";

/**
 * What the app was opened for: sync, and what the address brought along (`hash`, "" for nothing).
 */
export async function arrive(state, hash) {
  await startSync();
  warnOnce();
  const [, secret] = /^#pair=([\w-]+)$/.exec(hash) ?? [];
  if (secret) {
    takeSecret(secret);
    await withLook();
    await collectionOpen();
    await goTo("devices");
  }
  if (hash === "#revoked") notice(UNPAIRED_FROM_AFAR);
}
