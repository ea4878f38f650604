/**
 * What does not go together in a range of one's own, in a sentence at the row that it is about,
 * with what to do. Nothing is lost by it: what it is about counts as not known until it is put
 * right.
 */
import { record, trashing } from "../data/records.js";
import { run } from "../data/queue.js";
import { dateText } from "../parts/days.js";
import { button, el, heading } from "../parts/element.js";
import { goTo, redraw } from "../parts/navigation.js";
import { small } from "../parts/say.js";
import { saveChange } from "../parts/saving.js";
import { everyRow, rangingRules } from "./keep-compiled.js";
import { rowName } from "./row-fields.js";
import {
  A_NUMBER,
  A_PIECE,
  A_RUNNING_CHANGE,
  A_VARIANT,
  A_VARIANT_WITHOUT_A_NAME,
  andMore,
  ANOTHER_ONE,
  beginsAfterItEnds,
  countsAsUnknown,
  dayDoesNotExist,
  endsBeforeItBegins,
  goRound,
  hasTheNumberToo,
  ITEM_DELETED,
  ITEM_NOT_THERE,
  ITEM_OF_ANOTHER_KIND,
  ITEM_PUT_BACK,
  kindCannotHave,
  NOT_WITH_THE_REST,
  notAskedOf,
  notReadAsYears,
  ON_NONE_OF_THESE_KINDS,
  outsideOf,
  outsideTheRange,
  pointsNowhere,
  putNameBack,
  ROUND_TO,
  stillIsThere,
  SUCH_PIECES,
  THE_OTHER_RUNNING_CHANGE,
  UNKNOWN_UNTIL_MENDED,
  WHAT_DOES_NOT_GO_TOGETHER,
  YEARS_OF_ANOTHER_SOURCE,
} from "./trying-words.js";

/** @import { RowFault } from "../data/engine-types.d.ts" */

const SCREENS = {
  range: "own",
  range_item: "entry",
  range_variant: "version",
  range_change: "running",
};
const MOST = 20;

/** What a row is called in such a sentence. */
function called(id) {
  const row = record(id);
  if (!row) return ANOTHER_ONE;
  if (row.type === "range_item") return [row.number, row.name].filter(Boolean).join(" ");
  if (row.type === "range_variant") return row.name || A_VARIANT_WITHOUT_A_NAME;
  if (row.type === "range_change") return THE_OTHER_RUNNING_CHANGE;
  return rowName(row);
}

const years = (text) => dateText(text);
const life = ({ id }) => {
  const row = record(id);
  return years(record(row.range ?? id)?.years ?? "");
};

const WORDS = {
  "number twice": ({ said, other }) => hasTheNumberToo(called(other), said[0]),
  "no item": ({ other }) => (!record(other) || record(other).gone ? ITEM_NOT_THERE : ITEM_DELETED),
  outside: (fault) => outsideTheRange(years(fault.said[0]), life(fault)),
  "outside item": ({ said }) => outsideOf(years(said[0]), said[1], years(said[2])),
  unread: ({ said }) => notReadAsYears(said[0]),
  day: ({ said }) => dayDoesNotExist(said[0]),
  reversed: ({ said }) => endsBeforeItBegins(said[0]),
  late: ({ said }) => beginsAfterItEnds(years(said[0]), years(said[1])),
  "no years": () => YEARS_OF_ANOTHER_SOURCE,
  circle: ({ said }) => goRound(said.join(ROUND_TO)),
  "not of kind": ({ field, said }) => kindCannotHave(lookName(field), small(kindPlural(said[0]))),
  "no such there": ({ field }) => notAskedOf(lookName(field)),
  "change kind": () => ON_NONE_OF_THESE_KINDS,
  "change item": () => ITEM_OF_ANOTHER_KIND,
  "there still": ({ said }) => stillIsThere(said[0] === "item" ? A_NUMBER : A_VARIANT),
  unknown: ({ said }) => pointsNowhere(said[1]),
};

function lookName(key) {
  return `“${keyed("range_feature", key)?.name ?? key}”`;
}

function kindPlural(key) {
  const kind = keyed("range_kind", key);
  return kind?.plural || kind?.name || SUCH_PIECES;
}

let rows = []; // of the range whose faults are told

function keyed(type, key) {
  return rows.find((row) => row.type === type && (row.key === key || row.id === key));
}

/** The sentence of a fault. @param {RowFault} fault */
function sentence(fault) {
  const words = WORDS[fault.why];
  return words ? words(fault) : NOT_WITH_THE_REST;
}

/** The faults of a range. @returns {Promise<RowFault[]>} */
async function faultsOf(range) {
  const ranging = await rangingRules();
  rows = everyRow(range);
  const faults = ranging.faults_of_records(record(range), rows);
  return faults.filter(({ why }) => why !== "one state"); // said where the states are listed
}

/** What does not go together of one row, where it is shown; nothing where all does. */
export async function faultsHere(row) {
  const faults = (await faultsOf(row.range)).filter(({ id }) => id === row.id);
  return faults.map((fault) => el("p", { class: "warn" }, countsAsUnknown(sentence(fault))));
}

/** All that does not go together in a range, each with the way to it. */
export async function faultList(range) {
  const faults = await faultsOf(range);
  if (faults.length === 0) return [];
  const line = (fault) =>
    el(
      "li",
      {},
      button(
        [el("strong", {}, nameOf(fault.id)), el("span", { class: "quiet" }, sentence(fault))],
        () => goTo(...placeOf(fault.id)),
        { class: "hit" },
      ),
      fault.why === "no item" ? putBack(fault) : null,
    );
  const more = faults.length - MOST;
  return [
    heading(2, WHAT_DOES_NOT_GO_TOGETHER),
    el("p", { class: "quiet" }, UNKNOWN_UNTIL_MENDED),
    el(
      "ul",
      { class: "found", "aria-label": WHAT_DOES_NOT_GO_TOGETHER },
      faults.slice(0, MOST).map(line),
    ),
    more > 0 ? el("p", { class: "quiet" }, andMore(more)) : null,
  ].filter(Boolean);
}

function nameOf(id) {
  const row = record(id);
  return row.type === "range_change" ? A_RUNNING_CHANGE : called(id) || A_PIECE;
}

function placeOf(id) {
  const { type } = record(id);
  const screen = SCREENS[type] ?? "row";
  return /** @type {[string, object]} */ ([screen, { id }]);
}

/** Puts the item of a variant back from the bin, where it is there. */
function putBack({ other }) {
  const item = record(other);
  if (!item || item.trashed === "" || item.gone) return null;
  return button(
    putNameBack(called(other)),
    () =>
      run(async () => {
        if (await saveChange(ITEM_PUT_BACK, [trashing(other, false)])) await redraw();
      }),
    { class: "link" },
  );
}
