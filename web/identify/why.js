import { button, el, heading } from "../parts/element.js";
import { effort, helps, reason } from "../parts/say.js";
import { sheet } from "../parts/sheet.js";
import { anything } from "./tell-anything.js";
import {
  LOOK_AT_SOMETHING_ELSE,
  NARROWS_THE_YEARS,
  TELLS_MOST_FOR_ITS_TIME,
  TELLS_MOST_FOR_YOU,
  WHY_THIS_QUESTION,
  WOULD_SHOW_NOBODY,
} from "./words.js";

/** Opens the sheet that says why this question is asked, and offers the others. */
export function openWhy({ pack, view }, session, choose) {
  const instead = (id) => {
    shut();
    choose(id);
  };
  const { question, others } = view;
  const shut = sheet(
    WHY_THIS_QUESTION,
    el(
      "p",
      {},
      reason(view),
      question.about === "verdict" ? TELLS_MOST_FOR_YOU : "",
      question.about === "check" ? WOULD_SHOW_NOBODY : "",
      question.about === "years" ? NARROWS_THE_YEARS : "",
    ),
    el("p", { class: "quiet" }, TELLS_MOST_FOR_ITS_TIME),
    others.length === 0 ? null : heading(3, LOOK_AT_SOMETHING_ELSE),
    el(
      "ul",
      { class: "found" },
      others.map((other) => {
        const there = pack.features[other.feature];
        return el(
          "li",
          {},
          button(
            [
              el("strong", {}, there.name),
              el(
                "span",
                { class: "quiet" },
                `${effort(there)}; ${helps(other.bits, question.bits)}`,
              ),
            ],
            () => instead(there.id),
            { class: "hit" },
          ),
        );
      }),
    ),
    anything(pack, session, instead),
  );
}
