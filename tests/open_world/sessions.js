// Many sessions by the compiled engine, as the phone asks them: `deno run -A sessions.js FOLDER`.
// FOLDER has engine.mjs and jobs.json: [{pack, pieces: [{feature id: [what is read at the first
// look, at the second, ...]}]}], a part that is not there under "missing". outcomes.json is put
// beside them, a list for each job.

const [folder] = Deno.args;
const engine = await import(`file://${folder}/engine.mjs`);
const MOST = 60; // questions, should it never stop
const TAP = 3; // seconds to read and tap
const SHARED = 6; // answers: so many and fewer are the same for many pieces

function identified(ready, { reads, missing }, known) {
  const { features, variants, items, parts } = ready.pack;
  const looks = {};
  let session = engine.new_session(ready);
  let seconds = 0;
  let asked = 0;
  let view;
  for (;;) {
    const told = session.answers.map(
      ({ feature, how, states, changed }) => `${feature} ${how} ${states} ${changed}`,
    );
    const key = [...told, ...session.missing].join();
    view = known.get(key) ?? engine.assess(ready, session);
    if (told.length < SHARED) known.set(key, view);
    if (view.stop || !view.question || asked > MOST) break;
    const feature = features[view.question.feature];
    asked += 1;
    const part = parts[feature.part]?.id ?? "";
    if (missing.includes(part)) {
      session = { ...session, missing: [...session.missing, part] };
      seconds += TAP;
      continue;
    }
    const seen = reads[feature.id];
    const at = looks[feature.id] ?? 0;
    looks[feature.id] = at + 1;
    seconds += feature.seconds + TAP;
    const state = seen[at % seen.length];
    const drawn = feature.states.some(({ id }) => id === state);
    session = engine.answered(session, {
      feature: feature.id,
      how: drawn ? "sure" : "other",
      states: drawn ? [state] : [],
    });
  }
  const best = view.variants[0];
  return {
    name: best ? variants[best.variant].id : "",
    item: best ? items[variants[best.variant].item].number : "",
    chance: best ? best.chance : 0,
    unrecorded: view.unrecorded,
    how_sure: view.how_sure,
    asked,
    seconds,
    stop: view.stop,
    replaced: view.parts.map(({ part, swapped }) => [parts[part].id, swapped]),
  };
}

const outcomes = JSON.parse(Deno.readTextFileSync(`${folder}/jobs.json`)).map(
  ({ pack, pieces }) => {
    const ready = engine.prepare(JSON.parse(Deno.readTextFileSync(pack)));
    const known = new Map();
    return pieces.map((piece) => identified(ready, piece, known));
  },
);
Deno.writeTextFileSync(`${folder}/outcomes.json`, JSON.stringify(outcomes));
