import { onHomeScreen } from "../data/install.js";
import { anything } from "../data/records.js";
import { missing } from "../data/what-was-known.js";
import { button, el } from "../parts/element.js";
import { lookRound } from "./demo-offer.js";
import { startEmpty } from "./first-choice.js";
import { collectionOpen, goTo } from "../parts/navigation.js";

/**
 * At the first start: look round with the demo collection, or start with nothing. Null later on,
 * and where the browser deleted what was here, which is no first start.
 */
export function firstOffer(state) {
  if (!state.settings.first || anything() || missing()) return null;
  const then = (act) => () => collectionOpen().then(act);
  return el(
    "div",
    { class: "offer first" },
    el("p", {}, "Your collection is empty. A made-up one shows what the app can do."),
    onHomeScreen()
      ? el(
          "p",
          {},
          "What you kept in Safari before is not here. Make a backup there, and restore it here: " +
            "More, then Backup.",
        )
      : null,
    el(
      "div",
      { class: "row" },
      button("Try the demo", then(lookRound), { class: "plain" }),
      button(
        "First steps",
        then(() => goTo("steps")),
        { class: "plain" },
      ),
      button("Start empty", then(startEmpty), { class: "plain" }),
    ),
  );
}
