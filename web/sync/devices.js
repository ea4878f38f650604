import { allAside } from "../data/aside.js";
import { Refused, ask, offers, post, useToken } from "../data/server.js";
import { problem } from "../data/store.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { button, el, heading } from "../parts/element.js";
import { sheet } from "../parts/sheet.js";
import { announce, notice } from "../parts/status.js";
import { unsettled } from "../parts/unsettled.js";
import { timeText } from "../parts/days.js";
import { pairingForm, secretGiven } from "./pairing.js";
import { addDevice } from "./add-device.js";
import { nameHere } from "./sync-state.js";
import { serverWarnings } from "./server-standing.js";
import { onSync, paired, sync, syncState, waiting } from "./sync.js";
import { run } from "../data/queue.js";
import { goTo, redraw } from "../parts/navigation.js";
import {
  ADD_A_DEVICE,
  ASKING_THE_SERVER,
  backupIsMade,
  BACKUPS,
  BACKUPS_ON_THE_SERVER,
  BETWEEN_TWO,
  DEVICES,
  DEVICES_AND_SYNC,
  DOING,
  doneOf,
  isThisDevice,
  isUnpaired,
  lastInTouch,
  lastSeen,
  MAKE_A_BACKUP_THERE_NOW,
  NAME,
  NO_BACKUPS_THERE_YET,
  NOT_IN_TOUCH_YET,
  NOT_SEEN_YET,
  NOTHING_IS_WAITING,
  ONE_EVERY_NIGHT,
  pairedAt,
  PHOTO_IS,
  PHOTOS_ARE,
  PROGRESS,
  recordsToSettle,
  RENAME,
  RENAME_A_DEVICE,
  RENAMED,
  renameName,
  SAVE_THE_NAME,
  serverDoesNotTake,
  stillToCome,
  SYNC,
  SYNC_IS_NOT_SET_UP,
  SYNC_NOW,
  THE_BACKUP_IS_MADE,
  UNPAIR,
  UNPAIR_AND_DELETE_HERE,
  UNPAIR_IT,
  UNPAIRED_HERE,
  UNPAIRED_THERE,
  unpairedSince,
  unpairName,
  waitingToBeSent,
  WHAT_GOES_WHERE,
  whatGoesWhere,
  whetherToUnpair,
  WITH_A_SERVER_OF_YOUR_OWN,
} from "./words.js";

let follow = () => {}; // draws what is being done, on the screen that is shown
onSync(() => follow());

/** Devices and sync: how far this device and the server are at one, all devices, backups there. */
export async function devicesScreen(state) {
  const pairing = await paired();
  if (!pairing) return unpaired(state);
  useToken(pairing.token);
  if (syncState().lost || secretGiven()) {
    const top = heading(1, DEVICES_AND_SYNC);
    return el("section", { class: "shelf" }, top, standing(), pairingForm(state, true));
  }
  const list = el("div", {}, el("p", { class: "quiet" }, ASKING_THE_SERVER));
  const backups = el("div", {});
  const warnings = el("div", {});
  fill(list, () => deviceList());
  fill(backups, backupList);
  fill(warnings, standingList);
  return el(
    "section",
    { class: "shelf" },
    heading(1, DEVICES_AND_SYNC),
    standing(),
    button(SYNC_NOW, () => sync(), { class: "main wide" }),
    heading(2, DEVICES),
    list,
    button(ADD_A_DEVICE, () => run(() => addDevice(() => fill(list, () => deviceList()))), {
      class: "plain wide",
    }),
    heading(2, BACKUPS_ON_THE_SERVER),
    warnings,
    el("p", {}, ONE_EVERY_NIGHT),
    button(MAKE_A_BACKUP_THERE_NOW, () => run(() => backUp(backups)), {
      class: "plain wide",
    }),
    backups,
    heading(2, WHAT_GOES_WHERE),
    el("p", {}, whatGoesWhere(location.host)),
  );
}

async function unpaired(state) {
  const top = heading(1, DEVICES_AND_SYNC);
  if (problem() !== "")
    return el("section", { class: "shelf" }, top, el("p", { class: "warn" }, problem()));
  const { sync: able } = await offers();
  return el(
    "section",
    { class: "shelf" },
    top,
    el("p", {}, WITH_A_SERVER_OF_YOUR_OWN),
    able ? pairingForm(state, false) : [emptyPicture("devices"), el("p", {}, SYNC_IS_NOT_SET_UP)],
  );
}

