/** What on the server needs somebody: told once a start, and on the screen of devices. */
import { ask } from "../data/server.js";
import { dateText } from "../parts/days.js";
import { notice } from "../parts/status.js";
import { onSync } from "./sync.js";

/** A sentence for each thing there that needs somebody, the most urgent first. Throws Refused. */
export async function serverWarnings() {
  const standing = await ask("standing").catch(whereUnknown);
  const { backup, overdue, full, away, certificate, authority } = standing;
  const day = dateText(backup.slice(0, 10));
  return [
    certificate &&
      `Your server’s certificate expires on ${dateText(certificate)}. Renew it before then, or ` +
        "this device loses touch with the server.",
    authority &&
      `The authority of your server’s certificate expires on ${dateText(authority)}. Before then ` +
        "a new one has to be made there, and put on this device as the first one was.",
    overdue &&
      (backup === ""
        ? "Your server has not made a backup yet."
        : `The last backup on your server that was tried out is of ${day}. Check the server.`),
    away && "The copy of the last backup for another place could not be made. Check the server.",
    full && "Your server’s disk is nearly full. Photos wait on this device until there is space.",
  ].filter(Boolean);
}

/** A server of an older version does not tell how it stands. */
function whereUnknown(error) {
  if (error.status !== 404) throw error;
  return { backup: "" };
}

/** Tells the first of them after the first round that reached the server. */
export function warnOnce() {
  let asked = false;
  onSync(async ({ doing, problem, lost }) => {
    if (asked || doing !== "" || problem !== "" || lost) return;
    asked = true;
    const [first] = await serverWarnings().catch(() => []);
    if (first) notice(first);
  });
}
