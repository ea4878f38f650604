/** What is remembered of the last backup. */
import { read, write } from "./store.js";

/** Remembers that everything up to this place of the journal is in a backup file. */
export function backedUp(seq) {
  return write("kept", "backup", { seq, time: new Date().toISOString() });
}

/** The last backup: {seq, time}; seq 0 and time "" for none. */
export async function lastBackup() {
  const { seq, time } = (await read("kept", "backup")) ?? {};
  return { seq: Number.isSafeInteger(seq) ? seq : 0, time: typeof time === "string" ? time : "" };
}
