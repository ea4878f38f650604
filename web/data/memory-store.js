/**
 * The stores where the browser refuses storage: the same to use, and gone when the page is left.
 */
const stores = {};
let seq = 0;

function at(store) {
  stores[store] ??= new Map();
  return stores[store];
}

export const inMemory = {
  get: async (store, key) => structuredClone(at(store).get(key)),
  all: async (store) => structuredClone([...at(store).values()]),
  where: async (store, field, value) =>
    structuredClone([...at(store).values()].filter((stored) => stored[field] === value)),
  keys: async (store) => [...at(store).keys()],
  /** As the gate gives it: everything after that key at once. */
  async after(store, key) {
    const values = [...at(store)].filter(([name]) => name > key).map(([, value]) => value);
    return { values: structuredClone(values), last: key, more: false };
  },
  async put(store, value, key) {
    const kept = structuredClone(value);
    if (store === "journal") kept.seq ??= ++seq;
    at(store).set(key ?? kept.seq ?? kept.id ?? kept.key, kept);
    return kept.seq;
  },
  remove: async (store, key) => at(store).delete(key),
  end() {},
  async backwards(store, visit) {
    for (const value of [...at(store).values()].reverse()) if (visit(value) === false) return;
  },
};
