/**
 * A range of one's own as one file, and such a file taken in: as a range beside the others, or put
 * together with one's own half. Where the two say different things both are kept, with who says so.
 */
import { share } from "../exchange/hand-out.js";
import { newId } from "../data/record-shapes.js";
import { run } from "../data/queue.js";
import { everything } from "../data/records.js";
import { state } from "../data/state.js";
import { button, el } from "../parts/element.js";
import { goTo } from "../parts/navigation.js";
import { saveChange } from "../parts/saving.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { holdsTogether } from "./check-range.js";
import { digest, everyRow, rangingRules } from "./keep-compiled.js";
import { newRange, ownRanges, plainWord } from "./own-range.js";
import {
  ANOTHER_COLLECTOR,
  columnsLeftOut,
  CONTRADICTS_ITSELF,
  drawingsAre,
  drawingsTooLarge,
  hasItems,
  IMPORT_IT,
  importedAndDiffers,
  importName,
  IT_HAS_1_ITEM,
  itemCount,
  itemsImported,
  KEEP_IT_BESIDE_YOURS,
  nameImported,
  nothingInThisRange,
  ONE_DRAWING_IS,
  ONE_PLACE,
  ONE_THING_MEANS,
  ONLY_USE_IT_AS_IT_IS,
  placeCount,
  putTogetherWith,
  THE_COLUMN,
  THE_COLUMNS,
  thingsMean,
  WHO_SAYS_WHAT,
  WHO_WROTE_IT,
} from "./words.js";

export const KIND = "identify range";

/** Gives a range of one's own as a file: to another app where the phone can, else to save. */
export async function handOnRange(range) {
  const ranging = await rangingRules();
  const rows = ranging.rows_of_records(range, everyRow(range.id));
  const text = JSON.stringify({ format: 1, kind: KIND, made: new Date().toISOString(), rows });
  const name = `${plainWord(range.name)}.json`;
  await share(new File([text], name, { type: "application/json" }), range.name);
}

/**
 * Asks how a range that came is to be taken in. `file`: what is in the file. `asItIs`: uses it
 * unchanged; null where it is used already.
 */
export function takeInRange(file, asItIs) {
  const { range, items } = file.rows;
  const by = typeof range.by === "string" ? range.by : "";
  const who = el("input", { type: "text", id: "range-from", autocomplete: "off", value: by });
  const mine = ownRanges().filter(
    ({ key, name }) => key === file.rows.id || name.toLowerCase() === range.name.toLowerCase(),
  );
  const done = (own) => {
    shut();
    run(() => takenIn(file.rows, own, who.value.trim()));
  };
  const shut = sheet(
    importName(range.name),
    el("p", {}, items.length === 1 ? IT_HAS_1_ITEM : hasItems(items.length)),
    warnings(file),
    el(
      "div",
      { class: "field" },
      el("label", { for: who.id }, WHO_WROTE_IT),
      who,
      el("p", { class: "quiet" }, WHO_SAYS_WHAT),
    ),
    mine.map((own) => button(putTogetherWith(own.name), () => done(own), { class: "main wide" })),
    button(mine.length > 0 ? KEEP_IT_BESIDE_YOURS : IMPORT_IT, () => done(null), {
      class: mine.length > 0 ? "plain wide" : "main wide",
    }),
    asItIs &&
      button(
        ONLY_USE_IT_AS_IT_IS,
        () => {
          shut();
          run(asItIs);
        },
        { class: "plain wide" },
      ),
  );
}

/** What of a folder is left out: {unknown, unread, large}, as `rowsOfFolder` gives them. */
function warnings({ unknown = [], unread = 0, large = 0 }) {
  const drawings = large === 1 ? ONE_DRAWING_IS : drawingsAre(large);
  const things = unread === 1 ? ONE_THING_MEANS : thingsMean(unread);
  return [
    unknown.length > 0 && leftOut(unknown),
    unread > 0 && nothingInThisRange(things, unread === 1 ? "is" : "are"),
    large > 0 && drawingsTooLarge(drawings),
  ]
    .filter(Boolean)
    .map((text) => el("p", { class: "warn" }, text));
}

