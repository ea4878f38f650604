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
import { NoList } from "../exchange/list-rules.js";
import { rowsOfFile, rowsOfText } from "./list-files.js";
import { OF_ITS_OWN, guessed, known, meaning, rowSentence, settledName } from "./list-meant.js";
import { isThere, itemThere, rowsOfList } from "./list-rows.js";
import { keepRows } from "./own-range.js";
import {
  ANOTHER_LIST,
  ARE_THERE_ALREADY,
  BACK_TO_THE_COLUMNS,
  CHOOSE_A_FILE,
  columnNumber,
  EMPTY,
  FIELDS,
  FROM_A_LIST,
  FURTHER_VARIANT,
  FURTHER_VARIANTS,
  IN_1_ROW,
  inRows,
  IS_THERE_ALREADY,
  itemsAre,
  LEAVE_IT_OPEN,
  leftOutNameless,
  NEW_ITEM,
  NEW_ITEMS,
  ONE_ITEM_IS,
  PASTE_IT_HERE,
  READ_WHAT_I_PASTED,
  ROW_FOR_EACH,
  rowIsWrong,
  ROWS,
  rowsRead,
  rowStart,
  SAID_ONCE,
  SEE_WHAT_CHANGES,
  seenIn,
  somethingCalled,
  somethingNew,
  THEY_STAY_EMPTY,
  thoseInTheRange,
  twoColumnsAre,
  WHAT_ARE_THESE,
  WHAT_ARE_THEY,
  WHAT_CHANGES,
  whatAreTheColumns,
  WRITE_THEM_DOWN,
  YEARS_THAT_CANNOT_BE_READ,
} from "./list-words.js";

const SAMPLES = 3;
const FEW = 12; // of what is the same, only so many are told one by one
let job = null; // {range, rows, columns, held, settled, kind, meant}; stays while one looks away

