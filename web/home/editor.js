/** Packs of one's own, edited where the server lets: a list of packs, their tables, one entry. */
import { ask, offers } from "../data/server.js";
import { useUpdate, updateWaiting } from "../data/update.js";
import { button, el, heading } from "../parts/element.js";
import { longList } from "../parts/list.js";
import { announce, notice } from "../parts/status.js";
import { WIDE } from "../parts/wide.js";
import { draftOf } from "./editor-draft.js";
import { drawingScreen } from "./editor-drawing.js";
import { entryName } from "./editor-fields.js";
import { entryForm } from "./editor-form.js";
import { wideTable } from "./editor-table.js";

const TABLES = [
  ["items", "Items", "item"],
  ["variants", "Variants", "variant"],
  ["changes", "Running changes", "running change"],
  ["feature", "Features", "feature"],
  ["sources", "Sources", "source"],
  ["range", "The range", ""],
  ["kinds", "Kinds", "kind"],
  ["parts", "Parts", "part"],
  ["cautions", "Cautions", "caution"],
  ["moves", "What was renamed", "row"],
];
const IN_TABLES = ["items", "variants", "changes", "sources"];
const FRESH = {
  items: () => ({ number: "", name: "", kind: "" }),
  variants: () => ({ id: "", item: "", name: "", common: "1" }),
  changes: () => ({ feature: "", state: "" }),
  sources: () => ({ id: "", what: "", trust: "0.8" }),
  feature: () => ({ id: "", name: "", question: "", where: "", seconds: 3, needs: "nothing", states: [] }),
  kinds: () => ({ id: "", name: "", plural: "" }),
  parts: () => ({ id: "", name: "", swap: 0.05 }),
  cautions: () => ({ text: "" }),
  moves: () => ({ what: "item", from: "", to: "", note: "" }),
};

/** The screen of the editor: of a pack, of one of its tables, of an entry or a drawing. */
export async function editorScreen(app, keep, entry) {
  let draft;
  try {
    if (!(await offers()).editor) return away("The server that this app came from has no packs to edit. Start one with: python -m identify edit PACK");
    if (!entry.pack) return await packsScreen(keep);
    draft = await draftOf(entry.pack);
  } catch (error) {
    return away(error.message, () => keep.redraw());
  }
  draft.changed = () => {};
  draft.checked = () => {};
  keep.undoHere = async () => {
    if (draft.takeBack()) await keep.redraw();
    else notice("There is nothing to take back here since the last save.");
  };
  if (entry.drawing) return drawingScreen(draft, keep, entry);
  if (entry.key) return formScreen(draft, keep, entry);
  if (entry.table) return tableScreen(draft, keep, entry);
  return packScreen(draft, keep);
}

function away(text, again = null) {
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Edit a range"),
    el("p", {}, text),
    again ? button("Try again", again, { class: "main wide" }) : null,
  );
}

async function packsScreen(keep) {
  const { packs } = await ask("editor/packs");
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Edit a range"),
    el(
      "ul",
      { class: "found" },
      packs.map(({ id }) =>
        el("li", {}, button(el("strong", {}, id), () => keep.open("editor", { pack: id }), { class: "hit" })),
      ),
    ),
  );
}

