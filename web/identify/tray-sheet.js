/** The other pieces at hand: what each is, and which of them to buy. */
import { keepTray } from "../data/tray.js";
import { run } from "../data/queue.js";
import { button, el, heading } from "../parts/element.js";
import { moneyText } from "../parts/money.js";
import { portrait } from "../parts/portrait.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { redraw } from "../parts/navigation.js";
import { packOf } from "../data/piece-at-hand.js";
import {
  A_SWIPE_BRINGS_THE_NEXT,
  askedSum,
  CLEAR_THEM_ALL,
  CLEARED_AWAY,
  GROUPS,
  NO_OTHER_PIECE_IS_AT_HAND,
  PIECES_AT_HAND,
  UNDO,
} from "./words.js";
import { NEXT_FROM_THE_SAME_BOX } from "./first-words.js";

/** Opens the list; a tap on one of them goes on with it. `act`: takeOut(id), sameBox. */
export function openTray(state, act) {
  const and = (then) => () => {
    shut();
    then();
  };
  const shut = sheet(
    PIECES_AT_HAND,
    GROUPS.map(([title, words]) => {
      const some = state.tray.filter(({ told }) => words.includes(told?.word ?? ""));
      return some.length === 0
        ? null
        : [
            heading(3, title),
            el(
              "ul",
              { class: "found", "aria-label": title },
              some.map((piece) =>
                el(
                  "li",
                  {},
                  entry(
                    state,
                    piece,
                    and(() => act.takeOut(piece.id)),
                  ),
                ),
              ),
            ),
          ];
    }),
    el(
      "p",
      { class: "quiet" },
      state.tray.length === 0 ? NO_OTHER_PIECE_IS_AT_HAND : A_SWIPE_BRINGS_THE_NEXT,
    ),
    el(
      "div",
      { class: "ways" },
      state.tray.length > 0
        ? button(
            CLEAR_THEM_ALL,
            and(() => putAway(state)),
            { class: "plain" },
          )
        : null,
      button(NEXT_FROM_THE_SAME_BOX, and(act.sameBox), { class: "plain" }),
    ),
  );
}

function entry(state, piece, open) {
  const { name, variants, verdict, asked } = piece.told;
  const here = packOf(piece) === state.pack.id && variants.length > 0;
  return button(
    [
      here ? portrait(state.pack, variants, { size: 80 }) : null,
      el(
        "span",
        { class: "lines" },
        el("strong", {}, name),
        el(
          "span",
          { class: "quiet" },
          [verdict, asked ? askedSum(moneyText(state.engine, asked)) : ""]
            .filter(Boolean)
            .join(" · "),
        ),
      ),
    ],
    open,
    { class: "hit" },
  );
}

function putAway(state) {
  const before = state.tray;
  return run(async () => {
    await keepTray([]);
    notice(CLEARED_AWAY, [[UNDO, () => run(() => keepTray(before).then(redraw))]]);
    await redraw();
  });
}
