/** What is told of the piece in hand, and what can be done with it: for the lines of the answer. */
import { all, record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { moneyText } from "../parts/money.js";
import { moneyField } from "../parts/money-field.js";
import { stateText, title, variantText } from "../parts/piece-names.js";
import { dateText } from "../parts/days.js";
import {
  ADD_TO_COLLECTION,
  NO_BOX,
  OPEN_IT_IN_THE_COLLECTION,
  OPEN_YOUR_NOTE,
} from "./first-words.js";
import {
  ADD_IT_TO_WANTS,
  BOX,
  BOXED,
  CONDITION,
  NOT_NOTED,
  PRICE_ASKED,
  WHAT_YOU_PAID_BEFORE,
} from "./words.js";

/** What was paid for others like it. */
export function paid(state, verdict) {
  if (verdict.paid.length === 0) return [];
  return [
    heading(2, WHAT_YOU_PAID_BEFORE),
    el(
      "ul",
      { class: "plain-list" },
      verdict.paid.slice(0, 5).map(({ piece, money, when }) => {
        const earlier = record(piece);
        const more = [dateText(when), stateText(earlier)].filter(Boolean).join(", ");
        const packs = new Map([[state.pack.id, state.pack]]);
        const called = [title(packs, earlier), variantText(packs, earlier)]
          .filter(Boolean)
          .join(", ");
        return el(
          "li",
          {},
          [moneyText(state.engine, money), more, called].filter(Boolean).join("; "),
        );
      }),
    ),
  ];
}

/** What is told of the piece in hand: price, condition, box. `changed` hears of a change. */
export function handFields(state, act, changed) {
  const hand = state.piece.hand ?? {};
  const save = (field) => async (value) => {
    const kept = await act.hand({ [field]: value });
    changed();
    return kept;
  };
  const scale = [["", NOT_NOTED], ...state.engine.conditions().map((word) => [word, word])];
  const boxes = [
    ["", NOT_NOTED],
    ["yes", BOXED],
    ["no", NO_BOX],
  ];
  return [
    moneyField(state, PRICE_ASKED, hand.asked ?? null, save("asked")),
    choice(CONDITION, scale, hand.condition ?? "", save("condition")),
    choice(BOX, boxes, hand.boxed ?? "", save("boxed")),
  ];
}

/** What can be done with it: into the collection, among the wants. */
export function ways(state, act) {
  const { id } = state.piece;
  const [owned, noted] = ["piece", "note"].map((type) =>
    all(type).find((kept) => id && kept.session === id),
  );
  return el(
    "div",
    { class: "row" },
    owned
      ? button(OPEN_IT_IN_THE_COLLECTION, act.collect, { class: "plain" })
      : button(ADD_TO_COLLECTION, act.collect, { class: "plain" }),
    noted ? button(OPEN_YOUR_NOTE, act.note, { class: "plain" }) : null,
    button(ADD_IT_TO_WANTS, act.want, { class: "plain" }),
  );
}
