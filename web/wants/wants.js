import { all, record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { choice, longField, textField, ticks } from "../parts/fields.js";
import { entry, longList } from "../parts/long-list.js";
import { moneyField, moneyText } from "../parts/money.js";
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

/** The wants, the most urgent first, as `listOf` draws them. */
export function wantsScreen(state, at, listOf = wantList) {
  const wants = sortedWants();
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Wants"),
    wants.length === 0
      ? [
          emptyPicture("wanted"),
          el("p", {}, "Nothing yet. When you identify a piece on this list, the app will say so."),
        ]
      : null,
    el(
      "div",
      { class: "row" },
      button("Add a want", () => goTo("choose", { into: "want" }), { class: "main" }),
      wants.length === 0
        ? null
        : [
            button("Print", () => goTo("print", { what: "wants" }), { class: "plain" }),
            button("Share as text", () => share("Wants", wantsText(state, wants)), {
              class: "plain",
            }),
          ],
    ),
    button("What is missing from sets and trains", () => goTo("formations"), {
      class: "link",
    }),
    ...listOf(state, wants, at.drawn),
  );
}

function wantList(state, wants, first) {
  return longList("Wants", wants, (want) => wantRow(state, want), first);
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
  const scale = [["", "Any"], ...state.engine.conditions().map((word) => [word, word])];
  return el(
    "section",
    { class: "shelf" },
    heading(1, title(packsAtHand, want)),
    recordFigure(want),
    await unsettledLine(id),
    want.item === ""
      ? [
          textField("What it is", want.called, save("called", "Name"), {
            hint: "Its number and name, for example: 304 brake coach.",
          }),
          await knownNow(state, want),
        ]
      : choice(
          "Variant",
          [
            ["", "Any variant"],
            ...variants.map((one) => [pack.variants[one].id, variantLabel(pack, one)]),
          ],
          want.variant,
          save("variant", "Variant"),
        ),
    choice("Lowest condition", scale, want.least, save("least", "Lowest condition")),
    ticks("Box", [["yes", "Only with its box"]], want.box === "yes" ? ["yes"] : [], (on) =>
      save("box", "Box")(on[0] ?? ""),
    ),
    moneyField(state, "Most to pay", want.most, save("most", "Most to pay")),
    choice(
      "How urgent",
      [
        ["3", "Urgent"],
        ["2", "Ordinary"],
        ["1", "No hurry"],
      ],
      String(want.urgency),
      (value) => save("urgency", "Urgency")(Number(value)),
    ),
    longField("Notes", want.notes, save("notes", "Notes")),
    await priceBox(state, { ...want, of: [{ variant: want.variant }] }),
    el(
      "div",
      { class: "stack" },
      button("History", () => goTo("changes", { id }), { class: "plain wide" }),
      button("Move to the bin", () => discard(id, "The want"), { class: "plain wide" }),
    ),
  );
}
