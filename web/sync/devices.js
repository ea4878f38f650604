import { allAside } from "../data/aside.js";
import { Refused, ask, offers, post, useToken } from "../data/server.js";
import { problem } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { sheet } from "../parts/sheet.js";
import { announce, notice } from "../parts/status.js";
import { unsettled } from "../parts/unsettled.js";
import { timeText } from "../parts/days.js";
import { pairingForm, secretGiven } from "./pairing.js";
import { addDevice } from "./add-device.js";
import { nameHere } from "./replica.js";
import { serverWarnings } from "./server-standing.js";
import { onSync, paired, sync, syncState, waiting } from "./sync.js";
import { run } from "../data/queue.js";
import { goTo, redraw } from "../parts/navigation.js";

const DOING = {
  looking: "Checking for changes",
  sending: "Sending changes",
  "photos there": "Sending photos",
  "photos here": "Fetching photos",
};
let follow = () => {}; // draws what is being done, on the screen that is shown
onSync(() => follow());

/** Devices and sync: how far this device and the server are at one, all devices, backups there. */
export async function devicesScreen(state) {
  const pairing = await paired();
  if (!pairing) return unpaired(state);
  useToken(pairing.token);
  if (syncState().lost || secretGiven()) {
    const top = heading(1, "Devices and sync");
    return el("section", { class: "shelf" }, top, standing(), pairingForm(state, true));
  }
  const list = el("div", {}, el("p", { class: "quiet" }, "Asking the server…"));
  const backups = el("div", {});
  const warnings = el("div", {});
  fill(list, () => deviceList());
  fill(backups, backupList);
  fill(warnings, standingList);
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Devices and sync"),
    standing(),
    button("Sync now", () => sync(), { class: "main wide" }),
    heading(2, "Devices"),
    list,
    button("Add a device", () => run(() => addDevice(() => fill(list, () => deviceList()))), {
      class: "plain wide",
    }),
    heading(2, "Backups on the server"),
    warnings,
    el("p", {}, "The server makes one every night. One made now holds what it has so far."),
    button("Make a backup there now", () => run(() => backUp(backups)), {
      class: "plain wide",
    }),
    backups,
    heading(2, "What goes where"),
    el(
      "p",
      {},
      `Pieces, wants, notes and photos with all their changes go to ${location.host}, your own ` +
        "server, and from there to the devices above. Nobody else can read them without being " +
        "paired. The piece you are identifying and your settings stay on this device. Photos " +
        "carry no position.",
    ),
  );
}

async function unpaired(state) {
  const top = heading(1, "Devices and sync");
  if (problem() !== "")
    return el("section", { class: "shelf" }, top, el("p", { class: "warn" }, problem()));
  const { sync: able } = await offers();
  return el(
    "section",
    { class: "shelf" },
    top,
    el(
      "p",
      {},
      "With a server of your own, at home or on a machine you rent, several phones and computers " +
        "keep the same collection, each of them without a signal too.",
    ),
    able
      ? pairingForm(state, false)
      : el("p", {}, "Sync is not set up. It needs a server of your own; the README explains how."),
  );
}

/** What waits and what is being done; it stays true while the screen is open. */
function standing() {
  const touched = el("p", {});
  const waits = el("p", {});
  const bar = el("progress", { max: 1, value: 0, "aria-label": "Progress" });
  const doing = el("p", { class: "quiet" });
  const wrong = el("div", {});
  const settle = el("div", {});
  const before = syncState().lost;
  const box = el("section", { class: "standing", role: "group", "aria-label": "Sync" });
  const draw = async () => {
    const { doing: what, done, total, problem: trouble, lost } = syncState();
    if (lost !== before) {
      run(redraw);
      return;
    }
    const moving = what !== "";
    doing.textContent = moving ? `${DOING[what]}${total > 0 ? `: ${done} of ${total}` : ""}` : "";
    bar.hidden = !moving;
    doing.hidden = !moving;
    box.setAttribute("aria-busy", String(moving));
    if (total > 0) {
      bar.max = total;
      bar.value = done;
    } else bar.removeAttribute("value");
    wrong.replaceChildren(
      ...[trouble, refusedText(await allAside())]
        .filter(Boolean)
        .map((text) => el("p", { class: "warn" }, text)),
    );
    const [left, line] = [await waiting(), await settleLine()];
    settle.replaceChildren(...[line].filter(Boolean));
    touched.textContent =
      left.touched === ""
        ? "Not in touch with the server yet."
        : `Last in touch: ${timeText(left.touched)}.`;
    waits.textContent = waitsText(left);
  };
  follow = () => {
    if (box.isConnected) draw();
  };
  box.append(touched, waits, doing, bar, wrong, settle);
  draw();
  return box;
}

function waitsText({ entries, sending, fetching }) {
  const parts = [
    entries > 0 ? counted(entries, "change", "changes") : "",
    sending > 0 ? counted(sending, "photo", "photos") : "",
  ].filter(Boolean);
  const out =
    parts.length === 0
      ? "Nothing is waiting to be sent."
      : `${parts.join(" and ")} ${entries + sending === 1 ? "is" : "are"} waiting to be sent. ` +
        "Until then the only copy is here.";
  return fetching === 0
    ? out
    : `${out} ${counted(fetching, "photo is", "photos are")} still to come.`;
}

