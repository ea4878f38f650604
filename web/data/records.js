/**
 * The collector's records: pieces, wants, notes, budgets. All are held in memory as well, for quick
 * lists. Every change is one transaction that reads what is stored now, writes it changed, and puts
 * into the journal what was before and after:
 *
 *   {seq, group, time, record, type, what, before, after, undoes, side}
 *   group          what was changed by one tap
 *   before, after  the fields that changed; before is null for a new record
 *   undoes         the group that was undone; "" for none
 *   side           a version that came from elsewhere and was not taken up: only history
 */
import { inPages } from "./pages.js";
import { PRACTICE, STORAGE } from "./practice-storage.js";
import { newId, same } from "./record-shapes.js";
import { look, onOpenedAgain, storing, together } from "./store.js";
import { noteKnown } from "./what-was-known.js";
import { DELETED_FOR_GOOD } from "./first-words.js";

const known = new Map();
const sorts = new Map(); // the same by type: {here: by id, list: what is not in the bin, or null}
const listeners = [];
const writers = [];
const losses = [];
const STORES = ["records", "journal", "photos"];
const SLICE = 25;
const LAST = Date.UTC(9998, 11, 31); // times have four figures for the year
const channel = "BroadcastChannel" in self ? new BroadcastChannel(`${STORAGE} records`) : null;
let reading = null;
let edition = 0;

/** The record was changed elsewhere since; nothing was written. `now`: as it is. */
export class ChangedElsewhere extends Error {
  constructor(now) {
    super("changed elsewhere");
    this.now = now;
  }
}

/** Reads all records, once. */
export function loadRecords() {
  reading ??= readAll();
  return reading;
}

async function readAll() {
  channel?.addEventListener("message", ({ data }) => refresh(data));
  await look(["records"], async (there) => {
    await inPages(there, "records", "", (page) => page.forEach(know));
  });
  noteHere();
  onOpenedAgain((count) => {
    if (count > 0 || known.size === 0) return;
    noteKnown(0);
    for (const heard of losses) heard();
  });
}

function know(kept) {
  const before = known.get(kept.id);
  if (before && before.type !== kept.type) forget(kept.id);
  known.set(kept.id, kept);
  if (!sorts.has(kept.type)) sorts.set(kept.type, { here: new Map(), list: null });
  const sort = sorts.get(kept.type);
  sort.here.set(kept.id, kept);
  sort.list = null;
}

function forget(id) {
  const sort = sorts.get(known.get(id)?.type);
  known.delete(id);
  if (!sort) return;
  sort.here.delete(id);
  sort.list = null;
}

function noteHere() {
  if (storing() && PRACTICE === "") noteKnown(known.size);
}

/** Calls `heard` when the browser has deleted what is still in this window's memory. */
export function onLost(heard) {
  losses.push(heard);
}

/** A number that is another one after every change of the records. */
export function recordsEdition() {
  return edition;
}

/** Calls `heard` when another window has changed something. */
export function onChanged(heard) {
  listeners.push(heard);
}

/** Calls `heard` after each change that was made in this window. */
export function onWritten(heard) {
  writers.push(heard);
}

async function refresh(ids) {
  for (let at = 0; at < ids.length; at += SLICE) {
    const some = ids.slice(at, at + SLICE); // after a first sync they are thousands
    await look(["records"], async (there) => {
      const stored = await Promise.all(some.map((id) => there.get("records", id)));
      some.forEach((id, place) => (stored[place] ? know(stored[place]) : forget(id)));
    });
  }
  edition += 1;
  noteHere();
  for (const heard of listeners) heard(ids);
}

/** Takes up what was written past this module, and tells other windows. */
export async function reread(ids) {
  if (ids.length === 0) return;
  await refresh(ids);
  channel?.postMessage(ids);
}

/** The record of that id, or undefined; also one in the bin. */
export function record(id) {
  return known.get(id);
}

/** All records of a type that are not in the bin. */
export function all(type) {
  const sort = sorts.get(type);
  if (!sort) return [];
  sort.list ??= [...sort.here.values()].filter((kept) => kept.trashed === "");
  return [...sort.list];
}

/** What is in the bin, the latest first. */
export function trashed() {
  return [...known.values()]
    .filter((kept) => kept.trashed !== "" && !kept.gone)
    .sort((a, b) => (a.trashed < b.trashed ? 1 : -1));
}

/** How many records of a type are not in the bin. */
export function howMany(type) {
  all(type);
  return sorts.get(type)?.list.length ?? 0;
}

/** Is there a piece or a want that a verdict could rest on? */
export function anything() {
  return howMany("piece") + howMany("want") > 0;
}

/** Every record there is, with what is left of those deleted for good. */
export function everything() {
  return [...known.values()];
}

