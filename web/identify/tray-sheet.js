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

const GROUPS = [
  ["Worth buying", ["wanted", "completes", "upgrade"]],
  ["Not in your collection", ["new"]],
  ["Look closer", ["", "unrecorded", "item", "other"]],
  ["In your collection", ["same"]],
];

/** Opens the list; a tap on one of them goes on with it. `act`: takeOut(id), sameBox. */
export function openTray(state, act) {
  const and = (then) => () => {
    shut();
    then();
  };
  const shut = sheet(
    "Pieces at hand",
    GROUPS.map(([title, words]) => {
      const some = state.tray.filter(({ told }) => words.includes(told?.word ?? ""));
      return some.length === 0
        ? null
        : [
            heading(3, title),
            el(
              "ul",
              { class: "found", "aria-label": title },
              some.map((one) =>
                el(
                  "li",
                  {},
                  entry(
                    state,
                    one,
                    and(() => act.takeOut(one.id)),
                  ),
                ),
              ),
            ),
          ];
    }),
    el(
      "p",
      { class: "quiet" },
      state.tray.length === 0
        ? "No other piece is at hand."
        : "A swipe to the left brings up the next one.",
    ),
    el(
      "div",
      { class: "ways" },
      state.tray.length > 0
        ? button(
            "Clear them all",
            and(() => putAway(state)),
            { class: "plain" },
          )
        : null,
      button("Next from the same box", and(act.sameBox), { class: "plain" }),
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
          [verdict, asked ? `${moneyText(state.engine, asked)} asked` : ""]
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
    notice("They are cleared away. Their notes stay in the notebook.", [
      ["Undo", () => run(() => keepTray(before).then(redraw))],
    ]);
    await redraw();
  });
}