function counted(count, one, many) {
  return `${count} ${count === 1 ? one : many}`;
}

function refusedText(aside) {
  const refused = aside.filter(({ from }) => from === "sent" || from === "photo");
  if (refused.length === 0) return "";
  return (
    `The server does not take ${counted(refused.length, "change", "changes")}; kept here: ` +
    `${refused[0].why} More, Set aside, shows it.`
  );
}

async function settleLine() {
  const found = await unsettled();
  if (found.length === 0) return null;
  return button(`To settle: ${counted(found.length, "record", "records")}`, () => goTo("settle"), {
    class: "plain wide",
  });
}

/** Puts what the server answers into a box; where it cannot, says so there. */
async function fill(box, act) {
  try {
    box.replaceChildren(...[await act()].flat());
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    box.replaceChildren(el("p", { class: "quiet" }, error.message));
  }
}

async function deviceList() {
  const { devices } = await ask("devices");
  const here = devices.find((one) => one.here);
  if (here) await nameHere(here.name);
  const rows = devices.filter((one) => one.revoked === "");
  const off = devices.filter((one) => one.revoked !== "");
  return [
    el(
      "ul",
      { class: "answers", "aria-label": "Devices" },
      rows.map((one) => el("li", {}, deviceRow(one))),
    ),
    off.length === 0
      ? null
      : el(
          "p",
          { class: "quiet" },
          "Unpaired: " +
            `${off.map(({ name, revoked }) => `${name} (${timeText(revoked)})`).join(", ")}.`,
        ),
  ].filter(Boolean);
}

function deviceRow(one) {
  const seen = one.seen ? `last seen ${timeText(one.seen)}` : "not seen yet";
  return [
    el("strong", {}, one.here ? `${one.name} (this device)` : one.name),
    el("p", { class: "quiet" }, `Paired ${timeText(one.made)}, ${seen}.`),
    el(
      "div",
      { class: "row" },
      button("Rename", () => rename(one), {
        class: "plain",
        "aria-label": `Rename ${one.name}`,
      }),
      button("Unpair", () => takeOff(one), {
        class: "plain",
        "aria-label": `Unpair ${one.name}`,
      }),
    ),
  ];
}

function rename(one) {
  const name = el("input", {
    type: "text",
    id: "device-name",
    value: one.name,
    maxlength: 60,
    autocomplete: "off",
  });
  const shut = sheet(
    "Rename a device",
    el(
      "div",
      { class: "field" },
      el("div", { class: "field-head" }, el("label", { for: "device-name" }, "Name")),
      name,
    ),
    button(
      "Save the name",
      () => {
        const text = name.value.trim();
        if (text === "") return;
        shut();
        run(() => asked(() => post(`devices/${one.id}`, { name: text }), "Renamed."));
      },
      { class: "main wide" },
    ),
  );
}

function takeOff(one) {
  const shut = sheet(
    `Unpair ${one.name}?`,
    el(
      "p",
      {},
      one.here
        ? "This device will no longer be paired, and everything the collection keeps on it is " +
            "deleted. What is waiting to be sent is lost; the rest stays on the server and your " +
            "other devices."
        : "It cannot read or send anything from now on. When it is next in touch, the collection " +
            "is deleted there, with what is waiting to be sent. Until then, what it holds " +
            "can be read by whoever has it: lock the device if it is lost.",
    ),
    button(
      one.here ? "Unpair and delete here" : "Unpair it",
      () => {
        shut();
        run(async () => {
          const done = await asked(
            () => post(`devices/${one.id}/revoke`, {}),
            `${one.name} is unpaired.`,
          );
          if (done && one.here) await sync();
        });
      },
      { class: "main wide" },
    ),
  );
}

/** Asks the server for something and says how it went. */
async function asked(act, said) {
  try {
    await act();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    notice(error.message);
    return false;
  }
  await redraw();
  notice(said);
  return true;
}

async function backUp(box) {
  try {
    const { records, photos } = await post("backup", {});
    announce("The backup is made.");
    notice(
      `The backup is made: ${counted(records, "record", "records")}, ` +
        `${counted(photos, "photo", "photos")}. It was restored once as a test, and is complete.`,
    );
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    notice(error.message);
  }
  await fill(box, backupList);
}

async function standingList() {
  return (await serverWarnings()).map((text) => el("p", { class: "warn" }, text));
}

async function backupList() {
  const { backups } = await ask("backups");
  if (backups.length === 0) return el("p", {}, "None yet.");
  return el(
    "ul",
    { class: "plain-list", "aria-label": "Backups" },
    backups.map(({ made, records, photos }) =>
      el(
        "li",
        {},
        `${timeText(made)}: ${counted(records, "record", "records")}, ` +
          `${counted(photos, "photo", "photos")}`,
      ),
    ),
  );
}
