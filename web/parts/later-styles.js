import { el } from "./element.js";

let taken = null;

/** Takes in later.css, once; resolves when it is there, or cannot be had. */
export function withLook() {
  taken ??= new Promise((resolve) => {
    /** @type {HTMLLinkElement} */
    const there = document.querySelector("link[media]"); // on a phone it is there for nothing yet
    const href = new URL("../later.css", import.meta.url).href;
    if (there?.sheet) {
      there.media = "all";
      resolve();
    } else
      document.head.append(
        el("link", { rel: "stylesheet", href, onload: resolve, onerror: resolve }),
      );
  });
  return taken;
}
