import { photo } from "../data/kept-photos.js";
import { el } from "./element.js";

/** The small picture of a photo; it comes when it is read. */
export function thumb(id, alt = "") {
  const image = el("img", { class: "thumb", alt, width: 64, height: 64 });
  photo(id).then((picture) => {
    if (!picture) return;
    const url = URL.createObjectURL(picture.small);
    image.addEventListener("load", () => URL.revokeObjectURL(url), { once: true });
    image.src = url;
  });
  return image;
}
