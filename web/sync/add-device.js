import { Refused, post } from "../data/server.js";
import { timeText } from "../parts/days.js";
import { button, el } from "../parts/element.js";
import { sheet } from "../parts/sheet.js";
import { announce, notice } from "../parts/status.js";

/** Shows how another device is let in; `then` when that is put away. */
export async function addDevice(then) {
  let found;
  try {
    found = await post("pairing", {});
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    notice(error.message);
    return;
  }
  const { code, until, svg, url } = found;
  const picture = `data:image/svg+xml,${encodeURIComponent(svg)}`;
  sheet(
    "Add a device",
    el("p", {}, "Point the other phone’s camera at this, and open the link."),
    el("img", {
      class: "qr",
      src: picture,
      alt: "Square code with the pairing link",
      width: 240,
      height: 240,
    }),
    el("p", {}, `Or open ${new URL(url).origin}/ there, go to More, “Devices and sync”, and type:`),
    el("p", { class: "pair-code" }, spaced(code)),
    button("Copy the link", ({ currentTarget }) => copyLink(url, currentTarget), {
      class: "plain wide",
    }),
    el(
      "p",
      { class: "quiet" },
      `Good until ${timeText(until)}, for one device. Show it to nobody else: whoever has it can ` +
        "read the collection.",
    ),
  );
  document.querySelector("dialog.sheet")?.addEventListener("close", then);
}

async function copyLink(url, tapped) {
  try {
    await navigator.clipboard.writeText(url);
    tapped.textContent = "Copied: open it on the other device";
  } catch {
    tapped.textContent = "This browser does not copy: use the code";
  }
  announce(tapped.textContent);
}

function spaced(code) {
  return code.replace(/^(.{4})(.{4})$/, "$1 $2");
}
