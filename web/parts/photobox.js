import { NoPhoto, photoFrom } from "../data/photos.js";
import { photo } from "../data/kept-photos.js";
import { record } from "../data/records.js";
import { fileButton } from "./file-button.js";
import { button, el, heading } from "./element.js";
import { thumb } from "./thumb.js";
import { sheet } from "./sheet.js";
import { notice } from "./status.js";
import { run } from "../data/queue.js";
import { saveChange } from "./saving.js";
import { redraw } from "./navigation.js";
import {
  CHOOSE_A_PICTURE,
  nothingElseChanged,
  PHOTO,
  PHOTO_ADDED,
  PHOTO_IN_THE_BIN,
  PHOTO_NOT_HERE,
  PHOTO_REMOVED,
  photoNumber,
  PHOTOS,
  REMOVE,
  TAKE_A_PHOTO,
} from "./words.js";

/** The photos of a record, with the camera to take more. */
export function photoBox(id) {
  const { photos } = record(id);
  return el(
    "section",
    { class: "photos" },
    heading(2, PHOTOS),
    el(
      "div",
      { class: "row" },
      photos.map((photoId, place) =>
        button(thumb(photoId, photoNumber(place + 1)), () => openPhoto(id, photoId), {
          class: "picture",
        }),
      ),
    ),
    el(
      "div",
      { class: "row" },
      fileButton(TAKE_A_PHOTO, (file) => addPhoto(id, file), {
        accept: "image/*",
        capture: "environment",
      }),
      fileButton(CHOOSE_A_PICTURE, (file) => addPhoto(id, file), { accept: "image/*" }),
    ),
  );
}

function addPhoto(id, file) {
  return run(async () => {
    try {
      const made = await photoFrom(file);
      const add = (now) => ({ ...now, photos: [...(now.photos ?? []), made.id] });
      const kept = await saveChange(PHOTO_ADDED, [{ id, alter: add }], { photos: [made] });
      if (kept) await redraw();
    } catch (error) {
      if (!(error instanceof NoPhoto)) throw error;
      notice(nothingElseChanged(error.message));
    }
  });
}

function openPhoto(id, photoId) {
  return showPhoto(photoId, (shut) =>
    button(
      REMOVE,
      () => {
        shut();
        run(async () => {
          const without = (now) => ({
            ...now,
            photos: now.photos.filter((other) => other !== photoId),
          });
          await saveChange(PHOTO_REMOVED, [{ id, alter: without }], {
            said: PHOTO_IN_THE_BIN,
          });
          await redraw();
        });
      },
      { class: "plain wide" },
    ),
  );
}

/** Opens a photo in full; `more` gives what stands below it, and gets what shuts the sheet. */
export async function showPhoto(
  photoId,
  more = /** @type {(shut: () => void) => any} */ (() => null),
) {
  const stored = await photo(photoId);
  const url = stored ? URL.createObjectURL(stored.full) : "";
  const shut = sheet(
    PHOTO,
    stored
      ? el("img", { class: "full", src: url, alt: "", width: stored.width, height: stored.height })
      : el("p", {}, PHOTO_NOT_HERE),
    more(() => shut()),
  );
  document.querySelector("dialog.sheet")?.addEventListener("close", () => URL.revokeObjectURL(url));
}
