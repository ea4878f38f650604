/** The ranges there are: one can be added from a file, handed on, taken away again. */
import { here } from "../data/back-button.js";
import { ownKey } from "../data/packs.js";
import { packOf } from "../data/piece-at-hand.js";
import { record } from "../data/records.js";
import { problem, read } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { announce, notice } from "../parts/status.js";
import { share } from "../exchange/server-files.js";
import { addRange, standing } from "./added-range.js";
import { rangeIn, rangeOfRows } from "./check-range.js";
import { refresh, rowsKept, stored } from "./kept-ranges.js";
import { ownRanges, rowsOf } from "./own-range.js";
import { ranges } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { openRange } from "../identify/range-at-hand.js";
import { loaded } from "../parts/loaded-later.js";
import { goTo, redraw } from "../parts/navigation.js";

const MOST = 60_000_000; // characters

/** The list of ranges. */
export async function rangesScreen(state) {
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Ranges"),
    el(
      "ul",
      { class: "plain-list ranges", "aria-label": "In use" },
      ranges().map((one) => el("li", {}, lines(state, one))),
    ),
    yourOwn(),
    heading(2, "From somebody else"),
    button("Follow a range from an address", () => goTo("follow"), { class: "plain wide" }),
    fileInput(state),
    el(
      "p",
      { class: "quiet" },
      "A range can come as a file from somebody who wrote it down. What it says is theirs: the " +
        "app checks only that it can be read.",
    ),
    button("Changed numbers", () => goTo("moved"), { class: "plain wide" }),
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
          el("span", { class: "quiet" }, items === 1 ? "1 item" : `${items} items`),
        ],
        () => goTo("own", { id }),
        { class: "hit" },
      ),
    );
  };
  return [
    heading(2, "Written down by you"),
    el("ul", { class: "found", "aria-label": "Your own" }, ownRanges().map(held)),
    button("A range of your own", () => goTo("newrange"), { class: "plain wide" }),
  ];
}

/** Where a range of this device came from; "" for those that came with the app. */
export function whence({ own, written, follows }) {
  if (written) return "written down by you";
  if (follows) return `followed from ${new URL(follows.address).host}`;
  return own ? "added from a file" : "";
}

function lines(state, one) {
  const years = one.first === 0 ? "" : `${one.first} to ${one.last}`;
  const about = [one.gauge, years, whence(one)];
  return [
    heading(2, one.name),
    el("p", { class: "quiet" }, about.filter(Boolean).join(" · ")),
    el(
      "div",
      { class: "row" },
      one.written
        ? null
        : button("Look at it", () => goTo("range", { id: one.id }), {
            class: "plain",
            "aria-label": `Look at ${one.name}`,
          }),
      button("Share", () => run(() => handOn(one)), {
        class: "plain",
        "aria-label": `Share ${one.name}`,
      }),
      one.own && !one.written
        ? button("Remove", () => run(() => takeAway(state, one)), {
            class: "plain",
            "aria-label": `Remove ${one.name}`,
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
  return el("label", { class: "plain wide file" }, "Add a range from a file", input);
}

/** Takes a file in, or says why not; nothing is changed then. */
async function addFile(state, file) {
  const found = await readFile(file);
  if (found.problem) {
    notice(`${file.name}: ${found.problem}`);
    return;
  }
  if (found.rows) {
    const { takeInRange } = await loaded(import("./range-file.js"));
    takeInRange(found, () => useRows(state, file, found));
    return;
  }
  const before = standing(found.pack.id);
  const { name } = found.pack.range;
  await added(state, found, before ? `${name} is now as in the file.` : `${name} is added.`);
}

/** Uses a range that came as what was written down, as it is. */
async function useRows(state, file, found) {
  const made = await rangeOfRows(found.rows);
  if (made.problem) notice(`${file.name}: ${made.problem}`);
  else await added(state, { ...found, ...made }, `${made.pack.range.name} is added.`);
}

/** What the line of a range keeps that is followed, where another edition of it comes by a file. */
function stillFollowed(id) {
  const { follows, had = [], version, looked } = standing(id) ?? {};
  if (!follows) return {};
  return { follows, had: [...had, version], looked, came: new Date().toISOString(), news: null };
}

async function added(state, found, how) {
  if (!(await addRange(state, found, stillFollowed(found.pack.id), how))) return;
  await redraw();
  announce(how);
}

/** What a file holds, as `rangeIn` gives it. */
async function readFile(file) {
  if (file.size > MOST) return { problem: "this is too large to be a range." };
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
export async function takeAway(state, one) {
  if (state.piece && [one.id, state.list.at(-1).id].includes(packOf(state.piece))) {
    notice(
      `You are identifying a piece of ${one.name}. Finish it or start again, then ` +
        "remove the range.",
    );
    return;
  }
  const text = await read("kept", ownKey(one.id));
  const rows = await rowsKept(one.id);
  if (!(await stored(one, null))) {
    notice(problem());
    return;
  }
  await refresh();
  if (!state.piece) await openRange(state.entry.id);
  if (here().screen === "range") goTo("ranges", {}, { instead: true, told: true });
  else await redraw();
  notice(`${one.name} is removed. Your own pieces of it stay.`, [
    [
      "Put it back",
      () =>
        run(async () => {
          await stored(one, text, rows);
          await refresh();
          await redraw();
        }),
    ],
  ]);
}

/** Gives the range as a file: to another app where the phone can, else to save. */
export async function handOn(one) {
  if (one.written) {
    const { handOnRange } = await loaded(import("./range-file.js"));
    await handOnRange(record(one.written));
    return;
  }
  const rows = await rowsKept(one.id);
  const text = rows
    ? JSON.stringify({ format: 1, kind: "identify range", made: one.made, rows: JSON.parse(rows) })
    : one.own
      ? await read("kept", ownKey(one.id))
      : await (await fetch(new URL(`../packs/${one.id}.json`, import.meta.url))).text();
  await share(new File([text], `${one.id}.json`, { type: "application/json" }), one.name);
}
