/** Pairing: this device and the collector's own server get to know each other. */
import { askToKeep } from "../data/install.js";
import { everything } from "../data/records.js";
import { Refused, post } from "../data/server.js";
import { changeSettings } from "../data/settings.js";
import { problem, storing } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { announce, notice } from "../parts/status.js";
import { NotStored, joined, setState } from "./replica.js";
import { startSync, sync } from "./sync.js";
import { run } from "../data/queue.js";
import { redraw } from "../parts/navigation.js";

let secret = ""; // of the link that the app was opened by

/** Takes up the secret of a pairing link; it is kept nowhere else. */
export function takeSecret(text) {
  secret = text;
}

/** Was the app opened by a pairing link? */
export function secretGiven() {
  return secret !== "";
}

/** The part of the screen where a device is paired. */
export function pairingForm(state, again) {
  const name = el("input", {
    type: "text",
    id: "pair-name",
    autocomplete: "off",
    maxlength: 60,
    value: usualName(),
  });
  const code = el("input", {
    type: "text",
    id: "pair-code",
    autocomplete: "off",
    autocapitalize: "characters",
    spellcheck: "false",
    maxlength: 20,
  });
  const wrong = el("p", { class: "wrong", role: "alert" });
  const pair = () =>
    run(async () => {
      const typed = code.value.replace(/[^0-9a-z]/gi, "");
      wrong.textContent = "";
      if (secret === "" && typed.length !== 8) {
        wrong.textContent =
          "A code has 8 letters and figures, such as K7QM 2XDF. Look again at the other device, " +
          "or at the server’s screen.";
        code.focus();
        return;
      }
      await pairWith(
        state,
        { name: name.value.trim() || usualName(), ...(secret ? { secret } : { code: typed }) },
        wrong,
      );
    });
  return el(
    "section",
    {},
    heading(2, again ? "Pair this device again" : "Pair this device"),
    el(
      "p",
      {},
      secret === ""
        ? "On a device that is paired already, tap “Add a device” on this screen, and type the " +
            "code here. It is good for five minutes. For the first device the code comes from " +
            "the server; the README explains how."
        : "This link pairs this device with the server it came from.",
    ),
    mergedText(),
    secret === "" ? labelled("Code", code) : null,
    labelled("What to call this device", name),
    wrong,
    button("Pair", pair, { class: "main wide" }),
    secret === ""
      ? el(
          "p",
          { class: "quiet" },
          "An app on the home screen may keep things apart from the browser: pair it there, with " +
            "the code.",
        )
      : null,
  );
}

function labelled(text, control) {
  return el(
    "div",
    { class: "field" },
    el("div", { class: "field-head" }, el("label", { for: control.id }, text)),
    control,
  );
}

function usualName() {
  const { userAgentData } = /** @type {any} */ (navigator); // not in every browser
  const phone = userAgentData?.mobile ?? matchMedia("(pointer: coarse)").matches;
  return phone ? "Phone" : "Computer";
}

/** What becomes of what is here: said beforehand. */
function mergedText() {
  const here = everything().filter((one) => one.trashed === "");
  if (here.length === 0) return null;
  const count =
    here.length === 1
      ? "1 record is on this device. It is"
      : `${here.length} records are on this device. They are`;
  const demo = here.some((one) => one.demo)
    ? " The demo collection is among them: if it should not go along, remove it first, under " +
      "More."
    : "";
  return el(
    "p",
    { class: "warn" },
    `${count} put together with what is on the server: nothing is overwritten, and all your ` +
      `paired devices will show both.${demo}`,
  );
}

async function pairWith(state, asked, wrong) {
  if (!storing()) {
    wrong.textContent = problem();
    return;
  }
  try {
    await setState({}); // is there room? A link or a code is good for one time only
    const { device, token } = await post("pair", asked);
    await joined({ id: device, token, name: asked.name });
  } catch (error) {
    if (error instanceof NotStored) {
      wrong.textContent = error.message;
      return;
    }
    if (!(error instanceof Refused)) throw error;
    if (secret !== "" && error.status !== 0) {
      secret = "";
      await redraw();
      notice(error.message);
      return;
    }
    wrong.textContent = error.message;
    return;
  }
  secret = "";
  await changeSettings({ paired: true, first: false });
  askToKeep();
  await startSync();
  sync();
  await redraw();
  announce("Paired.");
  notice("This device is paired. What is here and what is on the server are being put together.");
}
