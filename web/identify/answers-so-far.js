import { button, el, heading } from "../parts/element.js";
import { answerText, featureOf, limit, small } from "../parts/say.js";
import { sheet } from "../parts/sheet.js";
import { anything } from "./tell-anything.js";
import {
  CHANGE,
  changeName,
  hasNoPart,
  IT_HAS_ONE_AFTER_ALL,
  LOOK_AT_ALL_PIECES,
  NO_ANSWERS_YET,
  TAKE_BACK,
  takeBackName,
  YOUR_ANSWERS_SO_FAR,
} from "./words.js";

/** Opens the sheet with the answers so far; `act`: change, takeBack, present, widen. */
export function openAnswers({ pack }, { session }, act) {
  const and = (then) => () => {
    shut();
    then();
  };
  const shut = sheet(
    YOUR_ANSWERS_SO_FAR,
    scope(pack, session, () => and(act.widen)()),
    session.answers.length === 0 ? el("p", {}, NO_ANSWERS_YET) : null,
    el(
      "ol",
      { class: "answers" },
      session.answers.map((answer) => {
        const { name } = pack.features[featureOf(pack, answer.feature)];
        return el(
          "li",
          {},
          heading(3, name),
          el("p", {}, answerText(pack, answer)),
          el(
            "div",
            { class: "row" },
            button(CHANGE, () => and(() => act.change(answer.feature))(), {
              class: "plain",
              "aria-label": changeName(name),
            }),
            button(TAKE_BACK, () => and(() => act.takeBack(answer.feature))(), {
              class: "plain",
              "aria-label": takeBackName(name),
            }),
          ),
        );
      }),
    ),
    anything(pack, session, (id) => and(() => act.change(id))()),
    session.missing.map((id) => {
      const part = pack.parts.find((row) => row.id === id);
      return el(
        "div",
        { class: "row" },
        el("p", {}, hasNoPart(small(part.name))),
        button(IT_HAS_ONE_AFTER_ALL, () => and(() => act.present(id))(), { class: "plain" }),
      );
    }),
  );
}

function scope(pack, { scope: { kind, items } }, widen) {
  const said = limit(pack, { kind, items });
  return said === ""
    ? null
    : el(
        "div",
        { class: "row" },
        el("p", {}, said),
        button(LOOK_AT_ALL_PIECES, widen, { class: "plain" }),
      );
}
