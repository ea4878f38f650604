import { all, record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { choice, longField, ticks } from "../parts/fields.js";
import { entry, longList } from "../parts/long-list.js";
import { moneyField, moneyText } from "../parts/money.js";
import { itemPlace, title, variantLabel, variantText, variantsOf } from "../parts/piece-names.js";
import { share, wantsText } from "./share-wants.js";
import { priceBox } from "../parts/price-limit.js";
import { unsettledLine } from "../parts/unsettled.js";
import { discard, gone } from "../collection/piece.js";

/** The wants, the most urgent first, as `listOf` draws them. */
export function wantsScreen(app, keep, at, listOf = wantList) {
  const wants = sortedWants(keep);
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Wants"),
    wants.length === 0
      ? el("p", {}, "Nothing yet. When you identify a piece that you want, the app will say so.")
      : null,
    el(
      "div",
      { class: "row" },
      button("Add a want", () => keep.open("choose", { into: "want" }), { class: "main" }),
      wants.length === 0
        ? null
        : [
            button("Print", () => keep.open("print", { what: "wants" }), { class: "plain" }),
            button("Share as text", () => share("Wants", wantsText(app, keep, wants)), {
              class: "plain",
            }),
          ],
    ),
    button("What is missing from sets and trains", () => keep.open("formations"), {
      class: "link",
    }),
    ...listOf(app, keep, wants, at.drawn),
  );
}

function wantList(app, keep, wants, first) {
  return longList("Wants", wants, (want) => wantRow(app, keep, want), first);
}

/** The wants in the order of urgency, then by number. */
export function sortedWants(keep) {
  const place = (want) => itemPlace(keep.packs.get(want.pack), want.item);
  return all("want").sort((a, b) => b.urgency - a.urgency || place(a) - place(b));
}

/** A want as an entry of a list. */
export function wantRow(app, keep, want) {
  const terms = app.engine.want_words(want, moneyText(app.engine, want.most));
  return entry([title(keep.packs, want), variantText(keep.packs, want), terms.join(" · ")], () =>
    keep.open("want", { id: want.id }),
  );
}

/** One want. */
export async function wantScreen(app, keep, { id }) {
  const want = record(id);
  if (!want || want.trashed !== "") return gone(keep);
  const save = (field, what) => keep.saver(id, field, what);
  const pack = keep.packs.get(want.pack);
  const item = itemPlace(pack, want.item);
  const variants = item < 0 ? [] : variantsOf(pack, item);
  const scale = [["", "Any"], ...app.engine.conditions().map((word) => [word, word])];
  return el(
    "section",
    { class: "shelf" },
    heading(1, title(keep.packs, want)),
    await unsettledLine(keep, id),
    choice(
      "Variant",
      [
        ["", "Any variant"],
        ...variants.map((one) => [pack.variants[one].id, variantLabel(pack, one)]),
      ],
      want.variant,
      save("variant", "Variant"),
    ),
    choice("At least in condition", scale, want.least, save("least", "Least condition")),
    ticks("Box", [["yes", "Only with its box"]], want.box === "yes" ? ["yes"] : [], (on) =>
      save("box", "Box")(on[0] ?? ""),
    ),
    moneyField(app, "Most to pay", want.most, save("most", "Most to pay")),
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
    await priceBox(app, keep, { ...want, of: [{ variant: want.variant }] }),
    el(
      "div",
      { class: "stack" },
      button("What was changed", () => keep.open("changes", { id }), { class: "plain wide" }),
      button("Move to the trash", () => discard(keep, id, "The want"), { class: "plain wide" }),
    ),
  );
}
