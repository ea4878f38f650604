import { all, record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { choice, longField, textField, ticks } from "../parts/fields.js";
import { entry, longListFrom } from "../parts/long-list.js";
import { moneyText } from "../parts/money.js";
import { moneyField } from "../parts/money-field.js";
import { itemPlace, title, variantLabel, variantText, variantsOf } from "../parts/piece-names.js";
import { share, wantsText } from "./share-wants.js";
import { priceBox } from "../parts/price-limit.js";
import { recordFigure, recordPicture } from "../parts/record-picture.js";
import { unsettledLine } from "../parts/unsettled.js";
import { knownNow } from "../collection/known-now.js";
import { discard, gone } from "../collection/piece.js";
import { saver } from "../parts/saving.js";
import { goTo } from "../parts/navigation.js";
import { packsAtHand } from "../data/known-ranges.js";
import {
  ADD_A_WANT,
  ANY,
  ANY_VARIANT,
  BOX,
  EXAMPLE_OF_A_NAME,
  HISTORY,
  HOW_URGENT,
  LOWEST_CONDITION,
  MISSING_FROM_SETS,
  MOST_TO_PAY,
  MOVE_TO_THE_BIN,
  NAME,
  NO_HURRY,
  NO_WANTS_YET,
  NOTES,
  ONLY_WITH_ITS_BOX,
  ORDINARY,
  PRINT,
  SHARE_AS_TEXT,
  THE_WANT,
  URGENCY,
  URGENT,
  VARIANT,
  WANTS,
  WHAT_IT_IS,
} from "./words.js";

/** The wants, the most urgent first, as `listOf` draws them. */
export async function wantsScreen(state, at, listOf = wantList) {
  const wants = sortedWants();
  return el(
    "section",
    { class: "shelf" },
    heading(1, WANTS),
    wants.length === 0 ? [emptyPicture("wanted"), el("p", {}, NO_WANTS_YET)] : null,
    el(
      "div",
      { class: "row" },
      button(ADD_A_WANT, () => goTo("choose", { into: "want" }), { class: "main" }),
      wants.length === 0
        ? null
        : [
            button(PRINT, () => goTo("print", { what: "wants" }), { class: "plain" }),
            button(SHARE_AS_TEXT, () => share(WANTS, wantsText(state, wants)), {
              class: "plain",
            }),
          ],
    ),
    button(MISSING_FROM_SETS, () => goTo("formations"), {
      class: "link",
    }),
    ...(await listOf(state, wants, at.drawn)),
  );
}

function wantList(state, wants, first) {
  return longListFrom(WANTS, wants, (want) => wantRow(state, want), first);
}

/** The wants in the order of urgency, then by number. */
export function sortedWants() {
  const place = (want) => itemPlace(packsAtHand.get(want.pack), want.item);
  return all("want").sort((a, b) => b.urgency - a.urgency || place(a) - place(b));
}

/** A want as an entry of a list. */
export function wantRow(state, want) {
  const terms = state.engine.want_words(want, moneyText(state.engine, want.most));
  return entry(
    [title(packsAtHand, want), variantText(packsAtHand, want), terms.join(" · ")],
    () => goTo("want", { id: want.id }),
    recordPicture(want),
  );
}

/** One want. */
export async function wantScreen(state, { id }) {
  const want = record(id);
  if (!want || want.trashed !== "") return gone();
  const save = (field, what) => saver(id, field, what);
  const pack = packsAtHand.get(want.pack);
  const item = itemPlace(pack, want.item);
  const variants = item < 0 ? [] : variantsOf(pack, item);
  const scale = [["", ANY], ...state.engine.conditions().map((word) => [word, word])];
  return el(
    "section",
    { class: "shelf" },
    heading(1, title(packsAtHand, want)),
    recordFigure(want),
    await unsettledLine(id),
    want.item === ""
      ? [
          textField(WHAT_IT_IS, want.called, save("called", NAME), {
            hint: EXAMPLE_OF_A_NAME,
          }),
          await knownNow(state, want),
        ]
      : choice(
          VARIANT,
          [
            ["", ANY_VARIANT],
            ...variants.map((place) => [pack.variants[place].id, variantLabel(pack, place)]),
          ],
          want.variant,
          save("variant", VARIANT),
        ),
    choice(LOWEST_CONDITION, scale, want.least, save("least", LOWEST_CONDITION)),
    ticks(BOX, [["yes", ONLY_WITH_ITS_BOX]], want.box === "yes" ? ["yes"] : [], (on) =>
      save("box", BOX)(on[0] ?? ""),
    ),
    moneyField(state, MOST_TO_PAY, want.most, save("most", MOST_TO_PAY)),
    choice(
      HOW_URGENT,
      [
        ["3", URGENT],
        ["2", ORDINARY],
        ["1", NO_HURRY],
      ],
      String(want.urgency),
      (value) => save("urgency", URGENCY)(Number(value)),
    ),
    longField(NOTES, want.notes, save("notes", NOTES)),
    await priceBox(state, { ...want, of: [{ variant: want.variant }] }),
    el(
      "div",
      { class: "stack" },
      button(HISTORY, () => goTo("changes", { id }), { class: "plain wide" }),
      button(MOVE_TO_THE_BIN, () => discard(id, THE_WANT), { class: "plain wide" }),
    ),
  );
}
