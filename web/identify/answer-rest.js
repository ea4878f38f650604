/** What is folded away beneath the answer. */
import { chance } from "../parts/chance.js";
import { button, el, heading } from "../parts/element.js";
import { belongs, carries, notes, sources } from "../parts/facts.js";
import { need, percent, small, variantName } from "../parts/say.js";
import { alikes, oddOnes } from "./alikes.js";
import { datedFacts } from "./when-made.js";
import { yearsFigure } from "./years-figure.js";

const MOST = 12;
const WHY = {
  nothing: "Nothing left to look at tells these apart:",
  verdict: "Whichever of these it is makes no difference to you:",
};

/** The nodes; `which`: one, unseen, unrecorded, or why there are several. */
export function rest(state, step, act, which) {
  const made = { one: single, unseen, unrecorded }[which] ?? several;
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
    button("Your answers", act.answers, { class: "plain" }),
    el("p", { class: "quiet" }, WHY[which]),
    alikes(
      left
        .slice(0, MOST)
        .map((entry) => ({ name: variantName(pack, entry.variant), chance: entry.chance })),
    ),
    yearsFigure(view.years),
    datedFacts(state, step, act),
    wouldTell(pack, view, act),
    el("p", { class: "quiet" }, `Not in the range: ${percent(view.unrecorded)}.`),
    widen(step, act),
  ];
}

function unrecorded(state, step, act) {
  const { pack, view } = state;
  return [
    el(
      "p",
      {},
      "It may be a variant nobody has recorded, a repainted or altered piece, or one of the " +
        "answers may be wrong. A sighting, with photos and what you know of it, helps whoever " +
        "keeps the range.",
    ),
    view.variants.length === 0
      ? null
      : button("Why not these?", act.candidates, { class: "plain wide" }),
    datedFacts(state, step, act),
    widen(step, act),
    wouldTell(pack, view, act),
  ];
}

/** What it means that something does not fit, for who wants to know. */
function whyUnfit({ pack, view, entry }, { session }, act) {
  if (!view.fit || view.fit.passed || oddOnes(pack, view, session).length === 0) return null;
  return [
    el(
      "p",
      {},
      "Where something does not fit, it may be a variant nobody has recorded, a repaired or " +
        "repainted piece, or a slip.",
    ),
    entry.written
      ? button("Record it as a variant", act.asVariant, { class: "plain" })
      : button("Keep as a sighting", act.sighting, { class: "plain" }),
  ];
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
      el("li", {}, el("span", {}, "Not in the range"), chance(view.unrecorded)),
    ),
    button("All it could be, and why not", act.candidates, { class: "link" }),
  ];
}

function widen({ session }, act) {
  if (session.scope.items.length === 0) return null;
  return el(
    "p",
    {},
    "Only the number or name you found was considered. ",
    button("Look at all pieces", act.widen, { class: "plain" }),
  );
}

function wouldTell(pack, view, act) {
  if (view.would_tell.length === 0) return null;
  const needs = [...new Set(view.would_tell.map((one) => one.needs))];
  return [
    heading(2, "What else would help"),
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
