import { askToKeep, canInstall, install, installed, kept } from "../data/install.js";
import { problem } from "../data/store.js";
import { changeSettings } from "../data/settings.js";
import { setAble } from "../identify/identify.js";
import { buildName, worksOffline } from "../data/update.js";
import { button, el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { chooseLight, lightChosen, onLight } from "./light-switch.js";
import { announce } from "../parts/status.js";
import { updateOffer } from "../parts/update-offer.js";
import { leaveScreen } from "../parts/navigation.js";
import { installWords } from "./install-words.js";
import { run } from "../data/queue.js";
import {
  ABLE_TODAY,
  ABOUT,
  alsoSentTo,
  ASK_THE_BROWSER_TO_KEEP_IT,
  BACK_TO_THE_PIECE,
  BACK_TO_THE_START,
  CARE,
  CHECKING_KEPT,
  DOES_NOT_SAY,
  LIGHT,
  LIGHTS,
  MAY_DELETE,
  MONEY_WITHOUT_A_SIGN_IS_IN,
  NOT_READY_FOR_NO_SIGNAL,
  NOTHING_IS_SENT_ANYWHERE,
  ON_THE_HOME_SCREEN,
  PROMISED_TO_KEEP,
  PUT_IT_ON_THE_HOME_SCREEN,
  READY_FOR_NO_SIGNAL,
  SETTINGS,
  STORED_HERE,
  storedThings,
  VERSION_NOT_STORED_YET,
  versionName,
  WHAT_YOU_CAN_DO_TODAY,
} from "./words.js";

/** The settings. */
export function settingsScreen(state) {
  return el(
    "section",
    { class: "settings" },
    heading(1, SETTINGS),
    updateOffer(),
    lightChoice(),
    ableChoice(state),
    currencyChoice(state),
    installHelp(),
    stored(state),
    about(state),
    button(state.piece ? BACK_TO_THE_PIECE : BACK_TO_THE_START, leaveScreen, {
      class: "main wide",
    }),
  );
}

function lightChoice() {
  const group = el("fieldset", { class: "tick-list" }, el("legend", {}, LIGHT));
  for (const [value, label] of LIGHTS) {
    group.append(
      el(
        "label",
        {},
        el("input", {
          type: "radio",
          name: "light",
          value,
          checked: lightChosen() === value,
          onchange: () => chooseLight(value),
        }),
        label,
      ),
    );
  }
  onLight(() => {
    for (const box of group.querySelectorAll("input")) box.checked = box.value === lightChosen();
    return group.isConnected;
  });
  return group;
}

function ableChoice(state) {
  const able = new Set(state.settings.able);
  const group = el("fieldset", { class: "tick-list" }, el("legend", {}, WHAT_YOU_CAN_DO_TODAY));
  for (const [need, label] of ABLE_TODAY) {
    const box = el("input", {
      type: "checkbox",
      checked: able.has(need),
      onchange: () => {
        if (box.checked) able.add(need);
        else able.delete(need);
        setAble(ABLE_TODAY.map(([name]) => name).filter((name) => able.has(name)));
      },
    });
    group.append(el("label", {}, box, label));
  }
  return group;
}

function currencyChoice(state) {
  return choice(
    MONEY_WITHOUT_A_SIGN_IS_IN,
    state.engine.currencies().map(({ code }) => [code, code]),
    state.settings.currency,
    (code) =>
      run(() => {
        return changeSettings({ currency: code });
      }),
  );
}

function installHelp() {
  if (installed()) return null;
  return el(
    "section",
    {},
    heading(2, ON_THE_HOME_SCREEN),
    canInstall()
      ? button(PUT_IT_ON_THE_HOME_SCREEN, install, { class: "plain wide" })
      : el("p", {}, installWords()),
  );
}

/** What leaves the phone, and where to. */
function sentText({ settings }) {
  return settings.paired ? alsoSentTo(location.host) : NOTHING_IS_SENT_ANYWHERE;
}

function stored(state) {
  const asks = el("p", {}, CHECKING_KEPT);
  const askIt = button(
    ASK_THE_BROWSER_TO_KEEP_IT,
    async () => {
      await askToKeep();
      await sayKept();
    },
    { class: "plain wide", hidden: true },
  );
  async function sayKept() {
    const answer = await kept();
    asks.textContent =
      {
        true: PROMISED_TO_KEEP,
        false: MAY_DELETE,
      }[answer] ?? DOES_NOT_SAY;
    askIt.hidden = answer !== false;
    announce(asks.textContent);
  }
  sayKept();
  return el(
    "section",
    {},
    heading(2, STORED_HERE),
    el("p", {}, problem() === "" ? storedThings(sentText(state)) : problem()),
    problem() === "" ? [asks, askIt] : null,
  );
}

function about({ entry }) {
  const version = el("p", { class: "quiet" });
  buildName().then((name) => {
    version.textContent = name === "" ? VERSION_NOT_STORED_YET : versionName(name);
  });
  return el(
    "section",
    {},
    heading(2, ABOUT),
    el("p", {}, worksOffline() ? READY_FOR_NO_SIGNAL : NOT_READY_FOR_NO_SIGNAL),
    el("p", {}, entry.about),
    el("p", {}, CARE),
    version,
  );
}
