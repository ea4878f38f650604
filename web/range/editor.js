/** Packs of one's own, edited where the server lets: a list of packs, their tables, one entry. */
import { ask, offers } from "../data/server.js";
import { button, el, heading } from "../parts/element.js";
import { longList } from "../parts/long-list.js";
import { notice } from "../parts/status.js";
import { WIDE } from "../parts/wide-window.js";
import { draftOf, listed } from "./editor-draft.js";
import { drawingScreen } from "./editor-drawing.js";
import { entryName } from "./editor-fields.js";
import { entryForm } from "./editor-form.js";
import { many, standing } from "./editor-unsaved.js";
import { wideTable } from "./editor-table.js";
import { ownRanges } from "./own-range.js";
import { goTo, leaveScreen, redraw } from "../parts/navigation.js";
import { run } from "../data/queue.js";
import { undoBy } from "../parts/saving.js";

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
  feature: () => ({
    id: "",
    name: "",
    question: "",
    where: "",
    seconds: 3,
    needs: "nothing",
    states: [],
  }),
  kinds: () => ({ id: "", name: "", plural: "" }),
  parts: () => ({ id: "", name: "", swap: 0.05 }),
  cautions: () => ({ text: "" }),
  moves: () => ({ what: "item", from: "", to: "", note: "" }),
};

/** The screen of the editor: of a pack, of one of its tables, of an entry or a drawing. */
export async function editorScreen(state, entry) {
  let draft;
  try {
    if (!(await offers()).editor) return yourOwn();
    if (!entry.pack) return await packsScreen();
    draft = await draftOf(entry.pack);
  } catch (error) {
    return away(error.message, () => redraw());
  }
  draft.changed = () => {};
  draft.checked = () => {};
  undoBy(async () => {
    if (draft.takeBack()) await redraw();
    else notice("There is nothing to take back here since the last save.");
  });
  if (entry.drawing) return drawingScreen(draft, entry);
  if (entry.key) return formScreen(draft, entry);
  if (entry.table) return tableScreen(draft, entry);
  return packScreen(draft);
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

/** With no server that edits folders: the ranges that are written down on this device. */
function yourOwn() {
  const mine = ownRanges().map(({ id, name }) =>
    el(
      "li",
      {},
      button(el("strong", {}, name), () => goTo("own", { id }), { class: "hit" }),
    ),
  );
  const said =
    mine.length > 0
      ? "These are yours to edit. The ranges that came with the app, or from a file, stay as " +
        "they were made."
      : "You have written down no range of your own yet. It needs no more than a name and a " +
        "piece in your hand.";
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Edit a range"),
    el("p", {}, said),
    mine.length > 0 ? el("ul", { class: "found" }, mine) : null,
    button("A range of your own", () => goTo("newrange"), { class: "main wide" }),
  );
}

async function packsScreen() {
  const { packs } = await ask("editor/packs");
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Edit a range"),
    el(
      "ul",
      { class: "found" },
      packs.map(({ id }) =>
        el(
          "li",
          {},
          button(el("strong", {}, id), () => goTo("editor", { pack: id }), { class: "hit" }),
        ),
      ),
    ),
  );
}

function packScreen(draft) {
  const { box, draw } = standing(draft);
  draft.checked = draw;
  const { name } = draft.entry("range", "range").fields;
  const to = (table) => {
    const only = table === "range" ? { key: "range" } : {};
    return goTo("editor", { pack: draft.id, table, ...only });
  };
  return el(
    "section",
    { class: "shelf" },
    heading(1, `Edit ${name}`),
    box,
    el(
      "ul",
      { class: "found" },
      TABLES.filter(([table]) => table !== "moves" || draft.entries(table).length > 0).map(
        ([table, label]) =>
          el(
            "li",
            {},
            button(
              [
                el("strong", {}, label),
                table === "range"
                  ? null
                  : el("span", { class: "quiet" }, String(draft.entries(table).length)),
              ],
              () => to(table),
              { class: "hit" },
            ),
          ),
      ),
    ),
  );
}

function tableScreen(draft, { table, of }) {
  const { box, draw } = standing(draft);
  let cells = () => {};
  draft.checked = () => {
    draw();
    cells();
  };
  draft.changed = draw;
  const [, label, one] = TABLES.find(([name]) => name === table);
  const open = (key) => goTo("editor", { pack: draft.id, table, key });
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
  const search = el("input", {
    id: "editor-search",
    type: "search",
    autocomplete: "off",
    oninput: () => fill(search.value.trim()),
  });
  const add = () =>
    run(async () => {
      const key = draft.add(table, { ...FRESH[table](), ...(of ? { item: of } : {}) });
      await draft.kept;
      goTo("editor", { pack: draft.id, table, key });
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

function formScreen(draft, { table, key }) {
  const entry = draft.entry(table, key);
  const [, label] = TABLES.find(([name]) => name === table);
  if (!entry) return away("It is not there any more.");
  const { box, draw } = standing(draft);
  const form = entryForm(draft, table, key);
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
    table === "range" ? null : removal(draft, table, entry),
  );
}

/** What goes with an entry: the variants of an item; the running changes of a feature. */
const WITH = {
  items: ["variants", "variant", (fields, { number }) => fields.item === number],
  feature: ["changes", "running change", (fields, { id }) => fields.feature === id],
};

/** Takes an entry away, with what goes with it, drawings too. */
function removal(draft, table, entry) {
  const [other, one, belongs] = WITH[table] ?? ["variants", "", () => false];
  const found = draft.entries(other).filter(({ fields }) => belongs(fields, entry.fields));
  const label =
    found.length > 0 ? `Take it away, with its ${many(found.length, one)}` : "Take it away";
  return button(
    label,
    () =>
      run(async () => {
        const putBack = draft.remove(
          [[table, entry.key], ...found.map(({ key }) => [other, key])],
          drawingsOf(table, entry.fields),
        );
        await draft.kept;
        notice("It is taken away, once you save.", [
          [
            "Put it back",
            () =>
              run(async () => {
                putBack();
                await draft.kept;
                await redraw();
              }),
          ],
        ]);
        leaveScreen();
      }),
    { class: "plain wide" },
  );
}

/** The names of the drawings that only this entry has. */
function drawingsOf(table, { id, states }) {
  if (table === "kinds") return [`kind-${id}`];
  return table === "feature" ? listed(states).map((state) => `${id}-${state.id}`) : [];
}
