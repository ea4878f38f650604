/**
 * The piece at hand, as it is kept on the phone: every step since the start, so that each can be
 * taken back exactly.
 *
 *   {format, id, pack: pack id, made, box, hand, steps: [{session, asked, further, claim, unlike}]}
 *   id        names it in the notes and pieces that are made of it
 *   made      when it was begun
 *   box       names the box it came from, where several come from one; left out: none
 *   hand      {condition, boxed, asked}: what was said of the piece for the verdict; left out:
 *             nothing
 *   session   the engine's session
 *   asked     the feature the person chose to look at; "" for the engine's own choice
 *   further   go on asking although the answer is sure
 *   unlike    it was none of the portraits to choose from: none are shown again; left out: not so
 *   claim     what the seller says of the date, as typed; "" or left out: nothing
 */
import { newId } from "./record-shapes.js";
import { read, remove, together, write } from "./store.js";

/** @import { Engine, EngineModule, Pack, Session } from "./engine-types.d.ts" */

const FORMAT = 1;
const KEY = "piece";
const BESIDE = "piece of another window";
let own; // the id of the piece that this window is at

/**
 * A new piece with its first step.
 * @param {Session} session
 */
export function begun(session) {
  return {
    format: FORMAT,
    id: newId("s"),
    pack: session.pack,
    made: new Date().toISOString(),
    steps: [{ session, asked: "", further: false }],
  };
}

/** The step the piece is at. */
export function current(piece) {
  return piece.steps[piece.steps.length - 1];
}

/** The id of the pack that the piece is looked for in: it can change from step to step. */
export function packOf(piece) {
  return current(piece).session.pack;
}

/**
 * The piece one step on: what changed stands in `change`; a question chosen before is done with.
 */
export function stepped(piece, change) {
  return { ...piece, steps: [...piece.steps, { ...current(piece), asked: "", ...change }] };
}

/** The piece as it was after `count` steps; null for none. */
export function backTo(piece, count) {
  return count < 1 ? null : { ...piece, steps: piece.steps.slice(0, count) };
}

/** The piece with something changed in the step it is at, which is no step of its own. */
export function amended(piece, session) {
  const steps = piece.steps.slice(0, -1);
  return { ...piece, steps: [...steps, { ...current(piece), session }] };
}

/**
 * Keeps the piece (null: none). Resolves to false when it could not be stored. A piece that another
 * window is at meanwhile is put beside it, never overwritten.
 */
export async function keep(piece) {
  const kept = await together(["kept"], async (there) => {
    const reads = Promise.all([there.get("kept", KEY), there.get("kept", BESIDE)]);
    const writes = piece ? [there.put("kept", piece, KEY)] : []; // at once: the disk takes its time
    writes[0]?.catch(() => {}); // it comes back below
    const [stored, beside] = await reads;
    const another = stored !== undefined && ![own, piece?.id].includes(stored.id);
    if (!piece && !another) writes.push(there.remove("kept", KEY));
    if (another && piece) writes.push(there.put("kept", stored, BESIDE));
    else if (beside && beside.id === (piece?.id ?? own)) writes.push(there.remove("kept", BESIDE));
    there.end();
    await Promise.all(writes);
  });
  own = piece?.id;
  return kept === "disk";
}

/** The piece that another window was at, or null. */
export async function restoredBeside() {
  const kept = await read("kept", BESIDE);
  return sound(kept) ? kept : null;
}

/** Takes the piece up that another window was at; the one at hand stays beside it. */
export async function swap(piece, beside) {
  await (piece ? write("kept", BESIDE, piece) : remove("kept", BESIDE));
  own = piece?.id;
  return keep(beside);
}

/** Keeps the piece that was left by starting again (null: none), so that it can be had back. */
export function keepFormer(piece) {
  return piece ? write("kept", "former", piece) : remove("kept", "former");
}

/** The piece that was left by starting again, or null. */
export async function restoredFormer() {
  const kept = await read("kept", "former");
  return sound(kept) ? kept : null;
}

/** The piece that was kept: {piece, unreadable}. What cannot be read is put by, not thrown away. */
export async function restored() {
  const kept = await read("kept", KEY);
  if (kept === undefined) return { piece: null, unreadable: false };
  if (sound(kept)) {
    own = kept.id;
    return { piece: kept, unreadable: false };
  }
  await putBy(kept);
  return { piece: null, unreadable: true };
}

/** Takes a piece that cannot be taken up out of the way, without throwing it away. */
export async function putBy(piece) {
  await write("kept", "put by", piece);
  await remove("kept", KEY);
}

/** Can this be taken up as a piece? */
export function sound(kept) {
  return (
    kept?.format === FORMAT &&
    typeof kept.pack === "string" &&
    Array.isArray(kept.steps) &&
    kept.steps.length > 0 &&
    kept.steps.every(soundStep)
  );
}

function soundStep(step) {
  const session = step?.session;
  return (
    typeof step?.asked === "string" &&
    typeof step.further === "boolean" &&
    ["string", "undefined"].includes(typeof step.claim) &&
    typeof session?.pack === "string" &&
    typeof session.version === "string" &&
    Array.isArray(session.answers) &&
    Array.isArray(session.able) &&
    Array.isArray(session.missing) &&
    typeof session.scope?.kind === "string" &&
    Array.isArray(session.scope.items) &&
    session.answers.every(
      (answer) => typeof answer?.feature === "string" && Array.isArray(answer.states),
    )
  );
}

/**
 * The piece, in its steps in this pack, made to fit it: {piece, dropped: [{what, reason}]} for the
 * step it is at.
 * @param {EngineModule} engine
 * @param {{ pack: Pack; ready: Engine }} loaded
 * @param {any} piece
 */
export function mended(engine, { pack, ready }, piece) {
  const mendings = piece.steps.map((step) =>
    step.session.pack === pack.id
      ? engine.mend(ready, step.session)
      : { session: step.session, dropped: [] },
  );
  const fits = piece.steps.every(
    (step, place) =>
      step.session.version === mendings[place].session.version &&
      mendings[place].dropped.length === 0,
  );
  if (fits) return { piece, dropped: [] };
  const ids = pack.features.map((feature) => feature.id);
  const steps = piece.steps.map((step, place) => ({
    ...step,
    session: mendings[place].session,
    asked: step.session.pack !== pack.id || ids.includes(step.asked) ? step.asked : "",
  }));
  return { piece: { ...piece, steps }, dropped: mendings[mendings.length - 1].dropped };
}
