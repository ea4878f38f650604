/**
 * What the phone keeps: a thin layer over IndexedDB. Every write is on the disk before its promise
 * resolves. Where the browser refuses storage everything works in memory, and `problem()` says so.
 * A connection that the browser closed is opened again, and what was under way is done once more:
 * so everything that is done in a transaction begins from nothing each time. What stores there are,
 * and in which version, is said by STORES in storage-connection.js.
 */
import { ASIDE, asideOf, guarded, guards, loadGate } from "./gate.js";
import { inMemory } from "./memory-store.js";
import {
  STORES,
  StorageLost,
  checkAgain,
  connection,
  connectionTrouble,
  drop,
  onlyMemory,
  openFirst,
} from "./storage-connection.js";
import { NO_SPACE_LEFT, STEP_NOT_STORED, STORAGE_NOT_READ } from "./first-words.js";

const [FEW, MANY] = [20, 200]; // values that are read at once, at first and then
let failure = "";

/** Opens the storage. Never rejects: `problem()` tells what is wrong. */
export const openStore = openFirst;

/** A sentence when nothing can be stored, or the last step was not, else "". */
export function problem() {
  return connectionTrouble() || failure;
}

/** Does this browser store anything at all? */
export function storing() {
  return !onlyMemory();
}

/** `act` hears how many records are there whenever the storage was opened again. */
export function onOpenedAgain(act) {
  checkAgain(async (database) => {
    act(await result(database.transaction("records").objectStore("records").count()));
  });
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
 * through the gate is not among it, and is set aside afterwards. `act` may be called twice. Throws
 * StorageLost where the storage cannot be reached.
 */
export async function look(stores, act) {
  if (onlyMemory()) return act(inMemory);
  if (!guards(stores)) return seen(stores, (there) => act(there));
  await loadGate(stores);
  let bad = [];
  const given = await seen(stores, (there) => {
    bad = [];
    return act(guarded(there, (store, value) => bad.push([store, keyOf(store, value)])));
  });
  if (bad.length > 0) {
    const touched = [...new Set(bad.map(([store]) => store))];
    await together(touched, (there) => Promise.all(bad.map((place) => there.get(...place))));
  }
  return given;
}

async function seen(stores, act) {
  try {
    return await twice((database) => act(over(database.transaction(stores))));
  } catch (error) {
    if (error instanceof DOMException) throw new StorageLost(STORAGE_NOT_READ, { cause: error });
    throw error;
  }
}

/** Does it over a new connection where the one at hand turns out to be closed. */
async function twice(act) {
  const first = await connection();
  try {
    return await act(first);
  } catch (error) {
    if (!(error instanceof DOMException) || error.name === "QuotaExceededError") throw error;
    drop(first);
    return act(await connection());
  }
}

const keyOf = (store, value) => value[STORES[store].keyPath];

/**
 * Several reads and writes as one: all of it happens, or nothing. `act` waits for nothing but what
 * it is given, and may be called twice. Gives "disk" when it is safe there, "memory" when nothing
 * can be stored, "" when it failed (see `problem`). What `act` throws comes through, and nothing
 * has happened.
 */
export async function together(stores, act) {
  if (onlyMemory()) {
    await act(inMemory);
    return "memory";
  }
  try {
    if (guards(stores)) await loadGate(stores);
    await twice((database) => written(database, stores, act));
    failure = "";
    return "disk";
  } catch (error) {
    if (error instanceof StorageLost) failure = error.message;
    else if (error instanceof DOMException) failure = notStored(error);
    else throw error;
    return "";
  }
}

async function written(database, stores, act) {
  const scope = guards(stores) ? [...stores, ASIDE] : stores;
  const transaction = database.transaction(scope, "readwrite", { durability: "strict" });
  try {
    const finished = done(transaction);
    const acted = Promise.resolve(act(behindGate(transaction, stores)));
    await Promise.race([acted, finished]);
    await finished;
  } catch (error) {
    abort(transaction);
    throw error;
  }
}

function notStored({ name }) {
  return name === "QuotaExceededError" ? NO_SPACE_LEFT : STEP_NOT_STORED;
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
    transaction.abort();
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
    /** The keys after this one, `most` of them. */
    keysAfter: (store, key, most) =>
      result(at(store).getAllKeys(IDBKeyRange.lowerBound(key, true), most)),
    /** What comes after `key` in the store's order, `most` of them. */
    after: (store, key, most) => result(at(store).getAll(IDBKeyRange.lowerBound(key, true), most)),
    /** The keys of those that have another value than this one in a field, in the store's order. */
    async othersKeys(store, field, value) {
      const index = at(store).index(field);
      const ranges = [IDBKeyRange.upperBound(value, true), IDBKeyRange.lowerBound(value, true)];
      const keys = await Promise.all(ranges.map((range) => result(index.getAllKeys(range))));
      return keys.flat().sort((a, b) => (a < b ? -1 : 1));
    },
    empty: (store) => result(at(store).clear()),
    put: (store, value, key) => result(at(store).put(value, key)),
    remove: (store, key) => result(at(store).delete(key)),
    /** Nothing more is asked for: the browser need not wait to see. */
    end: () => transaction.commit(),
    backwards: (store, visit) => walk(at(store), visit),
  };
}

/**
 * From the last value to the first of a store whose keys are numbers, until `visit` says false. A
 * page at a time: a cursor would be a task of the browser for each value.
 */
async function walk(store, visit) {
  const cursor = await result(store.openKeyCursor(null, "prev"));
  let most = FEW;
  for (let end = Number(cursor?.key ?? 0); end > 0; end -= most, most = MANY) {
    const page = await result(store.getAll(IDBKeyRange.bound(end - most, end, true)));
    for (const value of page.reverse()) if (visit(value) === false) return;
  }
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
    transaction.onerror = ({ target }) => reject(/** @type {IDBRequest} */ (target).error);
    transaction.onabort = () => reject(transaction.error ?? new DOMException("", "AbortError"));
  });
}
