/**
 * The connection to the phone's storage. A browser may close it at any time (WebKit does when the
 * app was in the background, or its own helper process ended): then it is opened again when it is
 * next needed. What was stored once is never looked for in memory.
 */
import { STORAGE } from "./practice-storage.js";

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
const NEWER = "Another window opened a newer version. Close this one and go on there.";
const BLOCKED = "BlockedError"; // a name of our own: another window holds an older version
const HELD = {
  VersionError:
    "A newer version of this app has used this storage. With a signal, close the app and open it " +
    "again, so that the newer version comes.",
  [BLOCKED]:
    "Another window of this app holds the storage. Close the other window, then open this " +
    "one again.",
};
const REFUSED = ["SecurityError", "InvalidStateError", "NotSupportedError", "TypeError"];
const PRIVATE =
  "This browser does not let the app store anything (a private window, perhaps). It works, but " +
  "forgets when you leave.";
const UNOPENED =
  "The browser cannot open its storage just now. The app works, but shows nothing of what was " +
  "saved, and forgets when you leave. Close it, and open it again.";
const CLOSED =
  "The browser has closed its storage and will not open it again. What was saved before is still " +
  "there. Close the app, open it again, and check that the last step is there.";

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
    trouble = HELD[error.name] ?? (REFUSED.includes(error.name) ? PRIVATE : UNOPENED);
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
  trouble = CLOSED;
  throw new StorageLost(CLOSED);
}

function take(open) {
  database = open;
  had = true;
  open.onversionchange = ({ newVersion }) => {
    drop(open);
    if (newVersion === null) return; // it is only deleted
    bar(NEWER);
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
