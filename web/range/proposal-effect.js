/**
 * What taking a sighting in would change in a range of one's own, and what that does: which
 * variants can be told apart, what would be named otherwise. The rules are the engine's
 * (`identify/core/ranges/sighted.py`, `identify/core/try_out.py`).
 */
import { dateMarks } from "../data/packs.js";
import { newId, same } from "../data/record-shapes.js";
import { all, record } from "../data/records.js";
import { compiled, everyRow, rangingRules } from "./keep-compiled.js";
import { slices, tryingRules } from "./trying.js";
import { alsoSeen } from "./following-words.js";

/** @import { Pack, Proposal, RangeRows } from "../data/engine-types.d.ts" */

const TRIALS = 40;
const SEED = 1; // the same range is told the same

/**
 * What a sighting would change: {proposal, rows and pack: the range as it is, after: as it would
 * be, edits: what makes it so, answers: those that the range knows}; null where the range has no
 * item yet.
 * @returns {Promise<{ proposal: Proposal; rows: RangeRows; pack: Pack; after: Pack | null;
 *   edits: any[]; answers: any[] } | null>}
 */
export async function proposed({ engine }, range, sighting) {
  const [ranging, marks] = await Promise.all([rangingRules(), dateMarks()]);
  const mine = () => ranging.rows_of_records(range, everyRow(range.id));
  const { pack, good } = await compiled(mine(), marks);
  if (!pack) return null;
  const ready = engine.prepare(pack);
  const { session } = engine.mend(ready, sessionOf(pack, sighting, sighting.answers));
  const described = { ...sighting, answers: session.answers };
  const plain = ranging.plain_looks(session.answers);
  const seen = engine.seen_years(ready, { ...session, answers: plain });
  const fields = good.features.map(({ id }) => id);
  const proposal = ranging.proposal_of(good, pack, described, seen, fields);
  const { answers } = session;
  if (proposal.why !== "") return { proposal, rows: good, pack, after: null, edits: [], answers };
  const now = mine();
  ranging.take_in_proposal(good, withBeside(proposal), now);
  const edits = editsOf(ranging, range, structuredClone(now));
  const after = (await compiled(now, marks)).pack;
  return { proposal, rows: good, pack, after, edits, answers };
}

function sessionOf(pack, { kind = "", item = "" }, answers) {
  const scope = { kind, items: item === "" ? [] : [item] };
  return { pack: pack.id, version: pack.version, scope, able: [], missing: [], answers };
}

/**
 * What no cell can hold goes into the note of the variant.
 * @param {Proposal} proposal
 * @returns {Proposal}
 */
function withBeside(proposal) {
  const { beside, variants } = proposal;
  const more = beside.length > 0 ? [alsoSeen(beside.join("; "))] : [];
  const noted = variants.map((variant) => ({
    ...variant,
    note: [variant.note, ...more].filter(Boolean).join("\n"),
  }));
  return { ...proposal, variants: noted };
}

/**
 * The records that have to be made or changed for a range to have these rows. Rows that are there
 * keep their places, and new ones come behind them: else nearly every record would be written.
 */
function editsOf(ranging, range, rows) {
  const beside = everyRow(range.id);
  const fresh = Array.from({ length: ranging.rows_needed(rows) }, () => newId("r"));
  const made = ranging.records_of_rows(rows, range, beside, fresh);
  const last = Math.max(0, ...beside.map(({ at = 0 }) => at));
  return made.flatMap((row, place) => {
    const { id } = row;
    const now = record(id);
    if (!now) return [{ id, alter: () => ({ ...row, at: last + 1 + place }) }];
    const other = Object.entries(row).filter(
      ([name, value]) => name !== "at" && !same(value, now[name]),
    );
    const alter = (before) =>
      before && !before.gone ? { ...before, ...Object.fromEntries(other) } : before;
    return other.length > 0 ? [{ id, alter }] : [];
  });
}

/**
 * What it does: {apart, alike: pairs of ids of variants that can be told apart from then on, or no
 * longer; tried, otherwise: of so many pieces drawn from the range how many are named otherwise;
 * own, ownOtherwise: the same of pieces in the collection; was, would: the ids of the variants that
 * the piece that was seen is named as, "" for one in no range}; null once `shown()` is false.
 */
export async function effectOf({ engine }, sighting, { pack, after }, shown) {
  const trying = await tryingRules();
  const go = slices(shown);
  const before = await pairsOf(trying, pack, go);
  const then = before && (await pairsOf(trying, after, go));
  if (!then) return null;
  const [old, fresh] = [trying.prepare(pack), trying.prepare(after)];
  let otherwise = 0;
  for (let place = 0; place < TRIALS; place += 1) {
    const trial = trying.new_trial(fresh, SEED, place, TRIALS);
    const twin = trying.twin_of(old, trial);
    while (!trial.done || !twin.done) {
      if (!trial.done) trying.ask_on(fresh, trial);
      if (!twin.done) trying.ask_on(old, twin);
      if (!(await go())) return null;
    }
    if (trying.named_as(fresh, trial.session) !== trying.named_as(old, twin.session))
      otherwise += 1;
  }
  const own = all("piece").filter((piece) => piece.pack === pack.id && piece.answers.length > 0);
  const named = (range, { kind, answers }) => {
    const { session } = engine.mend(range, sessionOf(range.pack, { kind }, answers));
    return trying.named_as(range, session);
  };
  const like = { ...sighting, item: "" }; // as it would be asked at a stall
  const ownOtherwise = own.filter((piece) => named(old, piece) !== named(fresh, piece)).length;
  return {
    apart: before.filter((pair) => !then.includes(pair)),
    alike: then.filter((pair) => !before.includes(pair)),
    tried: TRIALS,
    otherwise,
    own: own.length,
    ownOtherwise,
    was: named(old, like),
    would: named(fresh, like),
  };
}

/** The pairs of variants that cannot be told apart, as "id id"; null once nobody looks any more. */
async function pairsOf(trying, pack, go) {
  const apart = trying.to_part(trying.without_errors(pack));
  const pairs = [];
  for (let place = 0; place < apart.met.length; place += 1) {
    pairs.push(...trying.alike_with(apart, place));
    if (!(await go())) return null;
  }
  return pairs.map(({ one, other }) =>
    [pack.variants[one].id, pack.variants[other].id].sort().join(" "),
  );
}
