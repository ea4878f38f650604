/** What is folded away beneath the answer. */
import { chance } from "../parts/chance.js";
import { button, el, heading } from "../parts/element.js";
import { belongs, carries, notes, sources } from "../parts/facts.js";
import { need, percent, small, variantName } from "../parts/say.js";
import { alikes, oddOnes } from "./alikes.js";
import { datedFacts } from "./when-made.js";
import { yearsFigure } from "./years-figure.js";
import {
  ALL_IT_COULD_BE_AND_WHY_NOT,
  canDoThat,
  I_CAN_DO_THAT,
  KEEP_AS_A_SIGHTING,
  LOOK_AT_ALL_PIECES,
  NOT_IN_THE_RANGE,
  notInTheRange,
  ONLY_WHAT_YOU_FOUND,
  RECORD_IT_AS_A_VARIANT,
  WHAT_ELSE_IT_COULD_BE,
  WHAT_ELSE_WOULD_HELP,
  WHAT_IT_MAY_BE,
  WHERE_IT_DOES_NOT_FIT,
  WHY_NOT_THESE,
  WHY_NOTHING_MORE,
  YOUR_ANSWERS,
} from "./words.js";

const MOST = 12;

/** The nodes; `which`: single, unseen, unrecorded, or why there are several. */
export function rest(state, step, act, which) {
  const made = { single, unseen, unrecorded }[which] ?? several;
  return made(state, step, act, which).flat(Infinity).filter(Boolean);
}

function single(state, step, act) {
  const { pack, view } = state;
  const variant = pack.variants[view.variants[0].variant];
  const item = pack.items[variant.item];
  return [
    whyUnfit(state, step, act),
    yearsFigure(view.years),
    couldBe(state, view.variants.slice(1), act),
    datedFacts(state, step, act),
    wouldTell(pack, view, act),
    widen(step, act),
    carries(item),
    sources(pack, variant, item),
    belongs(pack, item, variant.item),
    notes([item.note, variant.note]),
  ];
}

function unseen({ pack, view }, step, act) {
  return [wouldTell(pack, view, act), widen(step, act)];
}

function several(state, step, act, which) {
  const { pack, view } = state;
  const left = view.variants.filter(
    (entry) => view.alike.length === 0 || view.alike.includes(entry.variant),
  );
  return [
    button(YOUR_ANSWERS, act.answers, { class: "plain" }),
    el("p", { class: "quiet" }, WHY_NOTHING_MORE[which]),
    alikes(
      left
        .slice(0, MOST)
        .map((entry) => ({ name: variantName(pack, entry.variant), chance: entry.chance })),
    ),
    yearsFigure(view.years),
    datedFacts(state, step, act),
    wouldTell(pack, view, act),
    el("p", { class: "quiet" }, notInTheRange(percent(view.unrecorded))),
    widen(step, act),
  ];
}

function unrecorded(state, step, act) {
  const { pack, view } = state;
  return [
    el("p", {}, WHAT_IT_MAY_BE),
    view.variants.length === 0
      ? null
      : button(WHY_NOT_THESE, act.candidates, { class: "plain wide" }),
    datedFacts(state, step, act),
    widen(step, act),
    wouldTell(pack, view, act),
  ];
}

/** What it means that something does not fit, for who wants to know. */
function whyUnfit({ pack, view, entry }, { session }, act) {
  if (!view.fit || view.fit.passed || oddOnes(pack, view, session).length === 0) return null;
  return [
    el("p", {}, WHERE_IT_DOES_NOT_FIT),
    entry.written
      ? button(RECORD_IT_AS_A_VARIANT, act.asVariant, { class: "plain" })
      : button(KEEP_AS_A_SIGHTING, act.sighting, { class: "plain" }),
  ];
}

function couldBe({ pack, view }, others, act) {
  const shown = others
    .filter((candidate, place) => place === 0 || candidate.chance >= 0.005)
    .slice(0, 3);
  return [
    heading(2, WHAT_ELSE_IT_COULD_BE),
    el(
      "ul",
      { class: "alike" },
      shown.map((row) =>
        el("li", {}, el("span", {}, variantName(pack, row.variant)), chance(row.chance)),
      ),
      el("li", {}, el("span", {}, NOT_IN_THE_RANGE), chance(view.unrecorded)),
    ),
    button(ALL_IT_COULD_BE_AND_WHY_NOT, act.candidates, { class: "link" }),
  ];
}

function widen({ session }, act) {
  if (session.scope.items.length === 0) return null;
  return el(
    "p",
    {},
    ONLY_WHAT_YOU_FOUND,
    button(LOOK_AT_ALL_PIECES, act.widen, { class: "plain" }),
  );
}

function wouldTell(pack, view, act) {
  if (view.would_tell.length === 0) return null;
  const needs = [...new Set(view.would_tell.map((look) => look.needs))];
  return [
    heading(2, WHAT_ELSE_WOULD_HELP),
    needs.map((name) => {
      const names = view.would_tell
        .filter((look) => look.needs === name)
        .map((look) => small(pack.features[look.feature].name));
      return el(
        "p",
        {},
        `${need(name)}: ${names.join(", ")}. `,
        button(I_CAN_DO_THAT, () => act.able(name), {
          class: "plain",
          "aria-label": canDoThat(small(need(name))),
        }),
      );
    }),
  ];
}
