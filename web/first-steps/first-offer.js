import { onHomeScreen } from "../data/install.js";
import { anything } from "../data/records.js";
import { missing } from "../data/what-was-known.js";
import { button, el } from "../parts/element.js";
import { lookRound } from "./demo-offer.js";
import { startEmpty } from "./first-choice.js";
import { collectionOpen, goTo } from "../parts/navigation.js";
import {
  EMPTY_COLLECTION,
  FIRST_STEPS,
  KEPT_IN_SAFARI_BEFORE,
  START_EMPTY,
  TRY_THE_DEMO,
} from "./first-words.js";

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
    el("p", {}, EMPTY_COLLECTION),
    onHomeScreen() ? el("p", {}, KEPT_IN_SAFARI_BEFORE) : null,
    el(
      "div",
      { class: "row" },
      button(TRY_THE_DEMO, then(lookRound), { class: "plain" }),
      button(
        FIRST_STEPS,
        then(() => goTo("steps")),
        { class: "plain" },
      ),
      button(START_EMPTY, then(startEmpty), { class: "plain" }),
    ),
  );
}
