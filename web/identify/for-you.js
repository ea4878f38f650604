/** What is told of the piece in hand, and what can be done with it: for the lines of the answer. */
import { all, record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { moneyField, moneyText } from "../parts/money.js";
import { stateText, title, variantText } from "../parts/piece-names.js";
import { dateText } from "../parts/days.js";

/** What was paid for others like it. */
export function paid(state, verdict) {
  if (verdict.paid.length === 0) return [];
  return [
    heading(2, "What you paid before"),
    el(
      "ul",
      { class: "plain-list" },
      verdict.paid.slice(0, 5).map(({ piece, money, when }) => {
        const one = record(piece);
        const more = [dateText(when), stateText(one)].filter(Boolean).join(", ");
        const packs = new Map([[state.pack.id, state.pack]]);
        const called = [title(packs, one), variantText(packs, one)].filter(Boolean).join(", ");
        return el(
          "li",
          {},
          [moneyText(state.engine, money), more, called].filter(Boolean).join("; "),
        );
      }),
    ),
  ];
}

/** What is told of the piece in hand: price, condition, box. `told` hears of a change. */
export function handFields(state, act, told) {
  const hand = state.piece.hand ?? {};
  const save = (field) => async (value) => {
    const kept = await act.hand({ [field]: value });
    told();
    return kept;
  };
  const scale = [["", "Not noted"], ...state.engine.conditions().map((word) => [word, word])];
  const boxes = [
    ["", "Not noted"],
    ["yes", "Boxed"],
    ["no", "No box"],
  ];
  return [
    moneyField(state, "Price asked", hand.asked ?? null, save("asked")),
    choice("Condition", scale, hand.condition ?? "", save("condition")),
    choice("Box", boxes, hand.boxed ?? "", save("boxed")),
  ];
}

/** What can be done with it: into the collection, among the wants. */
export function ways(state, act) {
  const { id } = state.piece;
  const [owned, noted] = ["piece", "note"].map((type) =>
    all(type).find((one) => id && one.session === id),
  );
  return el(
    "div",
    { class: "row" },
    owned
      ? button("Open it in the collection", act.collect, { class: "plain" })
      : button("Add to collection", act.collect, { class: "plain" }),
    noted ? button("Open your note", act.note, { class: "plain" }) : null,
    button("Add to wants", act.want, { class: "plain" }),
  );
}
