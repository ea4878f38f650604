/**
 * The picture of a record in a list: its own photo, else the portrait of what it is recorded as.
 */
import { packsAtHand } from "../data/known-ranges.js";
import { thumb } from "./long-list.js";
import { itemPlace, variantPlace, variantsOf } from "./piece-names.js";
import { portrait } from "./portrait.js";

/** The variants that a record can be of, by their places; [] where the reference has none. */
export function placesOf(pack, record) {
  if (!pack) return [];
  const named = (record.of ?? [{ variant: record.variant ?? "" }])
    .map(({ variant }) => variantPlace(pack, variant))
    .filter((place) => place >= 0);
  if (record.type === "note" || named.length > 0) return named.slice(0, 1);
  const item = itemPlace(pack, record.item ?? "");
  return item < 0 ? [] : variantsOf(pack, item);
}

/** A photo or a portrait, `size` pixels wide; null where there is neither. */
export function recordPicture(record, size = 80) {
  if (record.photos?.length > 0) return thumb(record.photos[0]);
  const pack = packsAtHand.get(record.pack);
  const places = placesOf(pack, record);
  if (places.length === 0) return null;
  return portrait(pack, places, { size, answers: record.answers ?? [] });
}
