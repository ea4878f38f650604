/** The journal read backwards: what was changed, undoing it, and a record's earlier versions. */
import { inPages } from "./pages.js";
import { change } from "./records.js";
import { same } from "./record-shapes.js";
import { look, together } from "./store.js";
import { undoneWhat } from "./words.js";

/**
 * History: [{group, what, time, records: [ids], undone, undoes, pulled: made on another
 * device}], the newest first.
 */
export async function latest(most) {
  return look(["journal"], async (there) => {
    const changes = new Map();
    const undone = new Set();
    await there.backwards("journal", (entry) => {
      if (entry.side && !entry.pulled) return true;
      const { group, what, time, undoes, pulled = false } = entry;
      if (!changes.has(group)) {
        if (changes.size === most) return false;
        const gone = undone.has(group);
        if (undoes !== "" && !gone) undone.add(undoes);
        changes.set(group, { group, what, time, undoes, undone: gone, pulled, records: [] });
      }
      changes.get(group).records.push(entry.record);
      return true;
    });
    return [...changes.values()];
  });
}

/** What Undo would take back now: the latest change that still holds; undefined when none does. */
export async function undoable() {
  return look(["journal"], async (there) => {
    let last;
    const undone = new Set();
    await there.backwards("journal", ({ group, what, undoes, side }) => {
      if (side || undone.has(group)) return true;
      if (undoes === "") last = { group, what };
      else undone.add(undoes);
      return !last;
    });
    return last;
  });
}

/**
 * Takes back one change. Fields that were changed again since stay as they are: {kept, group, left:
 * how many such}. A record that the change made goes to the bin.
 */
export async function undo({ group, what }) {
  let left = 0;
  let settled = [];
  const done = await change(
    undoneWhat(what),
    async (there) => {
      left = 0;
      const entries = await there.where("journal", "group", group);
      settled = entries.filter((entry) => entry.settles);
      return entries.map((entry) => ({
        id: entry.record,
        writes: entry.settles && [],
        alter(now) {
          if (!now || now.gone) {
            left += 1;
            return now;
          }
          const { record, stayed } = takenBack(now, entry);
          left += stayed;
          return record;
        },
      }));
    },
    { undoes: group },
  );
  for (const { record, settles } of settled) await reopen(record, settles);
  return { ...done, left };
}

/** Offers once more what had been settled: `clash` as in the store `clashes`. */
function reopen(record, clash) {
  return together(["clashes"], async (there) => {
    const row = (await there.get("clashes", record)) ?? { record, clashes: [] };
    const others = (row.reopened ?? []).filter(({ field }) => field !== clash.field);
    await there.put("clashes", { ...row, reopened: [...others, clash] });
  });
}

function takenBack(now, { before, after }) {
  if (!before) return { record: { ...now, trashed: new Date().toISOString() }, stayed: 0 };
  const record = { ...now };
  let stayed = 0;
  for (const name of new Set([...Object.keys(before), ...Object.keys(after)])) {
    if (!same(now[name], after[name])) stayed += 1;
    else if (name in before) record[name] = before[name];
    else delete record[name];
  }
  return { record, stayed };
}

/** What was ever changed on a record, the newest first. */
export async function historyOf(id) {
  const entries = await look(
    ["journal"],
    async (there) => await there.where("journal", "record", id),
  );
  return entries.reverse();
}

/**
 * How many records were changed after this place of the journal; the demo's do not count as they
 * came.
 */
export async function changedAfter(seq) {
  const changed = new Set(); // looked at twice, it is the same
  await look(["journal"], (there) =>
    inPages(there, "journal", seq, (entries) => {
      for (const { before, after, side, record } of entries) {
        const demo = before === null && after.demo; // not the collector's own
        if (!side && !demo) changed.add(record);
      }
    }),
  );
  return changed.size;
}
