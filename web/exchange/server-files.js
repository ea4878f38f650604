/** Files that the server makes, on their way out: to this device's downloads, or to another app. */
import { Refused, send } from "../data/server.js";
import { notice } from "../parts/status.js";
import { handOut } from "./hand-out.js";
import { isInDownloads, isWhereChosen, wasNotShared } from "./words.js";

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

/** Hands out a file, and says where it went. */
export async function download(file) {
  const went = await handOut(file);
  if (went === "") notice(wasNotShared(file.name));
  else notice(went === "saved" ? isInDownloads(file.name) : isWhereChosen(file.name));
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
  await download(file);
}
