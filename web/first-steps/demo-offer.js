/** The demo collection: offered where nothing is kept yet, taken away again. */
import { all } from "../data/records.js";
import { missing } from "../data/what-was-known.js";
import { button, el } from "../parts/element.js";
import { loaded } from "../parts/loaded-later.js";
import { startEmpty } from "./first-choice.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { redraw } from "../parts/navigation.js";

/**
 * For an empty collection: look round with a made-up one, or start with nothing. Not where a server
 * would get it.
 */
export function demoOffer(state) {
  if (missing()) return el("p", {}, "Nothing is here: this browser has deleted it.");
  const none = "Nothing is in your collection yet.";
  if (state.settings.paired) return el("p", {}, none);
  return el(
    "div",
    { class: "offer" },
    el(
      "p",
      {},
      `${none} You can look round with a demo collection: it is made up, and can be removed ` +
        "again.",
    ),
    el(
      "div",
      { class: "row" },
      button("Try the demo", () => lookRound(), { class: "main" }),
      state.settings.first ? button("Start empty", () => startEmpty(), { class: "plain" }) : null,
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
    .filter((one) => one.demo)
    .map(({ id }) => id);
  if (ids.length === 0) return null;
  return button(
    "Remove the demo collection",
    () =>
      run(async () => {
        const time = new Date().toISOString();
        const edits = ids.map((id) => ({ id, alter: (now) => ({ ...now, trashed: time }) }));
        const said = "The demo collection is in the bin.";
        if (await saveChange("Demo collection removed", edits, { said })) await redraw();
      }),
    { class: "plain wide" },
  );
}
