import { thumb } from "../parts/thumb.js";
import { loaded } from "../parts/loaded-later.js";
import { drawing } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { answerText, small } from "../parts/say.js";
import { announce } from "../parts/status.js";
import {
  answerWas,
  CANT_SEE_IT,
  CHECKING,
  DONE,
  HINTS,
  IM_GUESSING,
  LOOK_AGAIN,
  LOOK_ONCE_MORE,
  MORE,
  MY_BEST_GUESS,
  noPart,
  SKIP_LAST_CHECK,
  SKIP_THIS,
  SOMETHING_ELSE,
  TICK_AT_LEAST_ONE_FIRST,
  TWO_OR_MORE,
  UNDO,
  YOUR_PHOTO,
} from "./first-words.js";

/** @import { Feature, State } from "../data/engine-types.d.ts" */

const RARE = 0.005;
const UNLIKELY = 0.03; // an answer less likely than this is small, and its name is heard only
const LARGE = 2; // so many answers at least are not
// What is seen where something is asked although it is nearly settled, what is heard, the way past.
const CHECK = ["", CHECKING, SKIP_LAST_CHECK];
const AGAIN = [LOOK_AGAIN, LOOK_ONCE_MORE, SKIP_THIS];

/**
 * The question card: its title, a drawing for each answer, and beneath them what to do where it is
 * not that simple. `card`: {pack, feature (place), session, chosen, expected (of each state, or
 * null), about}; `act`: answer, missing, undo, more.
 */
export function questionCard(card, act) {
  const feature = card.pack.features[card.feature];
  const hint = el("p", { class: "quiet hint", hidden: true });
  return [
    el(
      "div",
      { class: "ask" },
      heading(1, feature.title ?? feature.name, { "aria-label": feature.question }),
      card.photo
        ? button(thumb(card.photo, YOUR_PHOTO), () => shownLarge(card.photo), {
            class: "picture",
          })
        : null,
      proof(card.about, act),
      before(card, feature),
      hint,
    ),
    ...stateChoices(card, feature, act, hint),
  ];
}

async function shownLarge(photo) {
  (await loaded(import("../parts/photobox.js"))).showPhoto(photo);
}

/** That something is asked although it is nearly settled, and the way past it. */
function proof(about, act) {
  const words = { check: CHECK, again: AGAIN }[about];
  if (!words) return null;
  const [shown, heard, skip] = words;
  return el(
    "p",
    { class: "quiet proof" },
    el("span", {}, shown, el("span", { class: "unseen" }, shown ? `. ${heard}` : heard)),
    button(skip, act.skipCheck, { class: "link" }),
  );
}

function before({ pack, session }, feature) {
  const answer = session.answers.find((given) => given.feature === feature.id);
  if (!answer) return null;
  const shown = ["sure", "twice", "unsure", "several"].includes(answer.how); // on its drawing
  const text = answerWas(answerText(pack, answer));
  return el("p", { class: shown ? "unseen" : "quiet" }, text);
}

