/** In the evening: what of today is still open, one after the other: bought, left, or not yet. */
import { packsAtHand } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { button, el, heading } from "../parts/element.js";
import { moneyText } from "../parts/money.js";
import { redraw } from "../parts/navigation.js";
import { title } from "../parts/piece-names.js";
import { saveChange } from "../parts/saving.js";
import { sheet } from "../parts/sheet.js";
import { askPaid } from "./bought.js";
import { openToday } from "./meet-day.js";

/** Opens the list of today. */
export function openSettling(state) {
  const open = openToday();
  const again = async () => {
    await redraw();
    openSettling(state);
  };
  const leave = (note) =>
    run(async () => {
      const edit = { id: note.id, alter: (now) => ({ ...now, decision: "left" }) };
      if (await saveChange("Decision", [edit], { said: "Crossed off." })) await again();
    });
  sheet(
    "Settle the day",
    open.length === 0
      ? el("p", {}, "Everything from today is settled.")
      : el("p", {}, "What became of these? Bought asks what you paid in the end."),
    el(
      "ul",
      { class: "answers", "aria-label": "Still open" },
      open.map((note) => {
        const name = title(packsAtHand, note);
        const money = [
          note.asked ? `asked ${moneyText(state.engine, note.asked)}` : "",
          note.offer ? `offer ${moneyText(state.engine, note.offer)}` : "",
          note.table ? `table ${note.table}` : "",
        ];
        return el(
          "li",
          {},
          heading(3, name),
          el("p", { class: "quiet" }, money.filter(Boolean).join(" · ")),
          el(
            "div",
            { class: "row" },
            button("Bought", () => askPaid(state, note.id, again), {
              class: "plain",
              "aria-label": `Bought: ${name}`,
            }),
            button("Left it", () => leave(note), {
              class: "plain",
              "aria-label": `Left it: ${name}`,
            }),
          ),
        );
      }),
    ),
  );
}
