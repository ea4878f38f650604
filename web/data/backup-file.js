/**
 * The backup file: everything the collector keeps as JSON, and its restore, which only ever adds.
 */
import { begunFile, rowsIn, rowsOf } from "./backup-rows.js";
import { loadFurther } from "./engine.js";
import { inPages } from "./pages.js";
import { bared } from "./photos.js";
import { newId, same, whole } from "./record-shapes.js";
import { entry, everything, reread } from "./records.js";
import { StorageLost } from "./storage-connection.js";
import { look, together } from "./store.js";
import { countKnown } from "./what-was-known.js";
import {
  NEWER_BACKUP,
  NOT_A_BACKUP,
  NOT_A_PICTURE,
  OLDER_VERSION,
  RESTORED_FROM_A_BACKUP,
  SOMETHING_ELSE,
  storageGivesTooFew,
} from "./words.js";

const FORMAT = 1;
const STORES = ["records", "journal", "photos"];
const SLICE = 30;

/** Why a file cannot be restored, in a sentence. */
export class NoBackup extends Error {}

/** The storage gives less than is known to have been there: no file is made that hides it. */
export class WouldBeEmptier extends StorageLost {}

/**
 * The backup: {blob, name, seq: the journal's place it reaches to, count of records}. Throws
 * WouldBeEmptier.
 */
export async function makeBackup() {
  const made = new Date().toISOString();
  let [file, photos, count, seq] = [null, [], 0, 0];
  await look(STORES, async (there) => {
    [file, photos, count, seq] = [begunFile(FORMAT, made), [], 0, 0];
    file.list("records");
    await inPages(there, "records", "", (values) => {
      count += values.length;
      file.add(values.map((value) => JSON.stringify(value)));
    });
    file.list("journal");
    await inPages(there, "journal", 0, (values) => {
      seq = values.at(-1)?.seq ?? seq;
      file.add(values.map((value) => JSON.stringify(value)));
    });
    // the pictures stay on the disk until it is their turn
    await inPages(there, "photos", "", (values) => photos.push(...values));
  });
  const known = Math.max(everything().length, count === 0 ? countKnown() : 0);
  if (count < known) throw new WouldBeEmptier(storageGivesTooFew(count, known));
  file.list("photos");
  for (const photo of photos) {
    const [full, small] = [await asText(photo.full), await asText(photo.small)];
    file.add([JSON.stringify({ ...photo, full, small })]);
  }
  return { blob: file.end(), name: nameOf(made), seq, count };
}

/** What this window still knows, as a backup without history and photos. */
export function rescued() {
  const made = new Date().toISOString();
  const file = begunFile(FORMAT, made);
  const records = everything();
  file.list("records");
  file.add(records.map((value) => JSON.stringify(value)));
  for (const name of ["journal", "photos"]) file.list(name);
  return { blob: file.end(), name: nameOf(made), count: records.length };
}

const nameOf = (made) => `stallside-backup-${made.slice(0, 10)}.json`;

/** A photo's bytes as text for a file. */
export function asText(blob) {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result);
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
}

/**
 * What a backup file holds that fits through the gate: {records, journal, photos, broken: how many
 * did not, why}. Throws NoBackup.
 */
export async function readBackup(file) {
  const gate = await loadFurther();
  let faults = [];
  const fits = (faultOf, shaped) => (value) => {
    const fault = faultOf(value);
    if (fault) faults.push(gate.fault_words(fault));
    return fault ? null : shaped(value);
  };
  const picture = async (taken) => {
    const photo = await bared(taken);
    if (!photo) faults.push(NOT_A_PICTURE);
    return photo;
  };
  const take = {
    records: fits(gate.file_record_fault, whole),
    journal: fits(
      (row) => gate.entry_fault(row, false),
      (row) => row,
    ),
    photos: fits(gate.photo_fault, picture),
  };
  let rows = await rowsOf(file, take);
  if (!rows || rows.format !== FORMAT) {
    faults = [];
    rows = await rowsIn(parsed(await file.text().catch(() => "")), take); // too long for a text
  }
  const { records, journal, photos } = rows;
  return { records, journal, photos, broken: faults.length, why: faults[0] ?? "" };
}

function parsed(text) {
  let file;
  try {
    file = JSON.parse(text);
  } catch {
    throw new NoBackup(NOT_A_BACKUP);
  }
  if (file?.kind !== "identify backup" || !Array.isArray(file.records))
    throw new NoBackup(SOMETHING_ELSE);
  if (file.format !== FORMAT) throw new NoBackup(NEWER_BACKUP);
  return file;
}

/**
 * Merges what was read from a backup with what is here: {kept, last, added, newer, older}. Of each
 * record the version changed later counts; the other one goes into its history. `last`: the
 * journal's end where all of it is from the backup, else 0.
 */
export async function restore({ records, journal, photos }, what = RESTORED_FROM_A_BACKUP) {
  const group = newId("g");
  let [counts, last] = [{}, 0];
  const kept = await together([...STORES, "announced"], async (there) => {
    [counts, last] = [{ added: 0, newer: 0, older: 0 }, 0];
    const held = new Set();
    await inPages(there, "journal", 0, (values) => {
      for (const row of values) held.add(key(row));
    });
    const first = held.size === 0;
    const log = (row) => {
      if (held.has(key(row))) return [];
      held.add(key(row));
      return [there.put("journal", row)];
    };
    const noted = async (puts) => {
      const places = await Promise.all(puts);
      if (first) last = Math.max(last, ...places.filter(Number.isFinite));
    };
    for (const some of slices(photos)) {
      const stored = await all(there, "photos", some);
      const missing = some.filter((_, place) => !stored[place]);
      await Promise.all(missing.map(({ redrawn, ...photo }) => there.put("photos", photo)));
    }
    const lasting = journal.filter((row) => row.op || row.after.gone !== true);
    for (const some of slices(lasting))
      await noted(some.flatMap(({ seq, send, ...row }) => log({ ...row, side: true })));
    for (const { id, redrawn } of photos) if (redrawn) await there.remove("announced", id);
    for (const some of slices(records)) {
      const stored = await all(there, "records", some);
      const writes = some.flatMap((theirs, place) => {
        const ours = stored[place] ?? null;
        // a file deletes nothing for good
        if (same(ours, theirs) || (ours && theirs.gone)) return [];
        const side = ours !== null && ours.changed >= theirs.changed;
        counts[side ? "older" : ours ? "newer" : "added"] += 1;
        const logged = log(entry(ours, theirs, side ? asHistory(theirs) : { group, what }));
        return side ? logged : [there.put("records", theirs), ...logged];
      });
      await noted(writes);
    }
  });
  if (kept !== "") await reread(records.map(({ id }) => id));
  return { kept, last, ...counts };
}

/** So many at a time that the screen has its turn between two of them. */
function* slices(values) {
  for (let at = 0; at < values.length; at += SLICE) yield values.slice(at, at + SLICE);
}

function all(there, store, values) {
  return Promise.all(values.map(({ id }) => there.get(store, id)));
}

function key({ group, record }) {
  return `${group} ${record}`;
}

/** The marks of a version that does not count, the same however often the file is restored. */
function asHistory({ changed }) {
  return { group: `older ${changed}`, what: OLDER_VERSION, side: true };
}
