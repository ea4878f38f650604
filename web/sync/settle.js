import { record, trashing } from "../data/records.js";
import { same } from "../data/record-shapes.js";
import { look, together } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { title } from "../parts/piece-names.js";
import { thumb } from "../parts/thumb.js";
import { unsettled } from "../parts/unsettled.js";
import { dateText, timeText } from "../parts/days.js";
import { loadRules } from "./merging-rules.js";
import { readState } from "./sync-state.js";
import { sealAll } from "./sync.js";
import { fieldName, valueText } from "../parts/field-words.js";
import { packsAtHand, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { goTo, redraw } from "../parts/navigation.js";
import {
  ANOTHER_DEVICE,
  BOTH_TOGETHER,
  budgetOf,
  CHANGED_OUT_OF_TOUCH,
  DELETED_AND_CHANGED,
  fieldOf,
  IT_IS_IN_THE_BIN,
  IT_IS_KEPT,
  KEEP_IT,
  keepName,
  KEPT,
  MOVE_IT_TO_THE_BIN,
  moveNameToTheBin,
  NOTHING_TO_SETTLE,
  OPEN_IT,
  openName,
  photoNumber,
  settledAs,
  settledField,
  SHOWN_NOW,
  TO_SETTLE,
  TO_THE_BIN,
} from "./words.js";

const OPENS = { piece: "piece", want: "want", note: "note", sighting: "sighting" };

/**
 * To settle: what was changed on two devices before either heard of the other. One value is shown
 * meanwhile; a tap says which is right. With an id, of that record only.
 */
export async function settleScreen(state, { id }) {
  const clashes = (await unsettled()).filter((row) => (!id || row.record === id) && known(row));
  const parts = [];
  for (const row of clashes) parts.push(await settling(state, row));
  return el(
    "section",
    { class: "shelf" },
    heading(1, TO_SETTLE),
    el("p", {}, clashes.length === 0 ? NOTHING_TO_SETTLE : CHANGED_OUT_OF_TOUCH),
    parts,
  );
}

function known({ record: id }) {
  const here = record(id);
  return here !== undefined && here.trashed === "";
}

async function settling(state, row) {
  const now = record(row.record);
  await readyRange(now.pack);
  const name = now.type === "budget" ? budgetOf(dateText(now.day)) : title(packsAtHand, now);
  const fields = [];
  for (const clash of clashesOf(row)) fields.push(await field(state, now, clash, name));
  return el(
    "section",
    { class: "clash", "aria-label": name },
    heading(2, name),
    OPENS[now.type]
      ? button(OPEN_IT, () => goTo(OPENS[now.type], { id: now.id }), {
          class: "link",
          "aria-label": openName(name),
        })
      : null,
    row.brought_back ? backAgain(now, name) : null,
    fields,
  );
}

/** What is offered: what is open now, and what was settled and taken back. */
function clashesOf({ clashes, reopened = [] }) {
  const open = new Set(clashes.map(({ field: name }) => name));
  return [...clashes, ...reopened.filter((clash) => !open.has(clash.field))];
}

function backAgain(now, name) {
  const done = (what, edit, said) =>
    run(async () => {
      if (!(await saveChange(what, [edit], { said }))) return;
      await sealAll();
      await redraw();
    });
  const stay = { id: now.id, alter: (it) => it && { ...it, trashed: "" }, writes: ["trashed"] };
  return [
    el("p", {}, DELETED_AND_CHANGED),
    el(
      "div",
      { class: "row" },
      button(KEEP_IT, () => done(KEPT, stay, IT_IS_KEPT), {
        class: "plain",
        "aria-label": keepName(name),
      }),
      button(MOVE_IT_TO_THE_BIN, () => done(TO_THE_BIN, trashing(now.id), IT_IS_IN_THE_BIN), {
        class: "plain",
        "aria-label": moveNameToTheBin(name),
      }),
    ),
  ];
}

async function field(state, now, clash, name) {
  const label = fieldName(clash.field);
  const pack = packsAtHand.get(now.pack);
  const choices = await choicesOf(now, clash);
  const lists = choices.every(
    ({ value }) => Array.isArray(value) && value.every((it) => typeof it === "string"),
  );
  const both = lists ? [...new Set(choices.flatMap(({ value }) => value))] : null;
  return el(
    "div",
    { class: "stack", role: "group", "aria-label": fieldOf(label, name) },
    heading(3, label),
    choices.map(({ value, from, shown }) =>
      button(
        [
          picture(clash.field, value) ?? el("strong", {}, valueText(state, value, pack)),
          el(
            "span",
            { class: "quiet" },
            [shown ? SHOWN_NOW : "", from].filter(Boolean).join(" · "),
          ),
        ],
        () => settle(now.id, clash, value),
        { class: "hit" },
      ),
    ),
    both && !choices.some(({ value }) => value.length === both.length)
      ? button(
          [
            el("strong", {}, BOTH_TOGETHER),
            picture(clash.field, both) ?? valueText(state, both, pack),
          ],
          () => settle(now.id, clash, both),
          { class: "hit" },
        )
      : null,
  );
}

function picture(name, value) {
  if (name !== "photos" || !Array.isArray(value) || value.length === 0) return null;
  return el(
    "span",
    { class: "row" },
    value.map((id, place) => thumb(id, photoNumber(place + 1))),
  );
}

/**
 * The values there are: [{value, from (device and time), shown}], each once; the shown one first.
 */
async function choicesOf(now, { field: name, values }) {
  const shown = now[name] ?? null;
  const { names } = await readState();
  const choices = [{ value: shown, from: "", shown: true }];
  for (const { text, id } of values) {
    const value = JSON.parse(text);
    const there = choices.find((other) => same(other.value, value));
    const from = await origin(names, id);
    if (!there) choices.push({ value, from, shown: false });
    else there.from ||= from;
  }
  return choices;
}

/** The device and the time that an operation came from. */
async function origin(names, id) {
  const entries = await look(["journal"], async (there) => await there.where("journal", "op", id));
  const { device } = (await loadRules()).parts_of_id(id);
  const name = Object.hasOwn(names, device) ? names[device] : ANOTHER_DEVICE;
  return entries.length > 0 ? `${name}, ${timeText(entries[0].time)}` : name;
}

function settle(id, clash, value) {
  run(async () => {
    const { field: name } = clash;
    const alter = (now) => now && !now.gone && { ...now, [name]: value };
    const said = settledField(fieldName(name));
    const edit = { id, alter, writes: [name] };
    if (!(await saveChange(settledAs(fieldName(name)), [edit], { said, settles: clash }))) return;
    await together(["clashes"], async (there) => {
      const row = await there.get("clashes", id);
      if (!row?.reopened) return;
      await there.put("clashes", {
        ...row,
        reopened: row.reopened.filter((it) => it.field !== name),
      });
    });
    await sealAll();
    await redraw();
  });
}
