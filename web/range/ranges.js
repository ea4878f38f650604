/** The ranges there are: one can be added from a file, handed on, taken away again. */
import { ownKey } from "../data/packs.js";
import { packOf } from "../data/piece-at-hand.js";
import { record } from "../data/records.js";
import { problem, read } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { announce, notice } from "../parts/status.js";
import { fits } from "./json-schema.js";
import { share } from "../exchange/server-files.js";
import { refresh, stored } from "./kept-ranges.js";
import { lookAtMoved } from "./moved-names.js";
import { ownRanges, rowsOf } from "./own-range.js";
import { ranges } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { adopt, openRange } from "../identify/range-at-hand.js";
import { loaded } from "../parts/loaded-later.js";
import { goTo, redraw } from "../parts/navigation.js";

const MOST = 60_000_000; // characters
const VERSION = /,"version":"([0-9a-f]{16})"\}\s*$/;

/** The list of ranges. */
export async function rangesScreen(state) {
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Ranges"),
    el(
      "ul",
      { class: "plain-list ranges" },
      ranges().map((one) => el("li", {}, lines(state, one))),
    ),
    yourOwn(),
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
function whence({ own, written }) {
  if (written) return "written down by you";
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
  const found = await readFile(state, file);
  if (found.problem) {
    notice(found.problem);
    return;
  }
  if (found.rows) {
    const { takeInRange } = await loaded(import("./range-file.js"));
    takeInRange(found);
    return;
  }
  const { pack, text } = found;
  const entry = { id: pack.id, version: pack.version, own: true, ...pack.range };
  const before = ranges().find(({ id }) => id === pack.id);
  if (!(await stored(entry, text))) {
    notice(problem());
    return;
  }
  await refresh();
  await (state.piece ? adopt(state.piece) : openRange(state.entry.id));
  const told = await lookAtMoved(state);
  await redraw();
  const how = before ? `${entry.name} is now as in the file.` : `${entry.name} is added.`;
  announce(how);
  if (!told) notice(how);
}

/** {pack, text}, or {problem: a sentence}. */
async function readFile(state, file) {
  const wrong = (what) => ({ problem: `${file.name}: ${what}` });
  if (file.size > MOST) return wrong("this is too large to be a range.");
  if (new TextDecoder("latin1").decode(await file.slice(0, 2).arrayBuffer()) === "PK")
    return zippedRange(file, wrong);
  const text = await file.text();
  let pack;
  try {
    pack = JSON.parse(text);
  } catch {
    return wrong("this is not a range, or the file is damaged. Ask for it again.");
  }
  if (pack?.kind === "identify range") {
    const { items, range } = pack.rows ?? {};
    if (Array.isArray(items) && typeof range?.name === "string") return { rows: pack.rows };
    return wrong("this range is damaged. Ask for it again.");
  }
  const schema = await (await fetch(new URL("../packs/schema.json", import.meta.url))).json();
  const place = fits(schema, pack);
  if (place !== "")
    return wrong(`this is not a range that this version of the app can read (${place}).`);
  if (pack.id === "all") return wrong("a range cannot be called “all”. Rename its folder.");
  if ((await digest(text)) !== pack.version)
    return wrong("this was changed after it was made, or is damaged. Ask for it again.");
  try {
    const ready = state.engine.prepare(pack);
    state.engine.assess(ready, state.engine.new_session(ready));
  } catch (error) {
    console.warn(error);
    return wrong("it contradicts itself. Ask for it again.");
  }
  return { pack, text: text.trim() };
}

/** {rows, unknown, unread, large} of a folder in a zip, or {problem}. */
async function zippedRange(file, wrong) {
  const { NoFolder, rowsOfFolder } = await loaded(import("./folder-file.js"));
  try {
    return await rowsOfFolder(file);
  } catch (error) {
    if (!(error instanceof NoFolder)) throw error;
    return wrong(error.message);
  }
}

/** The version that the text of a compiled pack should have: made of everything but the version. */
async function digest(text) {
  const bare = text.replace(VERSION, "}");
  const sum = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(bare));
  return [...new Uint8Array(sum)]
    .slice(0, 8)
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("");
}

async function takeAway(state, one) {
  if (state.piece && [one.id, state.list.at(-1).id].includes(packOf(state.piece))) {
    notice(
      `You are identifying a piece of ${one.name}. Finish it or start again, then ` +
        "remove the range.",
    );
    return;
  }
  const text = await read("kept", ownKey(one.id));
  if (!(await stored(one, null))) {
    notice(problem());
    return;
  }
  await refresh();
  if (!state.piece) await openRange(state.entry.id);
  await redraw();
  notice(`${one.name} is removed. Your own pieces of it stay.`, [
    [
      "Put it back",
      () =>
        run(async () => {
          await stored(one, text);
          await refresh();
          await redraw();
        }),
    ],
  ]);
}

/** Gives the range as a file: to another app where the phone can, else to save. */
async function handOn(one) {
  if (one.written) {
    const { handOnRange } = await loaded(import("./range-file.js"));
    await handOnRange(record(one.written));
    return;
  }
  const text = one.own
    ? await read("kept", ownKey(one.id))
    : await (await fetch(new URL(`../packs/${one.id}.json`, import.meta.url))).text();
  await share(new File([text], `${one.id}.json`, { type: "application/json" }), one.name);
}
