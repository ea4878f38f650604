import { drawing } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { answerText, effort, limit, small } from "../parts/say.js";
import { announce } from "../parts/status.js";

/** @import { Feature, State } from "../data/engine-types.d.ts" */

const RARE = 0.005;
const MARK = /(?:^|_)mark_/;
const HINTS = {
  sure: "Tap what you see.",
  unsure: "Tap the one you think it is.",
  several: "Tick all it could be, then Done.",
};

/**
 * The question card. `card`: {pack, feature (place), session, chosen, expected (of each state, or
 * null)}; `act`: answer, missing, why, answers, seller, note, widen, suggested, mark.
 */
export function questionCard(card, act) {
  const feature = card.pack.features[card.feature];
  const choices = stateChoices(card, feature, act);
  return [
    el(
      "div",
      { class: "ask" },
      heading(1, feature.question),
      el("p", { class: "where" }, feature.where),
      before(card, feature),
      el(
        "div",
        { class: "row" },
        card.chosen
          ? button("Back to the suggested question", act.suggested, { class: "link" })
          : button("Why this question?", act.why, { class: "link" }),
        answersLink(card.session, act),
        button("Note it", act.note, { class: "link" }),
        markLink(feature, act),
        wider(card, act),
      ),
    ),
    choices,
  ];
}

/** Why something is asked although it is nearly settled, and the way past it. */
export function proof(about, act) {
  const why = {
    check: "It is nearly settled. This would show if it is one that nobody has written down.",
    again: "What you said here does not fit what it seems to be. Look once more.",
  }[about];
  if (!why) return null;
  return el(
    "p",
    { class: "quiet" },
    `${why} `,
    button("Skip this", act.skipCheck, { class: "link" }),
  );
}

function answersLink({ answers }, act) {
  if (answers.length === 0) return null;
  const count = answers.length === 1 ? "1 answer" : `${answers.length} answers`;
  return button([count, el("span", { class: "unseen" }, " so far")], act.answers, {
    class: "link",
  });
}

/** For a mark: typed as it stands, it says what it is. */
function markLink({ id }, act) {
  return MARK.test(id) && button("Type it as it stands", act.mark, { class: "link" });
}

function wider({ pack, session }, act) {
  if (session.scope.items.length === 0) return null;
  const only = limit(pack, session.scope);
  return button(["Look wider", el("span", { class: "unseen" }, ` (${small(only)})`)], act.widen, {
    class: "link",
  });
}

function before({ pack, session }, feature) {
  const answer = session.answers.find((one) => one.feature === feature.id);
  return answer
    ? el("p", { class: "quiet" }, `Your answer was: ${answerText(pack, answer)}.`)
    : null;
}

/** The states as buttons, with the answers for when it is not that simple beneath them. */
function stateChoices({ pack, expected }, feature, act) {
  let mode = "sure";
  const ticked = new Set();
  const hint = el("span", {}, HINTS.sure);
  const takes = el("span", { class: "quiet" }, effort(feature));
  const foot = el("div", { class: "unsure" });

  const states = inOrder(feature, expected).map((place) => feature.states[place]);
  const buttons = states.map((state, place) =>
    button(
      [
        drawing(pack, state.drawing),
        el("span", { class: "name" }, state.name),
        el("span", { class: "tick", "aria-hidden": "true" }),
        place < 9 ? el("kbd", { "aria-hidden": "true" }, String(place + 1)) : null,
      ],
      () => tapped(state, place),
      { class: "state", "aria-keyshortcuts": place < 9 ? String(place + 1) : null },
    ),
  );

  function tapped(state, place) {
    if (mode !== "several") {
      buttons[place].classList.add("taken");
      act.answer({ feature: feature.id, how: mode, states: [state.id] });
      return;
    }
    if (!ticked.delete(state.id)) ticked.add(state.id);
    buttons[place].setAttribute("aria-pressed", String(ticked.has(state.id)));
  }

  function done() {
    if (ticked.size === 0) {
      hint.textContent = "Tick at least one first.";
      announce(hint.textContent);
    } else {
      const seen = feature.states.map((state) => state.id).filter((id) => ticked.has(id));
      act.answer({ feature: feature.id, how: "several", states: seen });
    }
  }

  function turn(to) {
    mode = to;
    ticked.clear();
    hint.textContent = HINTS[mode];
    takes.hidden = mode !== "sure";
    for (const one of buttons) {
      if (mode === "several") one.setAttribute("aria-pressed", "false");
      else one.removeAttribute("aria-pressed");
    }
    foot.replaceChildren(
      ...(mode === "sure"
        ? plainAnswers(feature, act, turn)
        : unsureAnswers(feature, mode, act, turn, done)),
    );
    foot.querySelector("[aria-pressed=true], button").focus();
    announce(HINTS[mode]);
  }

  foot.replaceChildren(...plainAnswers(feature, act, turn));
  return el(
    "fieldset",
    { class: "choices" },
    el("legend", {}, hint, takes),
    el("div", { class: `states ${columns(feature.states)}` }, buttons),
    notThere(feature, pack, act),
    el(
      "div",
      { class: "row" },
      button("Tell what you see", act.anything, { class: "link" }),
      button("Check the seller’s date", act.seller, { class: "link" }),
    ),
    foot,
  );
}

