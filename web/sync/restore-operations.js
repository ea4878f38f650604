/** What a backup file holds of operations that devices have shared: they stay what they are. */
import { everything, record, reread } from "../data/records.js";
import { same } from "../data/record-shapes.js";
import { look, problem } from "../data/store.js";
import { fieldsOf, recordOf, written } from "./operation-forms.js";
import { takeEntries } from "./taking-in.js";
import { loadRules } from "./merging-rules.js";

/**
 * Takes in the operations of a file: {rest: the file without them and without the records that they
 * explain, added, newer, older}.
 */
export async function takeShared(file) {
  const shared = problem() === "" ? file.journal.filter(({ op }) => op) : [];
  const none = { rest: file, added: 0, newer: 0, older: 0 };
  if (shared.length === 0) return none;
  const known = new Set(everything().map(({ id }) => id));
  const touched = new Set(await takeEntries(shared));
  await reread([...touched]);
  const explained = await explainedBy(file.records, shared);
  const theirs = byId(file.records);
  const left = [...explained].filter(
    (id) => !touched.has(id) && !alike(record(id), theirs.get(id)),
  );
  const added = [...explained].filter((id) => touched.has(id) && !known.has(id)).length;
  const rest = {
    ...file,
    records: file.records.filter(({ id }) => !explained.has(id)),
    journal: file.journal.filter(({ op }) => !op),
  };
  const newer = [...explained].filter((id) => touched.has(id)).length - added;
  return { rest, added, newer, older: left.length };
}

/** Records by their ids; of two with one id the first. */
function byId(records) {
  return new Map(records.map((entry) => [entry.id, entry]).reverse());
}

/** The ids of records that are nothing but what these operations come to. */
async function explainedBy(records, shared) {
  const rules = await loadRules();
  const of = new Map(records.map(({ id }) => [id, []]));
  for (const entry of shared) of.get(entry.record)?.push(entry);
  const theirs = byId(records);
  const explained = records.filter(({ id }) => {
    const entries = of.get(id);
    if (entries.length === 0) return false;
    return alike(recordOf(id, rules.merged(entries.map(written(rules))), entries), theirs.get(id));
  });
  return new Set(explained.map(({ id }) => id));
}

function alike(a, b) {
  if (!a || !b) return false;
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  names.delete("changed");
  return [...names].every((name) => same(a[name] ?? null, b[name] ?? null));
}

/**
 * What a restore of this file would remove of what is here, and the file without what would delete
 * it for good: {removed: [ids of records], file}. A file removes no photo that is here.
 */
export async function removals(file) {
  const here = new Set(await photosHere());
  const known = new Set(await operationsHere(file.journal));
  // without a copy of each: they may be many thousands, and are looked at in one go
  const deletes = (entry) =>
    entry.op &&
    !known.has(entry.op) &&
    fieldsOf(entry).gone === true &&
    (here.has(entry.record) || alive(entry.record));
  const trashes = ({ id, trashed }) => trashed !== "" && record(id)?.trashed === "";
  const gone = [
    ...file.records.filter(
      ({ gone: left, id, changed }) => left && alive(id) && changed > record(id).changed,
    ),
    ...file.journal.filter(deletes).map(({ record: id }) => ({ id })),
  ];
  const trashed = file.records.filter(
    (entry) => !entry.gone && trashes(entry) && entry.changed > record(entry.id).changed,
  );
  const ids = [...gone, ...trashed].map(({ id }) => id).filter((id) => record(id)?.trashed === "");
  return {
    removed: [...new Set(ids)],
    file: { ...file, journal: file.journal.filter((entry) => !deletes(entry)) },
  };
}

function alive(id) {
  const now = record(id);
  return now !== undefined && !now.gone;
}

async function photosHere() {
  return look(["photos"], async (there) => await there.keys("photos"));
}

/** Those of these operations that are in the journal already. */
async function operationsHere(entries) {
  const ops = entries.filter(({ op }) => op).map(({ op }) => op);
  const known = await look(
    ["journal"],
    async (there) => await Promise.all(ops.map((op) => there.where("journal", "op", op))),
  );
  return known.flat().map(({ op }) => op);
}
