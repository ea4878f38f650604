import { chance } from "../parts/chance.js";
import { datedFacts } from "./when-made.js";
import { button, el, heading } from "../parts/element.js";
import { belongs, carries, cautions, notes, sources } from "../parts/facts.js";
import { anyOf, itemName, need, percent, small, variantName } from "../parts/say.js";
import { forYou } from "./for-you.js";
import { verdictTitle } from "./verdict-words.js";
import { yearsFigure } from "./years-figure.js";

/** The answer: what it is, or what cannot be told apart, or that it is not in the reference. */
export function answerScreen(state, step, act) {
  const { view } = state;
  const alone = view.stop === "nothing" && view.alike.length === 1;
  const card =
    view.stop === "sure" || alone
      ? oneVariant
      : { "": nothing, nothing, unrecorded, unseen: nothingSeen, verdict: allAlike }[view.stop];
  return el(
    "section",
    { class: "answer" },
    card(state, step, act),
    button("Your answers", act.answers, { class: "link" }),
    el(
      "div",
      { class: "finish" },
      view.question ? button("Keep asking", act.further, { class: "plain" }) : null,
      button("Start again", act.restart, { class: "main" }),
    ),
  );
}

/** One variant: it holds nearly all of the chance, or nothing left to look at could say more. */
function oneVariant(state, step, act) {
  const { pack, view } = state;
  const [best] = view.variants;
  const variant = pack.variants[best.variant];
  const item = pack.items[variant.item];
  return [
    el("p", { class: "kicker" }, kicker(view, step.session.scope)),
    heading(1, itemName(pack, variant.item)),
    el("p", { class: "variant" }, variant.name),
    carries(item),
    chance(best.chance, " sure"),
    fitNote(state, step, act),
    notLookedAt(pack, view, act),
    yearsFigure(view.years),
    forYou(state, act),
    datedFacts(state, step, act),
    couldBe(state, view.variants.slice(1), act),
    wouldTell(pack, view, act),
    widen(step, act),
    sources(pack, variant, item),
    belongs(pack, item, variant.item),
    notes([item.note, variant.note]),
    cautions(pack, item.kind),
  ];
}

const HOW_SURE = {
  "it is": "It is",
  "almost certainly": "Almost certainly it is",
  "very likely": "Very likely it is",
  probably: "Probably it is",
  "could be": "It could be",
};

function kicker({ how_sure }, { items }) {
  const words = HOW_SURE[how_sure];
  return items.length > 0 ? `If the number or name is right: ${small(words)}` : words;
}

/** What does not fit the one that is named, and what can be done about it. */
function fitNote(state, { session }, act) {
  const { pack, view } = state;
  if (!view.fit || view.fit.passed) return null;
  const odd = view.fit.odd.map((place) =>
    pack.features.find((one) => one.id === session.answers[place].feature),
  );
  if (odd.length === 0) {
    return el(
      "p",
      {},
      "What you saw is unusual for it, taken together. Look once more before you rely on it.",
    );
  }
  const names = odd.map(({ name }) => small(name));
  const what = odd.length === 1 ? "one thing does" : `${odd.length} things do`;
  return [
    el("p", {}, `But ${what} not fit: ${anyOf(names, "and")}.`),
    el(
      "p",
      { class: "quiet" },
      "A variant nobody has written down, a repaired or repainted piece, or a slip.",
    ),
    el(
      "div",
      { class: "row" },
      odd.map(({ id, name }) =>
        button(`Look again: ${small(name)}`, () => act.change(id), { class: "plain" }),
      ),
      state.entry.written
        ? button("Write it down as a variant", act.asVariant, { class: "plain" })
        : button("Keep as a variant not in the reference", act.sighting, { class: "plain" }),
    ),
  ];
}

/** What would have shown that it is another one, where the check was skipped. */
function notLookedAt(pack, { unseen }, act) {
  if (unseen.length === 0) return null;
  const names = unseen.slice(0, 4).map((place) => small(pack.features[place].name));
  return el(
    "p",
    {},
    `Not looked at: ${anyOf(names, "and")}. It could still be one that nobody has written down. `,
    button("Look now", act.check, { class: "plain" }),
  );
}

/** "Can't tell" to everything: nothing was seen, so nothing is said. */
function nothingSeen({ pack, view }, step, act) {
  return [
    heading(1, "Nothing was seen that decides it"),
    el("p", {}, "You could not tell anything that was asked, so it can be anything in this range."),
    button("Your answers", act.answers, { class: "main wide" }),
    wouldTell(pack, view, act),
    widen(step, act),
  ];
}

