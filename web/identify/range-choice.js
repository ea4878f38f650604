import { el } from "../parts/element.js";

/** Which range is looked in: a choice when there is more than one, and what it is. */
export function rangeChoice(state, choose) {
  const { list, entry } = state;
  const about = [
    entry.gauge === "" ? entry.about : `${entry.gauge} gauge, ${entry.first} to ${entry.last}.`,
    entry.invented ? "Invented, to try the app with: no such models exist." : "",
  ].join(" ");
  const text = list.length > 1 ? about : `${entry.name}: ${about}`;
  const said = el(
    "details",
    {},
    el("summary", {}, entry.invented ? "Invented range" : "About this range"),
    el("p", { class: "quiet" }, text),
  );
  if (list.length === 1) return el("div", { class: "range" }, said);
  const select = el(
    "select",
    { id: "range", onchange: () => choose(select.value) },
    list.map((one) => el("option", { value: one.id, selected: one.id === entry.id }, one.name)),
  );
  return el(
    "div",
    { class: "range" },
    el("label", { for: "range" }, "Range"),
    el("span", { class: "pick" }, select),
    said,
  );
}
