/** The photos that are kept, by their ids. */
import { look } from "./store.js";

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
