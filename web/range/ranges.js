/** The ranges there are: one can be added from a file, handed on, taken away again. */
import { here } from "../data/back-button.js";
import { ownKey } from "../data/packs.js";
import { packOf } from "../data/piece-at-hand.js";
import { record } from "../data/records.js";
import { problem, read } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { announce, notice } from "../parts/status.js";
import { share } from "../exchange/hand-out.js";
import { addRange, standing } from "./added-range.js";
import { rangeIn, rangeOfRows } from "./check-range.js";
import { refresh, rowsKept, stored } from "./kept-ranges.js";
import { ownRanges, rowsOf } from "./own-range.js";
import { ranges } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { openRange } from "../identify/range-at-hand.js";
import { loaded } from "../parts/loaded-later.js";
import { goTo, redraw } from "../parts/navigation.js";
import {
  A_RANGE_OF_YOUR_OWN,
  ADD_A_RANGE_FROM_A_FILE,
  ADDED_FROM_A_FILE,
  BY_YOU,
  CHANGED_NUMBERS,
  finishThePieceOf,
  firstToLast,
  FOLLOW_FROM_AN_ADDRESS,
  followedFrom,
  FROM_SOMEBODY_ELSE,
  IDENTIFY_RANGE,
  IN_USE,
  isAdded,
  isAsInTheFile,
  isRemoved,
  itemCount,
  LOOK_AT_IT,
  lookAtRange,
  PUT_IT_BACK,
  RANGES,
  REMOVE,
  removeName,
  SHARE,
  shareName,
  TOO_LARGE_FOR_A_RANGE,
  WHAT_A_RANGE_FILE_IS,
  WRITTEN_DOWN_BY_YOU,
  YOUR_OWN,
} from "./words.js";

const MOST = 60_000_000; // characters

/** The list of ranges. */
export async function rangesScreen(state) {
  return el(
    "section",
    { class: "shelf" },
    heading(1, RANGES),
    el(
      "ul",
      { class: "plain-list ranges", "aria-label": IN_USE },
      ranges().map((range) => el("li", {}, lines(state, range))),
    ),
    yourOwn(),
    heading(2, FROM_SOMEBODY_ELSE),
    button(FOLLOW_FROM_AN_ADDRESS, () => goTo("follow"), { class: "plain wide" }),
    fileInput(state),
    el("p", { class: "quiet" }, WHAT_A_RANGE_FILE_IS),
    button(CHANGED_NUMBERS, () => goTo("moved"), { class: "plain wide" }),
  );
}

/** The ranges of one's own, and a way to begin one. */
function yourOwn() {
  const held = ({ id, name }) => {
    const items = rowsOf(id, "range_item").length;
    return el(
      "li",
      {},
      button(
        [
          el("strong", {}, name),
          el("span", { class: "quiet" }, items === 1 ? "1 item" : itemCount(items)),
        ],
        () => goTo("own", { id }),
        { class: "hit" },
      ),
    );
  };
  return [
    heading(2, WRITTEN_DOWN_BY_YOU),
    el("ul", { class: "found", "aria-label": YOUR_OWN }, ownRanges().map(held)),
    button(A_RANGE_OF_YOUR_OWN, () => goTo("newrange"), { class: "plain wide" }),
  ];
}

/** Where a range of this device came from; "" for those that came with the app. */
export function whence({ own, written, follows }) {
  if (written) return BY_YOU;
  if (follows) return followedFrom(new URL(follows.address).host);
  return own ? ADDED_FROM_A_FILE : "";
}

function lines(state, range) {
  const years = range.first === 0 ? "" : firstToLast(range.first, range.last);
  const about = [range.gauge, years, whence(range)];
  return [
    heading(2, range.name),
    el("p", { class: "quiet" }, about.filter(Boolean).join(" · ")),
    el(
      "div",
      { class: "row" },
      range.written
        ? null
        : button(LOOK_AT_IT, () => goTo("range", { id: range.id }), {
            class: "plain",
            "aria-label": lookAtRange(range.name),
          }),
      button(SHARE, () => run(() => handOn(range)), {
        class: "plain",
        "aria-label": shareName(range.name),
      }),
      range.own && !range.written
        ? button(REMOVE, () => run(() => takeAway(state, range)), {
            class: "plain",
            "aria-label": removeName(range.name),
          })
        : null,
    ),
  ];
}

