/**
 * What the phone keeps: a thin layer over IndexedDB. Every write is on the disk before its promise
 * resolves. Where the browser refuses storage everything works in memory, and `problem()` says so.
 */
const NAME = "identify";
const VERSION = 1;
const STORES = ["kept"];
const memory = new Map();
let database = null;
let failure = "";

/** Opens the storage. Never rejects: `problem()` tells what is wrong. */
export async function openStore() {
  try {
    database = await opened();
    failure = "";
    database.onversionchange = () => {
      database.close();
      database = null;
      failure = "Another window opened a newer version. Close this one and go on there.";
    };
    database.onclose = () => {
      database = null;
      failure = "The browser closed its storage. What you do from now on is lost when you leave.";
    };
  } catch (error) {
    failure = blockedText(error);
  }
}

function opened() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, VERSION);
    request.onupgradeneeded = () => {
      const there = request.result.objectStoreNames;
      for (const store of STORES)
        if (!there.contains(store)) request.result.createObjectStore(store);
    };
    request.onblocked = () => reject(new Error("blocked"));
    request.onerror = () => reject(request.error);
    request.onsuccess = () => resolve(request.result);
  });
}

function blockedText(error) {
  if (error.message === "blocked") {
    return "Another window of this app holds the storage. Close the other window, then open this one again.";
  }
  return "This browser does not let the app store anything (a private window, perhaps). It works, but forgets when you leave.";
}

/** A sentence when nothing can be stored, else "". */
export function problem() {
  return failure;
}

/** The value kept under `key`, or undefined. */
export async function read(store, key) {
  if (!database) return structuredClone(memory.get(`${store} ${key}`));
  return result(database.transaction(store).objectStore(store).get(key));
}

/** Keeps `value` under `key`. Resolves to true when it is safe on the disk, else to false (see `problem`). */
export function write(store, key, value) {
  if (!database) memory.set(`${store} ${key}`, structuredClone(value));
  return change(store, (there) => there.put(value, key));
}

/** Takes away what is kept under `key`. */
export function remove(store, key) {
  memory.delete(`${store} ${key}`);
  return change(store, (there) => there.delete(key));
}

async function change(store, act) {
  if (!database) return false;
  try {
    const transaction = database.transaction(store, "readwrite", { durability: "strict" });
    act(transaction.objectStore(store));
    await done(transaction);
    return true;
  } catch (error) {
    failure =
      error?.name === "QuotaExceededError"
        ? "The phone has no room left: the last step is not stored. Free some room, then go on."
        : "The last step could not be stored. It is lost when you leave this page.";
    return false;
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
    transaction.onerror = () => reject(transaction.error);
    transaction.onabort = () => reject(transaction.error);
  });
}
