/** The ranges there are: one can be added from a file, handed on, taken away again. */
import { OWN, ownKey, packList } from "../data/packs.js";
import { packOf } from "../data/piece-at-hand.js";
import { problem, read, together } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { announce, notice } from "../parts/status.js";
import { fits } from "./json-schema.js";
import { share } from "../exchange/server-files.js";
import { lookAtMoved } from "./moved-names.js";

const MOST = 60_000_000; // characters
const VERSION = /,"version":"([0-9a-f]{16})"\}\s*$/;

/** The list of ranges. */
export async function rangesScreen(app, keep) {
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Ranges"),
    el(
      "ul",
      { class: "plain-list ranges" },
      keep.ranges.map((one) => el("li", {}, lines(app, keep, one))),
    ),
    fileInput(app, keep),
    el(
      "p",
      { class: "quiet" },
      "A range is a file that somebody compiled from a pack of their own. What it says is " +
        "theirs: the app checks only that it can be read.",
    ),
    button("What moved", () => keep.open("moved"), { class: "plain wide" }),
    button("Edit a range", () => keep.open("editor"), { class: "plain wide" }),
  );
}

function lines(app, keep, one) {
  const years = one.first === 0 ? "" : `${one.first} to ${one.last}`;
  const about = [one.gauge, years, one.own ? "added from a file" : "", `version ${one.version}`];
  return [
    heading(2, one.name),
    el("p", { class: "quiet" }, about.filter(Boolean).join(" · ")),
    el(
      "div",
      { class: "row" },
      button("Hand it on", () => keep.run(() => handOn(one)), {
        class: "plain",
        "aria-label": `Hand on ${one.name}`,
      }),
      one.own
        ? button("Take it away", () => keep.run(() => takeAway(app, keep, one)), {
            class: "plain",
            "aria-label": `Take away ${one.name}`,
          })
        : null,
    ),
  ];
}

function fileInput(app, keep) {
  const input = el("input", {
    type: "file",
    accept: ".json,application/json",
    class: "unseen",
    onchange: () => keep.run(() => addFile(app, keep, input.files[0])),
  });
  return el("label", { class: "plain wide file" }, "Add a range from a file", input);
}

/** Takes a file in, or says why not; nothing is changed then. */
async function addFile(app, keep, file) {
  const found = await readFile(app, file);
  if (found.problem) {
    notice(found.problem);
    return;
  }
  const { pack, text } = found;
  const entry = { id: pack.id, version: pack.version, own: true, ...pack.range };
  const before = keep.ranges.find(({ id }) => id === pack.id);
  if (!(await stored(entry, text))) {
    notice(problem());
    return;
  }
  await refresh(app, keep);
  await (app.piece ? app.adopt(app.piece) : app.openRange(app.entry.id));
  const told = await lookAtMoved(app, keep);
  await keep.redraw();
  const how = before ? `${entry.name} is now as in the file.` : `${entry.name} is added.`;
  announce(how);
  if (!told) notice(how);
}

/** {pack, text}, or {problem: a sentence}. */
async function readFile(app, file) {
  const wrong = (what) => ({ problem: `${file.name}: ${what}` });
  if (file.size > MOST) return wrong("this is too large to be a range.");
  const text = await file.text();
  let pack;
  try {
    pack = JSON.parse(text);
  } catch {
    return wrong(
      "this is not a range, or the file is damaged. Ask for the file that “compile” wrote.",
    );
  }
  const schema = await (await fetch(new URL("../packs/schema.json", import.meta.url))).json();
  const place = fits(schema, pack);
  if (place !== "")
    return wrong(`this is not a range that this version of the app can read (${place}).`);
  if (pack.id === "all") return wrong("a range cannot be called “all”. Rename its folder.");
  if ((await digest(text)) !== pack.version)
    return wrong("this was changed after it was compiled, or is damaged. Ask for it again.");
  try {
    const ready = app.engine.prepare(pack);
    app.engine.assess(ready, app.engine.new_session(ready));
  } catch (error) {
    console.warn(error);
    return wrong("what is in it does not hold together. Compile it again.");
  }
  return { pack, text: text.trim() };
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

/** Keeps the range (text null: takes it away), all at once. */
async function stored(entry, text) {
  const kept = await together(["kept"], async (there) => {
    const others = ((await there.get("kept", OWN)) ?? []).filter(({ id }) => id !== entry.id);
    await there.put("kept", text === null ? others : [...others, entry], OWN);
    if (text === null) await there.remove("kept", ownKey(entry.id));
    else await there.put("kept", text, ownKey(entry.id));
  });
  return kept !== "";
}

/** The lists of ranges as they are now. */
async function refresh(app, keep) {
  const list = await packList();
  app.list.splice(0, app.list.length, ...list);
  const ranges = list.filter((one) => !one.parts);
  keep.ranges.splice(0, keep.ranges.length, ...ranges);
  for (const { id } of ranges) keep.packs.delete(id);
}

async function takeAway(app, keep, one) {
  if (app.piece && [one.id, app.list.at(-1).id].includes(packOf(app.piece))) {
    notice(
      `You are identifying a piece of ${one.name}. Start again first, then take the range away.`,
    );
    return;
  }
  const text = await read("kept", ownKey(one.id));
  if (!(await stored(one, null))) {
    notice(problem());
    return;
  }
  await refresh(app, keep);
  if (!app.piece) await app.openRange(app.entry.id);
  await keep.redraw();
  notice(`${one.name} is taken away. What you keep of it stays.`, [
    [
      "Put it back",
      () =>
        keep.run(async () => {
          await stored(one, text);
          await refresh(app, keep);
          await keep.redraw();
        }),
    ],
  ]);
}

/** Gives the range as a file: to another app where the phone can, else to save. */
async function handOn(one) {
  const text = one.own
    ? await read("kept", ownKey(one.id))
    : await (await fetch(new URL(`../packs/${one.id}.json`, import.meta.url))).text();
  await share(new File([text], `${one.id}.json`, { type: "application/json" }), one.name);
}
