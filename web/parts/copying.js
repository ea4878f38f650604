/** Copies a text; the button that was tapped says whether that went well. */
import { announce } from "./status.js";

/** `done`, `failed`: what the button `tapped` then says. */
export async function copyText(text, tapped, { done, failed }) {
  try {
    await navigator.clipboard.writeText(text);
    tapped.textContent = done;
  } catch {
    tapped.textContent = failed;
  }
  announce(tapped.textContent);
}