/** How the draft stands, with what can be done; drawn anew whenever that changes. */
function standing(draft, keep) {
  const box = el("div", { class: "editor-bar", role: "group", "aria-label": "What is not saved" });
  const line = el("p", { role: "status" });
  const below = el("div", {});
  const draw = () => {
    const { edits, mistakes, refusal, stray, stale, model } = draft;
    const count = edits.length === 0 ? "All is saved." : `${many(edits.length, "change")} not saved; kept on this device.`;
    const wrong = mistakes.length === 0 ? "" : ` ${many(mistakes.length, "mistake")}.`;
    line.textContent = refusal || `${count}${wrong}`;
    below.replaceChildren(
      el(
        "div",
        { class: "row" },
        stale ? button("Read them anew", () => keep.run(() => anew(draft, keep)), { class: "main" }) : null,
        edits.length > 0 && !stale ? button("Save", () => keep.run(() => save(draft, keep)), { class: "main" }) : null,
        edits.length > 0 ? button("Forget all changes", () => keep.run(() => forget(draft, keep)), { class: "plain" }) : null,
        edits.length === 0 && model.undo
          ? button("Take the last save back", () => keep.run(() => undoSave(draft, keep)), { class: "plain" })
          : null,
      ),
      mistakes.length > 0 ? mistakeList(draft, keep) : "",
      stray.length > 0 ? strayList(draft, keep) : "",
    );
  };
  draw();
  box.append(line, below);
  return { box, draw };
}

