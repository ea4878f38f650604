/** What stands behind More at a question: its full wording, and all that is not an answer. */
import { current } from "../data/piece-at-hand.js";
import { drawing } from "../parts/drawing.js";
import { button, el } from "../parts/element.js";
import { effort, limit, small } from "../parts/say.js";
import { sheet } from "../parts/sheet.js";
import { trayText } from "./left-aside.js";
import {
  answerCount,
  BACK_TO_THE_SUGGESTED,
  LOOK_AT_ALL_PIECES,
  NEXT_PIECE,
  POINT_SOMETHING_OUT,
  SAVE_FOR_LATER,
  SO_FAR,
  THE_ANSWERS_IN_FULL,
  TYPE_WHAT_IT_SAYS,
  WHAT_IT_COULD_BE,
  WHY_THIS_QUESTION,
} from "./words.js";
import { CHECK_THE_DATE, CHECKING, LOOK_ONCE_MORE } from "./first-words.js";

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
  const reason = { check: CHECKING, again: LOOK_ONCE_MORE }[about];
  const count = session.answers.length;
  const answers = count === 1 ? "1 answer" : answerCount(count);
  const shut = sheet(
    feature.question,
    el("p", {}, feature.where),
    reason ? el("p", {}, reason) : null,
    el("p", { class: "quiet" }, `${effort(feature)}.`),
    inFull(pack, feature),
    el(
      "div",
      { class: "ways" },
      chosen ? way(BACK_TO_THE_SUGGESTED, act.suggested) : way(WHY_THIS_QUESTION, act.why),
      count > 0 ? way([answers, SO_FAR], act.answers) : null,
      way(WHAT_IT_COULD_BE, act.candidates),
      way(POINT_SOMETHING_OUT, act.anything),
      MARK.test(feature.id) ? way(TYPE_WHAT_IT_SAYS, act.mark) : null,
      session.scope.items.length > 0
        ? way(
            [
              LOOK_AT_ALL_PIECES,
              el("span", { class: "unseen" }, ` (${small(limit(pack, session.scope))})`),
            ],
            act.widen,
          )
        : null,
      state.tray.length > 0 ? way(trayText(state.tray.length), act.tray) : null,
      way(NEXT_PIECE, act.restart),
      way(SAVE_FOR_LATER, act.note),
      way(CHECK_THE_DATE, act.seller),
    ),
  );
}

/** What the drawings mean, word for word. */
function inFull(pack, feature) {
  if (feature.states.every(({ caption }) => caption === undefined)) return null;
  return el(
    "details",
    {},
    el("summary", {}, THE_ANSWERS_IN_FULL),
    el(
      "ul",
      { class: "in-full" },
      feature.states.map((state) =>
        el("li", {}, drawing(pack, state.drawing), el("span", {}, state.name)),
      ),
    ),
  );
}
