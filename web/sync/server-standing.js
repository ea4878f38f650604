/** What on the server needs somebody: told once a start, and on the screen of devices. */
import { ask } from "../data/server.js";
import { dateText } from "../parts/days.js";
import { notice } from "../parts/status.js";
import { onSync } from "./sync.js";
import {
  authorityExpires,
  certificateExpires,
  DISK_NEARLY_FULL,
  lastBackupIsOf,
  NO_BACKUP_YET,
  NO_COPY_ELSEWHERE,
} from "./words.js";

/** A sentence for each thing there that needs somebody, the most urgent first. Throws Refused. */
export async function serverWarnings() {
  const standing = await ask("standing").catch(whereUnknown);
  const { backup, overdue, full, away, certificate, authority } = standing;
  const day = dateText(backup.slice(0, 10));
  return [
    certificate && certificateExpires(dateText(certificate)),
    authority && authorityExpires(dateText(authority)),
    overdue && (backup === "" ? NO_BACKUP_YET : lastBackupIsOf(day)),
    away && NO_COPY_ELSEWHERE,
    full && DISK_NEARLY_FULL,
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
