/**
 * Ranges of one's own as the engine takes them: made of their records whenever these change, and
 * kept like ranges that were added from a file. What cannot be made of a row is left out and told.
 */
import { here } from "../data/back-button.js";
import { CannotGoOn } from "../data/engine.js";
import { OWN, dateMarks, ownIn } from "../data/packs.js";
import { run } from "../data/queue.js";
import { onChanged, onWritten, record } from "../data/records.js";
import { problem, read } from "../data/store.js";
import { adopt, openRange } from "../identify/range-at-hand.js";
import { redraw } from "../parts/navigation.js";
import { sheetOpen } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { refresh, stored } from "./kept-ranges.js";
import { ROWS, ownRanges, rowsOf } from "./own-range.js";
import { setKeysApart } from "./same-key.js";
import { specimensOf } from "./specimens.js";
import { MAKING_PART_NOT_HERE } from "./words.js";

/** @import { Gap, Learned, Pack, RangeRows } from "../data/engine-types.d.ts" */
/** @import { RangingModule, RowMistake } from "../data/engine-types.d.ts" */

const FORM = "2"; // another one where ranges have to be made anew
const PAUSE = 400;
let rules = null;
let timer = 0;

/**
 * The part of the engine that makes ranges of rows.
 * @returns {Promise<RangingModule>}
 */
export async function rangingRules() {
  try {
    rules ??= await import(new URL("../ranging.js", import.meta.url).href);
  } catch {
    throw new CannotGoOn(MAKING_PART_NOT_HERE);
  }
  return rules;
}

/** Makes ranges of one's own whenever their rows change, from now on. */
export function followRanges(state) {
  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(() => run(() => keepCompiled(state)), PAUSE);
  };
  onWritten(soon);
  onChanged(soon);
  soon();
}

/** The rows of a range, of every sort. */
export function everyRow(id) {
  return ROWS.flatMap((type) => rowsOf(id, type));
}

/** The first 16 figures of the SHA-256 of a text. */
export async function digest(text) {
  const sum = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  const figures = [...new Uint8Array(sum)].map((byte) => byte.toString(16).padStart(2, "0"));
  return figures.slice(0, 8).join("");
}

/** What says whether a range was made of its rows, and of the pieces owned, as they are. */
function stampOf(range) {
  const rows = [range, ...everyRow(range.id)].map(({ id, changed }) => `${id} ${changed}`);
  return digest(FORM + rows.join() + JSON.stringify(specimensOf(range.key)));
}

/**
 * The compiled range of one's own: {pack, text, mistakes, learned}; pack and text are null while it
 * has no item. `learned`, `gaps`: what owned pieces tell of it and of what is not written down,
 * which is in the pack unless that is switched off.
 * `id` is that of its record.
 * @param {string} id
 * @returns {Promise<{ pack: Pack | null; text: string | null; mistakes: RowMistake[];
 *   learned: Learned | null; gaps: Gap[] }>}
 */
export async function compileRange(id) {
  const [ranging, marks] = await Promise.all([rangingRules(), dateMarks()]);
  const rows = ranging.rows_of_records(record(id), everyRow(id));
  const { good, whole, mistakes } = growing(ranging, rows, marks);
  if (!whole) return { pack: null, text: null, mistakes, learned: null, gaps: [] };
  const specimens = specimensOf(whole.id);
  const learned = ranging.learned_from(whole, specimens);
  const gaps = ranging.gaps_told(whole, specimens, ranging.from_pieces_alone(good));
  if (record(id).learns !== "no") {
    ranging.take_in_learned(whole, learned);
    ranging.take_in_gaps(whole, gaps);
  }
  return { ...(await sealed(whole)), mistakes, learned, gaps };
}

/** What can be made of rows: {good: the rows that are used, whole: null for none, mistakes}. */
function growing(ranging, rows, marks) {
  const { rows: good, first, last, mistakes } = ranging.usable(rows, marks);
  if (good.variants.length === 0) return { good, whole: null, mistakes };
  return { good, whole: ranging.compiled_range(good, first, last, marks), mistakes };
}

/** A compiled range with its version, and as text. */
async function sealed(whole) {
  const { version: _, ...made } = whole;
  const bare = JSON.stringify(made);
  const version = await digest(bare);
  return { pack: { ...made, version }, text: `${bare.slice(0, -1)},"version":"${version}"}` };
}

/**
 * The compiled range of rows as they are: {pack, text}, null where nothing can be made of them, and
 * `good`, the rows that it is made of.
 * @returns {Promise<{ pack: Pack | null; text: string | null; good: RangeRows }>}
 */
export async function compiled(rows, marks) {
  const { good, whole } = growing(await rangingRules(), rows, marks);
  return whole ? { ...(await sealed(whole)), good } : { pack: null, text: null, good };
}

/** Makes what changed, takes away what is no more, and shows the screen anew where it matters. */
export async function keepCompiled(state) {
  const kept = ownIn(await read("kept", OWN)).filter((entry) => entry.written);
  await setKeysApart();
  const mine = ownRanges();
  let changed = false;
  for (const range of mine) {
    const stamp = await stampOf(range);
    const before = kept.find((entry) => entry.written === range.id);
    if (before?.stamp === stamp) continue;
    const { pack, text } = await compileRange(range.id);
    const line = pack && { id: pack.id, version: pack.version, own: true, ...pack.range };
    const entry = line ? { ...line, written: range.id, stamp } : before;
    if (!entry || (!text && !before)) continue;
    if (!(await stored(entry, text))) return notice(problem());
    changed ||= before?.version !== pack?.version;
  }
  for (const entry of kept.filter(({ written }) => !mine.some(({ id }) => id === written))) {
    if (!(await stored(entry, null))) return notice(problem());
    changed = true;
  }
  if (changed) await takenUp(state);
}

/** The lists, the range that is open and the screen, as they are now. */
async function takenUp(state) {
  const open = state.entry.version;
  await refresh();
  const now = state.list.find(({ id }) => id === state.entry.id);
  const { screen } = here();
  if (now?.version !== open) await (state.piece ? adopt(state.piece) : openRange(state.entry.id));
  else if (state.piece && screen === "identify") return;
  const drawn = screen === "identify" || screen === "ranges";
  if (drawn && !sheetOpen()) await redraw(); // it would shut the sheet under a finger
}
