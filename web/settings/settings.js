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

const ABLE = [
  ["loupe", "I have a loupe with me"],
  ["body off", "I can take the body off"],
];
const LIGHTS = [
  ["day", "Light"],
  ["dark", "Dark, for a dim hall"],
  ["sun", "Black on white, for the sun"],
  ["", "As the device"],
];

/** The settings. */
export function settingsScreen(state) {
  return el(
    "section",
    { class: "settings" },
    heading(1, "Settings"),
    updateOffer(),
    lightChoice(),
    ableChoice(state),
    currencyChoice(state),
    installHelp(),
    stored(state),
    about(state),
    button(state.piece ? "Back to the piece" : "Back to the start", leaveScreen, {
      class: "main wide",
    }),
  );
}

function lightChoice() {
  const group = el("fieldset", { class: "tick-list" }, el("legend", {}, "Light"));
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
  const group = el("fieldset", { class: "tick-list" }, el("legend", {}, "What you can do today"));
  for (const [need, label] of ABLE) {
    const box = el("input", {
      type: "checkbox",
      checked: able.has(need),
      onchange: () => {
        if (box.checked) able.add(need);
        else able.delete(need);
        setAble(ABLE.map(([name]) => name).filter((name) => able.has(name)));
      },
    });
    group.append(el("label", {}, box, label));
  }
  return group;
}

function currencyChoice(state) {
  return choice(
    "Money without a sign is in",
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
    heading(2, "On the home screen"),
    canInstall()
      ? button("Put it on the home screen", install, { class: "plain wide" })
      : el("p", {}, installWords()),
  );
}

/** What leaves the phone, and where to. */
function sentText({ settings }) {
  return settings.paired
    ? "The collection with its photos and notes is also sent to your own server, " +
        `${location.host}, and to the devices paired with it; nothing else is sent anywhere.`
    : "Nothing is sent anywhere.";
}

function stored(state) {
  const asks = el("p", {}, "Checking whether the browser will keep it…");
  const askIt = button(
    "Ask the browser to keep it",
    async () => {
      await askToKeep();
      await told();
    },
    { class: "plain wide", hidden: true },
  );
  async function told() {
    const answer = await kept();
    asks.textContent =
      {
        true: "The browser has promised to keep it, even when space runs short.",
        false: "The browser may delete it when space runs short.",
      }[answer] ?? "This browser does not say whether it will keep it.";
    askIt.hidden = answer !== false;
    announce(asks.textContent);
  }
  told();
  return el(
    "section",
    {},
    heading(2, "What is stored on this device"),
    el(
      "p",
      {},
      problem() === ""
        ? "The app, the ranges, your settings, your collection and the piece at hand. " +
            `${sentText(state)}`
        : problem(),
    ),
    problem() === "" ? [asks, askIt] : null,
  );
}

function about({ entry }) {
  const version = el("p", { class: "quiet" });
  buildName().then((name) => {
    version.textContent = name === "" ? "Version: not stored yet." : `Version ${name}.`;
  });
  return el(
    "section",
    {},
    heading(2, "About"),
    el(
      "p",
      {},
      worksOffline()
        ? "Everything works with no signal."
        : "Not ready for no signal yet: leave it open for a moment while there is one.",
    ),
    el("p", {}, entry.about),
    el(
      "p",
      {},
      "Old models can carry mains voltage, lead paint, asbestos or brittle celluloid. What is " +
        "known of the piece is shown with the answer. Have mains equipment tested by a competent " +
        "person before it is plugged in, and follow the rules where you live.",
    ),
    version,
  );
}
