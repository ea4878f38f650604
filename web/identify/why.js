import { button, el, heading } from "../parts/element.js";
import { effort, helps, leftIf, reason } from "../parts/say.js";
import { sheet } from "../parts/sheet.js";
import { anything } from "./tell-anything.js";

const RARE = 0.02; // a state seldom seen says nothing about why the question is asked

/** Opens the sheet that says why this question is asked, and offers the others. */
export function openWhy({ pack, view }, session, choose) {
  const instead = (id) => {
    shut();
    choose(id);
  };
  const { question, others } = view;
  const feature = pack.features[question.feature];
  const shut = sheet(
    "Why this question?",
    el(
      "p",
      {},
      reason(view),
      question.about === "verdict" ? " It tells most about what you own, want or lack." : "",
      question.about === "check" ? " It would show if it is one that nobody has written down." : "",
      question.about === "years" ? " What it is, is settled: this narrows the years." : "",
    ),
    question.about === "years"
      ? null
      : el(
          "ul",
          { class: "plain-list" },
          question.groups
            .filter((group) => question.expected[group.state] >= RARE)
            .map((group) =>
              el("li", {}, `${feature.states[group.state].name}: ${leftIf(group, view.possible)}`),
            ),
        ),
    el(
      "p",
      { class: "quiet" },
      "Of all that could be looked at, this tells most for the time it takes.",
    ),
    others.length === 0 ? null : heading(3, "Look at something else instead"),
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
