/** The demo collection: offered where nothing is kept yet, taken away again. */
import { all } from "../data/records.js";
import { missing } from "../data/what-was-known.js";
import { button, el } from "../parts/element.js";
import { loaded } from "../parts/loaded-later.js";
import { startEmpty } from "./first-choice.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { redraw } from "../parts/navigation.js";
import {
  BROWSER_DELETED_IT,
  DEMO_COLLECTION_REMOVED,
  DEMO_IN_THE_BIN,
  lookRoundWithDemo,
  NOTHING_IN_COLLECTION,
  REMOVE_THE_DEMO_COLLECTION,
  START_EMPTY,
  TRY_THE_DEMO,
} from "./first-words.js";

/**
 * For an empty collection: look round with a made-up one, or start with nothing. Not where a server
 * would get it.
 */
export function demoOffer(state) {
  if (missing()) return el("p", {}, BROWSER_DELETED_IT);
  const none = NOTHING_IN_COLLECTION;
  if (state.settings.paired) return el("p", {}, none);
  return el(
    "div",
    { class: "offer" },
    el("p", {}, lookRoundWithDemo(none)),
    el(
      "div",
      { class: "row" },
      button(TRY_THE_DEMO, () => lookRound(), { class: "main" }),
      state.settings.first ? button(START_EMPTY, () => startEmpty(), { class: "plain" }) : null,
    ),
  );
}

/** Puts the demo collection in. */
export async function lookRound() {
  await (await loaded(import("./demo.js"))).takeDemo();
}

/** The button that takes the demo collection away; null where there is none. */
export function demoAway() {
  const ids = ["piece", "want", "note", "budget"]
    .flatMap(all)
    .filter((kept) => kept.demo)
    .map(({ id }) => id);
  if (ids.length === 0) return null;
  return button(
    REMOVE_THE_DEMO_COLLECTION,
    () =>
      run(async () => {
        const time = new Date().toISOString();
        const edits = ids.map((id) => ({ id, alter: (now) => ({ ...now, trashed: time }) }));
        const said = DEMO_IN_THE_BIN;
        if (await saveChange(DEMO_COLLECTION_REMOVED, edits, { said })) await redraw();
      }),
    { class: "plain wide" },
  );
}
