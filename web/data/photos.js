/**
 * Photos: drawn anew at a sensible size, so that EXIF, the place and everything else that a camera
 * writes into its files stays out. The camera's own file is never stored.
 */
import { newId } from "./record-shapes.js";
import { IPHONES_OWN_FORM, NOT_ENOUGH_MEMORY, NOT_READABLE_PICTURE } from "./words.js";

const LONG = 1600;
const SMALL = 240;
const QUALITY = 0.82;

/** Why a photo cannot be taken up, in a sentence. */
export class NoPhoto extends Error {}

/** A file as a bitmap, which is to be closed. Throws NoPhoto. */
export async function pictureOf(file) {
  const ways = [
    () => createImageBitmap(file, { imageOrientation: "from-image" }),
    () => createImageBitmap(file), // an older Safari refuses to be told more, and turns it itself
    () => shownAs(file), // what it shows it may draw, even where it makes no bitmap of it
  ];
  for (const way of ways) {
    try {
      return await way();
    } catch {
      // the next way
    }
  }
  throw new NoPhoto((await isHeic(file)) ? IPHONES_OWN_FORM : NOT_READABLE_PICTURE);
}

async function shownAs(file) {
  const image = new Image();
  const url = URL.createObjectURL(file);
  try {
    image.src = url;
    await image.decode();
    return Object.assign(image, { close() {} });
  } finally {
    URL.revokeObjectURL(url);
  }
}

/** HEIF (ISO/IEC 23008-12): a box "ftyp" first, with a brand of coded pictures. */
async function isHeic(file) {
  const head = new TextDecoder("latin1").decode(await file.slice(4, 12).arrayBuffer());
  return /^ftyp(hei|hev|mif1|msf1)/.test(head);
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

/**
 * A photo of a file, its pictures data: URLs, as it is kept; null where one is no picture. What may
 * hold more than a picture is drawn anew, as a photo of the camera is (`redrawn`); the rest stays
 * as it is, byte for byte.
 */
export async function bared({ full, small, width, height, ...rest }) {
  try {
    const pictures = [blobOf(full), blobOf(small)];
    const whole = await Promise.all(pictures.map(hasOnlyAPicture));
    const size = [width, height].every((length) => Number.isSafeInteger(length) && length > 0);
    if (size && whole.every(Boolean))
      return { ...rest, full: pictures[0], small: pictures[1], width, height, redrawn: false };
    return { ...(await photoFrom(pictures[0])), id: rest.id, redrawn: true };
  } catch {
    return null;
  }
}

function blobOf(text) {
  const parts = /^data:image\/jpeg;base64,(.*)$/.exec(text);
  const letters = atob(parts[1]);
  const bytes = new Uint8Array(letters.length);
  for (let n = 0; n < letters.length; n += 1) bytes[n] = letters.charCodeAt(n);
  return new Blob([bytes], { type: "image/jpeg" });
}

/**
 * Is a file a JPEG with no block but those that say how to show it (JFIF, colour profile, Adobe),
 * and nothing behind its end? Markers as in ITU-T T.81, annex B.
 */
async function hasOnlyAPicture(blob) {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return false;
  let at = 2;
  while (bytes[at] === 0xff && bytes[at + 1] !== 0xd9) {
    const marker = bytes[at + 1];
    const plain = [0xe0, 0xe2, 0xee].includes(marker) || (marker < 0xe0 && marker >= 0xc0);
    if (!plain) return false;
    at += 2 + 256 * bytes[at + 2] + bytes[at + 3];
    if (marker !== 0xda) continue;
    while (at < bytes.length && !(bytes[at] === 0xff && isMarker(bytes[at + 1]))) at += 1;
  }
  return at + 2 === bytes.length;
}

/** Of coded data FF00 is a value, FFD0 to FFD7 begin it anew. */
function isMarker(byte) {
  return byte !== 0 && !(byte >= 0xd0 && byte <= 0xd7);
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
      (blob) => (blob ? resolve(blob) : reject(new NoPhoto(NOT_ENOUGH_MEMORY))),
      "image/jpeg",
      QUALITY,
    );
  });
}
