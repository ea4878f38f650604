import { here } from "../data/back-button.js";
import { button, el } from "./element.js";
import { HIDE_THIS } from "./first-words.js";

let toldAt = ""; // the screen on which the last notice that only tells came up

/** Says something to a screen reader without moving anything on the screen. */
export function announce(text) {
  document.getElementById("announce").textContent = text;
}

/**
 * The line under the head of every screen: no signal, or a new version. Its height never changes.
 */
export function signalLine(text) {
  document.getElementById("signal").textContent = text;
}

/** Shows a notice at the top of the page: a sentence, and buttons [[label, act]]. Gives its box. */
export function notice(text, actions = []) {
  const box = el("div", { class: "notice", role: "alert" }, el("p", {}, text));
  const shut = () => box.remove();
  const buttons = [...actions, [HIDE_THIS, () => {}]].map(([label, act]) =>
    button(
      label,
      () => {
        shut();
        act();
      },
      { class: "plain" },
    ),
  );
  box.append(el("div", { class: "row" }, buttons));
  document.getElementById("notices").replaceChildren(box);
  toldAt = actions.length > 0 ? "" : place();
  return box;
}

const place = () => `${here().screen} ${here().depth}`;

/** Takes away a notice that only tells, once the person is on another screen. */
export function leaveTold() {
  if (toldAt === "" || toldAt === place()) return;
  document.getElementById("notices").replaceChildren();
  toldAt = "";
}
