/** Pairing: this device and the collector's own server get to know each other. */
import { askToKeep } from "../data/install.js";
import { everything } from "../data/records.js";
import { Refused, post } from "../data/server.js";
import { changeSettings } from "../data/settings.js";
import { problem, storing } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { announce, notice } from "../parts/status.js";
import { NotStored, joined, setState } from "./sync-state.js";
import { startSync, sync } from "./sync.js";
import { run } from "../data/queue.js";
import { redraw } from "../parts/navigation.js";
import {
  A_CODE_HAS,
  CODE,
  COMPUTER,
  DEMO_IS_AMONG_THEM,
  LINK_PAIRS_THIS_DEVICE,
  ONE_RECORD_IS_HERE,
  PAIR,
  PAIR_ON_THE_HOME_SCREEN,
  PAIR_THIS_DEVICE,
  PAIR_THIS_DEVICE_AGAIN,
  PAIRED,
  PAIRED_AND_PUT_TOGETHER,
  PHONE,
  putTogether,
  recordsAreHere,
  WHAT_TO_CALL_THIS_DEVICE,
  WHERE_THE_CODE_IS,
} from "./words.js";

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
        wrong.textContent = A_CODE_HAS;
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
    heading(2, again ? PAIR_THIS_DEVICE_AGAIN : PAIR_THIS_DEVICE),
    el("p", {}, secret === "" ? WHERE_THE_CODE_IS : LINK_PAIRS_THIS_DEVICE),
    mergedText(),
    secret === "" ? labelled(CODE, code) : null,
    labelled(WHAT_TO_CALL_THIS_DEVICE, name),
    wrong,
    button(PAIR, pair, { class: "main wide" }),
    secret === "" ? el("p", { class: "quiet" }, PAIR_ON_THE_HOME_SCREEN) : null,
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
  return phone ? PHONE : COMPUTER;
}

/** What becomes of what is here: said beforehand. */
function mergedText() {
  const here = everything().filter((kept) => kept.trashed === "");
  if (here.length === 0) return null;
  const count = here.length === 1 ? ONE_RECORD_IS_HERE : recordsAreHere(here.length);
  const demo = here.some((kept) => kept.demo) ? DEMO_IS_AMONG_THEM : "";
  return el("p", { class: "warn" }, putTogether(count, demo));
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
  announce(PAIRED);
  notice(PAIRED_AND_PUT_TOGETHER);
}
