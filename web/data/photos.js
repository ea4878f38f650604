/**
 * Photos: drawn anew at a sensible size, so that the place and everything else a camera writes into
 * its files stays out. The camera's own file is never stored.
 */
import { newId } from "./record-shapes.js";
import { look } from "./store.js";

const LONG = 1600;
const SMALL = 240;
const QUALITY = 0.82;

/** Why a photo cannot be taken up, in a sentence. */
export class NoPhoto extends Error {}

/** A file as a bitmap, which is to be closed. Throws NoPhoto. */
export async function pictureOf(file) {
  try {
    return await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    throw new NoPhoto(
      "That file is not a picture this device can read. A photo as JPEG, PNG or WebP would do.",
    );
  }
}

/** A file from the camera as a photo to keep: {id, full, small, width, height}. */
export async function photoFrom(file) {
  const picture = await pictureOf(file);
  try {
    const [full, small] = [canvasOf(picture, LONG), canvasOf(picture, SMALL)];
    return {
      id: newId("p"),
      full: await jpeg(full),
      small: await jpeg(small),
      width: full.width,
      height: full.height,
    };
  } finally {
    picture.close();
  }
}

/** A canvas with nothing but the picture on white, its longer side at most `long` pixels. */
export function canvasOf(picture, long) {
  const scale = Math.min(1, long / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const pen = canvas.getContext("2d");
  pen.fillStyle = "#ffffff";
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.imageSmoothingQuality = "high";
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas;
}

function jpeg(canvas) {
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) =>
        blob
          ? resolve(blob)
          : reject(new NoPhoto("There is no memory left for that photo. Try a smaller one.")),
      "image/jpeg",
      QUALITY,
    );
  });
}

/** A photo that is kept, or undefined. */
export async function photo(id) {
  return look(["photos"], async (there) => await there.get("photos", id));
}

/** The ids of photos that no record shows. */
export async function loosePhotos(records) {
  const shown = new Set(records.flatMap((record) => record.photos ?? []));
  return look(["photos"], async (there) =>
    (await there.all("photos")).map(({ id }) => id).filter((id) => !shown.has(id)),
  );
}
