/**
 * One change in its three forms: an entry of the journal, an operation as the server takes it, an
 * operation as the rules take it. And the record that the merged operations come to.
 */
import { furtherHere } from "../data/engine.js";
import { fitting, unhalved } from "../data/record-shapes.js";

/** @import { Merged, MergingModule, Operation, Written } from "../data/engine-types.d.ts" */

const OF_THE_RECORD = new Set(["id", "type", "changed"]);
const LAST = Date.UTC(9998, 11, 31);
export const SILENT = ["photo", "device"]; // not told among the changes

/** What a journal entry wrote: {name: value}; what it took away is null. */
export function fieldsOf(entry) {
  if (entry.scrubbed) return {};
  if (entry.fields) return unhalved(entry.fields);
  const { before, after } = entry;
  const taken = Object.keys(before ?? {}).filter((name) => !(name in after));
  const all = [...Object.entries(after), ...taken.map((name) => [name, null])];
  return Object.fromEntries(
    all
      .filter(([name]) => !OF_THE_RECORD.has(name))
      .map((pair) => pair.map((half) => unhalved(half))),
  );
}

/**
 * The entry as it goes to the server; `more`: what a newer version says besides, passed on as it
 * is.
 * @param {any} entry
 * @returns {Operation}
 */
export function operationOf(entry) {
  const { op, record, type, parents, wall, count, time, more } = entry;
  const { group = "", what = "", undoes = "" } = entry;
  const change = { group, what: unhalved(what), undoes };
  const said = "untimed" in entry ? entry.untimed : time;
  const when = said === null ? {} : { time: said };
  const bare = { ...more, id: op, record, type, parents, wall, count, ...when, ...change };
  return { ...bare, fields: fieldsOf(entry), ...(entry.scrubbed && { scrubbed: true }) };
}

/**
 * An operation from elsewhere as an entry of the journal; `shown`: the record as it was before.
 * @param {Operation} operation
 * @param {any} shown
 * @param {string} held
 */
export function entryOf(operation, shown, held) {
  const { id, record, type, parents, wall, count, time, fields, scrubbed, ...rest } = operation;
  const { group = "", what = "", undoes = "", ...more } = rest;
  const names = Object.keys(fields);
  const before = names.filter((name) => shown && Object.hasOwn(shown, name));
  const marks = { group, what, undoes, side: true, pulled: !SILENT.includes(type), held };
  return {
    op: id,
    record,
    type,
    parents,
    wall,
    count,
    time: time || timeOf(wall),
    ...marks,
    fields,
    before: shown && Object.fromEntries(before.map((name) => [name, shown[name]])),
    after: fields,
    ...(scrubbed && { scrubbed: true }),
    ...(!time && { untimed: time ?? null }),
    ...(Object.keys(more).length > 0 && { more }),
  };
}

/** The time that a clock stood at; the last one that can be written where it was further. */
function timeOf(wall) {
  return new Date(Math.min(wall, LAST)).toISOString();
}

/**
 * Gives entries the form in which the rules take them.
 * @param {MergingModule} rules
 * @returns {(entry: any) => Written}
 */
export function written(rules) {
  return (entry) => rules.for_merging(operationOf(entry));
}

/**
 * The record that its merged operations come to. `entries`: all of them.
 * @param {string} id
 * @param {Merged} merged
 * @param {any[]} entries
 */
export function recordOf(id, merged, entries) {
  const { is_time } = furtherHere();
  const times = entries.map(({ time }) => time).sort();
  const { type } = merged;
  const fields = Object.fromEntries(merged.fields.map(([name, text]) => [name, JSON.parse(text)]));
  const made = is_time(fields.made) ? fields.made : times[0];
  const changed = times[times.length - 1];
  const trashed = merged.trashed && !is_time(fields.trashed) ? changed : fields.trashed;
  if (merged.gone) return { id, type, made, changed, trashed: trashed || changed, gone: true };
  return fitting({ ...fields, id, type, made, changed, trashed: merged.trashed ? trashed : "" });
}