/** What is said of columns that mean nothing. */
function leftOut(unknown) {
  const named = unknown.map(([, column]) => `“${column}”`);
  const columns = named.length === 1 ? THE_COLUMN : THE_COLUMNS;
  return columnsLeftOut(columns, named.join(", "), named.length === 1 ? "is" : "are");
}

/**
 * The rows as records, kept as one change. `own`: the range that they are put together with.
 * `from`: who wrote them, "" not said.
 */
async function takenIn(rows, own, from) {
  const who = from || ANOTHER_COLLECTOR;
  const made = await recordsOf(structuredClone(rows), own, who, from !== "");
  if (!made) {
    notice(CONTRADICTS_ITSELF);
    return;
  }
  const edits = made.records.map((record) => ({
    id: record.id,
    alter: (now) => ({ ...now, ...record }),
  }));
  const said =
    made.differ > 0
      ? importedAndDiffers(counted(made.added), who, times(made.differ))
      : itemsImported(counted(made.added));
  const { id, name } = made.records[0];
  if (await saveChange(nameImported(name), edits, { said }))
    goTo("own", { id }, { keepNotice: true });
}

const counted = (count) => (count === 1 ? "1 item" : itemCount(count));
const times = (count) => (count === 1 ? ONE_PLACE : placeCount(count));

/**
 * {records, added, differ}; null where the rows make none that can be kept. `named`: whether it was
 * said who wrote them.
 */
async function recordsOf(rows, own, who, named) {
  if (!holdsTogether(rows)) return null;
  const ranging = await rangingRules();
  try {
    // where its key is taken it gets one of its own, and is another range than on the next device
    const ids = own || freeKey(rows.id, "") === "" ? [] : await idsOfImport(rows, named ? who : "");
    const whole = own ?? { ...newRange({ name: rows.range.name }), ...(ids[0] && { id: ids[0] }) };
    const beside = own ? everyRow(own.id) : [];
    let both = { rows: { ...rows, id: freeKey(rows.id, whole.key) }, added: rows.items.length };
    const source = `who_${plainWord(who)}`;
    if (own) both = ranging.put_together(ranging.rows_of_records(own, beside), rows, source, who);
    else if (named) ranging.said_by(rows, source, who);
    const needed = ranging.rows_needed(both.rows);
    const fresh = Array.from({ length: needed }, (_, n) => ids[n + 1] ?? newId("r"));
    const records = ranging.records_of_rows(both.rows, whole, beside, fresh);
    const now = new Date().toISOString();
    const fault = records.some((record) =>
      state.engine.record_fault({ ...record, made: record.made ?? now, changed: now }),
    );
    return fault ? null : { differ: 0, ...both, records };
  } catch (error) {
    console.warn(error);
    return null;
  }
}

/**
 * Ids for a range that is taken in and its rows: the same on every device that takes the same in,
 * so that it is one range once they have synced. None where it was taken in here before.
 */
async function idsOfImport(rows, who) {
  const { rows_needed } = await rangingRules();
  const sum = await digest(JSON.stringify([rows, who]));
  const most = rows_needed(rows) + 2; // the range, and who wrote it
  const ids = Array.from({ length: most }, (_, n) => `r${sum}${n.toString(36).padStart(4, "0")}`);
  return everything().some(({ id }) => ids.includes(id)) ? [] : ids;
}

/** The key that a range had where it was written, unless another has it here, or in the bin. */
function freeKey(key, otherwise) {
  const own = everything().some(
    (record) => record.type === "range" && record.key === key && !record.gone,
  );
  return own || state.list.some(({ id }) => id === key) ? otherwise : key;
}
