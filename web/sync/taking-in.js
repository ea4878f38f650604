/** Takes in operations that came from the server or in a backup file. */
import { ASIDE } from "../data/gate.js";
import { loadRules } from "./merging-rules.js";
import { SILENT, entryOf, operationOf } from "./operation-forms.js";
import { pace } from "./pace.js";
import { remergeAll } from "./records-from-operations.js";
import { renameOwn } from "./renaming.js";
import { seal, sealSome } from "./sealing.js";
import { atPace } from "./sync-state.js";

const taking = pace();

/** How many operations are to be asked for at once. */
export function pageNow() {
  return taking.most();
}

/**
 * Takes in a page of the server's operations; `asked`: where the pull began. Gives {touched: ids of
 * the records that changed, again: this one has to be asked for anew}.
 */
export async function takeIn(answer, asked) {
  const rules = await loadRules();
  const touched = new Set();
  let again = false;
  await atPace(taking, async (there, state, most) => {
    again = await takePage(there, state, rules, answer, asked, touched);
    return answer.ops.length >= most;
  });
  return { touched: [...touched], again };
}

async function takePage(there, state, rules, answer, asked, touched) {
  while (await sealSome(there, state, rules, touched));
  if (rules.is_late(state, asked)) return true;
  Object.assign(state, rules.pulled(state, answer));
  const mark = rules.mark_of(state);
  const makers = answer.ops.map((op) => (shown) => entryOf(op, shown, mark));
  return takeThese(there, state, rules, makers, touched);
}

/** Takes in entries of a backup file that are operations. Gives the ids of records that changed. */
export async function takeEntries(entries) {
  const rules = await loadRules();
  const touched = new Set(await seal());
  for (let at = 0; at < entries.length;) {
    let end = at;
    await atPace(taking, async (there, state, most) => {
      end = at + most;
      const makers = entries.slice(at, end).map(({ seq, ...entry }) => () => ({
        ...entry,
        side: true,
        pulled: !SILENT.includes(entry.type),
        held: "",
      }));
      while (await sealSome(there, state, rules, touched));
      await takeThese(there, state, rules, makers, touched);
      return end < entries.length;
    });
    at = end;
  }
  return [...touched];
}

/**
 * Puts entries among the operations that are known: `given`, functions that make one of the record
 * as
 * it is shown. Gives true when this phone has another id since, as a copy of it went another way.
 */
async function takeThese(there, state, rules, given, touched) {
  const once = new Map(given.map((make) => [make(null).op, make]));
  const makers = [...once.values()];
  const made = makers.map((make) => make(null));
  const known = await Promise.all(made.map(({ op }) => there.where("journal", "op", op)));
  const ops = made.map((entry, place) => {
    const { op: id, wall, count } = entry;
    return {
      id,
      device: rules.parts_of_id(id).device,
      wall,
      count,
      here: standing(rules, known[place], entry),
    };
  });
  const { clock, take, known: places, moved, fork: forked } = rules.met(state, ops, Date.now());
  if (forked) await renameOwn(there, state, rules, moved, touched);
  state.clock = clock;
  const puts = places
    .map((place) => ({ ...known[place][0], held: made[place].held || known[place][0].held }))
    .filter(({ held }, at) => held !== known[places[at]][0].held);
  for (const { op, held } of puts) if (held !== "") there.remove(ASIDE, `sent ${op}`);
  const ids = [...new Set(take.map((place) => made[place].record))];
  const before = await Promise.all(ids.map((id) => there.get("records", id)));
  const shown = new Map(ids.map((id, place) => [id, before[place] ?? null]));
  for (const place of take) {
    const { record, fields = made[place].after } = made[place];
    puts.push(makers[place](shown.get(record)));
    shown.set(record, { ...shown.get(record), ...fields });
  }
  await Promise.all(puts.map((entry) => there.put("journal", entry)));
  await remergeAll(there, state, rules, ids, touched);
  return forked;
}

/** What is known here under an operation's id: "", "same" or "other". */
function standing(rules, [known], entry) {
  if (!known) return "";
  return rules.same_operation(compared(rules, known), compared(rules, entry)) ? "same" : "other";
}

function compared(rules, entry) {
  return rules.comparable(operationOf(entry));
}
