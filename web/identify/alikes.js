/** Candidates in a list, and what of an answer did not fit. */
import { chance } from "../parts/chance.js";
import { el } from "../parts/element.js";

/** Names with their chances. */
export function alikes(entries) {
  return el(
    "ul",
    { class: "alike" },
    entries.map((one) => el("li", {}, el("strong", {}, one.name), chance(one.chance))),
  );
}

/** The features of the answers that do not fit what is named. */
export function oddOnes(pack, view, session) {
  return view.fit.odd.map((place) =>
    pack.features.find((one) => one.id === session.answers[place].feature),
  );
}