/**
 * @param {State[]} states
 * @returns {string}
 */
function columns(states) {
  const longest = Math.max(...states.map((state) => state.name.length));
  if (states.length > 6 && longest <= 16) return "columns dense";
  return states.length > 4 || longest <= 24 ? "columns" : "list";
}

/**
 * Places of the states: as the pack has them, with those hardly to be expected last. "There is
 * none",
 * which stands for kinds that have no such thing, is left out where it is not to be expected.
 * @param {Feature} feature
 * @param {number[] | null} expected
 * @returns {number[]}
 */
function inOrder(feature, expected) {
  const rare = (place) => expected !== null && expected[place] < RARE;
  const places = feature.states
    .map((_, place) => place)
    .filter((place) => place !== feature.none || !rare(place));
  return [...places.filter((place) => !rare(place)), ...places.filter(rare)];
}

/** For a feature on a part: there is no such part on this piece, unless a state says just that. */
function notThere(feature, pack, act) {
  if (feature.part < 0) return null;
  const none = feature.states.findIndex((state) => state.id === "none");
  const alone = pack.features.filter((one) => one.part === feature.part).length === 1;
  if (alone && none >= 0 && none !== feature.none) return null;
  const part = pack.parts[feature.part];
  return button(`It has no ${small(part.name)}`, () => act.missing(part, feature), {
    class: "plain not-there",
  });
}

function plainAnswers(feature, act, turn) {
  const other = () => act.answer({ feature: feature.id, how: "other", states: [] });
  return [
    button("Not sure", () => turn("unsure"), { class: "plain", "aria-expanded": "false" }),
    cannotTell(feature, act),
    button("None of these", other, { class: "plain" }),
  ];
}

function cannotTell({ id }, act) {
  const answer = () => act.answer({ feature: id, how: "cannot", states: [] });
  return button("Can’t tell", answer, { class: "plain" });
}

/** The two ways of not being sure; the one in use is left by tapping it again. */
function unsureAnswers(feature, mode, act, turn, done) {
  const way = (label, to) =>
    button(label, () => turn(mode === to ? "sure" : to), {
      class: "plain",
      "aria-pressed": String(mode === to),
    });
  return [
    way("I think it’s…", "unsure"),
    way("One of these", "several"),
    mode === "several" ? button("Done", done, { class: "main" }) : cannotTell(feature, act),
  ];
}

/** Number keys choose a state, where there are keys. */
export function keyChooses(event) {
  if (event.ctrlKey || event.metaKey || event.altKey || !/^[1-9]$/.test(event.key)) return;
  if (document.querySelector("dialog[open]") || event.target.closest("input, select, textarea"))
    return;
  /** @type {HTMLElement} */
  const choice = document.querySelector(`.choices [aria-keyshortcuts="${event.key}"]`);
  choice?.click();
}
