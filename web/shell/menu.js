import { lastBackup } from "../data/last-backup.js";
import { changedAfter } from "../data/journal.js";
import { everything } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { unsettled } from "../parts/unsettled.js";
import { waitingText } from "../exchange/backup-waiting.js";
import { demoAway, demoOffer } from "../first-steps/demo-offer.js";
import { loaded } from "../parts/loaded-later.js";

const PLACES = [
  ["steps", "First steps", "Four things to try, with a made-up piece"],
  ["find", "Search everything", "Pieces, wants and notes"],
  ["duplicates", "Duplicates", "What you have twice, and what to ask for it"],
  ["formations", "Sets and trains", "What is missing from those you own part of"],
  ["ranges", "Ranges", "What you identify from; add your own"],
  ["sightings", "Sightings", "What the reference does not know yet"],
  ["devices", "Devices and sync", "Several phones and computers, one collection"],
  ["import", "Bring in a spreadsheet", "A list that you have as CSV or XLSX"],
  ["export", "Take out", "Spreadsheets, lists on paper, wants for a friend"],
  ["backup", "Backup", ""],
  ["changes", "The latest changes", "Look back, and undo"],
  ["trash", "Trash", "What was deleted, photos too"],
];

/** Everything that has no place of its own in the bar. */
export async function moreScreen(app, keep) {
  const { seq, time } = await lastBackup();
  const waiting = await changedAfter(seq);
  const open = (await unsettled()).length;
  const places = PLACES.map(([screen, name, about]) =>
    link(name, screen === "backup" ? waitingText(waiting, time, app.settings.paired) : about, () =>
      keep.open(screen),
    ),
  );
  return el(
    "section",
    { class: "shelf" },
    heading(1, "More"),
    el(
      "ul",
      { class: "found" },
      open > 0 ? link("To settle", "Changed on two devices", () => keep.open("settle")) : null,
      places,
      link("Date a number or barcode", "Design, patent or bars: the year", () => dateNumber(app)),
      link("Settings", "Light, loupe, home screen", () => keep.open("settings")),
    ),
    everything().length === 0 ? demoOffer(app, keep) : demoAway(keep),
  );
}

function link(name, about, act) {
  return el(
    "li",
    {},
    button([el("strong", {}, name), el("span", { class: "quiet" }, about)], act, { class: "hit" }),
  );
}

async function dateNumber(app) {
  (await loaded(import("../identify/dated-number.js"))).openDatedNumber(app);
}
