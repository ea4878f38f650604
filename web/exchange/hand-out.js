/** A file on its way out of the app: to this device's downloads, or by its share sheet. */
import { onHomeScreen } from "../data/install.js";
import { button, el } from "../parts/element.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import {
  CHOOSE_WHERE,
  isInDownloads,
  isWhereChosen,
  SHARE,
  THE_FILE_IS_READY,
  wasNotShared,
} from "./words.js";

/**
 * Hands out a File. An app on an iPhone's home screen has no downloads: there the share sheet takes
 * it. Gives "saved", "shared", or "" when the sheet was shut and the file went nowhere.
 */
export async function handOut(file) {
  if (!onHomeScreen() || !navigator.canShare?.({ files: [file] })) {
    save(file, file.name);
    return "saved";
  }
  return (await shared(file)) ?? (await afterTap(file));
}

/** "shared", "" when the person shut the sheet, null where a tap is needed first. */
async function shared(file) {
  try {
    await navigator.share({ files: [file] });
    return "shared";
  } catch (error) {
    if (error.name === "AbortError") return "";
    if (error.name === "NotAllowedError") return null; // the tap was too long ago
    throw error;
  }
}

/** The file took long to make: another tap hands it out. */
function afterTap(file) {
  return new Promise((resolve, reject) => {
    let tapped = false;
    const shut = sheet(
      THE_FILE_IS_READY,
      el("p", {}, CHOOSE_WHERE),
      button(
        SHARE,
        () => {
          tapped = true;
          shared(file).then((went) => resolve(went ?? ""), reject);
          shut();
        },
        { class: "main wide" },
      ),
    );
    document.querySelector("dialog.sheet").addEventListener("close", () => {
      if (!tapped) resolve("");
    });
  });
}

/** Puts a file (a Blob will do) among this device's downloads under this name. */
export function save(file, name) {
  const url = URL.createObjectURL(file);
  el("a", { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
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
