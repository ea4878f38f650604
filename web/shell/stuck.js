import { CannotGoOn } from "../data/packs.js";
import { putBy, restored } from "../data/piece-at-hand.js";
import { keepSettings } from "../data/settings.js";
import { button, el, heading } from "../parts/element.js";

/** What is shown when the app cannot show what it should: why, and the ways on. */
export function stuckScreen(app, error) {
  const own = error instanceof CannotGoOn;
  const why = own ? error.message : "Something went wrong while the app was starting.";
  const others = app.list.filter((one) => one.id !== app.opening);
  const ways = [
    ["Try again", () => location.reload()],
    ["Start again with another piece", () => startOver(app, app.settings?.range ?? "")],
    ...others.map((one) => [`Use ${one.name} instead`, () => startOver(app, one.id)]),
  ];
  const buttons = ways.map(([label, act]) => button(label, act, { class: "plain wide" }));
  return el(
    "section",
    { class: "answer" },
    heading(1, "The app cannot go on"),
    el("p", {}, why),
    el("div", { class: "stack" }, buttons),
  );
}

/** Puts the piece by and opens the app again with this range. */
async function startOver(app, range) {
  const { piece } = await restored();
  if (piece) await putBy(piece);
  if (app.settings) await keepSettings({ ...app.settings, range });
  location.reload();
}
