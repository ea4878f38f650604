import { all } from "../data/records.js";
import { el, heading } from "./element.js";
import { entry } from "./list.js";
import { moneyText } from "./money.js";
import { stateText, variantText } from "./naming.js";
import { dayText } from "./when.js";

const MOST = 6;

/** What was paid before for the same item, the same variant first, beside condition and box. */
export async function priceBox(app, keep, about) {
  const item = about.type === "note" ? about.of[0]?.item : about.item;
  if (!item) return null;
  const variant = about.of[0]?.variant;
  const likeness = (piece) => (piece.of[0]?.variant === variant ? 0 : 1);
  const paid = all("piece")
    .filter(
      (piece) =>
        piece.paid && piece.item === item && piece.pack === about.pack && piece.id !== about.id,
    )
    .sort((a, b) => likeness(a) - likeness(b) || (a.when < b.when ? 1 : -1))
    .slice(0, MOST);
  if (paid.length === 0) return null;
  return el(
    "section",
    {},
    heading(2, "What you paid before"),
    el(
      "ul",
      { class: "found" },
      paid.map((piece) =>
        el(
          "li",
          {},
          entry(
            [
              [moneyText(app.engine, piece.paid), dayText(piece.when)].filter(Boolean).join(", "),
              variantText(keep.packs, piece),
              stateText(piece),
            ],
            () => keep.open("piece", { id: piece.id }),
          ),
        ),
      ),
    ),
  );
}
