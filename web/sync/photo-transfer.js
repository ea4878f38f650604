/**
 * Photos between this phone and the server: told of by operations, sent and fetched by the SHA-256
 * of their bytes. A photo stays here whatever was sent; it counts as held when the server has
 * checked it.
 */
import { putAside } from "../data/aside.js";
import { Refused, ask, post, send } from "../data/server.js";
import { newId } from "../data/record-shapes.js";
import { look, problem, together } from "../data/store.js";
import { PHOTO_NOT_TAKEN } from "./words.js";

const CHUNK = 256 * 1024;
const ASKED = 100; // photos that the server is asked for at once
const TOLD = 25; // photos that are written down at once
const SIZES = ["full", "small"];
const NOT_TAKEN = [400, 413, 415, 422];
const NO_ROOM = 507; // for any photo; everything else is still taken

/** Writes down photos that no operation tells of yet. */
export async function tellOfPhotos(shown) {
  const [ids, rows] = await look(["photos", "announced"], (there) =>
    Promise.all([there.keys("photos"), there.all("announced")]),
  );
  const announced = new Map(rows.map((row) => [row.id, row]));
  let entries = [];
  const writeDown = async () => {
    if (entries.length > 0)
      await together(["journal", "photos"], async (there) => {
        const here = new Set(await there.keys("photos")); // one may be deleted for good by now
        const told = entries.filter(({ record }) => here.has(record));
        await Promise.all(told.map((entry) => there.put("journal", entry)));
      });
    entries = [];
  };
  for (const id of ids) {
    const row = announced.get(id);
    if (row?.gone && !shown.has(id)) await forget(id);
    else if (!row || row.gone) entries.push(...(await telling(id, Boolean(row))));
    if (entries.length === TOLD) await writeDown();
  }
  await writeDown();
}

/** A photo that was deleted for good on another device, and that nothing here shows. */
function forget(id) {
  return together(["photos"], (there) => there.remove("photos", id));
}

/** The entry that tells of a photo, or none where it is not here any more. */
async function telling(id, again) {
  const photo = await stored(id);
  if (!photo) return [];
  const after = { width: photo.width, height: photo.height, ...(again && { gone: false }) };
  for (const size of SIZES) {
    after[size] = await sha(photo[size]);
    after[`${size}_size`] = photo[size].size;
  }
  const marks = {
    time: new Date().toISOString(),
    record: id,
    type: "photo",
    group: newId("g"),
    what: "Photo",
    undoes: "",
    side: true,
    send: true,
  };
  return [{ ...marks, before: null, after }];
}

async function stored(id) {
  return look(["photos"], async (there) => await there.get("photos", id));
}

/** The SHA-256 of a blob, in hexadecimal figures. */
async function sha(blob) {
  const digest = await crypto.subtle.digest("SHA-256", await blob.arrayBuffer());
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * The rows of photos that are here and that this server has not confirmed; with `all`, of all here.
 */
async function unconfirmed(mark, all = false) {
  return look(["announced", "photos"], async (there) => {
    const here = new Set(await there.keys("photos"));
    return (await there.all("announced")).filter(
      (row) => here.has(row.id) && !row.gone && (all || row.held !== mark),
    );
  });
}

/** The rows of photos that are known of but not here. */
async function wanted() {
  return look(["announced", "photos"], async (there) => {
    const here = new Set(await there.keys("photos"));
    return (await there.all("announced")).filter((row) => !row.gone && !here.has(row.id));
  });
}

/** How many photos are to be sent, and how many to be fetched. */
export async function photosWaiting(mark) {
  const [sending, fetching] = await Promise.all([unconfirmed(mark), wanted()]);
  return { sending: sending.length, fetching: fetching.length };
}

/**
 * Sends what the server has not got. `checked`: it was asked for every photo lately, so that only
 * those
 * it has not confirmed are asked for. `told(done, total)` is called as it goes on. Gives what the
 * server does not take: [{id, why}].
 */
export async function sendPhotos(mark, checked, progress) {
  const rows = await unconfirmed(mark, !checked);
  const refused = [];
  let done = 0;
  for (let at = 0; at < rows.length; at += ASKED) {
    const some = rows.slice(at, at + ASKED);
    const shas = [...new Set(some.flatMap((row) => SIZES.map((size) => row[size])))];
    const { missing } = await post("photos/missing", { shas });
    const have = new Map(missing.map((photo) => [photo.sha, photo.have]));
    const held = [];
    try {
      for (const row of some) {
        progress(done, rows.length);
        try {
          for (const size of SIZES) {
            if (have.has(row[size])) await sendOne(row, size, have.get(row[size]));
            have.delete(row[size]);
          }
        } catch (error) {
          const full = error.status === NO_ROOM;
          if (!(error instanceof Refused) || !(full || NOT_TAKEN.includes(error.status)))
            throw error;
          refused.push({ id: row.id, why: error.message });
          if (full) return refused;
          await putAside("photo", [{ id: row.id, value: row, why: error.message }]);
        }
        if (row.held !== mark) held.push(row.id); // also what is not taken: till the next start
        done += 1;
      }
    } finally {
      await confirm(held, mark);
    }
  }
  progress(done, rows.length);
  return refused;
}

/** Sends one picture from where the server stands; what was sent before a cut is not sent again. */
async function sendOne(row, size, have) {
  const blob = (await stored(row.id))?.[size];
  if (!blob) return;
  const headers = { "Content-Type": "image/jpeg" };
  let from = have;
  for (let stuck = 0; stuck < 3;) {
    const body = blob.slice(from, from + CHUNK, "image/jpeg");
    const query = `from=${from}&size=${blob.size}`;
    const got = await ask(`photos/${row[size]}?${query}`, { method: "PUT", headers, body }).catch(
      (error) => {
        if (error.status === 409) return error.body; // the server stands elsewhere
        throw error;
      },
    );
    if (got.whole) return;
    stuck = got.have > from ? 0 : stuck + 1;
    from = got.have;
  }
  throw new Refused(PHOTO_NOT_TAKEN, 0);
}

/** These are held by this server, and need not be sent. */
async function confirm(ids, mark) {
  if (ids.length > 0) await together(["announced"], (there) => hold(there, ids, mark));
}

async function hold(there, ids, mark) {
  const rows = await Promise.all(ids.map((id) => there.get("announced", id)));
  const here = rows.filter(Boolean);
  await Promise.all(here.map((row) => there.put("announced", { ...row, held: mark })));
}

/**
 * Fetches what is not here, and gives the ids that came. What the server has not got yet is left
 * for the next time.
 */
export async function fetchPhotos(mark, progress) {
  const rows = await wanted();
  const came = [];
  for (const [place, row] of rows.entries()) {
    progress(place, rows.length);
    const photo = { id: row.id, width: row.width, height: row.height };
    for (const size of SIZES) photo[size] = await fetched(row[size]);
    if (!photo.full || !photo.small) continue;
    const kept = await together(["photos", "announced"], async (there) => {
      await there.put("photos", photo);
      await hold(there, [row.id], mark);
    });
    if (kept === "") throw new Refused(problem(), 0);
    came.push(row.id);
  }
  progress(rows.length, rows.length);
  return came;
}

/** The picture with this SHA-256; null where the server has not got it, or it came damaged. */
async function fetched(wantedSha) {
  try {
    const blob = await (await send(`photos/${wantedSha}`)).blob();
    if ((await sha(blob)) !== wantedSha) return null;
    return new Blob([blob], { type: "image/jpeg" });
  } catch (error) {
    if (error instanceof Refused && error.status === 404) return null;
    throw error;
  }
}
