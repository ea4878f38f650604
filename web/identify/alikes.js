/** Candidates in a list, and what of an answer did not fit. */
import { chance } from "../parts/chance.js";
import { el } from "../parts/element.js";

/** Names with their chances. */
export function alikes(entries) {
  return el(
    "ul",
    { class: "alike" },
    entries.map((entry) => el("li", {}, el("strong", {}, entry.name), chance(entry.chance))),
  );
}

/** The features of the answers that do not fit what is named. */
export function oddOnes(pack, view, session) {
  return view.fit.odd.map((place) =>
    pack.features.find((feature) => feature.id === session.answers[place].feature),
  );
}
