/** Sightings as a file for the keeper of the pack: JSON, with the photos in it. */
import { asText } from "./backup-file.js";
import { photo } from "./kept-photos.js";

const FORMAT = 1;

/** The file of these sightings: {blob, name}. */
export async function sightingsFile(sightings) {
  const made = new Date().toISOString();
  const whole = await Promise.all(sightings.map(withPhotos));
  const text = JSON.stringify(
    { format: FORMAT, kind: "identify sightings", made, sightings: whole },
    null,
    1,
  );
  return {
    blob: new Blob([text], { type: "application/json" }),
    name: `stallside-sightings-${made.slice(0, 10)}.json`,
  };
}

async function withPhotos({ session: _, ...sighting }) {
  const stored = await Promise.all(sighting.photos.map(photo));
  const photos = stored.filter(Boolean).map(async ({ width, height, full }) => {
    return { width, height, full: await asText(full) };
  });
  return { ...sighting, photos: await Promise.all(photos) };
}
