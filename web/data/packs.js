/** The engine, the list of reference packs, and the packs themselves. */
const at = (path) => new URL(`../${path}`, import.meta.url);
const loaded = new Map();

/** Why the app cannot go on, in a sentence for the person. */
export class CannotGoOn extends Error {}

/** Loads the engine: the module that `identify/core` is compiled to. */
export async function loadEngine() {
  try {
    return await import(at("engine.js").href);
  } catch {
    throw new CannotGoOn(
      "The part that does the reasoning could not be loaded. With a signal, try again.",
    );
  }
}

/** The ranges that can be chosen: [{id, name, version, url, about, first, last, gauge_mm, scale, invented}]. */
export async function packList() {
  const list = await json("packs/index.json", "the list of ranges");
  if (!Array.isArray(list) || list.length === 0) {
    throw new CannotGoOn(
      "There is no range to identify from. The person who runs this site must add a pack.",
    );
  }
  return list;
}

/** One pack: {pack: as compiled, ready: as the engine takes it}. */
export async function loadPack(engine, entry) {
  const key = `${entry.id} ${entry.version}`;
  if (!loaded.has(key)) {
    const pack = await json(`packs/${entry.id}.json`, `the reference for ${entry.name}`);
    loaded.set(key, prepared(engine, pack, entry));
  }
  return loaded.get(key);
}

function prepared(engine, pack, entry) {
  const unreadable = `The reference for ${entry.name} cannot be read by this version of the app. With a signal, try again: a newer version may be ready.`;
  if (pack?.format !== 1) throw new CannotGoOn(unreadable);
  try {
    return { pack, ready: engine.prepare(pack) };
  } catch {
    throw new CannotGoOn(unreadable);
  }
}

async function json(path, what) {
  let response;
  try {
    response = await fetch(at(path));
  } catch {
    throw new CannotGoOn(
      `Could not load ${what}: there is no signal, and it is not stored on this phone yet. Try again with a signal.`,
    );
  }
  if (!response.ok)
    throw new CannotGoOn(
      `Could not load ${what}: the site answered ${response.status}. Try again later.`,
    );
  try {
    return await response.json();
  } catch {
    throw new CannotGoOn(`Could not read ${what}: it is damaged. With a signal, try again.`);
  }
}
