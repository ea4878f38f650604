import { record } from "../data/records.js";
import { newId } from "../data/record-shapes.js";
import { act } from "../identify/identify.js";
import { askPaid } from "./bought.js";
import { withKeypad } from "../parts/keypad.js";
import { chance } from "../parts/chance.js";
import { button, el, heading } from "../parts/element.js";
import { longField, textField } from "../parts/fields.js";
import { moneyField } from "../parts/money-field.js";
import { title, variantPlace } from "../parts/piece-names.js";
import { photoBox } from "../parts/photobox.js";
import { portrait } from "../parts/portrait.js";
import { priceBox } from "../parts/price-limit.js";
import { recordFigure } from "../parts/record-picture.js";
import { variantName } from "../parts/say.js";
import { unsettledLine } from "../parts/unsettled.js";
import { conditionFields, discard, gone } from "../collection/piece.js";
import { packsAtHand, readyRange } from "../data/known-ranges.js";
import { saveChange, saver } from "../parts/saving.js";
import { run } from "../data/queue.js";
import { goTo, redraw } from "../parts/navigation.js";
import {
  ANY_WORDS_FOR_WHEN,
  BOUGHT,
  BOUGHT_ADD_TO_COLLECTION,
  COME_BACK_AT,
  CROSSED_OFF,
  DECISION,
  GO_ON_IDENTIFYING,
  HALL,
  HISTORY,
  IDENTIFIED,
  IDENTIFY_IT,
  LEFT,
  LEFT_IT_CROSS_IT_OFF,
  MOVE_TO_THE_BIN,
  MY_OFFER,
  NEXT_FROM_THE_SAME_BOX,
  NOTE,
  OFFER,
  OPEN_IT_IN_THE_COLLECTION,
  PRICE_ASKED,
  STILL_TO_DECIDE,
  TABLE,
  THE_NOTE,
  TO_BE_DECIDED_AGAIN,
} from "./words.js";

/** One note: what was seen at a stall, what it costs, and what becomes of it. */
export async function noteScreen(state, { id }) {
  const note = record(id);
  if (!note || note.trashed !== "") return gone();
  await readyRange(note.pack);
  const save = (field, what) => saver(id, field, what);
  const price = el("div", {}, await priceBox(state, note));
  const priced = (keep) => async (value) => {
    const kept = await keep(value);
    price.replaceChildren(...[await priceBox(state, record(id))].filter(Boolean));
    return kept;
  };
  return el(
    "section",
    { class: "shelf" },
    el("p", { class: "kicker" }, { open: NOTE, bought: BOUGHT, left: LEFT }[note.decision] ?? NOTE),
    heading(1, title(packsAtHand, note)),
    recordFigure(note),
    await unsettledLine(id),
    candidates(note),
    onwards(note),
    el(
      "div",
      { class: "side-by-side" },
      moneyField(state, PRICE_ASKED, note.asked, priced(save("asked", PRICE_ASKED))),
      keyed(textField(TABLE, note.table, save("table", TABLE))),
      moneyField(state, MY_OFFER, note.offer, save("offer", OFFER)),
      textField(HALL, note.hall, save("hall", HALL)),
    ),
    photoBox(id),
    textField(COME_BACK_AT, note.come_back, save("come_back", COME_BACK_AT), {
      hint: ANY_WORDS_FOR_WHEN,
    }),
    longField(NOTE, note.text, save("text", NOTE)),
    conditionFields(state, note, save),
    price,
    decide(state, note),
    el(
      "div",
      { class: "stack" },
      button(HISTORY, () => goTo("changes", { id }), { class: "plain wide" }),
      button(MOVE_TO_THE_BIN, () => discard(id, THE_NOTE), { class: "plain wide" }),
    ),
  );
}

/** Tables have numbers, and some a letter. */
function keyed(field) {
  withKeypad(field.querySelector("input"), () => [..."1234567890ABCDEF"]);
  return field;
}

/** On with identifying: this piece, or the next one from where it came from. */
function onwards(note) {
  if (note.decision !== "open") return null;
  return el(
    "div",
    { class: "ways" },
    button(note.answers.length > 0 ? GO_ON_IDENTIFYING : IDENTIFY_IT, () => goOn(note), {
      class: "plain",
    }),
    note.answers.length > 0
      ? button(NEXT_FROM_THE_SAME_BOX, act.sameBox, { class: "plain" })
      : null,
  );
}

/** Goes on with the piece of a note, which gets a name in it if it has none yet. */
async function goOn(note) {
  const session = note.session || newId("s");
  if (!note.session)
    await run(() =>
      saveChange(IDENTIFIED, [{ id: note.id, alter: (now) => ({ ...now, session }) }]),
    );
  await act.resume({ ...note, session });
}

function candidates(note) {
  const pack = packsAtHand.get(note.pack);
  const known = note.of.filter((entry) => variantPlace(pack, entry.variant) >= 0).slice(0, 4);
  if (known.length === 0) return null;
  return el(
    "ul",
    { class: "alike" },
    known.map((entry) =>
      el(
        "li",
        {},
        // one alone stands large above
        known.length > 1 ? portrait(pack, variantPlace(pack, entry.variant), { size: 80 }) : null,
        el("span", {}, variantName(pack, variantPlace(pack, entry.variant))),
        chance(entry.chance),
      ),
    ),
  );
}

function decide(state, note) {
  const to = (decision, said) =>
    run(async () => {
      const edit = { id: note.id, alter: (now) => ({ ...now, decision }) };
      if (await saveChange(DECISION, [edit], { said })) await redraw();
    });
  if (note.decision === "bought" && record(note.piece)?.trashed === "")
    return button(OPEN_IT_IN_THE_COLLECTION, () => goTo("piece", { id: note.piece }), {
      class: "main wide",
    });
  return el(
    "div",
    { class: "stack" },
    button(BOUGHT_ADD_TO_COLLECTION, () => askPaid(state, note.id), { class: "main wide" }),
    note.decision === "open"
      ? button(LEFT_IT_CROSS_IT_OFF, () => to("left", CROSSED_OFF), { class: "plain wide" })
      : button(STILL_TO_DECIDE, () => to("open", TO_BE_DECIDED_AGAIN), {
          class: "plain wide",
        }),
  );
}
