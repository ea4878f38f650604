/**
 * Taking out: spreadsheets, lists on paper, the wants for a friend; what each holds is said before.
 */
import { all } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { choice, ticks } from "../parts/fields.js";
import { download, share } from "./hand-out.js";
import { recordsFile, wantsFile } from "./make-file.js";
import { packsAtHand } from "../data/known-ranges.js";
import { portraitPage } from "../parts/portrait.js";
import { placesOf } from "../parts/record-picture.js";
import { run } from "../data/queue.js";
import { goTo } from "../parts/navigation.js";
import {
  AS,
  AS_A_FILE,
  BACKUP,
  CAN_BE_IMPORTED_AGAIN,
  DUPLICATES,
  EVERY_PIECE_AND_PRICE,
  EVERYTHING_WITH_PHOTOS,
  FORMATS,
  itWillHold,
  LIST_FOR_THE_INSURER,
  MAKE_THE_FILE,
  ON_PAPER,
  onePageWith,
  PRINT_OR_SAVE,
  SAY_THAT_TOO,
  SEND_THE_PAGE,
  THE_MOST_YOU_WOULD_PAY,
  THERE_ARE_NONE_OF_THOSE_YET,
  wantCount,
  WANTED,
  WANTS,
  WANTS_FOR_A_FRIEND,
  WHAT,
  WHAT_A_BACKUP_HOLDS,
  WHAT_A_LIST_SHOWS,
  WHICH_RECORDS,
  WITH_THE_MOST_TO_PAY,
  WITH_WHAT_YOU_ASK_FOR_EACH,
  YOU_HAVE_NO_WANTS_YET,
} from "./words.js";

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
export function exportScreen() {
  return el(
    "section",
    { class: "shelf" },
    heading(1, PRINT_OR_SAVE),
    el("p", { class: "warn" }, WHAT_A_LIST_SHOWS),
    heading(2, AS_A_FILE),
    spreadsheet(),
    heading(2, ON_PAPER),
    el(
      "div",
      { class: "found" },
      paper("wants", WANTS, WITH_THE_MOST_TO_PAY),
      paper("duplicates", DUPLICATES, WITH_WHAT_YOU_ASK_FOR_EACH),
      paper("insurance", LIST_FOR_THE_INSURER, EVERY_PIECE_AND_PRICE),
    ),
    heading(2, WANTS_FOR_A_FRIEND),
    friend(),
    heading(2, EVERYTHING_WITH_PHOTOS),
    el("p", {}, WHAT_A_BACKUP_HOLDS),
    button(BACKUP, () => goTo("backup"), { class: "plain wide" }),
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
  const made = async () => download(await recordsFile(recordsOf(chosen), chosen.format));
  const make = button(MAKE_THE_FILE, () => run(made), { class: "main wide" });
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
  tell();
  return el(
    "section",
    {},
    choice(WHAT, WHICH_RECORDS, chosen.what, set("what")),
    choice(AS, FORMATS, chosen.format, set("format")),
    said,
    make,
  );
}

/** What a file of these records holds, in a sentence or two. */
function contents(records, format) {
  if (records.length === 0) return THERE_ARE_NONE_OF_THOSE_YET;
  const counts = new Map();
  for (const { type } of records) counts.set(type, (counts.get(type) ?? 0) + 1);
  const listed = [...counts].map(
    ([type, count]) => `${count} ${NAMES[type]}${count === 1 ? "" : "s"}`,
  );
  const again = format === "json" ? "" : CAN_BE_IMPORTED_AGAIN;
  return itWillHold(listed.join(", "), again);
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
    await share(await wantsFile(records, await picturesOf(wants)), WANTED);
  };
  if (wants.length === 0) return el("p", {}, YOU_HAVE_NO_WANTS_YET);
  return el(
    "section",
    {},
    el("p", {}, onePageWith(wants.length === 1 ? "1 want" : wantCount(wants.length))),
    ticks(
      THE_MOST_YOU_WOULD_PAY,
      [["limits", SAY_THAT_TOO]],
      chosen.limits ? ["limits"] : [],
      (on) => {
        chosen = { ...chosen, limits: on.length > 0 };
        return false;
      },
    ),
    button(SEND_THE_PAGE, () => run(make), { class: "main wide" }),
  );
}
