/**
 * From one piece to another, with none dropped. `moves`: what moves the piece on the screen, from
 * identify.js.
 */
import { begun, current, packOf } from "../data/piece-at-hand.js";
import { run } from "../data/queue.js";
import { put } from "../data/state.js";
import { layAside, takeFrom } from "../data/tray.js";
import { left } from "./left-aside.js";
import { adopt, openRange } from "./range-at-hand.js";

/** The next piece of the same box: of the same kind, in the same range. */
export async function nextOfBox(state, moves) {
  const last = state.piece ? left(state) : (state.former ?? state.tray[0]);
  if (!last) return;
  const box = last.box ?? last.id;
  const { kind } = last.told;
  if (state.piece) {
    put({ piece: { ...state.piece, box } });
    await moves.takeBack(state.piece.steps.length);
  }
  run(() => moves.startWith({ kind, items: [] }, [], packOf(last), { box }));
}

/** Takes up a piece from among those at hand; the one on the screen goes to them. */
export async function takeOut(state, moves, id) {
  const piece = state.tray.find((record) => record.id === id);
  if (piece) await change(state, moves, piece);
}

/** Goes on with the piece of a note: as it was left, or from the answers that the note has. */
export async function resume(state, moves, note) {
  if (state.piece?.id === note.session) return;
  await moves.forget();
  const there = state.tray.find(({ id }) => id === note.session);
  if (there) return change(state, moves, there);
  await openRange(note.pack || state.settings.range);
  const fresh = { ...state.engine.new_session(state.ready), able: state.settings.able };
  const piece = { ...begun({ ...fresh, answers: note.answers }), id: note.session };
  // what sort it is comes first
  if (note.answers.length === 0) piece.steps[0].asked = state.pack.features[0].id;
  await change(state, moves, piece);
}

async function change(state, moves, piece) {
  await moves.forget();
  if (state.piece && current(state.piece).session.answers.length > 0) await layAside(left(state));
  await takeFrom(piece.id);
  await adopt(piece);
  await moves.settle(state.piece);
}
