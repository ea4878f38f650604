/** A photo that stands for a drawing: small, drawn anew, with nothing else in it. */
import { NoPhoto, canvasOf, pictureOf } from "../data/photos.js";
import { PHOTO_NOT_SMALL } from "./words.js";

export const PHOTO = "data:image/jpeg;base64,";
const LONGEST = 400; // pixels of the longer side
const MOST = 40 * 1024; // bytes
const QUALITIES = [0.8, 0.7, 0.6, 0.5, 0.4, 0.3];

/** A file from the camera as a data: URL. Throws NoPhoto. */
export async function smallPhoto(file) {
  const picture = await pictureOf(file);
  const canvas = canvasOf(picture, LONGEST);
  picture.close();
  for (const quality of QUALITIES) {
    const url = canvas.toDataURL("image/jpeg", quality);
    if ((url.length - PHOTO.length) * 0.75 <= MOST) return url;
  }
  throw new NoPhoto(PHOTO_NOT_SMALL);
}
