import { CannotGoOn } from "../data/packs.js";
import { putBy, restored } from "../data/piece-at-hand.js";
import { keepSettings } from "../data/settings.js";
import { button, el, heading } from "../parts/element.js";

/** What is shown when the app cannot show what it should: why, and the ways on. */
export function stuckScreen(state, error) {
  const own = error instanceof CannotGoOn;
  const why = own ? error.message : "Something went wrong while the app was starting.";
  const others = state.list.filter((one) => one.id !== state.opening);
  const ways = [
    ["Try again", () => location.reload()],
    ["Start again with another piece", () => startOver(state, state.settings?.range ?? "")],
    ...others.map((one) => [`Use ${one.name} instead`, () => startOver(state, one.id)]),
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
async function startOver(state, range) {
  const { piece } = await restored();
  if (piece) await putBy(piece);
  if (state.settings) await keepSettings({ ...state.settings, range });
  location.reload();
}
