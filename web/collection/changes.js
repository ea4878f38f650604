import { historyOf, latest } from "../data/journal.js";
import { record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { title } from "../parts/piece-names.js";
import { timeText } from "../parts/days.js";
import { fieldName, valueText } from "../parts/field-words.js";
import { saveChange, takeBack } from "../parts/saving.js";
import { run } from "../data/queue.js";
import { redraw } from "../parts/navigation.js";
import { packsAtHand } from "../data/known-ranges.js";
import {
  asItWas,
  EARLIER_VERSION_PUT_BACK,
  fieldAsItWas,
  HISTORY,
  historyOfName,
  NOTHING_HAS_BEEN_CHANGED_YET,
  ON_ANOTHER_DEVICE,
  onAnotherDeviceAt,
  recordCount,
  THE_EARLIER_VERSION_IS_BACK,
  UNDO_THIS,
  undoThis,
} from "./words.js";

const MOST = 60;
const SILENT = new Set(["id", "type", "made", "changed", "session", "demo"]);

/** History: of one record with its earlier versions, or the latest changes of all. */
export async function changesScreen(state, { id }) {
  const entries = id ? await historyOf(id) : await latest(MOST);
  const shown = id ? record(id) : null;
  return el(
    "section",
    { class: "shelf" },
    heading(1, shown ? historyOfName(title(packsAtHand, shown)) : HISTORY),
    entries.length === 0
      ? [emptyPicture("notebook"), el("p", {}, NOTHING_HAS_BEEN_CHANGED_YET)]
      : null,
    el(
      "ol",
      { class: "answers" },
      entries.map((entry) => el("li", {}, shown ? version(state, entry) : step(entry))),
    ),
  );
}

function step({ group, what, time, records, undone, pulled }) {
  const first = record(records[0]);
  const name = first && first.type !== "budget" && !first.gone ? title(packsAtHand, first) : "";
  const about = records.length > 1 ? recordCount(records.length) : name;
  return [
    heading(2, what),
    el(
      "p",
      { class: "quiet" },
      [about, timeText(time), pulled ? ON_ANOTHER_DEVICE : "", undone ? "undone" : ""]
        .filter(Boolean)
        .join(" · "),
    ),
    undone || pulled
      ? null
      : button(UNDO_THIS, () => run(() => takeBack({ group, what })), {
          class: "plain",
          "aria-label": undoThis(what, about),
        }),
  ];
}

function version(state, { record: id, what, time, before, after, pulled }) {
  const pack = packsAtHand.get(record(id)?.pack);
  const show = (value) => valueText(state, value, pack);
  const fields = Object.keys({ ...before, ...after }).filter((name) => !SILENT.has(name));
  const lines = before
    ? fields.map((name) => `${fieldName(name)}: ${show(before[name])} → ${show(after[name])}`)
    : [];
  const back = (former, when) =>
    button(
      asItWas(when),
      () =>
        run(async () => {
          const alter = (now) => ({ ...now, ...former });
          const said = THE_EARLIER_VERSION_IS_BACK;
          if (await saveChange(EARLIER_VERSION_PUT_BACK, [{ id, alter }], { said })) await redraw();
        }),
      {
        class: "plain",
        "aria-label": fieldAsItWas(fieldName(fields[0] ?? ""), when, timeText(time)),
      },
    );
  return [
    heading(2, what),
    el("p", { class: "quiet" }, pulled ? onAnotherDeviceAt(timeText(time)) : timeText(time)),
    el(
      "ul",
      { class: "plain-list" },
      lines.map((line) => el("li", {}, line)),
    ),
    lines.length === 0
      ? null
      : el(
          "div",
          { class: "row" },
          back(values(before, fields), "before"),
          back(values(after, fields), "after"),
        ),
  ];
}

function values(from, fields) {
  return Object.fromEntries(
    fields.filter((name) => name in from).map((name) => [name, from[name]]),
  );
}