/** Brings a list into the range `range`. */
export async function listInScreen(_, { range }) {
  const whole = record(range);
  if (!whole || whole.trashed !== "") return gone();
  if (job?.range !== range) job = null;
  const body = el("div", { class: "shelf" });
  const wrong = el("p", { class: "wrong", role: "alert" });
  const draw = () =>
    body.replaceChildren(...(job?.meant ? effects(draw) : job ? columns(draw) : asked()));
  const taken = (reading) =>
    run(async () => {
      wrong.textContent = "";
      try {
        const rows = await reading();
        const held = await known(range);
        job = { range, rows, held, settled: {}, kind: "", columns: await guessed(rows, held) };
        announce(rowsRead(rows.length - 1));
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
    heading(1, FROM_A_LIST),
    wrong,
    body,
  );
}

/** Where the list comes from. */
function given(taken) {
  const text = el("textarea", { rows: 6, id: "pasted-list" });
  return [
    el("p", {}, ROW_FOR_EACH),
    fileButton(CHOOSE_A_FILE, (file) => taken(() => rowsOfFile(file)), {
      accept:
        ".csv,.tsv,.txt,.xlsx,text/csv," +
        "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    }),
    el("div", { class: "field" }, el("label", { for: "pasted-list" }, PASTE_IT_HERE), text),
    button(READ_WHAT_I_PASTED, () => taken(() => rowsOfText(text.value)), {
      class: "plain",
    }),
  ];
}

/** What each column is: guessed, to be put right. */
function columns(draw) {
  const { rows, held } = job;
  const [headings, ...lines] = rows;
  const looks = held.features.map(({ key, name }) => [seenIn(key), name]);
  const column = (name, place) => {
    const { field, feature } = job.columns[place];
    const samples = [...new Set(lines.map((line) => line[place] ?? "").filter(Boolean))];
    const own = [OF_ITS_OWN, somethingCalled(name)];
    const options = [...FIELDS, own, ...looks];
    const now = field === "seen" ? seenIn(feature) : field;
    return choice(
      name || columnNumber(place + 1),
      options,
      now,
      (value) => {
        const [what, ...key] = value.split(" ");
        job.columns[place] = { field: what, feature: key.join(" ") };
        for (const text of Object.keys(job.settled))
          if (text.startsWith(`${place} `)) delete job.settled[text]; // said of what it was before
        return false;
      },
      samples.slice(0, SAMPLES).join(" · ") || EMPTY,
    );
  };
  const kinds = held.kinds.map(({ id, name }) => [id, name]);
  job.kind ||= kinds[0][0];
  const onward = () =>
    run(async () => {
      const twice = doubled();
      if (twice !== "") {
        wrong.textContent = twoColumnsAre(twice);
        announce(wrong.textContent);
        return;
      }
      await lookAgain();
      draw();
    });
  const wrong = el("p", { class: "wrong" });
  return [
    heading(2, whatAreTheColumns(lines.length)),
    el("div", { class: "side-by-side" }, headings.map(column)),
    choice(WHAT_ARE_THEY, kinds, job.kind, (kind) => {
      job.kind = kind;
      return false;
    }),
    wrong,
    button(SEE_WHAT_CHANGES, onward, { class: "main wide" }),
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
  job.meant = await meaning(job.rows, job.columns, job.held, job.settled);
}

function otherList(draw) {
  return button(
    ANOTHER_LIST,
    () => {
      job = null;
      draw();
    },
    { class: "link" },
  );
}

/** What it would do, row by row, and what is not understood. */
function effects(draw) {
  const { range, meant } = job;
  const lines = meant.items.flatMap((item) => {
    const there = itemThere(range, item);
    return item.variants.map((variant) => ({
      line: variant.line,
      there: isThere(there, variant, item),
      text: rowSentence(item, variant, isThere(there, variant, item)),
      fresh: !there && item.lines[0] === variant.line,
    }));
  });
  const count = (test, single, many) => {
    const sum = lines.filter(test).length;
    return sum === 0 ? "" : `${sum} ${sum === 1 ? single : many}`;
  };
  const sums = [
    count(({ fresh }) => fresh, NEW_ITEM, NEW_ITEMS),
    count(({ fresh, there }) => !fresh && !there, FURTHER_VARIANT, FURTHER_VARIANTS),
    count(({ there }) => there, IS_THERE_ALREADY, ARE_THERE_ALREADY),
    meant.left > 0 ? leftOutNameless(meant.left) : "",
  ].filter(Boolean);
  const changes = lines.some(({ there }) => !there);
  return [
    heading(2, WHAT_CHANGES),
    el("p", {}, `${sums.join(", ")}.`),
    ...notUnderstood(draw),
    changes ? button(WRITE_THEM_DOWN, () => run(written), { class: "main wide" }) : null,
    button(
      BACK_TO_THE_COLUMNS,
      () => {
        job.meant = null;
        draw();
      },
      { class: "plain wide" },
    ),
    ...longList(ROWS, lines, ({ line, text }) =>
      el("p", {}, el("span", { class: "quiet" }, rowStart(job.rows[line + 1].line)), text),
    ),
  ].filter(Boolean);
}

/** Texts that no state is called like, each with what to take it for; years that cannot be read. */
function notUnderstood(draw) {
  const { meant, rows, columns: uses, held, settled } = job;
  const ask = ({ column, text, count }) => {
    const { field, feature } = uses[column];
    const looked = held.looked.find(({ id }) => id === feature);
    const options = (field === "kind" ? held.choices : looked.states).map(({ id, texts }) => [
      id,
      texts[0],
    ]);
    const fresh = field === "kind" ? [] : [["new", somethingNew(text)]];
    return choice(
      `${rows[0][column]}: “${text}”`,
      [["", LEAVE_IT_OPEN], ...fresh, ...options],
      "",
      (value) => {
        if (value === "") delete settled[settledName(column, text)];
        else settled[settledName(column, text)] = [text, value];
        run(lookAgain).then(draw);
        return false;
      },
      count === 1 ? IN_1_ROW : inRows(count),
    );
  };
  const years = meant.years
    .slice(0, FEW)
    .map(({ line, text, wrong }) => el("li", {}, rowIsWrong(rows[line + 1].line, text, wrong)));
  return [
    meant.unread.length === 0
      ? null
      : [heading(2, WHAT_ARE_THESE), el("p", { class: "quiet" }, SAID_ONCE), meant.unread.map(ask)],
    years.length === 0
      ? null
      : [
          heading(2, YEARS_THAT_CANNOT_BE_READ),
          el("p", { class: "quiet" }, THEY_STAY_EMPTY),
          el("ul", { class: "plain-list" }, years),
        ],
  ].flat(2);
}

async function written() {
  const { range, rows, held, kind, meant } = job;
  const { rows: made, edits } = rowsOfList(range, {
    items: meant.items,
    held,
    headings: rows[0],
    kind,
  });
  const count = meant.items.length;
  const those = count === 1 ? ONE_ITEM_IS : itemsAre(count);
  const said = thoseInTheRange(those);
  if (!(await keepRows(FROM_A_LIST, made, { edits, said }))) return;
  job = null;
  goTo("own", { id: range }, { instead: true, keepNotice: true });
}