/** The states as drawings, with the answers for when it is not that simple beneath them. */
function stateChoices({ pack, expected, session, about }, feature, act, hint) {
  let mode = "sure";
  const ticked = new Set();
  const legend = el("span", {}, HINTS.sure);
  const foot = el("div", { class: "unsure" });

  const order = inOrder(feature, expected);
  const rarer = smallOnes(order, expected, about);
  const places = [...order.filter((place) => !rarer.includes(place)), ...rarer];
  const states = places.map((place) => feature.states[place]);
  const large = states.length - rarer.length;
  const said = session.answers.find((answer) => answer.feature === feature.id)?.states ?? [];
  const buttons = states.map((state, place) =>
    button(
      [
        drawing(pack, state.drawing),
        ...(place < large ? caption(state) : [el("span", { class: "name unseen" }, state.name)]),
        el("span", { class: "tick", "aria-hidden": "true" }),
        place < 9 ? el("kbd", { "aria-hidden": "true" }, String(place + 1)) : null,
      ],
      () => tapped(state, place),
      {
        class: said.includes(state.id) ? "state said-before" : "state",
        "aria-keyshortcuts": place < 9 ? String(place + 1) : null,
      },
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
    if (ticked.size === 0) say(TICK_AT_LEAST_ONE_FIRST);
    else {
      const seen = feature.states.map((state) => state.id).filter((id) => ticked.has(id));
      act.answer({ feature: feature.id, how: "several", states: seen });
    }
  }

  function say(text) {
    legend.textContent = text;
    hint.textContent = text;
    announce(text);
  }

  function turn(to) {
    mode = to;
    ticked.clear();
    hint.hidden = mode === "sure";
    for (const choice of buttons) {
      if (mode === "several") choice.setAttribute("aria-pressed", "false");
      else choice.removeAttribute("aria-pressed");
    }
    fill();
    /** @type {HTMLElement} */
    const way = foot.querySelector("[aria-pressed=true], [aria-expanded]");
    way.focus();
    say(HINTS[mode]);
  }

  function fill() {
    const sure = mode === "sure";
    foot.replaceChildren(
      ...(sure ? plainAnswers(feature, pack, act) : unsureAnswers(feature, mode, act, turn, done)),
      button(IM_GUESSING, () => turn(sure ? "unsure" : "sure"), {
        class: "plain",
        "aria-expanded": String(!sure),
      }),
    );
  }

  fill();
  return [
    el(
      "fieldset",
      { class: "choices" },
      el("legend", { class: "unseen" }, legend),
      el("div", { class: `states grid-${columns(large)}` }, buttons.slice(0, large)),
      rarer.length === 0 ? null : el("div", { class: "states rarer" }, buttons.slice(large)),
      foot,
    ),
    el(
      "div",
      { class: "reach" },
      button(UNDO, act.undo, { class: "plain" }),
      button(MORE, () => act.more(feature), { class: "plain", "aria-haspopup": "dialog" }),
    ),
  ];
}

/** In how many columns so many drawings are largest, held upright. */
function columns(count) {
  if (count <= 3) return 1;
  if (count <= 8 || count === 10) return 2;
  return count <= 15 ? 3 : 4;
}

/** What stands under a drawing: a word or three to see, the full wording to hear. */
export function caption({ name, caption: short = name }) {
  if (short === name) return [el("span", { class: "name" }, name)];
  return [
    el("span", { class: "caption", "aria-hidden": "true" }, short),
    el("span", { class: "name unseen" }, name),
  ];
}

/**
 * Places of the states: as the pack has them, with those hardly to be expected last. "None", which
 * stands for kinds that have no such thing, is left out where it is not to be expected.
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

/**
 * The places of the answers that are hardly to be expected: of those nobody needs to read who has
 * found theirs. Where it is checked whether all is well, every answer counts alike.
 */
function smallOnes(order, expected, about) {
  if (expected === null || ["check", "again"].includes(about)) return [];
  const likely = [...order].sort((a, b) => expected[b] - expected[a]).slice(0, LARGE);
  const rarer = order.filter((place) => expected[place] < UNLIKELY && !likely.includes(place));
  return rarer.length > 1 ? rarer : []; // one alone would save nobody anything
}

/**
 * For a feature on a part: there is no such part on this piece, unless a state says just that, or
 * it can never be missing, as the finish.
 */
function notThere(feature, pack, act) {
  if (feature.part < 0) return null;
  const none = feature.states.findIndex((state) => state.id === "none");
  const alone = pack.features.filter((row) => row.part === feature.part).length === 1;
  if (alone && none >= 0 && none !== feature.none) return null;
  const part = pack.parts[feature.part];
  if (part.altered) return null;
  return button(noPart(small(part.name)), () => act.missing(part, feature), { class: "plain" });
}

function plainAnswers(feature, pack, act) {
  const other = () => act.answer({ feature: feature.id, how: "other", states: [] });
  return [
    cannotTell(feature, act),
    button(SOMETHING_ELSE, other, { class: "plain" }),
    notThere(feature, pack, act),
  ].filter(Boolean);
}

function cannotTell({ id }, act) {
  const answer = () => act.answer({ feature: id, how: "cannot", states: [] });
  return button(CANT_SEE_IT, answer, { class: "plain" });
}

/** The two ways of guessing. */
function unsureAnswers(feature, mode, act, turn, done) {
  const way = (label, to) =>
    button(label, () => turn(to), { class: "plain", "aria-pressed": String(mode === to) });
  return [
    way(MY_BEST_GUESS, "unsure"),
    way(TWO_OR_MORE, "several"),
    mode === "several" ? button(DONE, done, { class: "main" }) : cannotTell(feature, act),
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
