/**
 * Taking out: spreadsheets, lists on paper, the wants for a friend; what each holds is said before.
 */
import { all } from "../data/records.js";
import { offers } from "../data/server.js";
import { button, el, heading } from "../parts/element.js";
import { choice, ticks } from "../parts/fields.js";
import { NO_SERVER } from "./import.js";
import { download, madeFile, share } from "./server-files.js";
import { packsAtHand } from "../data/known-ranges.js";
import { portraitPage } from "../parts/portrait.js";
import { placesOf } from "../parts/record-picture.js";
import { run } from "../data/queue.js";
import { goTo } from "../parts/navigation.js";

const WHAT = [
  ["all", "Everything"],
  ["piece", "The pieces"],
  ["want", "The wants"],
  ["note", "The notes"],
];
const FORMATS = [
  ["xlsx", "Spreadsheet, XLSX"],
  ["csv", "Plain table, CSV"],
  ["json", "JSON, for programs"],
];
const NAMES = {
  piece: "piece",
  want: "want",
  note: "note",
  sighting: "sighting",
  budget: "budget",
};
const TYPES = {
  csv: ["piece", "want", "note"],
  xlsx: ["piece", "want", "note"],
  json: Object.keys(NAMES),
};
let chosen = { what: "all", format: "xlsx", limits: false };

/** The screen. */
export async function exportScreen() {
  const { exchange } = await offers();
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Print or save"),
    el(
      "p",
      { class: "warn" },
      "A list shows which valuables are in your house. Give it only to those you " +
        "trust, and do not leave it lying about on a shared computer.",
    ),
    heading(2, "As a file"),
    exchange ? spreadsheet() : el("p", {}, NO_SERVER),
    heading(2, "On paper"),
    el(
      "div",
      { class: "found" },
      paper("wants", "Wants", "With condition, box and the most you would pay"),
      paper("duplicates", "Duplicates", "With what you ask for each"),
      paper("insurance", "List for the insurer", "Every piece with photos, and what was paid"),
    ),
    exchange ? [heading(2, "Wants for a friend"), friend()] : null,
    heading(2, "Everything, with photos"),
    el(
      "p",
      {},
      "A backup holds all of it, history and photos too, and can be restored. It works with no " +
        "server.",
    ),
    button("Backup", () => goTo("backup"), { class: "plain wide" }),
  );
}

function paper(what, name, about) {
  return button(
    [el("strong", {}, name), el("span", { class: "quiet" }, about)],
    () => goTo("print", { what }),
    {
      class: "hit",
    },
  );
}

function recordsOf({ what, format }) {
  const types = what === "all" ? TYPES[format] : [what];
  return types.flatMap(all);
}

function spreadsheet() {
  const said = el("p", { role: "status" });
  const make = button("Make the file", () => run(() => made()), { class: "main wide" });
  const set = (name) => (value) => {
    chosen = { ...chosen, [name]: value };
    tell();
    return false;
  };
  const tell = () => {
    const records = recordsOf(chosen);
    said.textContent = contents(records, chosen.format);
    make.disabled = records.length === 0;
  };
  const made = async () => {
    const file = await madeFile("write", { records: recordsOf(chosen), format: chosen.format });
    if (file) download(file);
  };
  tell();
  return el(
    "section",
    {},
    choice("What", WHAT, chosen.what, set("what")),
    choice("As", FORMATS, chosen.format, set("format")),
    said,
    make,
  );
}

/** What a file of these records holds, in a sentence or two. */
function contents(records, format) {
  if (records.length === 0) return "There are none of those yet.";
  const counts = new Map();
  for (const { type } of records) counts.set(type, (counts.get(type) ?? 0) + 1);
  const listed = [...counts].map(
    ([type, count]) => `${count} ${NAMES[type]}${count === 1 ? "" : "s"}`,
  );
  const again = format === "json" ? "" : " Changed in a spreadsheet, it can be imported again.";
  return (
    `It will hold ${listed.join(", ")}: what each is, its condition, where it is from and ` +
    `what was paid, and your notes. No photos.${again}`
  );
}

/** A portrait of each want, by its id, as text of SVG. */
async function picturesOf(wants) {
  const made = wants.map(async (want) => {
    const pack = packsAtHand.get(want.pack);
    return [want.id, await portraitPage(pack, placesOf(pack, want)).catch(() => "")];
  });
  return Object.fromEntries(await Promise.all(made));
}

function friend() {
  const wants = all("want");
  const make = async () => {
    const records = wants.map((want) => (chosen.limits ? want : { ...want, most: null }));
    const pictures = await picturesOf(wants);
    const file = await madeFile("wants-page", { records, title: "Wanted", pictures });
    if (file) await share(file, "Wanted");
  };
  if (wants.length === 0) return el("p", {}, "You have no wants yet.");
  return el(
    "section",
    {},
    el(
      "p",
      {},
      "One page to look at in any browser, with " +
        `${wants.length === 1 ? "1 want" : `${wants.length} wants`}: item, variant, condition ` +
        "and box. Nothing about what you own, and none of your notes.",
    ),
    ticks(
      "The most you would pay",
      [["limits", "Say that too"]],
      chosen.limits ? ["limits"] : [],
      (on) => {
        chosen = { ...chosen, limits: on.length > 0 };
        return false;
      },
    ),
    button("Send the page", make, { class: "main wide" }),
  );
}
