/** The first steps to choose from. */
import { button, el, heading } from "../parts/element.js";
import { beginSteps, forgetSteps } from "./practice.js";
import { USES } from "./four-uses.js";
import { FIRST_STEPS } from "./first-words.js";
import { FOUR_THINGS_TO_TRY } from "./words.js";

/** The four things that the app is for, to be tried. */
export async function stepsScreen() {
  await forgetSteps();
  return el(
    "section",
    { class: "shelf" },
    heading(1, FIRST_STEPS),
    el("p", {}, FOUR_THINGS_TO_TRY),
    el(
      "ul",
      { class: "found" },
      USES.map(({ id, title, about }) =>
        el(
          "li",
          {},
          button(
            [el("strong", {}, title), el("span", { class: "quiet" }, about)],
            () => beginSteps(id),
            {
              class: "hit",
            },
          ),
        ),
      ),
    ),
  );
}
