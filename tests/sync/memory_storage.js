/**
 * In place of web/data/store.js: the stores of several phones in memory, behind the app's own gate.
 * What IndexedDB does and is relied on is done here too: a transaction happens as a whole or not at
 * all, values are copied, keys are in order, and an index leaves out what lacks its field.
 */
import { ASIDE, asideOf, guarded, loadGate } from "./gate.js";

const KEYS = {
  records: "id",
  photos: "id",
  journal: "seq",
  heads: "record",
  clashes: "record",
  announced: "id",
  aside: "key",
};
const phones = new Map();
let stores = null;

/** The phone that is in use from here on; a new one begins empty. */
export function use(name) {
  if (!phones.has(name)) phones.set(name, { kept: new Map(), last: 0 });
  stores = phones.get(name);
}

/** One phone's storage as it is now, as another's, which is in use from here on. */
export function copyOf(name, from) {
  phones.set(name, structuredClone(phones.get(from)));
  use(name);
}

const at = (store) => (stores[store] ??= new Map());
const ordered = (store) =>
  [...at(store)].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, value]) => value);
const copied = (value) => structuredClone(value);

const plain = {
  get: async (store, key) => copied(at(store).get(key)),
  all: async (store) => copied(ordered(store)),
  where: async (store, field, wanted) =>
    copied(ordered(store).filter((one) => one[field] === wanted)),
  keys: async (store) => ordered(store).map((one) => one[KEYS[store]]),
  keysAfter: async (store, key, most) =>
    ordered(store)
      .map((one) => one[KEYS[store]])
      .filter((one) => one > key)
      .slice(0, most),
  after: async (store, key, most) =>
    copied(
      ordered(store)
        .filter((one) => one[KEYS[store]] > key)
        .slice(0, most),
    ),
  othersKeys: async (store, field, wanted) =>
    ordered(store)
      .filter((one) => one[field] !== undefined && one[field] !== wanted)
      .map((one) => one[KEYS[store]]),
  async put(store, value, key) {
    const kept = copied(value);
    if (store === "journal") kept.seq ??= stores.last += 1;
    const place = key ?? kept[KEYS[store]];
    at(store).set(place, kept);
    return place;
  },
  remove: async (store, key) => at(store).delete(key),
};
const there = guarded(plain, (store, value, fault) => {
  plain.put(ASIDE, asideOf(store, value, fault));
  at(store).delete(value[KEYS[store]]);
});

export async function look(asked, act) {
  await loadGate(asked);
  return act(there);
}

export async function together(asked, act) {
  await loadGate(asked);
  const before = structuredClone(stores);
  try {
    await act(there);
  } catch (error) {
    for (const name of Object.keys(stores)) delete stores[name];
    Object.assign(stores, before);
    throw error;
  }
  return "disk";
}

export const read = (store, key) => look([store], (here) => here.get(store, key));
export const problem = () => "";
export const storing = () => true;
export const onOpenedAgain = () => {};
