import { allAside, throwAway } from "../data/aside.js";
import { button, el, heading } from "../parts/element.js";
import { timeText } from "../parts/days.js";
import { sheet } from "../parts/sheet.js";
import { run } from "../data/queue.js";
import { redraw } from "../parts/navigation.js";
import { download } from "./server-files.js";

const FROM = {
  records: "A record kept on this device",
  journal: "A change in the history of this device",
  photos: "A photo kept on this device",
  server: "A change from the server",
  sent: "A change of this device that the server does not take",
  photo: "A photo that the server does not take",
};
const SHOWN = 4000;

/** What cannot be read or sent: each can be looked at, taken out as a file, and put away. */
export async function setAsideScreen() {
  const rows = await allAside();
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Set aside"),
    el(
      "p",
      {},
      rows.length === 0
        ? "Nothing is set aside."
        : "The app cannot read these, or the server will not take them. Everything else " +
            "works. A file of them helps whoever looks after the app to find out why.",
    ),
    rows.length === 0
      ? null
      : button("Save them all as a file", () => takeOut(rows), { class: "main wide" }),
    el(
      "ul",
      { class: "answers" },
      rows.map((row) => el("li", {}, one(row))),
    ),
  );
}

function one(row) {
  const name = FROM[row.from] ?? "Something";
  return [
    heading(2, name),
    el("p", {}, row.why),
    el("p", { class: "quiet" }, `Set aside ${timeText(row.time)}`),
    el(
      "div",
      { class: "row" },
      button("Look at it", () => look(name, row), {
        class: "plain",
        "aria-label": `Look at it: ${name}`,
      }),
      button("Delete", () => confirmed(name, row), {
        class: "plain",
        "aria-label": `Delete: ${name}`,
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
  const told = (_, part) => {
    if (typeof part === "bigint") return `${part}`;
    if (typeof part !== "object" || part === null) return part;
    if (seen.has(part)) return "(again)";
    seen.add(part);
    if (part instanceof Blob) return `(${part.size} bytes, ${part.type})`;
    return part instanceof Map || part instanceof Set ? [...part] : part;
  };
  try {
    return JSON.stringify(value, told, 1) ?? String(value);
  } catch {
    return String(value);
  }
}

function takeOut(rows) {
  const parts = rows.map(({ from, why, time, value }) => textOf({ from, why, time, value }));
  const text = `{"format":1,"kind":"identify set aside","rows":[\n${parts.join(",\n")}\n]}\n`;
  const name = `identify-set-aside-${new Date().toISOString().slice(0, 10)}.json`;
  return download(new File([text], name, { type: "application/json" }));
}

function confirmed(name, row) {
  const shut = sheet(
    "Delete it?",
    el(
      "p",
      {},
      `${name} is then deleted from this device for good. If you are not sure, save it as a ` +
        "file first.",
    ),
    button(
      "Delete for good",
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
