/**
 * Photos dragged in from another window: onto a row of a table, or onto an open piece, note or
 * sighting.
 */
import { here } from "../data/back-button.js";
import { NoPhoto, photoFrom } from "../data/photos.js";
import { record } from "../data/records.js";
import { notice } from "../parts/status.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { redraw } from "../parts/navigation.js";
import {
  nothingWasChanged,
  ONE_PHOTO_ADDED,
  PHOTO_ADDED,
  photosAdded,
  photosAddedNow,
} from "./words.js";

const OPEN = new Set(["piece", "note", "sighting"]);
const WITH_PHOTOS = new Set(["piece", "note", "sighting"]);

/**
 * Takes photos that are dropped from now on. A file that is dropped elsewhere never leaves the
 * page.
 */
export function startDrop() {
  let lit = null;
  const light = (node) => {
    lit?.classList.remove("dropping");
    lit = node;
    lit?.classList.add("dropping");
  };
  document.addEventListener("dragover", (event) => {
    if (!carriesFiles(event)) return;
    event.preventDefault();
    const aim = target(event);
    event.dataTransfer.dropEffect = aim ? "copy" : "none";
    light(aim?.node ?? null);
  });
  document.addEventListener("dragleave", (event) => {
    if (!event.relatedTarget) light(null);
  });
  document.addEventListener("drop", (event) => {
    if (!carriesFiles(event)) return;
    event.preventDefault();
    light(null);
    const aim = target(event);
    if (aim) addPhotos(aim.id, [...event.dataTransfer.files]);
  });
}

function carriesFiles({ dataTransfer }) {
  return [...(dataTransfer?.types ?? [])].includes("Files");
}

/** What a photo dropped here would go to: {id, node to show it at}, or null. */
function target(event) {
  const row = event.target.closest?.("tr[data-id]");
  if (row)
    return WITH_PHOTOS.has(record(row.dataset.id)?.type) ? { id: row.dataset.id, node: row } : null;
  const { screen, id } = here();
  return OPEN.has(screen) && record(id)?.trashed === ""
    ? { id, node: document.getElementById("screen") }
    : null;
}

/** Adds the pictures among the files to a record as one change; says which are none. */
function addPhotos(id, files) {
  return run(async () => {
    const made = [];
    const wrong = [];
    for (const file of files) {
      try {
        made.push(await photoFrom(file));
      } catch (error) {
        if (!(error instanceof NoPhoto)) throw error;
        wrong.push(`${file.name}: ${error.message}`);
      }
    }
    const said = [counted(made.length), ...wrong].filter(Boolean).join(" ");
    if (made.length === 0) {
      notice(nothingWasChanged(said));
      return;
    }
    const ids = made.map((photo) => photo.id);
    const alter = (now) => now && { ...now, photos: [...(now.photos ?? []), ...ids] };
    const what = made.length === 1 ? PHOTO_ADDED : photosAdded(made.length);
    if (await saveChange(what, [{ id, alter }], { photos: made, said })) await redraw();
  });
}

function counted(count) {
  if (count === 0) return "";
  return count === 1 ? ONE_PHOTO_ADDED : photosAddedNow(count);
}
