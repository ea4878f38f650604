/**
 * What the phone keeps: a thin layer over IndexedDB. Every write is on the disk before its promise
 * resolves. Where the browser refuses storage everything works in memory, and `problem()` says so.
 */
import { ASIDE, asideOf, guarded, guards, loadGate } from "./gate.js";
import { inMemory } from "./memory-store.js";
import { STORAGE } from "./practice-storage.js";

const VERSION = 4;
const JOURNAL = { keyPath: "seq", autoIncrement: true };
const STORES = {
  kept: {},
  records: { keyPath: "id" },
  photos: { keyPath: "id" },
  journal: JOURNAL,
  heads: { keyPath: "record" },
  clashes: { keyPath: "record" },
  announced: { keyPath: "id" },
  [ASIDE]: { keyPath: "key" },
};
const INDEXES = { journal: ["record", "group", "op", "held"] };
let database = null;
let failure = "";
let lost = false;

/** Opens the storage. Never rejects: `problem()` tells what is wrong. */
export async function openStore() {
  try {
    database = await opened();
    failure = "";
    database.onversionchange = () => {
      database.close();
      lose();
      failure = "Another window opened a newer version. Close this one and go on there.";
    };
    database.onclose = () => {
      lose();
      failure = "The browser closed its storage. What you do from now on is lost when you leave.";
    };
  } catch (error) {
    failure = blockedText(error);
  }
}

function lose() {
  database = null;
  lost = true;
}

function opened() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(STORAGE, VERSION);
    request.onupgradeneeded = () => {
      for (const [name, kind] of Object.entries(STORES)) {
        const store = request.result.objectStoreNames.contains(name)
          ? request.transaction.objectStore(name)
          : request.result.createObjectStore(name, kind);
        for (const field of INDEXES[name] ?? []) {
          if (!store.indexNames.contains(field)) store.createIndex(field, field);
        }
      }
    };
    request.onblocked = () => reject(new Error("blocked"));
    request.onerror = () => reject(request.error);
    request.onsuccess = () => resolve(request.result);
  });
}

function blockedText(error) {
  if (error.message === "blocked") {
    return (
      "Another window of this app holds the storage. Close the other window, then open this " +
      "one again."
    );
  }
  return (
    "This browser does not let the app store anything (a private window, perhaps). It " +
    "works, but forgets when you leave."
  );
}

/** A sentence when nothing can be stored, else "". */
export function problem() {
  return failure;
}

/** The value kept under `key`, or undefined. */
export async function read(store, key) {
  return look([store], async (there) => await there.get(store, key));
}

/**
 * Keeps `value` under `key`. Resolves to true when it is safe on the disk, else to false (see
 * `problem`).
 */
export async function write(store, key, value) {
  return (await together([store], (there) => there.put(store, value, key))) === "disk";
}

/** Takes away what is kept under `key`. */
export async function remove(store, key) {
  return (await together([store], (there) => there.remove(store, key))) === "disk";
}

/**
 * Reads in one go: what `act` sees belongs together. Gives what `act` gives. What does not fit
 * through the gate is not among it, and is set aside afterwards.
 */
export async function look(stores, act) {
  if (!database) return act(inMemory);
  if (!guards(stores)) return act(over(database.transaction(stores)));
  await loadGate(stores);
  const bad = [];
  const note = (store, value) => bad.push([store, keyOf(store, value)]);
  const given = await act(guarded(over(database.transaction(stores)), note));
  if (bad.length > 0) {
    const touched = [...new Set(bad.map(([store]) => store))];
    await together(touched, (there) => Promise.all(bad.map((place) => there.get(...place))));
  }
  return given;
}

const keyOf = (store, value) => value[STORES[store].keyPath];

/**
 * Several reads and writes as one: all of it happens, or nothing. `act` waits for nothing but what
 * it is given. Gives "disk" when it is safe there, "memory" when nothing can be stored, "" when it
 * failed (see `problem`). What `act` throws comes through, and nothing has happened.
 */
export async function together(stores, act) {
  if (lost) return "";
  if (!database) {
    await act(inMemory);
    return "memory";
  }
  let transaction;
  try {
    const scope = guards(stores) ? [...stores, ASIDE] : stores;
    if (guards(stores)) await loadGate(stores);
    transaction = database.transaction(scope, "readwrite", { durability: "strict" });
    const finished = done(transaction);
    const acted = Promise.resolve(act(behindGate(transaction, stores)));
    await Promise.race([acted, finished]);
    await finished;
    failure = "";
    return "disk";
  } catch (error) {
    abort(transaction);
    if (!(error instanceof DOMException)) throw error;
    failure =
      error.name === "QuotaExceededError"
        ? "There is no room left: the last step is not stored. Free some room, then go on."
        : "The last step could not be stored. It is lost when you leave this page.";
    return "";
  }
}

/** A transaction's stores; what does not fit through the gate goes where it is set aside. */
function behindGate(transaction, stores) {
  const there = over(transaction);
  if (!guards(stores)) return there;
  return guarded(there, (store, value, fault) => {
    there.put(ASIDE, asideOf(store, value, fault));
    there.remove(store, keyOf(store, value));
  });
}

function abort(transaction) {
  try {
    transaction?.abort();
  } catch {
    // It has ended by itself.
  }
}

/** A transaction's stores, with a promise for each request. */
function over(transaction) {
  const at = (store) => transaction.objectStore(store);
  return {
    get: (store, key) => result(at(store).get(key)),
    all: (store) => result(at(store).getAll()),
    where: (store, field, value) => result(at(store).index(field).getAll(value)),
    keys: (store) => result(at(store).getAllKeys()),
    /** What comes after `key` in the store's order, `most` of them. */
    after: (store, key, most) => result(at(store).getAll(IDBKeyRange.lowerBound(key, true), most)),
    /** The keys of those that have another value than this one in a field, in the store's order. */
    async othersKeys(store, field, value) {
      const index = at(store).index(field);
      const ranges = [IDBKeyRange.upperBound(value, true), IDBKeyRange.lowerBound(value, true)];
      const found = await Promise.all(ranges.map((range) => result(index.getAllKeys(range))));
      return found.flat().sort((a, b) => (a < b ? -1 : 1));
    },
    empty: (store) => result(at(store).clear()),
    put: (store, value, key) => result(at(store).put(value, key)),
    remove: (store, key) => result(at(store).delete(key)),
    /** Nothing more is asked for: the browser need not wait to see. */
    end: () => transaction.commit(),
    backwards: (store, visit) => walk(at(store).openCursor(null, "prev"), visit),
  };
}

/** From the last value to the first, until `visit` says false. */
function walk(request, visit) {
  return new Promise((resolve, reject) => {
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const cursor = request.result;
      if (cursor && visit(cursor.value) !== false) cursor.continue();
      else resolve();
    };
  });
}

function result(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function done(transaction) {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onerror = () => reject(transaction.error ?? new DOMException("", "AbortError"));
    transaction.onabort = () => reject(transaction.error ?? new DOMException("", "AbortError"));
  });
}
