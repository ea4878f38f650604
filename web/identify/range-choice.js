import { button, el } from "../parts/element.js";
import { sheet } from "../parts/sheet.js";
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
  const more = button(
    entry.invented ? INVENTED_RANGE : ABOUT_THIS_RANGE,
    () => sheet(entry.name, el("p", {}, about)),
    { class: "link" },
  );
  if (list.length === 1) return el("div", { class: "range" }, more);
  const select = el(
    "select",
    { id: "range", onchange: () => choose(select.value) },
    list.map((range) =>
      el("option", { value: range.id, selected: range.id === entry.id }, range.name),
    ),
  );
  return el(
    "div",
    { class: "range" },
    el("label", { for: "range" }, RANGE),
    el("span", { class: "pick" }, select),
    more,
  );
}
