/** A list as a page of its own, for a device that prints only what its share sheet is given. */
import { handOut } from "./hand-out.js";

const LOOK =
  "body{font:10pt/1.35 sans-serif;margin:1cm}table{border-collapse:collapse;width:100%}" +
  "th,td{text-align:start;vertical-align:top;padding:.1rem .5rem .1rem 0;" +
  "border-bottom:1px solid #999}tr{break-inside:avoid}img{max-width:30%}";

/** Hands out what stands on this screen, without its controls. Gives what `handOut` gives. */
export async function handOutPage(name, screen) {
  const copy = screen.cloneNode(true);
  const shown = screen.querySelectorAll("img");
  copy.querySelectorAll("img").forEach((image, place) => {
    if (shown[place].naturalWidth > 0) image.src = asData(shown[place]);
    else image.remove();
  });
  for (const control of copy.querySelectorAll("button, fieldset, .no-printer")) control.remove();
  for (const row of copy.querySelectorAll(".without-photos .pictures")) row.remove();
  const page =
    `<!doctype html><html lang="en-GB"><meta charset="utf-8"><title>${name}</title>` +
    `<style>${LOOK}</style>${copy.innerHTML}</html>`;
  const file = `${name.toLowerCase().replaceAll(" ", "-")}.html`;
  return handOut(new File([page], file, { type: "text/html" }));
}

/** What an image shows, written into its address. */
function asData(image) {
  const canvas = document.createElement("canvas");
  canvas.width = image.naturalWidth;
  canvas.height = image.naturalHeight;
  canvas.getContext("2d").drawImage(image, 0, 0);
  return canvas.toDataURL("image/jpeg", 0.8);
}
