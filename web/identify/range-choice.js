import { el } from "../parts/element.js";
import {
  ABOUT_THIS_RANGE,
  gaugeAndYears,
  INVENTED_RANGE,
  INVENTED_TO_TRY,
  RANGE,
} from "./first-words.js";

/** Which range is looked in: a choice when there is more than one, and what it is. */
export function rangeChoice(state, choose) {
  const { list, entry } = state;
  const about = [
    entry.gauge === "" ? entry.about : gaugeAndYears(entry.gauge, entry.first, entry.last),
    entry.invented ? INVENTED_TO_TRY : "",
  ].join(" ");
  const text = list.length > 1 ? about : `${entry.name}: ${about}`;
  const said = el(
    "details",
    {},
    el("summary", {}, entry.invented ? INVENTED_RANGE : ABOUT_THIS_RANGE),
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
    el("label", { for: "range" }, RANGE),
    el("span", { class: "pick" }, select),
    said,
  );
}
