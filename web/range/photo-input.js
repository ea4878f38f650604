/** A button that takes a photo, small enough to stand in a range. */
import { NoPhoto } from "../data/photos.js";
import { run } from "../data/queue.js";
import { el } from "../parts/element.js";
import { notice } from "../parts/status.js";
import { PHOTOGRAPH_IT } from "./own-words.js";
import { smallPhoto } from "./small-photo.js";

/** `take` gets the photo; what is none is said. */
export function photoInput(take) {
  const input = el("input", {
    type: "file",
    accept: "image/*",
    class: "unseen",
    onchange: () =>
      run(async () => {
        try {
          await take(await smallPhoto(input.files[0]));
        } catch (error) {
          if (!(error instanceof NoPhoto)) throw error;
          notice(error.message);
        }
      }),
  });
  return el("label", { class: "plain file" }, PHOTOGRAPH_IT, input);
}
