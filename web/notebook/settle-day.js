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
import {
  ALL_SETTLED,
  askedSum,
  atTable,
  BOUGHT,
  boughtName,
  CROSSED_OFF,
  DECISION,
  LEFT_IT,
  leftName,
  offerSum,
  SETTLE_THE_DAY,
  STILL_OPEN,
  WHAT_BECAME_OF_THESE,
} from "./words.js";

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
      if (await saveChange(DECISION, [edit], { said: CROSSED_OFF })) await again();
    });
  sheet(
    SETTLE_THE_DAY,
    open.length === 0 ? el("p", {}, ALL_SETTLED) : el("p", {}, WHAT_BECAME_OF_THESE),
    el(
      "ul",
      { class: "answers", "aria-label": STILL_OPEN },
      open.map((note) => {
        const name = title(packsAtHand, note);
        const money = [
          note.asked ? askedSum(moneyText(state.engine, note.asked)) : "",
          note.offer ? offerSum(moneyText(state.engine, note.offer)) : "",
          note.table ? atTable(note.table) : "",
        ];
        return el(
          "li",
          {},
          heading(3, name),
          el("p", { class: "quiet" }, money.filter(Boolean).join(" · ")),
          el(
            "div",
            { class: "row" },
            button(BOUGHT, () => askPaid(state, note.id, again), {
              class: "plain",
              "aria-label": boughtName(name),
            }),
            button(LEFT_IT, () => leave(note), {
              class: "plain",
              "aria-label": leftName(name),
            }),
          ),
        );
      }),
    ),
  );
}
