/**
 * The bar at the bottom with the app's main screens; while a question is asked, it is one tap away.
 */
import { button, el } from "../parts/element.js";
import { sheet } from "../parts/sheet.js";
import { WIDE } from "../parts/wide-window.js";
import { OTHER_SCREENS, SETTINGS } from "./first-words.js";

const bar = document.getElementById("places");
const others = document.getElementById("others");
const UNDER = { piece: "collection", want: "wants", note: "notebook" };

/** Makes the bar work. */
export function startPlaces(open) {
  const buttons = [...bar.querySelectorAll("button")];
  WIDE.addEventListener("change", placed);
  placed();
  for (const place of buttons) place.addEventListener("click", () => open(place.dataset.screen));
  others.addEventListener("click", () => {
    const go = (screen) => () => {
      shut();
      open(screen);
    };
    const shut = sheet(
      OTHER_SCREENS,
      el(
        "div",
        { class: "found" },
        buttons
          .slice(1)
          .map((place) =>
            button(place.textContent, go(place.dataset.screen), { class: "plain wide" }),
          ),
        button(SETTINGS, go("settings"), { class: "plain wide" }),
      ),
    );
  });
}

/**
 * The bar is at the thumb on a phone, at the top on a desk. On a phone the head, which stands above
 * all, is heard after the question and what can be tapped.
 */
function placed() {
  const main = document.getElementById("screen");
  const head = [document.querySelector("header"), document.getElementById("notices")];
  if (WIDE.matches) main.before(head[0], bar, head[1]);
  else main.after(bar, ...head);
}

/** Shows where the person is; the bar makes room for the answers while a question is asked. */
export function markPlace(screen) {
  const asking = document.querySelector("#screen > .card") !== null;
  bar.hidden = asking && !WIDE.matches;
  document.body.classList.toggle("asking", asking);
  document.getElementById("settings").hidden = bar.hidden;
  others.hidden = !bar.hidden;
  document.body.classList.toggle("with-places", !bar.hidden);
  const main = bar.querySelector(`[data-screen="${screen}"]`) ? screen : "more";
  for (const place of bar.querySelectorAll("button")) {
    if (place.dataset.screen === (UNDER[screen] ?? main))
      place.setAttribute("aria-current", "page");
    else place.removeAttribute("aria-current");
  }
}