function many(count, what) {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

async function save(draft, keep) {
  try {
    if (await draft.save()) {
      announce("Saved.");
      await lookForUpdate();
      notice("Saved. The app takes the new version when you say so.", [["Use it now", useWhenReady]]);
    } else notice("Nothing was saved: first mend what is wrong.");
  } catch (error) {
    Object.assign(draft, { refusal: error.message, stale: error.body?.changed });
    notice(error.message);
  }
  await keep.redraw();
}

async function lookForUpdate() {
  const found = await navigator.serviceWorker?.getRegistration();
  await found?.update().catch(() => {});
}

/** Puts the new version in place as soon as it has come. */
async function useWhenReady() {
  for (let tries = 0; tries < 50 && !updateWaiting(); tries += 1)
    await new Promise((resolve) => setTimeout(resolve, 200));
  if (updateWaiting()) useUpdate();
  else location.reload();
}

async function undoSave(draft, keep) {
  try {
    await draft.undoSave();
    await lookForUpdate();
    notice("The files are as they were before the last save.");
  } catch (error) {
    notice(error.message);
  }
  await keep.redraw();
}

async function anew(draft, keep) {
  try {
    await draft.reread();
    draft.stale = false;
  } catch (error) {
    notice(error.message);
  }
  await keep.redraw();
}

async function forget(draft, keep) {
  draft.forget();
  notice("The changes are forgotten.", [["Put them back", () => keep.run(keep.undoHere)]]);
  await keep.redraw();
}

function mistakeList(draft, keep) {
  const shown = draft.mistakes.slice(0, 40);
  return el(
    "details",
    {},
    el("summary", {}, "What is wrong"),
    el(
      "ul",
      { class: "plain-list" },
      shown.map((one) => {
        const place = [one.file, one.line ? `line ${one.line}` : "", one.column].filter(Boolean).join(", ");
        const open = () => keep.open("editor", { pack: draft.id, table: one.table, key: one.key });
        return el(
          "li",
          {},
          `${place}: ${one.text} `,
          one.key ? button("Go there", open, { class: "link", "aria-label": `Go there: ${place}` }) : null,
        );
      }),
    ),
  );
}

function strayList(draft, keep) {
  return el(
    "details",
    { open: true },
    el("summary", {}, "Could not be put on top of the files as they are now"),
    el(
      "ul",
      { class: "plain-list" },
      draft.stray.map((one) =>
        el("li", {}, [one.table ?? "drawing", one.name ?? one.field ?? "", JSON.stringify(one.value ?? one.old ?? one.fields)].join(" ")),
      ),
    ),
    button("Forget these", () => keep.run(async () => {
      draft.forgetStray();
      await keep.redraw();
    }), { class: "plain" }),
  );
}

function packScreen(draft, keep) {
  const { box, draw } = standing(draft, keep);
  draft.checked = draw;
  const { name } = draft.entry("range", "range").fields;
  const to = (table) => {
    const only = table === "range" ? { key: "range" } : {};
    return keep.open("editor", { pack: draft.id, table, ...only });
  };
  return el(
    "section",
    { class: "shelf" },
    heading(1, `Edit ${name}`),
    box,
    el(
      "ul",
      { class: "found" },
      TABLES.filter(([table]) => table !== "moves" || draft.entries(table).length > 0).map(([table, label]) =>
        el(
          "li",
          {},
          button(
            [el("strong", {}, label), table === "range" ? null : el("span", { class: "quiet" }, String(draft.entries(table).length))],
            () => to(table),
            { class: "hit" },
          ),
        ),
      ),
    ),
  );
}

function tableScreen(draft, keep, { table, of }) {
  const { box, draw } = standing(draft, keep);
  let cells = () => {};
  draft.checked = () => {
    draw();
    cells();
  };
  draft.changed = draw;
  const [, label, one] = TABLES.find(([name]) => name === table);
  const open = (key) => keep.open("editor", { pack: draft.id, table, key });
  const wrong = new Set(draft.mistakes.filter((m) => m.table === table).map(({ key }) => key));
  const list = el("div", { class: "editor-list" });
  const wide = WIDE.matches && IN_TABLES.includes(table);
  const fill = (text) => {
    const found = draft.entries(table).filter((entry) => {
      const about = Object.values(entry.fields).join(" ").toLowerCase();
      return (!of || entry.fields.item === of) && about.includes(text.toLowerCase());
    });
    const line = (entry) => {
      const [name, more] = entryName(draft, table, entry);
      const marks = [more, entry.added ? "new" : "", wrong.has(entry.key) ? "a mistake" : ""];
      return button(
        [el("strong", {}, name), el("span", { class: "quiet" }, marks.filter(Boolean).join(" · "))],
        () => open(entry.key),
        { class: "hit" },
      );
    };
    if (!wide) return list.replaceChildren(...longList(label, found, line));
    const { nodes, told } = wideTable(draft, table, found, open);
    cells = told;
    return list.replaceChildren(...nodes);
  };
  fill("");
  const search = el("input", { id: "editor-search", type: "search", autocomplete: "off", oninput: () => fill(search.value.trim()) });
  const add = () =>
    keep.run(async () => {
      const key = draft.add(table, { ...FRESH[table](), ...(of ? { item: of } : {}) });
      keep.open("editor", { pack: draft.id, table, key });
    });
  return el(
    "section",
    { class: wide ? "shelf editor-wide" : "shelf" },
    heading(1, of ? `${label} of ${of}` : label),
    box,
    button(`Add a ${one}`.replace("a item", "an item"), add, { class: "main wide" }),
    el("div", { class: "field" }, el("label", { for: "editor-search" }, "Find"), search),
    list,
  );
}

function formScreen(draft, keep, { table, key }) {
  const entry = draft.entry(table, key);
  const [, label] = TABLES.find(([name]) => name === table);
  if (!entry) return away("It is not there any more.");
  const { box, draw } = standing(draft, keep);
  const form = entryForm(draft, keep, table, key);
  draft.changed = draw;
  draft.checked = () => {
    draw();
    form.told();
  };
  form.told();
  const [name] = entryName(draft, table, entry);
  return el(
    "section",
    { class: "shelf" },
    el("p", { class: "kicker" }, label),
    heading(1, name.trim() || "New"),
    box,
    form.nodes,
    table === "range" ? null : removal(draft, keep, table, entry),
  );
}

/** Takes an entry away; an item with its variants. */
function removal(draft, keep, table, entry) {
  const with_ =
    table === "items"
      ? draft.entries("variants").filter(({ fields }) => fields.item === entry.fields.number)
      : [];
  const label = with_.length > 0 ? `Take it away, with its ${many(with_.length, "variant")}` : "Take it away";
  return button(
    label,
    () =>
      keep.run(async () => {
        draft.remove([[table, entry.key], ...with_.map(({ key }) => ["variants", key])]);
        notice("It is taken away, once you save.", [["Put it back", () => keep.run(keep.undoHere)]]);
        keep.back();
      }),
    { class: "plain wide" },
  );
}
