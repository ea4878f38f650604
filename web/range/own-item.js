/** An item of a range of one's own: number, name, years, what is seen on it, its variants. */
import { run } from "../data/queue.js";
import { all, making, record, setting } from "../data/records.js";
import { blank } from "../data/record-shapes.js";
import { gone } from "../collection/piece.js";
import { dateField } from "../parts/date-field.js";
import { pictured } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { choice, longField, textField } from "../parts/fields.js";
import { goTo, redraw } from "../parts/navigation.js";
import { small } from "../parts/say.js";
import { saveChange, saver } from "../parts/saving.js";
import { notice } from "../parts/status.js";
import { featuresFor, isPutDown, kindKey, seenOn, variantsIn } from "./describing.js";
import { itemTitle } from "./item-title.js";
import { ownFeature } from "./own-look.js";
import { faultsHere } from "./faults.js";
import { deleted, renumbered } from "./held-pieces.js";
import { commonField, furtherFields, sourceField } from "./row-fields.js";
import { copyOf, keepRows, newSource, rowsOf } from "./own-range.js";
import {
  A_VARIANT_WITHOUT_A_NAME_YET,
  ADD_THERE,
  ADDED_TO_COLLECTION,
  ALREADY_YOURS,
  ANOTHER_BOOK,
  ANOTHER_SOURCE,
  ANOTHER_VARIANT_OF_IT,
  ANSWER_WHAT_YOU_SEE,
  AS_FIRST_NOTED,
  AS_ON_THE_PIECE,
  BETWEEN_STATES,
  COPY_IT,
  EMPTY_AS_FOR_THE_ITEM,
  EXAMPLE_OF_A_SOURCE,
  EXAMPLE_OF_A_VARIANT,
  EXAMPLE_OF_YEARS,
  FURTHER_SOURCE,
  hasThisNumber,
  HOW_DO_YOU_KNOW,
  IT_IS_IN_YOUR_COLLECTION,
  IT_IS_MINE_ADD_TO_COLLECTION,
  MADE,
  madeAsSaid,
  MORE_ABOUT_IT,
  NAME,
  NEW_VARIANT,
  newText,
  NOT_NOTED,
  NOT_RECORDED,
  NOTED,
  NOTES,
  NUMBER,
  NUMBER_FIRST,
  OF_YOUR_OWN_TO_LOOK_AT,
  OTHER_YEARS,
  OTHERWISE_SAID,
  SAID_BY,
  SOMETHING_ELSE_IS_DIFFERENT,
  SOURCE,
  THE_ITEM,
  THE_VARIANT,
  VARIANT_COPIED,
  variantOf,
  VARIANTS,
  WHAT_IT_IS_CALLED,
  WHICH_ONE,
  WHO_SAYS_SO,
  WHO_SAYS_SO_CHANGED,
  WITHOUT_A_NAME_YET,
  YEARS,
} from "./own-words.js";

/** The item `id`. */
export async function entryScreen(_, { id }) {
  const item = record(id);
  if (!item || item.trashed !== "") return gone();
  const features = await featuresFor(item.range, kindKey(item));
  const save = (field, what) => saver(id, field, what);
  const called = heading(1, itemTitle(item));
  const named = (keep) => async (value) => {
    const kept = await keep(value);
    if (kept === true) {
      // what is being clicked below stays where it is
      called.style.minHeight = `${called.offsetHeight}px`;
      called.textContent = itemTitle(record(id));
    }
    return kept;
  };
  const variants = variantsIn(item);
  return el(
    "section",
    { class: "shelf" },
    called,
    ...(await faultsHere(item)),
    el("p", { class: "quiet" }, `${record(item.kind)?.name ?? ""} · ${record(item.range).name}`),
    el(
      "div",
      { class: "row" },
      button(ANSWER_WHAT_YOU_SEE, () => goTo("looking", { id }), { class: "main" }),
      button(ANOTHER_VARIANT_OF_IT, () => run(() => another(item, variants)), {
        class: "plain",
      }),
    ),
    numberField(item, named),
    textField(NAME, item.name, named(save("name", NAME))),
    dateField(MADE, item.years, save("years", YEARS), {
      hint: EXAMPLE_OF_YEARS,
    }),
    ...saidBy(item, save),
    putDownList(item, features),
    button(OF_YOUR_OWN_TO_LOOK_AT, () => ownFeature(item), { class: "link" }),
    variants.length > 1 ? variantList(variants) : null,
    mine(item),
    longField(NOTES, item.note, save("note", NOTES)),
    el("details", { class: "filters" }, el("summary", {}, MORE_ABOUT_IT), ...furtherFields(item)),
    button("Delete", () => run(() => away(item)), { class: "plain" }),
  );
}

