/**
 * The backup file: everything the collector keeps as JSON, and its restore, which only ever adds.
 */
import { loadFurther } from "./engine.js";
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

/** Why a file cannot be restored, in a sentence. */
export class NoBackup extends Error {}

/** The storage gives less than is known to have been there: no file is made that hides it. */
export class WouldBeEmptier extends StorageLost {}

/**
 * The backup: {blob, name, seq: the journal's place it reaches to, count of records}. Throws
 * WouldBeEmptier.
 */
export async function makeBackup() {
  const [records, journal, photos] = await snapshot();
  const known = Math.max(everything().length, records.length === 0 ? countKnown() : 0);
  if (records.length < known) throw new WouldBeEmptier(storageGivesTooFew(records.length, known));
  return fileOf(records, journal, photos);
}

/** What this window still knows, as a backup without history and photos. */
export function rescued() {
  return fileOf(everything(), [], []);
}

async function fileOf(records, journal, photos) {
  const made = new Date().toISOString();
  const parts = [
    `{"format":${FORMAT},"kind":"identify backup","made":"${made}",\n"records":[\n`,
    rows(records),
    '\n],"journal":[\n',
    rows(journal),
    '\n],"photos":[\n',
  ];
  for (const photo of photos) {
    const [full, small] = [await asText(photo.full), await asText(photo.small)];
    parts.push(parts.at(-1).endsWith("}") ? ",\n" : "", JSON.stringify({ ...photo, full, small }));
  }
  parts.push("\n]}\n");
  return {
    blob: new Blob(parts, { type: "application/json" }),
    name: `identify-backup-${made.slice(0, 10)}.json`,
    seq: journal.at(-1)?.seq ?? 0,
    count: records.length,
  };
}

async function snapshot() {
  return look(
    STORES,
    async (there) =>
      await Promise.all(["records", "journal", "photos"].map((store) => there.all(store))),
  );
}

function rows(values) {
  return values.map((value) => JSON.stringify(value)).join(",\n");
}

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
export async function readBackup(text) {
  const gate = await loadFurther();
  const file = parsed(text);
  const faults = [];
  const fits = (faultOf) => (one) => {
    const fault = faultOf(one);
    if (fault) faults.push(gate.fault_words(fault));
    return !fault;
  };
  const listed = (name) => (Array.isArray(file[name]) ? file[name] : []);
  const records = listed("records").filter(fits(gate.file_record_fault)).map(whole);
  const journal = listed("journal").filter(fits((one) => gate.entry_fault(one, false)));
  const photos = [];
  for (const one of listed("photos").filter(fits(gate.photo_fault))) {
    const photo = await bared(one);
    if (photo) photos.push(photo);
    else faults.push(NOT_A_PICTURE);
  }
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
    const entries = await there.all("journal");
    const [stored, found] = await Promise.all([
      all(there, "photos", photos),
      all(there, "records", records),
    ]);
    const held = new Set(entries.map(key));
    const writes = photos
      .filter((_, place) => !stored[place])
      .map(({ redrawn, ...photo }) => there.put("photos", photo));
    const log = (one) => {
      if (!held.has(key(one))) writes.push(there.put("journal", one));
      held.add(key(one));
    };
    for (const { seq, send, ...one } of journal)
      if (one.op || one.after.gone !== true) log({ ...one, side: true });
    for (const { id, redrawn } of photos) if (redrawn) writes.push(there.remove("announced", id));
    records.forEach((theirs, place) => {
      const ours = found[place] ?? null;
      // a file deletes nothing for good
      if (same(ours, theirs) || (ours && theirs.gone)) return;
      const side = ours !== null && ours.changed >= theirs.changed;
      counts[side ? "older" : ours ? "newer" : "added"] += 1;
      if (!side) writes.push(there.put("records", theirs));
      log(entry(ours, theirs, side ? asHistory(theirs) : { group, what }));
    });
    const places = await Promise.all(writes);
    if (entries.length === 0) last = Math.max(0, ...places.filter(Number.isFinite));
  });
  if (kept !== "") await reread(records.map(({ id }) => id));
  return { kept, last, ...counts };
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