/** What waits and what is being done; it stays true while the screen is open. */
function standing() {
  const touched = el("p", {});
  const waits = el("p", {});
  const bar = el("progress", { max: 1, value: 0, "aria-label": PROGRESS });
  const doing = el("p", { class: "quiet" });
  const wrong = el("div", {});
  const settle = el("div", {});
  const before = syncState().lost;
  const box = el("section", { class: "standing", role: "group", "aria-label": SYNC });
  let turns = 0;
  const draw = async () => {
    const turn = (turns += 1);
    const { doing: what, done, total, problem: trouble, lost } = syncState();
    if (lost !== before) {
      run(redraw);
      return;
    }
    const moving = what !== "";
    doing.textContent = moving ? `${DOING[what]}${total > 0 ? doneOf(done, total) : ""}` : "";
    bar.hidden = !moving;
    doing.hidden = !moving;
    if (moving) box.setAttribute("aria-busy", "true");
    if (total > 0) {
      bar.max = total;
      bar.value = done;
    } else bar.removeAttribute("value");
    const [aside, left, line] = [await allAside(), await waiting(), await settleLine()];
    if (turn !== turns) return; // more has happened meanwhile
    wrong.replaceChildren(
      ...[trouble, refusedText(aside)]
        .filter(Boolean)
        .map((text) => el("p", { class: "warn" }, text)),
    );
    settle.replaceChildren(...[line].filter(Boolean));
    touched.textContent =
      left.touched === "" ? NOT_IN_TOUCH_YET : lastInTouch(timeText(left.touched));
    waits.textContent = waitsText(left);
    if (!moving) box.setAttribute("aria-busy", "false"); // once the words are there
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
      ? NOTHING_IS_WAITING
      : waitingToBeSent(parts.join(BETWEEN_TWO), entries + sending === 1 ? "is" : "are");
  return fetching === 0 ? out : stillToCome(out, counted(fetching, PHOTO_IS, PHOTOS_ARE));
}

function counted(count, single, many) {
  return `${count} ${count === 1 ? single : many}`;
}

function refusedText(aside) {
  const refused = aside.filter(({ from }) => from === "sent" || from === "photo");
  if (refused.length === 0) return "";
  return serverDoesNotTake(counted(refused.length, "change", "changes"), refused[0].why);
}

async function settleLine() {
  const clashes = await unsettled();
  if (clashes.length === 0) return null;
  return button(
    recordsToSettle(counted(clashes.length, "record", "records")),
    () => goTo("settle"),
    {
      class: "plain wide",
    },
  );
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
  const here = devices.find((device) => device.here);
  if (here) await nameHere(here.name);
  const rows = devices.filter((device) => device.revoked === "");
  const off = devices.filter((device) => device.revoked !== "");
  return [
    el(
      "ul",
      { class: "answers", "aria-label": DEVICES },
      rows.map((device) => el("li", {}, deviceRow(device))),
    ),
    off.length === 0
      ? null
      : el(
          "p",
          { class: "quiet" },
          unpairedSince(
            off.map(({ name, revoked }) => `${name} (${timeText(revoked)})`).join(", "),
          ),
        ),
  ].filter(Boolean);
}

function deviceRow(device) {
  const seen = device.seen ? lastSeen(timeText(device.seen)) : NOT_SEEN_YET;
  return [
    el("strong", {}, device.here ? isThisDevice(device.name) : device.name),
    el("p", { class: "quiet" }, pairedAt(timeText(device.made), seen)),
    el(
      "div",
      { class: "row" },
      button(RENAME, () => rename(device), {
        class: "plain",
        "aria-label": renameName(device.name),
      }),
      button(UNPAIR, () => takeOff(device), {
        class: "plain",
        "aria-label": unpairName(device.name),
      }),
    ),
  ];
}

function rename(device) {
  const name = el("input", {
    type: "text",
    id: "device-name",
    value: device.name,
    maxlength: 60,
    autocomplete: "off",
  });
  const shut = sheet(
    RENAME_A_DEVICE,
    el(
      "div",
      { class: "field" },
      el("div", { class: "field-head" }, el("label", { for: "device-name" }, NAME)),
      name,
    ),
    button(
      SAVE_THE_NAME,
      () => {
        const text = name.value.trim();
        if (text === "") return;
        shut();
        run(() => asked(() => post(`devices/${device.id}`, { name: text }), RENAMED));
      },
      { class: "main wide" },
    ),
  );
}

function takeOff(device) {
  const shut = sheet(
    whetherToUnpair(device.name),
    el("p", {}, device.here ? UNPAIRED_HERE : UNPAIRED_THERE),
    button(
      device.here ? UNPAIR_AND_DELETE_HERE : UNPAIR_IT,
      () => {
        shut();
        run(async () => {
          const done = await asked(
            () => post(`devices/${device.id}/revoke`, {}),
            isUnpaired(device.name),
          );
          if (done && device.here) await sync();
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
    announce(THE_BACKUP_IS_MADE);
    notice(backupIsMade(counted(records, "record", "records"), counted(photos, "photo", "photos")));
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
  if (backups.length === 0) return el("p", {}, NO_BACKUPS_THERE_YET);
  return el(
    "ul",
    { class: "plain-list", "aria-label": BACKUPS },
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
