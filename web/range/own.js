/** A range of one's own: what is written down in it, and the next piece to write down. */
import { kit } from "../data/packs.js";
import { run } from "../data/queue.js";
import { making, record } from "../data/records.js";
import { gone } from "../collection/piece.js";
import { pictured } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { goTo } from "../parts/navigation.js";
import { saveChange } from "../parts/saving.js";
import { faultList } from "./faults.js";
import { aboutIt } from "./about-range.js";
import { kindIn, variantsIn } from "./describing.js";
import { itemTitle } from "./item-title.js";
import { rowLists } from "./own-rows.js";
import { runningChanges } from "./running.js";
import { copyOf, keepRows, newItem, newRange, newVariant, ownRanges, rowsOf } from "./own-range.js";

/** The range `id`. */
export async function ownScreen(_, { id }) {
  const range = record(id);
  if (!range || range.trashed !== "") return gone();
  const items = rowsOf(id, "range_item");
  return el(
    "section",
    { class: "shelf" },
    heading(1, range.name),
    button("Write down a piece", () => goTo("writing", { range: id }), { class: "main wide" }),
    items.length === 0
      ? el("p", {}, "Nothing is written down yet. Take a piece in your hand and begin with it.")
      : el("ul", { class: "found", "aria-label": "Written down" }, items.map(line)),
    ...(items.length > 0 ? looksBack(id) : []),
    ...(await faultList(id)),
    button("From a list", () => goTo("listin", { range: id }), { class: "plain wide" }),
    items.length > 0
      ? el(
          "div",
          { class: "row" },
          button("Items as a table", () => goTo("table", { range: id, type: "range_item" }), {
            class: "plain",
          }),
          button("Variants as a table", () => goTo("table", { range: id, type: "range_variant" }), {
            class: "plain",
          }),
        )
      : null,
    ...runningChanges(id),
    heading(2, "What it is made of"),
    rowLists(id),
    aboutIt(range),
  );
}

function looksBack(id) {
  return [
    button("Try it, and see what is missing", () => goTo("trying", { id }), {
      class: "plain wide",
    }),
    button("What your pieces show", () => goTo("learned", { id }), { class: "plain wide" }),
    button("Sightings from others", () => goTo("proposed", { id }), { class: "plain wide" }),
  ];
}

function line(item) {
  const count = variantsIn(item).length;
  const kind = record(item.kind)?.name ?? "";
  const variants = count > 1 ? `${count} variants` : "";
  return el(
    "li",
    {},
    button(
      [
        el("strong", {}, itemTitle(item)),
        el("span", { class: "quiet" }, [kind, variants].filter(Boolean).join(" · ")),
      ],
      () => goTo("entry", { id: item.id }),
      { class: "hit" },
    ),
  );
}

/** The first of one's own ranges, or another one: it needs no more than a name. */
export function newRangeScreen() {
  const name = el("input", { type: "text", id: "range-name", autocomplete: "off" });
  const wrong = el("p", { class: "quiet" }, "As you would say it to another collector.");
  const begin = () =>
    run(async () => {
      const called = name.value.trim();
      const twin = ownRanges().find((one) => one.name.toLowerCase() === called.toLowerCase());
      if (called === "" || twin) {
        wrong.textContent = twin
          ? `${twin.name} is there already. Give this one another name, or write into that one.`
          : "Give it a name first: the maker's, or what collectors call it.";
        wrong.className = "wrong";
        name.focus();
        return;
      }
      const range = newRange({ name: called });
      if (await saveChange("New range", [making(range)]))
        goTo("own", { id: range.id }, { instead: true });
    });
  return el(
    "section",
    { class: "shelf" },
    heading(1, "A range of your own"),
    el("div", { class: "field" }, el("label", { for: "range-name" }, "What is it called?"), name),
    wrong,
    button("Begin", begin, { class: "main wide" }),
  );
}

/**
 * A new piece for a range: which kind it is, and whether it is like one that is written down. The
 * rest is put down on the piece's own screen.
 */
export async function writingScreen(_, { range, kind = "" }) {
  const { kinds } = await kit();
  const own = rowsOf(range, "range_kind").find(({ key }) => key === kind);
  const alike = rowsOf(range, "range_item").filter((item) => own && item.kind === own.id);
  const shelf = kinds.find(({ id }) => id === kind);
  if (shelf && alike.length > 0) return likeWhich(range, shelf, alike);
  return el(
    "section",
    { class: "card" },
    heading(1, "What have you got?"),
    el(
      "fieldset",
      { class: "choices" },
      el("legend", {}, "Tap what it is."),
      el(
        "div",
        { class: "states columns" },
        kinds.map((one) =>
          button(
            [pictured(one.drawing), el("span", { class: "name" }, one.caption || one.name)],
            () => run(() => ofKind(range, one)),
            { class: "state" },
          ),
        ),
      ),
    ),
  );
}

/** Is it like one that is written down? Then only what differs need be put down. */
function likeWhich(range, shelf, alike) {
  return el(
    "section",
    { class: "card" },
    heading(1, "Like one of these?"),
    button("Like none of them", () => run(() => begun(range, shelf)), { class: "main wide" }),
    el(
      "ul",
      { class: "found", "aria-label": "Written down" },
      alike.map((item) =>
        el(
          "li",
          {},
          button(el("strong", {}, itemTitle(item)), () => run(() => copied(item)), {
            class: "hit",
          }),
        ),
      ),
    ),
  );
}

/** Of this kind: on to what it is like, or begun at once where it is the first. */
async function ofKind(range, shelf) {
  const own = rowsOf(range, "range_kind").find(({ key }) => key === shelf.id);
  const first = !own || !rowsOf(range, "range_item").some(({ kind }) => kind === own.id);
  if (first) await begun(range, shelf);
  else goTo("writing", { range, kind: shelf.id }, { instead: true });
}

/** A new item of this kind, with its first variant, kept at once. */
async function begun(range, shelf) {
  const { kind, rows } = kindIn(range, shelf);
  const item = newItem(range, { number: "", name: "", kind: kind.id });
  const kept = await keepRows("New piece written down", [...rows, item, newVariant(item, {})]);
  if (kept) goTo("entry", { id: item.id }, { instead: true });
}

/** A new item like another one: what is seen is the same, until it is said to differ. */
async function copied(like) {
  const item = copyOf(like, { number: "", name: "", years: "", other_years: [], note: "" });
  const kept = await keepRows("New piece written down", [item, newVariant(item, {})]);
  if (kept) goTo("differing", { id: item.id }, { instead: true });
}
