/**
 * A spreadsheet or a pasted table as rows of a range of one's own: what its columns are, what each
 * row would do, and all of it as one change.
 */
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { gone } from "../collection/piece.js";
import { button, el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { fileButton } from "../parts/file-button.js";
import { longList } from "../parts/long-list.js";
import { goTo } from "../parts/navigation.js";
import { announce } from "../parts/status.js";
import { NoList, rowsOfFile, rowsOfText } from "./list-files.js";
import {
  FIELDS,
  OF_ITS_OWN,
  guessed,
  known,
  meaning,
  rowSentence,
  settledName,
} from "./list-meant.js";
import { isThere, itemThere, rowsOfList } from "./list-rows.js";
import { keepRows } from "./own-range.js";

const SAMPLES = 3;
const FEW = 12; // of what is the same, only so many are told one by one
let job = null; // {range, rows, columns, held, settled, kind, found}; stays while one looks away

/** Brings a list into the range `range`. */
export async function listInScreen(_, { range }) {
  const whole = record(range);
  if (!whole || whole.trashed !== "") return gone();
  if (job?.range !== range) job = null;
  const body = el("div", { class: "shelf" });
  const wrong = el("p", { class: "wrong", role: "alert" });
  const draw = () =>
    body.replaceChildren(...(job?.found ? told(draw) : job ? columns(draw) : asked()));
  const taken = (reading) =>
    run(async () => {
      wrong.textContent = "";
      try {
        const rows = await reading();
        const held = await known(range);
        job = { range, rows, held, settled: {}, kind: "", columns: await guessed(rows, held) };
        announce(`${rows.length - 1} rows read.`);
        draw();
      } catch (error) {
        if (!(error instanceof NoList)) throw error;
        wrong.textContent = error.message;
        announce(error.message);
      }
    });
  const asked = () => given(taken);
  draw();
  return el(
    "section",
    { class: "shelf row-wide" },
    el("p", { class: "kicker" }, whole.name),
    heading(1, "From a list"),
    wrong,
    body,
  );
}

/** Where the list comes from. */
function given(taken) {
  const text = el("textarea", { rows: 6, id: "pasted-list" });
  return [
    el(
      "p",
      {},
      "A row for each item or variant, and a first row that says what the columns are. Nothing " +
        "is saved before you have seen what changes.",
    ),
    fileButton("Choose a file", (file) => taken(() => rowsOfFile(file)), {
      accept:
        ".csv,.tsv,.txt,.xlsx,text/csv," +
        "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    }),
    el(
      "div",
      { class: "field" },
      el("label", { for: "pasted-list" }, "Or paste it here, from a spreadsheet or a page"),
      text,
    ),
    button("Read what I pasted", () => taken(async () => rowsOfText(text.value)), {
      class: "plain",
    }),
  ];
}

/** What each column is: guessed, to be put right. */
function columns(draw) {
  const { rows, held } = job;
  const [headings, ...lines] = rows;
  const looks = held.features.map(({ key, name }) => [`seen ${key}`, name]);
  const one = (name, place) => {
    const { field, feature } = job.columns[place];
    const samples = [...new Set(lines.map((line) => line[place] ?? "").filter(Boolean))];
    const own = [OF_ITS_OWN, `Something to look at, called “${name}”`];
    const options = [...FIELDS, own, ...looks];
    const now = field === "seen" ? `seen ${feature}` : field;
    return choice(
      name || `Column ${place + 1}`,
      options,
      now,
      (value) => {
        const [what, ...key] = value.split(" ");
        job.columns[place] = { field: what, feature: key.join(" ") };
        for (const text of Object.keys(job.settled))
          if (text.startsWith(`${place} `)) delete job.settled[text]; // said of what it was before
        return false;
      },
      samples.slice(0, SAMPLES).join(" · ") || "Empty",
    );
  };
  const kinds = held.kinds.map(({ id, name }) => [id, name]);
  job.kind ||= kinds[0][0];
  const onward = () =>
    run(async () => {
      const twice = doubled();
      if (twice !== "") {
        wrong.textContent = `Two columns are “${twice}”. Leave one of them out.`;
        announce(wrong.textContent);
        return;
      }
      await lookAgain();
      draw();
    });
  const wrong = el("p", { class: "wrong" });
  return [
    heading(2, `${lines.length} rows: what are the columns?`),
    el("div", { class: "side-by-side" }, headings.map(one)),
    choice(
      "What are they, where neither the name nor a column says it?",
      kinds,
      job.kind,
      (kind) => {
        job.kind = kind;
        return false;
      },
    ),
    wrong,
    button("See what changes", onward, { class: "main wide" }),
    otherList(draw),
  ];
}

/** The field that two columns have, in words; "" for none. */
function doubled() {
  const names = job.columns.map(({ field, feature }) => `${field} ${feature}`.trim());
  const twice = names.find(
    (name, place) => name !== "" && name !== OF_ITS_OWN && names.indexOf(name) !== place,
  );
  if (!twice) return "";
  const look = job.held.features.find(({ key }) => twice === `seen ${key}`);
  return look?.name ?? FIELDS.find(([field]) => field === twice)[1];
}

async function lookAgain() {
  job.found = await meaning(job.rows, job.columns, job.held, job.settled);
}

function otherList(draw) {
  return button(
    "Another list",
    () => {
      job = null;
      draw();
    },
    { class: "link" },
  );
}

/** What it would do, row by row, and what is not understood. */
function told(draw) {
  const { range, found } = job;
  const lines = found.items.flatMap((item) => {
    const there = itemThere(range, item);
    return item.variants.map((variant) => ({
      line: variant.line,
      there: isThere(there, variant, item),
      text: rowSentence(item, variant, isThere(there, variant, item)),
      fresh: !there && item.lines[0] === variant.line,
    }));
  });
  const count = (test, one, many) => {
    const sum = lines.filter(test).length;
    return sum === 0 ? "" : `${sum} ${sum === 1 ? one : many}`;
  };
  const sums = [
    count(({ fresh }) => fresh, "new item", "new items"),
    count(({ fresh, there }) => !fresh && !there, "further variant", "further variants"),
    count(({ there }) => there, "is there already", "are there already"),
    found.left > 0 ? `${found.left} without a number or a name left out` : "",
  ].filter(Boolean);
  const changes = lines.some(({ there }) => !there);
  return [
    heading(2, "What changes"),
    el("p", {}, `${sums.join(", ")}.`),
    ...notUnderstood(draw),
    changes ? button("Write them down", () => run(written), { class: "main wide" }) : null,
    button(
      "Back to the columns",
      () => {
        job.found = null;
        draw();
      },
      { class: "plain wide" },
    ),
    ...longList("Rows", lines, ({ line, text }) =>
      el("p", {}, el("span", { class: "quiet" }, `Row ${job.rows[line + 1].line} `), text),
    ),
  ].filter(Boolean);
}

/** Texts that no state is called like, each with what to take it for; years that cannot be read. */
function notUnderstood(draw) {
  const { found, rows, columns: uses, held, settled } = job;
  const ask = ({ column, text, count }) => {
    const { field, feature } = uses[column];
    const looked = held.looked.find(({ id }) => id === feature);
    const options = (field === "kind" ? held.choices : looked.states).map(({ id, texts }) => [
      id,
      texts[0],
    ]);
    const fresh = field === "kind" ? [] : [["new", `Something new: ${text}`]];
    return choice(
      `${rows[0][column]}: “${text}”`,
      [["", "Leave it open"], ...fresh, ...options],
      "",
      (value) => {
        if (value === "") delete settled[settledName(column, text)];
        else settled[settledName(column, text)] = [text, value];
        run(lookAgain).then(draw);
        return false;
      },
      count === 1 ? "In 1 row" : `In ${count} rows`,
    );
  };
  const years = found.years
    .slice(0, FEW)
    .map(({ line, text, wrong }) =>
      el("li", {}, `Row ${rows[line + 1].line}: “${text}”. ${wrong}`),
    );
  return [
    found.unread.length === 0
      ? null
      : [
          heading(2, "What are these?"),
          el("p", { class: "quiet" }, "Said once, it counts for all rows that have it."),
          found.unread.map(ask),
        ],
    years.length === 0
      ? null
      : [
          heading(2, "Years that cannot be read"),
          el("p", { class: "quiet" }, "They stay empty; everything else of the rows is imported."),
          el("ul", { class: "plain-list" }, years),
        ],
  ].flat(2);
}

async function written() {
  const { range, rows, held, kind, found } = job;
  const { rows: made, edits } = rowsOfList(range, {
    items: found.items,
    held,
    headings: rows[0],
    kind,
  });
  const count = found.items.length;
  const those = count === 1 ? "1 item of the list is" : `${count} items of the list are`;
  const said = `${those} in the range.`;
  if (!(await keepRows("From a list", made, { edits, said }))) return;
  job = null;
  goTo("own", { id: range }, { instead: true, told: true });
}
