/** What the engine says of a piece, worked out once for what is asked twice. */
import { current } from "../data/piece-at-hand.js";
import { all, anything, recordsEdition } from "../data/records.js";
import { state } from "../data/state.js";
import { foreseen } from "../data/work-ahead.js";

let study = { about: "", found: null };

/** The engine’s view of a piece, with the verdict where something is kept that can have a say. */
export async function assess(piece) {
  const { session } = current(piece);
  const found = anything() ? studied(piece) : null;
  const about = found ? study.about : "";
  const { engine, ready, thread } = state;
  return foreseen(`${about} ${JSON.stringify(session)}`, () => {
    const own = () =>
      found ? engine.assess_studied(ready, session, found) : engine.assess(ready, session);
    return thread ? thread.view(session, about, found).catch(own) : own();
  });
}

/** What the records mean for the piece, worked out once for all its answers. */
function studied(piece) {
  const hand = { condition: "", boxed: "", asked: null, ...piece.hand };
  const made = all("piece").some((one) => one.session === piece.id) ? piece.id : "";
  const about = [recordsEdition(), state.pack.version, made, JSON.stringify(hand)].join(" ");
  if (study.about !== about) {
    const others = all("piece").filter((one) => !one.session || one.session !== piece.id);
    const records = { pieces: others, wants: all("want") };
    study = { about, found: state.engine.study(state.ready, records, hand) };
  }
  return study.found;
}
