import { button, el, heading } from "../parts/element.js";
import { effort, helps, reason } from "../parts/say.js";
import { sheet } from "../parts/sheet.js";
import { anything } from "./tell-anything.js";

/** Opens the sheet that says why this question is asked, and offers the others. */
export function openWhy({ pack, view }, session, choose) {
  const instead = (id) => {
    shut();
    choose(id);
  };
  const { question, others } = view;
  const shut = sheet(
    "Why this question?",
    el(
      "p",
      {},
      reason(view),
      question.about === "verdict" ? " It tells most about what you have, want or lack." : "",
      question.about === "check" ? " It would show whether it is one nobody has recorded." : "",
      question.about === "years" ? " What it is, is settled: this narrows the years." : "",
    ),
    el("p", { class: "quiet" }, "Of all you could look at, this tells most for the time it takes."),
    others.length === 0 ? null : heading(3, "Look at something else"),
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