function numberField(item, named) {
  const check = (text) => {
    const twin = rowsOf(item.range, "range_item").find(
      (row) => row.id !== item.id && text !== "" && row.number === text,
    );
    return twin ? hasThisNumber(itemTitle(twin), ADD_THERE) : renumbered(item.id, text);
  };
  return textField(NUMBER, item.number, named(check), {
    hint: AS_ON_THE_PIECE,
  });
}

/** Who says so: what was said before in this range, or something new. */
function saidBy(item, save) {
  const keep = save("source", WHO_SAYS_SO);
  const settle = async (value) => {
    if (!value.startsWith("new ")) return keep(value);
    const source = newSource(item.range, SAID_BY[Number(value.slice(4))]);
    const edit = setting(item.id, "source", item.source, source.id);
    const kept = await keepRows(WHO_SAYS_SO_CHANGED, [source], { edits: [edit] });
    if (kept) run(redraw);
    return kept;
  };
  const chosen = record(item.source);
  return [
    choice(HOW_DO_YOU_KNOW, sayings(item.range), item.source, settle),
    chosen ? whichOne(chosen) : null,
    (item.other_years ?? []).map((pair, place) => otherSaying(item, pair, place)),
    item.source === "" || item.years === ""
      ? null
      : button(OTHERWISE_SAID, () => run(() => otherwise(item)), {
          class: "link",
        }),
  ];
}

/** What can be said to say so. */
function sayings(range) {
  const fresh = SAID_BY.map(({ what }, place) => [newText(place), `${what}…`]);
  const there = rowsOf(range, "range_source").map(({ id, what }) => [id, what]);
  return [["", NOT_NOTED], ...there, ...fresh];
}

function whichOne(source) {
  return textField(WHICH_ONE, source.what, saver(source.id, "what", SOURCE), {
    hint: EXAMPLE_OF_A_SOURCE,
  });
}

/** Years that another source gives; both stay, side by side. */
function otherSaying(item, [id, years], place) {
  const source = record(id);
  const save = (text) => {
    const shown = record(item.id).other_years;
    const next = shown.map((pair, at) => (at === place ? [id, text] : pair));
    return saver(item.id, "other_years", OTHER_YEARS)(next);
  };
  return [
    dateField(madeAsSaid(small(source?.what ?? ANOTHER_SOURCE)), years, save),
    source ? whichOne(source) : null,
  ];
}

async function otherwise(item) {
  const source = newSource(item.range, { what: ANOTHER_BOOK, trust: 0.8 });
  const edit = {
    id: item.id,
    alter: (now) => ({ ...now, other_years: [...(now.other_years ?? []), [source.id, ""]] }),
  };
  if (await keepRows(FURTHER_SOURCE, [source], { edits: [edit] })) await redraw();
}

/** What is put down, each with its drawing; a tap asks it again. */
function putDownList(row, features) {
  const put = features.filter((feature) => isPutDown(row, feature));
  if (put.length === 0) return null;
  return el(
    "ul",
    { class: "found", "aria-label": NOTED },
    put.map((feature) => {
      const states = seenOn(row, feature);
      const said = states.map(({ caption }) => caption).join(BETWEEN_STATES) || NOT_RECORDED;
      return el(
        "li",
        {},
        button(
          [
            pictured(states[0]?.drawing ?? ""),
            el(
              "span",
              { class: "lines" },
              el("span", { class: "quiet" }, feature.name),
              el("strong", {}, said),
            ),
          ],
          () => goTo("looking", { id: row.id, feature: feature.key }),
          { class: "hit" },
        ),
      );
    }),
  );
}

