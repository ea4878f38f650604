/** What the answer means for the collector, and what to do about it: below what the piece is. */
import { all, record } from "../data/records.js";
import { chance } from "../parts/chance.js";
import { button, el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { moneyField, moneyText } from "../parts/money.js";
import { stateText, title, variantText } from "../parts/piece-names.js";
import { leading, verdictReasons, verdictTitle } from "./verdict-words.js";
import { dateText } from "../parts/days.js";

/** The box with the verdict; it draws itself anew when condition, box or price are told. */
export function forYou(state, act) {
  const said = el("div", { class: "said" });
  const heads = state.view.stop === "verdict"; // the verdict is the title of the screen
  const draw = () => {
    said.replaceChildren(...verdictNodes(state, heads));
    if (heads && said.isConnected)
      document.querySelector("#screen h1").textContent = verdictTitle(state.view.verdict);
  };
  draw();
  return el("section", { class: "for-you" }, said, handFields(state, act, draw), ways(state, act));
}

function verdictNodes(state, heads) {
  const { verdict } = state.view;
  if (!verdict) return [];
  return [
    heads ? "" : el("p", { class: "verdict-title" }, verdictTitle(verdict)),
    chance(leading(verdict).chance, " sure"),
    ...verdictReasons(state, verdict).map((text) => el("p", {}, text)),
    ...paid(state, verdict),
  ];
}

function paid(state, verdict) {
  if (verdict.paid.length === 0) return [];
  return [
    heading(2, "What you paid before"),
    el(
      "ul",
      { class: "plain-list" },
      verdict.paid.slice(0, 5).map(({ piece, money, when }) => {
        const one = record(piece);
        const more = [dateText(when), stateText(one)].filter(Boolean).join(", ");
        const packs = new Map([[state.pack.id, state.pack]]);
        const called = [title(packs, one), variantText(packs, one)].filter(Boolean).join(", ");
        return el(
          "li",
          {},
          [moneyText(state.engine, money), more, called].filter(Boolean).join("; "),
        );
      }),
    ),
  ];
}

function handFields(state, act, draw) {
  const hand = state.piece.hand ?? {};
  const save = (field) => async (value) => {
    const kept = await act.hand({ [field]: value });
    draw();
    return kept;
  };
  const scale = [["", "Not said"], ...state.engine.conditions().map((word) => [word, word])];
  const boxes = [
    ["", "Not said"],
    ["yes", "Boxed"],
    ["no", "No box"],
  ];
  return el(
    "details",
    { class: "filters" },
    el("summary", {}, "Its condition, box and price"),
    choice("Condition", scale, hand.condition ?? "", save("condition")),
    choice("Box", boxes, hand.boxed ?? "", save("boxed")),
    moneyField(state, "Price asked", hand.asked ?? null, save("asked")),
  );
}

function ways(state, act) {
  const { id } = state.piece;
  const [owned, noted] = ["piece", "note"].map((type) =>
    all(type).find((one) => id && one.session === id),
  );
  return el(
    "div",
    { class: "row" },
    owned
      ? button("Open it in the collection", act.collect, { class: "plain" })
      : button("Add to the collection", act.collect, { class: "plain" }),
    button(noted ? "Open your note" : "Note it", act.note, { class: "plain" }),
    button("I want it", act.want, { class: "plain" }),
  );
}