function fileInput(state) {
  const input = el("input", {
    type: "file",
    accept: ".json,.zip,application/json,application/zip",
    class: "unseen",
    onchange: () => run(() => addFile(state, input.files[0])),
  });
  return el("label", { class: "plain wide file" }, ADD_A_RANGE_FROM_A_FILE, input);
}

/** Takes a file in, or says why not; nothing is changed then. */
async function addFile(state, file) {
  const edition = await readFile(file);
  if (edition.problem) {
    notice(`${file.name}: ${edition.problem}`);
    return;
  }
  if (edition.rows) {
    const { takeInRange } = await loaded(import("./range-file.js"));
    takeInRange(edition, () => useRows(state, file, edition));
    return;
  }
  const before = standing(edition.pack.id);
  const { name } = edition.pack.range;
  await added(state, edition, before ? isAsInTheFile(name) : isAdded(name));
}

/** Uses a range that came as what was written down, as it is. */
async function useRows(state, file, edition) {
  const made = await rangeOfRows(edition.rows);
  if (made.problem) notice(`${file.name}: ${made.problem}`);
  else await added(state, { ...edition, ...made }, isAdded(made.pack.range.name));
}

/** What the line of a range keeps that is followed, where another edition of it comes by a file. */
function stillFollowed(id) {
  const { follows, had = [], version, looked, came, since = came } = standing(id) ?? {};
  if (!follows) return {};
  const now = new Date().toISOString();
  return { follows, since, had: [...had, version], looked, came: now, news: null };
}

async function added(state, edition, how) {
  if (!(await addRange(state, edition, stillFollowed(edition.pack.id), how))) return;
  await redraw();
  announce(how);
}

/** What a file holds, as `rangeIn` gives it. */
async function readFile(file) {
  if (file.size > MOST) return { problem: TOO_LARGE_FOR_A_RANGE };
  if (new TextDecoder("latin1").decode(await file.slice(0, 2).arrayBuffer()) === "PK")
    return zippedRange(file);
  return rangeIn(await file.text());
}

/** {rows, unknown, unread, large} of a folder in a zip, or {problem}. */
async function zippedRange(file) {
  const { NoFolder, rowsOfFolder } = await loaded(import("./folder-file.js"));
  try {
    return await rowsOfFolder(file);
  } catch (error) {
    if (!(error instanceof NoFolder)) throw error;
    return { problem: error.message };
  }
}

/** Takes a range away that was added, and offers to put it back. */
export async function takeAway(state, range) {
  if (state.piece && [range.id, state.list.at(-1).id].includes(packOf(state.piece))) {
    notice(finishThePieceOf(range.name));
    return;
  }
  const text = await read("kept", ownKey(range.id));
  const rows = await rowsKept(range.id);
  if (!(await stored(range, null))) {
    notice(problem());
    return;
  }
  await refresh();
  if (!state.piece) await openRange(state.entry.id);
  if (here().screen === "range") goTo("ranges", {}, { instead: true, keepNotice: true });
  else await redraw();
  notice(isRemoved(range.name), [
    [
      PUT_IT_BACK,
      () =>
        run(async () => {
          await stored(range, text, rows);
          await refresh();
          await redraw();
        }),
    ],
  ]);
}

/** Gives the range as a file: to another app where the phone can, else to save. */
export async function handOn(range) {
  if (range.written) {
    const { handOnRange } = await loaded(import("./range-file.js"));
    await handOnRange(record(range.written));
    return;
  }
  const rows = await rowsKept(range.id);
  const text = rows
    ? JSON.stringify({ format: 1, kind: IDENTIFY_RANGE, made: range.made, rows: JSON.parse(rows) })
    : range.own
      ? await read("kept", ownKey(range.id))
      : await (await fetch(new URL(`../packs/${range.id}.json`, import.meta.url))).text();
  await share(new File([text], `${range.id}.json`, { type: "application/json" }), range.name);
}
