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
  if (!row) return "another one";
  if (row.type === "range_item") return [row.number, row.name].filter(Boolean).join(" ");
  if (row.type === "range_variant") return row.name || "a variant without a name";
  if (row.type === "range_change") return "the other running change";
  return rowName(row);
}

const years = (text) => dateText(text);
const life = ({ id }) => {
  const row = record(id);
  return years(record(row.range ?? id)?.years ?? "");
};

const WORDS = {
  "number twice": ({ said, other }) =>
    `${called(other)} has the number ${said[0]} too. Give one of them another number, or delete ` +
    "one and add it to the other as a variant.",
  "no item": ({ other }) =>
    !record(other) || record(other).gone
      ? "The item that it is a variant of is not there any more. Choose another one in the table " +
        "of variants, or delete it."
      : "The item that it is a variant of was deleted. Put the item back, or delete it.",
  outside: (one) =>
    `${years(one.said[0])} lies outside the years of the range, ${life(one)}. Change one of ` +
    "them; those of the range stand under “About the range”.",
  "outside item": ({ said }) =>
    `${years(said[0])} lies outside the years of ${said[1]}, ${years(said[2])}. Change one of ` +
    "them.",
  unread: ({ said }) => `“${said[0]}” cannot be read as years. Write them as 1957, or 1957 to 61.`,
  day: ({ said }) => `“${said[0]}” names a day that does not exist. Write the years again.`,
  reversed: ({ said }) => `“${said[0]}” ends before it begins. Write the earlier year first.`,
  late: ({ said }) =>
    `It begins (${years(said[0])}) after it ends (${years(said[1])}). Write the earlier one first.`,
  "no years": () => "Another source gives years, but nobody else does. Fill in “Made” as well.",
  circle: ({ said }) => `These lead round in a circle: ${said.join(", then ")}. Break it at one.`,
  "not of kind": ({ field, said }) =>
    `What is seen of ${lookName(field)} is noted, which ${small(kindPlural(said[0]))} ` +
    "cannot have. Say there that they can, or remove it.",
  "no such there": ({ field }) =>
    `What is seen of ${lookName(field)} is noted, which is not asked of a piece like this. ` +
    "Remove it, or change when it is asked.",
  "change kind": () => "What changed there is on none of these kinds. Change what it is on.",
  "change item": () => "It names an item of another kind. Change what it is on.",
  "there still": ({ said }) =>
    `There still is such ${said[0] === "item" ? "a number" : "a variant"}. Delete this line.`,
  unknown: ({ said }) => `It points to “${said[1]}”, which is not there. Change or delete it.`,
};

function lookName(key) {
  return `“${keyed("range_feature", key)?.name ?? key}”`;
}

function kindPlural(key) {
  const kind = keyed("range_kind", key);
  return kind?.plural || kind?.name || "such pieces";
}

let rows = []; // of the range whose faults are told

function keyed(type, key) {
  return rows.find((row) => row.type === type && (row.key === key || row.id === key));
}

/** The sentence of a fault. @param {RowFault} fault */
function sentence(fault) {
  const words = WORDS[fault.why];
  return words
    ? words(fault)
    : "Something in it does not go together with the rest. Look through what it says.";
}

/** The faults of a range. @returns {Promise<RowFault[]>} */
async function faultsOf(range) {
  const ranging = await rangingRules();
  rows = everyRow(range);
  const found = ranging.faults_of_records(record(range), rows);
  return found.filter(({ why }) => why !== "one state"); // said where the states are listed
}

/** What does not go together of one row, where it is shown; nothing where all does. */
export async function faultsHere(row) {
  const found = (await faultsOf(row.range)).filter(({ id }) => id === row.id);
  return found.map((one) =>
    el("p", { class: "warn" }, `${sentence(one)} Until then it counts as not known.`),
  );
}

/** All that does not go together in a range, each with the way to it. */
export async function faultList(range) {
  const found = await faultsOf(range);
  if (found.length === 0) return [];
  const line = (one) =>
    el(
      "li",
      {},
      button(
        [el("strong", {}, nameOf(one.id)), el("span", { class: "quiet" }, sentence(one))],
        () => goTo(...placeOf(one.id)),
        { class: "hit" },
      ),
      one.why === "no item" ? putBack(one) : null,
    );
  const more = found.length - MOST;
  return [
    heading(2, "What does not go together"),
    el("p", { class: "quiet" }, "It counts as not known until it is put right. Nothing is lost."),
    el(
      "ul",
      { class: "found", "aria-label": "What does not go together" },
      found.slice(0, MOST).map(line),
    ),
    more > 0 ? el("p", { class: "quiet" }, `And ${more} more.`) : null,
  ].filter(Boolean);
}

function nameOf(id) {
  const row = record(id);
  return row.type === "range_change" ? "A running change" : called(id) || "A piece";
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
    `Put ${called(other)} back`,
    () =>
      run(async () => {
        if (await saveChange("Item put back", [trashing(other, false)])) await redraw();
      }),
    { class: "link" },
  );
}
