/** The photos that are kept, by their ids. */
import { look } from "./store.js";

/** A photo that is kept, or undefined. */
export async function photo(id) {
  return look(["photos"], async (there) => await there.get("photos", id));
}

/** The ids of photos that no record shows. */
export async function loosePhotos(records) {
  const shown = new Set(records.flatMap((record) => record.photos ?? []));
  return look(["photos"], async (there) => {
    const loose = (await there.keys("photos")).filter((id) => !shown.has(id));
    const stored = await Promise.all(loose.map((id) => there.get("photos", id)));
    return loose.filter((_, place) => stored[place]); // the gate sets the others aside
  });
}
