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
import { letFollow } from "./let-follow.js";
import { rowLists } from "./own-rows.js";
import { runningChanges } from "./running.js";
import { copyOf, keepRows, newItem, newRange, newVariant, ownRanges, rowsOf } from "./own-range.js";
import { weightTold } from "./weight.js";
import {
  A_RANGE_OF_YOUR_OWN,
  AS_YOU_WOULD_SAY,
  BEGIN,
  FROM_A_LIST,
  isThereAlready,
  ITEMS_AS_A_TABLE,
  LIKE_NONE_OF_THEM,
  LIKE_ONE_OF_THESE,
  NAME_IT_FIRST,
  NEW_PIECE_WRITTEN_DOWN,
  NEW_RANGE,
  NOTHING_WRITTEN_DOWN,
  SIGHTINGS_FROM_OTHERS,
  TAP_WHAT_IT_IS,
  TRY_AND_SEE,
  variantCount,
  VARIANTS_AS_A_TABLE,
  WHAT_HAVE_YOU_GOT,
  WHAT_IS_IT_CALLED,
  WHAT_IT_IS_MADE_OF,
  WHAT_YOUR_PIECES_SHOW,
  WRITE_DOWN_A_PIECE,
  WRITTEN_DOWN,
} from "./own-words.js";

/** The range `id`. */
export async function ownScreen(_, { id }) {
  const range = record(id);
  if (!range || range.trashed !== "") return gone();
  const items = rowsOf(id, "range_item");
  return el(
    "section",
    { class: "shelf" },
    heading(1, range.name),
    button(WRITE_DOWN_A_PIECE, () => goTo("writing", { range: id }), { class: "main wide" }),
    items.length === 0
      ? el("p", {}, NOTHING_WRITTEN_DOWN)
      : el("ul", { class: "found", "aria-label": WRITTEN_DOWN }, items.map(line)),
    ...(items.length > 0 ? looksBack(id) : []),
    ...weightTold(id),
    ...(await faultList(id)),
    button(FROM_A_LIST, () => goTo("listin", { range: id }), { class: "plain wide" }),
    items.length > 0
      ? el(
          "div",
          { class: "row" },
          button(ITEMS_AS_A_TABLE, () => goTo("table", { range: id, type: "range_item" }), {
            class: "plain",
          }),
          button(VARIANTS_AS_A_TABLE, () => goTo("table", { range: id, type: "range_variant" }), {
            class: "plain",
          }),
        )
      : null,
    ...runningChanges(id),
    heading(2, WHAT_IT_IS_MADE_OF),
    rowLists(id),
    ...(items.length > 0 || range.shared === "yes" ? letFollow(range) : []),
    aboutIt(range),
  );
}

function looksBack(id) {
  return [
    button(TRY_AND_SEE, () => goTo("trying", { id }), {
      class: "plain wide",
    }),
    button(WHAT_YOUR_PIECES_SHOW, () => goTo("learned", { id }), { class: "plain wide" }),
    button(SIGHTINGS_FROM_OTHERS, () => goTo("proposed", { id }), { class: "plain wide" }),
  ];
}

function line(item) {
  const count = variantsIn(item).length;
  const kind = record(item.kind)?.name ?? "";
  const variants = count > 1 ? variantCount(count) : "";
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
  const wrong = el("p", { class: "quiet" }, AS_YOU_WOULD_SAY);
  const begin = () =>
    run(async () => {
      const called = name.value.trim();
      const twin = ownRanges().find((entry) => entry.name.toLowerCase() === called.toLowerCase());
      if (called === "" || twin) {
        wrong.textContent = twin ? isThereAlready(twin.name) : NAME_IT_FIRST;
        wrong.className = "wrong";
        name.focus();
        return;
      }
      const range = newRange({ name: called });
      if (await saveChange(NEW_RANGE, [making(range)]))
        goTo("own", { id: range.id }, { instead: true });
    });
  return el(
    "section",
    { class: "shelf" },
    heading(1, A_RANGE_OF_YOUR_OWN),
    el("div", { class: "field" }, el("label", { for: "range-name" }, WHAT_IS_IT_CALLED), name),
    wrong,
    button(BEGIN, begin, { class: "main wide" }),
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
    heading(1, WHAT_HAVE_YOU_GOT),
    el(
      "fieldset",
      { class: "choices" },
      el("legend", {}, TAP_WHAT_IT_IS),
      el(
        "div",
        { class: "states columns" },
        kinds.map((row) =>
          button(
            [pictured(row.drawing), el("span", { class: "name" }, row.caption || row.name)],
            () => run(() => ofKind(range, row)),
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
    heading(1, LIKE_ONE_OF_THESE),
    button(LIKE_NONE_OF_THEM, () => run(() => begun(range, shelf)), { class: "main wide" }),
    el(
      "ul",
      { class: "found", "aria-label": WRITTEN_DOWN },
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
  const kept = await keepRows(NEW_PIECE_WRITTEN_DOWN, [...rows, item, newVariant(item, {})]);
  if (kept) goTo("entry", { id: item.id }, { instead: true });
}

/** A new item like another one: what is seen is the same, until it is said to differ. */
async function copied(like) {
  const item = copyOf(like, { number: "", name: "", years: "", other_years: [], note: "" });
  const kept = await keepRows(NEW_PIECE_WRITTEN_DOWN, [item, newVariant(item, {})]);
  if (kept) goTo("differing", { id: item.id }, { instead: true });
}
