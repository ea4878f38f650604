import { button, el, heading } from "../parts/element.js";
import { answerText, featureOf, limit, small } from "../parts/say.js";
import { sheet } from "../parts/sheet.js";
import { anything } from "./tell-anything.js";

/** Opens the sheet with the answers so far; `act`: change, takeBack, present, widen. */
export function openAnswers({ pack }, { session }, act) {
  const and = (then) => () => {
    shut();
    then();
  };
  const shut = sheet(
    "Your answers so far",
    scope(pack, session, () => and(act.widen)()),
    session.answers.length === 0 ? el("p", {}, "None yet.") : null,
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
            button("Change", () => and(() => act.change(answer.feature))(), {
              class: "plain",
              "aria-label": `Change: ${name}`,
            }),
            button("Take back", () => and(() => act.takeBack(answer.feature))(), {
              class: "plain",
              "aria-label": `Take back: ${name}`,
            }),
          ),
        );
      }),
    ),
    anything(pack, session, (id) => and(() => act.change(id))()),
    session.missing.map((id) => {
      const part = pack.parts.find((one) => one.id === id);
      return el(
        "div",
        { class: "row" },
        el("p", {}, `It has no ${small(part.name)}.`),
        button("It has one after all", () => and(() => act.present(id))(), { class: "plain" }),
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
        button("Look at all pieces", widen, { class: "plain" }),
      );
}