/**
 * Changes records. `what` says it in a few words; `edits`: [{id, alter(now or null) -> record,
 * writes: names of fields that count as written though they stay the same, or left out}], or
 * a function that gets the stores and gives such a list; `photos` are kept along with it. Gives
 * {kept: "disk", "memory" or "" when it failed, group}. What `alter` throws comes through.
 */
export async function change(what, edits, options = /** @type {any} */ ({})) {
  const { photos = [], ...marks } = options;
  const group = newId("g");
  let changed = [];
  const kept = await together(STORES, async (there) => {
    changed = [];
    const list = typeof edits === "function" ? await edits(there) : edits;
    const stored = await Promise.all(list.map(({ id }) => there.get("records", id)));
    list.forEach(({ alter, writes }, place) => {
      const before = stored[place] ?? null;
      const after = alter(before);
      if (after && (writes || !same(before, after)))
        changed.push([before, stamped(before, after), writes]);
    });
    const puts = photos.map((photo) => there.put("photos", photo));
    for (const [before, after, writes] of changed) {
      puts.push(there.put("records", after));
      puts.push(there.put("journal", entry(before, after, { group, what, ...marks }, writes)));
    }
    await Promise.all(puts);
  });
  if (kept !== "") tell(changed.map(([, after]) => after));
  return { kept, group };
}

function tell(records) {
  for (const after of records) know(after);
  edition += 1;
  noteHere();
  if (records.length > 0) channel?.postMessage(records.map(({ id }) => id));
  for (const heard of writers) heard();
}

function stamped(before, after) {
  const now = Math.min(Math.max(Date.now(), before ? Date.parse(before.changed) + 1 : 0), LAST);
  const changed = new Date(now).toISOString();
  return { ...after, made: before?.made ?? after.made ?? changed, changed };
}

/** A journal entry, with nothing but the fields that differ, and those named. */
export function entry(before, after, marks, writes = []) {
  const fields = [...new Set([...fieldsThatDiffer(before ?? {}, after), ...writes])];
  return {
    time: after.changed,
    record: after.id,
    type: after.type,
    undoes: "",
    side: false,
    ...marks,
    before: before && picked(before, fields),
    after: picked(after, before ? fields : Object.keys(after)),
  };
}

function fieldsThatDiffer(before, after) {
  const names = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...names].filter((name) => name !== "changed" && !same(before[name], after[name]));
}

function picked(whole, fields) {
  return Object.fromEntries(
    fields.filter((name) => name in whole).map((name) => [name, whole[name]]),
  );
}

/** An edit that sets one field, if it still is as it was shown. */
export function setting(id, field, shown, value) {
  return {
    id,
    alter(now) {
      if (!now || now.gone) throw new ChangedElsewhere(now);
      if (!same(now[field] ?? null, shown ?? null) && !same(now[field] ?? null, value))
        throw new ChangedElsewhere(now);
      return { ...now, [field]: value };
    },
  };
}

/** An edit that makes a record. */
export function making(made) {
  return { id: made.id, alter: () => made };
}

/** An edit that puts a record into the bin, or back from it. */
export function trashing(id, into = true) {
  return {
    id,
    alter: (now) => now && { ...now, trashed: into ? new Date().toISOString() : "" },
  };
}

/**
 * Deletes for good: what the records held, their history and their photos. Only their ids stay, so
 * that another device or an old backup does not bring them back unasked.
 */
export async function deleteForGood(ids, photos) {
  let left = [];
  const kept = await together(STORES, async (there) => {
    left = [];
    for (const id of ids) {
      const now = await there.get("records", id);
      if (!now || now.trashed === "") continue;
      const { type, made, changed, trashed: gone } = now;
      left.push(stamped(now, { id, type, made, changed, trashed: gone, gone: true }));
      for (const old of await there.where("journal", "record", id)) {
        await there.put("journal", scrubbed(old));
      }
    }
    const marks = { group: newId("g"), what: DELETED_FOR_GOOD, side: true };
    for (const emptied of left) {
      await there.put("records", emptied);
      await there.put("journal", entry({}, emptied, marks));
    }
    for (const id of photos) {
      await there.remove("photos", id);
      const changed = new Date().toISOString();
      const gone = { id, type: "photo", changed, trashed: changed, gone: true };
      await there.put("journal", entry({}, gone, marks));
    }
  });
  if (kept !== "") tell(left);
  return kept;
}

/** A journal entry without what it wrote; an operation of it is known to be so. */
export function scrubbed({ fields, settles, ...old }) {
  const bare = { ...old, before: old.before && {}, after: {}, side: true };
  return old.op ? { ...bare, scrubbed: true } : bare;
}
