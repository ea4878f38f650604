import { lastBackup } from "../data/backed.js";
import { changedAfter } from "../data/journal.js";
import { all, everything } from "../data/records.js";
import { keepSettings } from "../data/settings.js";
import { button, el, heading } from "../parts/element.js";
import { unsettled } from "../parts/unsettled.js";
import { waitingText } from "../parts/waiting.js";
import { datedNumber, takeDemo } from "./later.js";

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
    link(name, screen === "backup" ? waitingText(waiting, time, app.settings.paired) : about, () => keep.open(screen)),
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
      link("Date a number or barcode", "Design, patent or bars: the year", () => datedNumber(app)),
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

/** For an empty collection: look round with a made-up one, or start with nothing. Not where a server would get it. */
export function demoOffer(app, keep) {
  const none = "Nothing is in your collection yet.";
  if (app.settings.paired) return el("p", {}, none);
  return el(
    "div",
    { class: "offer" },
    el("p", {}, `${none} You can look round with a demo collection: it is made up, and can be taken away again.`),
    el(
      "div",
      { class: "row" },
      button("Look round with the demo", () => takeDemo(app, keep), { class: "main" }),
      app.settings.first ? button("Start empty", () => startEmpty(app, keep), { class: "plain" }) : null,
    ),
  );
}

/** Starts with nothing: the offer does not come again. */
export function startEmpty(app, keep) {
  return keep.run(async () => {
    await started(app);
    await keep.redraw();
  });
}

/** The choice at the first start is made. */
export async function started(app) {
  app.settings = { ...app.settings, first: false };
  await keepSettings(app.settings);
}

function demoAway(keep) {
  const ids = ["piece", "want", "note", "budget"]
    .flatMap(all)
    .filter((one) => one.demo)
    .map(({ id }) => id);
  if (ids.length === 0) return null;
  return button(
    "Take the demo collection away",
    () =>
      keep.run(async () => {
        const time = new Date().toISOString();
        const edits = ids.map((id) => ({ id, alter: (now) => ({ ...now, trashed: time }) }));
        const said = "The demo collection is in the trash.";
        if (await keep.change("Demo collection taken away", edits, { said })) await keep.redraw();
      }),
    { class: "plain wide" },
  );
}
