/** What stands behind More at a question: its full wording, and all that is not an answer. */
import { current } from "../data/piece-at-hand.js";
import { drawing } from "../parts/drawing.js";
import { button, el } from "../parts/element.js";
import { effort, limit, small } from "../parts/say.js";
import { sheet } from "../parts/sheet.js";
import { CHECK } from "./held-claim.js";
import { trayText } from "./left-aside.js";
import { AGAIN, CHECKING } from "./question.js";

/** @import { Feature } from "../data/engine-types.d.ts" */

const MARK = /(?:^|_)mark_/;

/**
 * Opens the sheet. `card`: {about, chosen}.
 * @param {any} state
 * @param {Feature} feature
 * @param {{about: string, chosen: boolean}} card
 * @param {any} act
 */
export function openQuestionMore(state, feature, { about, chosen }, act) {
  const { pack } = state;
  const { session } = current(state.piece);
  const way = (label, then) =>
    button(
      label,
      () => {
        shut();
        then();
      },
      { class: "plain" },
    );
  const told = { check: CHECKING, again: AGAIN }[about];
  const count = session.answers.length;
  const answers = count === 1 ? "1 answer" : `${count} answers`;
  const shut = sheet(
    feature.question,
    el("p", {}, feature.where),
    told ? el("p", {}, told) : null,
    el("p", { class: "quiet" }, `${effort(feature)}.`),
    inFull(pack, feature),
    el(
      "div",
      { class: "ways" },
      chosen
        ? way("Back to the suggested question", act.suggested)
        : way("Why this question?", act.why),
      count > 0 ? way([answers, " so far"], act.answers) : null,
      way("What it could be", act.candidates),
      way("Point something out", act.anything),
      MARK.test(feature.id) ? way("Type what it says", act.mark) : null,
      session.scope.items.length > 0
        ? way(
            [
              "Look at all pieces",
              el("span", { class: "unseen" }, ` (${small(limit(pack, session.scope))})`),
            ],
            act.widen,
          )
        : null,
      state.tray.length > 0 ? way(trayText(state.tray.length), act.tray) : null,
      way("Next piece", act.restart),
      way("Save for later", act.note),
      way(CHECK, act.seller),
    ),
  );
}

/** What the drawings mean, word for word. */
function inFull(pack, feature) {
  if (feature.states.every(({ caption }) => caption === undefined)) return null;
  return el(
    "details",
    {},
    el("summary", {}, "The answers in full"),
    el(
      "ul",
      { class: "in-full" },
      feature.states.map((state) =>
        el("li", {}, drawing(pack, state.drawing), el("span", {}, state.name)),
      ),
    ),
  );
}
