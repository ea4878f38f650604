/** The first steps to choose from. */
import { button, el, heading } from "../parts/element.js";
import { beginSteps, forgetSteps } from "./practice.js";
import { USES } from "./four-uses.js";

/** The four things that the app is for, to be tried. */
export async function stepsScreen() {
  await forgetSteps();
  return el(
    "section",
    { class: "shelf" },
    heading(1, "First steps"),
    el(
      "p",
      {},
      "Four things to try with a made-up piece, on the real screens, with a line that says what " +
        "to do. Leave whenever you like: nothing of it is kept, and what you have here stays as " +
        "it is.",
    ),
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
