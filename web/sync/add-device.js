import { Refused, post } from "../data/server.js";
import { copyText } from "../parts/copying.js";
import { timeText } from "../parts/days.js";
import { button, el } from "../parts/element.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import {
  ADD_A_DEVICE,
  BROWSER_DOES_NOT_COPY,
  COPIED_THE_LINK,
  COPY_THE_LINK,
  goodUntil,
  orOpenAndType,
  POINT_THE_CAMERA,
  SQUARE_CODE,
} from "./words.js";

/** Shows how another device is let in; `then` when that is put away. */
export async function addDevice(then) {
  let offer;
  try {
    offer = await post("pairing", {});
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    notice(error.message);
    return;
  }
  const { code, until, svg, url } = offer;
  const picture = `data:image/svg+xml,${encodeURIComponent(svg)}`;
  sheet(
    ADD_A_DEVICE,
    el("p", {}, POINT_THE_CAMERA),
    el("img", {
      class: "qr",
      src: picture,
      alt: SQUARE_CODE,
      width: 240,
      height: 240,
    }),
    el("p", {}, orOpenAndType(new URL(url).origin)),
    el("p", { class: "pair-code" }, spaced(code)),
    button(COPY_THE_LINK, ({ currentTarget }) => copyText(url, currentTarget, SAID_OF_COPYING), {
      class: "plain wide",
    }),
    el("p", { class: "quiet" }, goodUntil(timeText(until))),
  );
  document.querySelector("dialog.sheet")?.addEventListener("close", then);
}

const SAID_OF_COPYING = { done: COPIED_THE_LINK, failed: BROWSER_DOES_NOT_COPY };

function spaced(code) {
  return code.replace(/^(.{4})(.{4})$/, "$1 $2");
}