function nothing(state, step, act) {
  return several(state, step, act, (left) => {
    const [first] = left.map((one) => state.pack.variants[one.variant].item);
    const alone = left.every((one) => state.pack.variants[one.variant].item === first);
    return [
      el(
        "p",
        { class: "kicker" },
        alone ? "It is, in one of these variants" : "It is one of these",
      ),
      heading(1, alone ? itemName(state.pack, first) : "What you saw fits more than one"),
      el("p", {}, "Nothing left to look at tells these apart:"),
    ];
  });
}

/** Whichever it is, it means the same for the collector. */
function allAlike(state, step, act) {
  return several(state, step, act, () => [
    heading(1, verdictTitle(state.view.verdict)),
    el("p", {}, "Which of them it is makes no difference to that, so you can stop here:"),
  ]);
}

function several(state, step, act, top) {
  const { pack, view } = state;
  const left = view.variants.filter(
    (one) => view.alike.length === 0 || view.alike.includes(one.variant),
  );
  return [
    ...top(left),
    el(
      "ul",
      { class: "alike" },
      left
        .slice(0, 12)
        .map((one) =>
          el("li", {}, el("strong", {}, variantName(pack, one.variant)), chance(one.chance)),
        ),
    ),
    button("All candidates, and why not", act.candidates, { class: "link" }),
    yearsFigure(view.years),
    forYou(state, act),
    datedFacts(state, step, act),
    wouldTell(pack, view, act),
    el("p", { class: "quiet" }, `Not in the reference: ${percent(view.unrecorded)}.`),
    widen(step, act),
    cautions(pack, likelyKind(pack, view)),
  ];
}

function unrecorded(state, step, act) {
  const { pack, view } = state;
  return [
    heading(
      1,
      view.unrecorded >= 0.95
        ? "This is not in the reference"
        : "This is perhaps not in the reference",
    ),
    el(
      "p",
      {},
      "No recorded variant goes well with what you saw. It may be a variant nobody has written " +
        "down, a repainted or altered piece, or one of the answers may be wrong.",
    ),
    chance(view.unrecorded),
    button("Put it into a range of your own", act.putIn, { class: "main wide" }),
    button("Keep as a sighting", act.sighting, { class: "plain wide" }),
    el(
      "p",
      { class: "quiet" },
      "With photos and what you know of it, for whoever keeps the reference.",
    ),
    forYou(state, act),
    view.variants.length === 0 ? null : heading(2, "What came closest"),
    el(
      "ul",
      { class: "alike" },
      view.variants
        .slice(0, 3)
        .map((one) =>
          el("li", {}, el("strong", {}, variantName(pack, one.variant)), chance(one.chance)),
        ),
    ),
    view.variants.length === 0
      ? null
      : button("Why not these?", act.candidates, { class: "plain wide" }),
    datedFacts(state, step, act),
    widen(step, act),
    wouldTell(pack, view, act),
    cautions(pack, likelyKind(pack, view)),
  ];
}

/** The kind that it seems to be, or -1. */
function likelyKind(pack, { items }) {
  return items.length > 0 ? pack.items[items[0].item].kind : -1;
}

function couldBe({ pack, view }, others, act) {
  const shown = others.filter((one, place) => place === 0 || one.chance >= 0.005).slice(0, 3);
  return [
    heading(2, "What else it could be"),
    el(
      "ul",
      { class: "alike" },
      shown.map((one) =>
        el("li", {}, el("span", {}, variantName(pack, one.variant)), chance(one.chance)),
      ),
      el("li", {}, el("span", {}, "Not in the reference"), chance(view.unrecorded)),
    ),
    button("All candidates, and why not", act.candidates, { class: "link" }),
  ];
}

function widen({ session }, act) {
  if (session.scope.items.length === 0) return null;
  return el(
    "p",
    {},
    "You looked only at the number or name you found. ",
    button("Look at everything", act.widen, { class: "plain" }),
  );
}

function wouldTell(pack, view, act) {
  if (view.would_tell.length === 0) return null;
  const needs = [...new Set(view.would_tell.map((one) => one.needs))];
  return [
    heading(2, "What would tell more"),
    needs.map((name) => {
      const names = view.would_tell
        .filter((one) => one.needs === name)
        .map((one) => small(pack.features[one.feature].name));
      return el(
        "p",
        {},
        `${need(name)}: ${names.join(", ")}. `,
        button("I can do that", () => act.able(name), {
          class: "plain",
          "aria-label": `I can do that: ${small(need(name))}`,
        }),
      );
    }),
  ];
}