function variantList(variants) {
  return [
    heading(2, VARIANTS),
    el(
      "ul",
      { class: "found", "aria-label": VARIANTS },
      variants.map((variant, place) =>
        el(
          "li",
          {},
          button(
            el("strong", {}, variant.name || (place === 0 ? AS_FIRST_NOTED : WITHOUT_A_NAME_YET)),
            () => goTo("version", { id: variant.id }),
            { class: "hit" },
          ),
        ),
      ),
    ),
  ];
}

/** A variant like the latest one; what differs is tapped next. */
async function another(item, variants) {
  const variant = copyOf(variants[variants.length - 1], { name: "" });
  if (await keepRows(NEW_VARIANT, [variant])) goTo("differing", { id: variant.id });
}

/** Into the collection with it, or to where it is there. */
function mine(item) {
  const pack = record(item.range).key;
  const there = all("piece").find(
    (other) => item.number !== "" && other.pack === pack && other.item === item.number,
  );
  if (there)
    return button(ALREADY_YOURS, () => goTo("piece", { id: there.id }), {
      class: "plain wide",
    });
  const collect = () =>
    run(async () => {
      if (record(item.id).number === "") {
        notice(NUMBER_FIRST);
        return;
      }
      const [variant, ...more] = variantsIn(item);
      const of = variant && more.length === 0 ? [{ variant: variant.key, chance: 1 }] : [];
      const piece = blank("piece", { pack, item: record(item.id).number, of });
      const said = IT_IS_IN_YOUR_COLLECTION;
      if (await saveChange(ADDED_TO_COLLECTION, [making(piece)], { said })) redraw();
    });
  return button(IT_IS_MINE_ADD_TO_COLLECTION, collect, { class: "plain wide" });
}

async function away(item) {
  await deleted(THE_ITEM, item, [item, ...variantsIn(item)]);
}

/** The variant `id`: what is different on it from the others of its item. */
export async function versionScreen(_, { id }) {
  const variant = record(id);
  if (!variant || variant.trashed !== "") return gone();
  const item = record(variant.item);
  const save = (field, what) => saver(id, field, what);
  const title = heading(1, variant.name || A_VARIANT_WITHOUT_A_NAME_YET);
  const faults = await faultsHere(variant);
  const name = textField(WHAT_IT_IS_CALLED, variant.name, save("name", NAME), {
    hint: EXAMPLE_OF_A_VARIANT,
  });
  const remove = button("Delete", () => run(() => awayWith(variant)), { class: "plain" });
  if (!item || item.gone) return el("section", { class: "shelf" }, title, ...faults, name, remove);
  const features = await featuresFor(variant.range, kindKey(item));
  return el(
    "section",
    { class: "shelf" },
    title,
    ...faults,
    el("p", { class: "quiet" }, variantOf(itemTitle(item))),
    name,
    dateField(MADE, variant.years, save("years", YEARS), {
      hint: EMPTY_AS_FOR_THE_ITEM,
    }),
    sourceField(variant),
    commonField(variant),
    putDownList(variant, features),
    button(SOMETHING_ELSE_IS_DIFFERENT, () => goTo("differing", { id }), {
      class: "plain wide",
    }),
    longField(NOTES, variant.note, save("note", NOTES)),
    button(COPY_IT, () => run(() => copied(variant)), { class: "plain" }),
    remove,
  );
}

async function awayWith(variant) {
  await deleted(THE_VARIANT, variant, [variant]);
}

/** Another one like it, to change what differs. */
async function copied(variant) {
  const copy = copyOf(variant, { name: "" });
  if (await keepRows(VARIANT_COPIED, [copy])) goTo("differing", { id: copy.id }, { instead: true });
}
