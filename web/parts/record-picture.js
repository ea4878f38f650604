/**
 * The picture of a record: its own photo, else the portrait of what it is recorded as.
 */
import { photo } from "../data/kept-photos.js";
import { packsAtHand } from "../data/known-ranges.js";
import { el } from "./element.js";
import { thumb } from "./thumb.js";
import { itemPlace, title, variantPlace, variantsOf, variantText } from "./piece-names.js";
import { portrait } from "./portrait.js";

const LARGE = 480; // it takes the width that there is

/**
 * The variants that a record can be of, by their places: the likeliest that is named, else all of
 * its item; [] where the reference has none.
 */
export function placesOf(pack, record) {
  if (!pack) return [];
  const named = (record.of ?? [{ variant: record.variant ?? "" }])
    .map(({ variant }) => variantPlace(pack, variant))
    .filter((place) => place >= 0);
  if (named.length > 0) return named.slice(0, 1);
  const item = itemPlace(pack, record.item ?? "");
  return item < 0 ? [] : variantsOf(pack, item);
}

/** The portrait of a record, `size` pixels wide; null where there is none. */
export function recordPortrait(record, size, label = "") {
  const pack = packsAtHand.get(record.pack);
  const places = placesOf(pack, record);
  if (places.length === 0) return null;
  return portrait(pack, places, { size, answers: record.answers ?? [], label });
}

/** A photo or a portrait for a list; null where there is neither. */
export function recordPicture(record, size = 80) {
  return record.photos?.length > 0 ? thumb(record.photos[0]) : recordPortrait(record, size);
}

/** A photo or a portrait as large as there is room, for the record's own screen; null for none. */
export function recordFigure(record) {
  const name = [title(packsAtHand, record), variantText(packsAtHand, record)];
  const label = name.filter(Boolean).join(", ");
  const [first] = record.photos ?? [];
  const drawn = recordPortrait(record, LARGE, label);
  if (!first) return drawn && el("figure", { class: "own-picture" }, drawn);
  const image = el("img", { alt: label });
  photo(first).then((stored) => {
    if (!stored) return drawn && image.replaceWith(drawn);
    const url = URL.createObjectURL(stored.full);
    image.addEventListener("load", () => URL.revokeObjectURL(url), { once: true });
    image.src = url;
    return null;
  });
  return el("figure", { class: "own-picture" }, image);
}
