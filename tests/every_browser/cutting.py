"""Pages in which the storage's connection can be cut, as WebKit does it, and the parts of the app
that read and write.
"""

from identify.phone import WEB

WATCH = """
window.connections = [];
const open = IDBFactory.prototype.open;
IDBFactory.prototype.open = function (...given) {
  if (window.refusing) throw new DOMException("refused by the test", "UnknownError");
  const request = open.apply(this, given);
  request.addEventListener("success", () => window.connections.push(request.result));
  return request;
};
function close(database, event) {
  try { database.close(); } catch { /* it is closed */ }
  if (event) database.dispatchEvent(new Event("close"));
}
window.cut = {
  // the browser says so
  event: () => window.connections.forEach((one) => close(one, true)),
  // the browser says nothing
  silent: () => window.connections.forEach((one) => close(one, false)),
  // while the next transaction is under way, after its first request
  middle() {
    const names = ["get", "getAll", "getAllKeys", "put", "delete", "clear", "openCursor"];
    const former = new Map();
    for (const sort of [IDBObjectStore.prototype, IDBIndex.prototype]) {
      for (const name of names.filter((one) => Object.hasOwn(sort, one))) {
        const old = sort[name];
        former.set([sort, name], old);
        sort[name] = function (...given) {
          const request = old.apply(this, given);
          for (const [[kind, key], was] of former) kind[key] = was;
          const { transaction } = request;
          transaction.abort();
          close(transaction.db, true);
          window.wasCut = true;
          return request;
        };
      }
    }
  },
};
"""

ASKED = """
import * as aside from "./data/aside.js";
import * as backups from "./data/backup-file.js";
import * as journal from "./data/journal.js";
import * as last from "./data/last-backup.js";
import * as photos from "./data/kept-photos.js";
import * as piece from "./data/piece-at-hand.js";
import * as records from "./data/records.js";
import * as settings from "./data/settings.js";
import * as store from "./data/store.js";
import { seal } from "./sync/sealing.js";
import * as standing from "./sync/sync-state.js";
import * as sending from "./sync/to-send.js";
Object.assign(window, { aside, backups, journal, last, photos, piece, records, settings, store });
Object.assign(window, { seal, standing, sending });
await store.openStore();
await records.loadRecords();
window.ready = true;
"""

# takes away everything that is stored, as a browser does that needs the room
EMPTY = """new Promise((resolve, reject) => {
  cut.silent();
  const request = indexedDB.deleteDatabase("identify");
  request.onsuccess = () => resolve(1);
  request.onerror = () => reject(request.error);
})"""


def watched_site(site: dict[str, bytes]) -> dict[str, bytes]:
    """The app, in whose window `cut` cuts the connection."""
    index = site["index.html"].replace(b"<script ", b"<script src=watch.js></script><script ", 1)
    assert b"watch.js" in index
    return site | {"index.html": index, "watch.js": WATCH.encode()}


def parts_site(site: dict[str, bytes]) -> dict[str, bytes]:
    """A page with nothing but the parts of the app that read and write."""
    files = {str(path.relative_to(WEB)): path.read_bytes() for path in WEB.rglob("*.js")}
    made = {name: site[name] for name in ("engine.js", "further.js", "merging.js")}
    page = (
        b"<!doctype html><script src=watch.js></script><script type=module src=asked.js></script>"
    )
    own = {"index.html": page, "watch.js": WATCH.encode(), "asked.js": ASKED.encode()}
    return files | made | own
