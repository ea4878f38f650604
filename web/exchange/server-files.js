/** Files that the server makes, on their way out: to this device's downloads, or to another app. */
import { Refused, send } from "../data/server.js";
import { el } from "../parts/element.js";
import { notice } from "../parts/status.js";

/**
 * A file made of JSON by a route of the server: a File, or null after the person was told why not.
 */
export async function madeFile(path, value) {
  try {
    const headers = { "Content-Type": "application/json" };
    const response = await send(`exchange/${path}`, {
      method: "POST",
      headers,
      body: JSON.stringify(value),
    });
    const name = /filename="([^"]+)"/.exec(response.headers.get("Content-Disposition") ?? "")?.[1];
    const blob = await response.blob();
    return new File([blob], name ?? "identify", { type: blob.type.split(";")[0] });
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    notice(error.message);
    return null;
  }
}

/** Puts a file (a Blob will do) among this device's downloads under this name. */
export function save(file, name) {
  const url = URL.createObjectURL(file);
  el("a", { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Puts a file among this device's downloads, and says so. */
export function download(file) {
  save(file, file.name);
  notice(`${file.name} went to this device’s downloads.`);
}

/** Hands a file to another app where this device can do that; else downloads it. */
export async function share(file, title) {
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title });
      return;
    } catch (error) {
      if (error.name === "AbortError") return;
    }
  }
  download(file);
}

/** The file of rows that were not brought in. */
export async function failedFile(rows) {
  const file = await madeFile("failed", rows);
  if (file) download(file);
}
