/** What the engine says of a piece, worked out once for what is asked twice. */
import { current } from "../data/piece-at-hand.js";
import { all, anything, recordsEdition } from "../data/records.js";
import { state } from "../data/state.js";
import { turns } from "../data/turns.js";
import { foreseen } from "../data/work-ahead.js";

const MOST = 500; // pieces that are looked at before the screen may have its turn
let latest = { about: "", study: null };
let spreads = { ready: null, of: new WeakMap() }; // what each piece can be of a range

/** The engine’s view of a piece, with the verdict where something is kept that can have a say. */
export async function assess(piece) {
  const { session } = current(piece);
  const { engine, ready, thread } = state;
  const { about, study } = anything() ? await studied(piece) : { about: "", study: null };
  return foreseen(`${about} ${JSON.stringify(session)}`, () => {
    const own = () =>
      study ? engine.assess_studied(ready, session, study) : engine.assess(ready, session);
    return thread ? thread.view(session, about, study).catch(own) : own();
  });
}

/** What the records mean for the piece, worked out once for all its answers. */
async function studied(piece) {
  const hand = { condition: "", boxed: "", asked: null, ...piece.hand };
  const made = all("piece").some((record) => record.session === piece.id) ? piece.id : "";
  const about = [recordsEdition(), state.pack.version, made, JSON.stringify(hand)].join(" ");
  if (latest.about === about) return latest;
  const { engine, ready } = state;
  const others = all("piece").filter((other) => !other.session || other.session !== piece.id);
  const wants = all("want");
  const held = await spread(engine, ready, others);
  const turn = turns();
  const own = { about, study: engine.study_held(ready, held, wants, hand) };
  latest = own;
  await turn();
  return own;
}

/** What each of these can be, worked out anew only of what has changed. */
async function spread(engine, ready, pieces) {
  if (spreads.ready !== ready) spreads = { ready, of: new WeakMap() };
  const { of } = spreads;
  const fresh = pieces.filter((piece) => !of.has(piece));
  const turn = turns();
  for (let at = 0; at < fresh.length; at += MOST) {
    for (const piece of engine.spread_all(ready, fresh.slice(at, at + MOST)))
      of.set(piece.record, piece);
    await turn();
  }
  return pieces.map((record) => of.get(record));
}
