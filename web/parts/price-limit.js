import { all } from "../data/records.js";
import { el, heading } from "./element.js";
import { entry } from "./long-list.js";
import { moneyText } from "./money.js";
import { stateText, variantText } from "./piece-names.js";
import { dateText } from "./days.js";
import { goTo } from "./navigation.js";
import { packsAtHand } from "../data/known-ranges.js";
import {
  IS_THE_PRICE_RIGHT,
  limitInAnotherCurrency,
  moreThanYourLimit,
  NO_PRICE_NO_CONDITION_NOTED,
  thisOne,
  WHAT_YOU_PAID_BEFORE,
  withinYourLimit,
  YOU_PAID_BEFORE,
} from "./words.js";

const MOST = 6;

/** The price asked against the limit of a want; [] where there is no limit to hold it against. */
function againstLimit({ engine }, { pack, item, variant, asked }) {
  const want = all("want").find(
    (kept) =>
      kept.most && kept.pack === pack && kept.item === item && ["", variant].includes(kept.variant),
  );
  if (!want || !asked) return [];
  const limit = moneyText(engine, want.most);
  const { order, problem } = engine.compare_money(asked, want.most);
  if (problem !== "") return [limitInAnotherCurrency(limit)];
  return [order > 0 ? moreThanYourLimit(limit) : withinYourLimit(limit)];
}

/**
 * What was paid before for the same item, the same variant first, beside condition and box; and the
 * price asked against the limit.
 */
export async function priceBox(state, about) {
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
  const limit = againstLimit(state, { ...about, item, variant });
  if (paid.length + limit.length === 0) return null;
  const own = [about.asked ? moneyText(state.engine, about.asked) : "", stateText(about)];
  return el(
    "section",
    {},
    heading(2, about.type === "note" ? IS_THE_PRICE_RIGHT : WHAT_YOU_PAID_BEFORE),
    about.type === "note"
      ? el("p", {}, thisOne(own.filter(Boolean).join(", ") || NO_PRICE_NO_CONDITION_NOTED))
      : null,
    limit.map((text) => el("p", {}, text)),
    paid.length > 0 && about.type === "note" ? el("p", {}, YOU_PAID_BEFORE) : null,
    el(
      "ul",
      { class: "found" },
      paid.map((piece) =>
        el(
          "li",
          {},
          entry(
            [
              [moneyText(state.engine, piece.paid), dateText(piece.when)]
                .filter(Boolean)
                .join(", "),
              variantText(packsAtHand, piece),
              stateText(piece),
            ],
            () => goTo("piece", { id: piece.id }),
          ),
        ),
      ),
    ),
  );
}
