/**
 * The connection to the phone's storage. A browser may close it at any time (WebKit does when the
 * app was in the background, or its own helper process ended): then it is opened again when it is
 * next needed. What was stored once is never looked for in memory.
 */
import { STORAGE } from "./practice-storage.js";
import {
  ANOTHER_WINDOW_HOLDS_IT,
  NEWER_VERSION_USED_IT,
  NEWER_WINDOW,
  NO_STORAGE,
  STORAGE_CLOSED,
  STORAGE_NOT_OPENED,
} from "./first-words.js";

const VERSION = 4;
const JOURNAL = { keyPath: "seq", autoIncrement: true };
/** What the storage consists of. */
export const STORES = {
  kept: {},
  records: { keyPath: "id" },
  photos: { keyPath: "id" },
  journal: JOURNAL,
  heads: { keyPath: "record" },
  clashes: { keyPath: "record" },
  announced: { keyPath: "id" },
  aside: { keyPath: "key" },
};
const INDEXES = { journal: ["record", "group", "op", "held"] };
const WAITS = [0, 100, 500, 1500]; // ms before each attempt to open it again
const BLOCKED = "BlockedError"; // a name of our own: another window holds an older version
const HELD = {
  VersionError: NEWER_VERSION_USED_IT,
  [BLOCKED]: ANOTHER_WINDOW_HOLDS_IT,
};
const REFUSED = ["SecurityError", "InvalidStateError", "NotSupportedError", "TypeError"];

/** The storage was there, and cannot be reached now. Its message is a sentence for the person. */
export class StorageLost extends Error {}

let database = null;
let had = false; // was it open in this window?
let opening = null;
let barred = ""; // why it is not to be opened any more
let trouble = "";
/** @type {(database: IDBDatabase) => Promise<void>} */
let check = async () => {};

/** Opens the storage at the start. Never rejects: `connectionTrouble()` tells what is wrong. */
export async function openFirst() {
  try {
    take(await opened().catch(onceMore));
    trouble = "";
  } catch (error) {
    trouble = HELD[error.name] ?? (REFUSED.includes(error.name) ? NO_STORAGE : STORAGE_NOT_OPENED);
    if (error.name in HELD) bar(trouble);
  }
}

/** The browser's own helper may just have ended, and be back in a moment. */
async function onceMore(error) {
  if (error.name in HELD || REFUSED.includes(error.name)) throw error;
  await new Promise((resolve) => setTimeout(resolve, WAITS[2]));
  return opened();
}

function bar(why) {
  barred = trouble = why;
  had = true;
}

/** Did the browser refuse storage from the start, so that everything is in memory only? */
export function onlyMemory() {
  return !had;
}

/** A sentence when the storage cannot be reached, else "". */
export function connectionTrouble() {
  return trouble;
}

/** `act` looks at the storage whenever it was opened again, before anything else does. */
export function checkAgain(act) {
  check = act;
}

/** The connection, opened again if it was closed. Throws StorageLost. */
export async function connection() {
  if (barred) throw new StorageLost(barred);
  if (database) return database;
  opening ??= openedAgain().finally(() => {
    opening = null;
  });
  return opening;
}

/** This connection is of no use any more. */
export function drop(old) {
  old.close();
  if (database === old) database = null;
}

async function openedAgain() {
  for (const wait of WAITS) {
    await new Promise((resolve) => setTimeout(resolve, wait));
    try {
      const again = await opened();
      await check(again);
      take(again);
      trouble = "";
      return again;
    } catch (error) {
      if (error.name in HELD) {
        bar(HELD[error.name]);
        throw new StorageLost(barred, { cause: error });
      }
    }
  }
  trouble = STORAGE_CLOSED;
  throw new StorageLost(STORAGE_CLOSED);
}

function take(open) {
  database = open;
  had = true;
  open.onversionchange = ({ newVersion }) => {
    drop(open);
    if (newVersion === null) return; // it is only deleted
    bar(NEWER_WINDOW);
  };
  open.onclose = () => {
    drop(open);
    connection().catch(() => {}); // told at the next step
  };
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
    request.onblocked = () => reject(new DOMException("", BLOCKED));
    request.onerror = () => reject(request.error);
    request.onsuccess = () => resolve(request.result);
  });
}
