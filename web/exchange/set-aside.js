import { allAside, throwAway } from "../data/aside.js";
import { button, el, heading } from "../parts/element.js";
import { timeText } from "../parts/days.js";
import { sheet } from "../parts/sheet.js";
import { run } from "../data/queue.js";
import { redraw } from "../parts/navigation.js";
import { download } from "./hand-out.js";
import {
  bytesOf,
  DELETE_FOR_GOOD,
  DELETE_IT,
  deletedForGood,
  deleteName,
  LOOK_AT_IT,
  lookAtName,
  NOTHING_IS_SET_ASIDE,
  SAVE_THEM_ALL_AS_A_FILE,
  SET_ASIDE,
  SET_ASIDE_FROM,
  setAsideAt,
  SOMETHING,
  WHAT_IS_SET_ASIDE,
} from "./words.js";

const SHOWN = 4000;

/** What cannot be read or sent: each can be looked at, taken out as a file, and put away. */
export async function setAsideScreen() {
  const rows = await allAside();
  return el(
    "section",
    { class: "shelf" },
    heading(1, SET_ASIDE),
    el("p", {}, rows.length === 0 ? NOTHING_IS_SET_ASIDE : WHAT_IS_SET_ASIDE),
    rows.length === 0
      ? null
      : button(SAVE_THEM_ALL_AS_A_FILE, () => takeOut(rows), { class: "main wide" }),
    el(
      "ul",
      { class: "answers" },
      rows.map((row) => el("li", {}, line(row))),
    ),
  );
}

function line(row) {
  const name = SET_ASIDE_FROM[row.from] ?? SOMETHING;
  return [
    heading(2, name),
    el("p", {}, row.why),
    el("p", { class: "quiet" }, setAsideAt(timeText(row.time))),
    el(
      "div",
      { class: "row" },
      button(LOOK_AT_IT, () => look(name, row), {
        class: "plain",
        "aria-label": lookAtName(name),
      }),
      button("Delete", () => confirmed(name, row), {
        class: "plain",
        "aria-label": deleteName(name),
      }),
    ),
  ];
}

function look(name, { value }) {
  const text = textOf(value);
  const shown = text.length > SHOWN ? `${text.slice(0, SHOWN)} …` : text;
  sheet(name, el("pre", { class: "raw", tabindex: 0 }, shown));
}

/** Any value as text; what JSON cannot hold is named. */
function textOf(value) {
  const seen = new Set();
  const spelled = (_, part) => {
    if (typeof part === "bigint") return `${part}`;
    if (typeof part !== "object" || part === null) return part;
    if (seen.has(part)) return "(again)";
    seen.add(part);
    if (part instanceof Blob) return bytesOf(part.size, part.type);
    return part instanceof Map || part instanceof Set ? [...part] : part;
  };
  try {
    return JSON.stringify(value, spelled, 1) ?? String(value);
  } catch {
    return String(value);
  }
}

function takeOut(rows) {
  const parts = rows.map(({ from, why, time, value }) => textOf({ from, why, time, value }));
  const text = `{"format":1,"kind":"identify set aside","rows":[\n${parts.join(",\n")}\n]}\n`;
  const name = `stallside-set-aside-${new Date().toISOString().slice(0, 10)}.json`;
  return download(new File([text], name, { type: "application/json" }));
}

function confirmed(name, row) {
  const shut = sheet(
    DELETE_IT,
    el("p", {}, deletedForGood(name)),
    button(
      DELETE_FOR_GOOD,
      () => {
        shut();
        run(async () => {
          await throwAway(row.key);
          await redraw();
        });
      },
      { class: "main wide" },
    ),
  );
}
