// Many sessions by the compiled engine, as the phone asks them: `deno run -A sessions.js FOLDER`.
// FOLDER has engine.mjs and jobs.json: [{pack, pieces: [{feature id: [what is read at the first
// look, at the second, ...]}]}]; outcomes.json is put beside them, a list for each job.

const [folder] = Deno.args;
const engine = await import(`file://${folder}/engine.mjs`);
const MOST = 60; // questions, should it never stop

function identified(ready, reads, known) {
  const { features, variants, items } = ready.pack;
  const looks = {};
  let session = engine.new_session(ready);
  let view;
  for (;;) {
    const told = session.answers.map(({ feature, how, states }) => `${feature} ${how} ${states}`);
    const key = told.join();
    view = known.get(key) ?? engine.assess(ready, session);
    if (told.length < 5) known.set(key, view);
    if (view.stop || !view.question || session.answers.length > MOST) break;
    const feature = features[view.question.feature];
    const seen = reads[feature.id];
    const at = looks[feature.id] ?? 0;
    looks[feature.id] = at + 1;
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
    asked: Object.values(looks).reduce((sum, count) => sum + count, 0),
    stop: view.stop,
  };
}

const outcomes = JSON.parse(Deno.readTextFileSync(`${folder}/jobs.json`)).map(
  ({ pack, pieces }) => {
    const ready = engine.prepare(JSON.parse(Deno.readTextFileSync(pack)));
    const known = new Map();
    return pieces.map((reads) => identified(ready, reads, known));
  },
);
Deno.writeTextFileSync(`${folder}/outcomes.json`, JSON.stringify(outcomes));
