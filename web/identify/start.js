import { drawing } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { rangeChoice } from "./range-choice.js";
import { dateText } from "../parts/days.js";
import { itemName } from "../parts/say.js";
import { announce } from "../parts/status.js";

const MOST = 12;

/**
 * The start: which kind is it, or what number or name stands on it? `act` holds what can be done.
 */
export function startScreen(state, act) {
  const { pack } = state;
  const below = el("div", { class: "start-choices" }, kinds(pack, act));
  const show = (found) => {
    below.classList.toggle("results", found !== null);
    below.replaceChildren(found ?? kinds(pack, act));
  };
  return el(
    "section",
    { class: "start" },
    state.former ? undoRestart(act) : null,
    heading(1, "What have you got?"),
    searchField(state, act, show),
    below,
    button("Read a mark on it", act.mark, { class: "link" }),
    rangeChoice(state, act.range),
  );
}

function undoRestart(act) {
  return el(
    "p",
    { class: "toast" },
    "Started again. ",
    button("Undo that", act.undoRestart, { class: "plain" }),
  );
}

function kinds(pack, act) {
  const [sort] = pack.features;
  const choices = sort.states.map((state) =>
    button(
      [drawing(pack, state.drawing), el("span", {}, state.name)],
      () => startWith(pack, act, sort, state.id),
      { class: "state" },
    ),
  );
  const any = button("Not sure: ask me everything", () => act.start({ kind: "", items: [] }), {
    class: "plain any",
  });
  return el(
    "fieldset",
    {},
    el("legend", {}, "What sort of piece is it?"),
    el("div", { class: "states columns" }, choices, any),
  );
}

/** With a kind of the range; over all ranges a kind is an answer like any other. */
function startWith(pack, act, sort, kind) {
  if (!pack.packs) return act.start({ kind, items: [] });
  const answer = { feature: sort.id, how: "sure", states: [kind] };
  return act.start({ kind: "", items: [] }, [answer]);
}

/** The search field; `show` gets the results, or null when nothing is typed. */
function searchField(state, act, show) {
  const field = el("input", {
    id: "search",
    type: "search",
    autocomplete: "off",
    autocapitalize: "characters",
    spellcheck: "false",
    enterkeyhint: "search",
    oninput: () => {
      const text = field.value.trim();
      show(text === "" ? null : results(state, act, text));
    },
    onkeydown: (event) => {
      if (event.key === "Enter") field.blur();
    },
  });
  return el(
    "div",
    { class: "search" },
    el("label", { for: "search" }, "Number or name on it or its box"),
    field,
  );
}

function results({ pack, ready, engine }, act, text) {
  const found = engine.find(ready, text, MOST);
  announce(found.length === 0 ? "Nothing found" : `${found.length} found`);
  if (found.length === 0) {
    return el(
      "p",
      { class: "none-found" },
      `Nothing in this range is called “${text}”. Try part of the number or one word of the ` +
        "name, check the range below, or empty the field and choose the kind.",
    );
  }
  return el(
    "ul",
    { class: "found", "aria-label": "Found" },
    found.map((hit) => el("li", {}, hitButton(pack, act, hit))),
  );
}

function hitButton(pack, act, hit) {
  const item = pack.items[hit.item];
  return button(
    [
      el("strong", {}, itemName(pack, hit.item)),
      el(
        "span",
        { class: "quiet" },
        [
          pack.kinds[item.kind].name,
          item.years === "" ? "" : `, ${dateText(item.years)}`,
          how(hit),
        ].join(""),
      ),
    ],
    () => act.start({ kind: "", items: [item.number] }, [], item.pack),
    { class: "hit" },
  );
}

function how(hit) {
  if (hit.how === "misread") return ", if a character was misread";
  return hit.how === "carried" ? `, carries “${hit.matched}”` : "";
}
