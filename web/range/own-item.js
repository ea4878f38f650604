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

// how far each is believed is a guess, no source
const SAID_BY = [
  { what: "A catalogue", trust: 0.9 },
  { what: "A book", trust: 0.8 },
  { what: "My own piece", trust: 0.9 },
  { what: "Somebody said so", trust: 0.5 },
];

const ADD_THERE = "If this is another version of it, add it there as a variant.";
const NUMBER_FIRST =
  "Give it a number first, so that your collection can name it. What you call it will do.";

/** The item `id`. */
export async function entryScreen(_, { id }) {
  const item = record(id);
  if (!item || item.trashed !== "") return gone();
  const features = await featuresFor(item.range, kindKey(item));
  const save = (field, what) => saver(id, field, what);
  const variants = variantsIn(item);
  return el(
    "section",
    { class: "shelf" },
    heading(1, itemTitle(item)),
    ...(await faultsHere(item)),
    el("p", { class: "quiet" }, `${record(item.kind)?.name ?? ""} · ${record(item.range).name}`),
    el(
      "div",
      { class: "row" },
      button("Answer what you see", () => goTo("looking", { id }), { class: "main" }),
      button("Another variant of it", () => run(() => another(item, variants)), {
        class: "plain",
      }),
    ),
    numberField(item),
    textField("Name", item.name, save("name", "Name")),
    dateField("Made", item.years, save("years", "Years"), {
      hint: "For example: about 1957, 1957 to 61, before 1960. Leave it empty if you do not know.",
    }),
    ...saidBy(item, save),
    putDownList(item, features),
    button("Something of your own to look at", () => ownFeature(item), { class: "link" }),
    variants.length > 1 ? variantList(variants) : null,
    mine(item),
    longField("Notes", item.note, save("note", "Notes")),
    el("details", { class: "filters" }, el("summary", {}, "More about it"), ...furtherFields(item)),
    button("Delete", () => run(() => away(item)), { class: "plain" }),
  );
}

function numberField(item) {
  const check = (text) => {
    const twin = rowsOf(item.range, "range_item").find(
      (one) => one.id !== item.id && text !== "" && one.number === text,
    );
    return twin
      ? `Not saved. ${itemTitle(twin)} has this number already. ${ADD_THERE}`
      : renumbered(item.id, text);
  };
  return textField("Number", item.number, check, {
    hint: "As on the piece or its box. Leave it empty if there is none.",
  });
}

/** Who says so: what was said before in this range, or something new. */
function saidBy(item, save) {
  const keep = save("source", "Who says so");
  const settle = async (value) => {
    if (!value.startsWith("new ")) return keep(value);
    const source = newSource(item.range, SAID_BY[Number(value.slice(4))]);
    const edit = setting(item.id, "source", item.source, source.id);
    const kept = await keepRows("Who says so changed", [source], { edits: [edit] });
    if (kept) run(redraw);
    return kept;
  };
  const chosen = record(item.source);
  return [
    choice("How do you know?", sayings(item.range), item.source, settle),
    chosen ? whichOne(chosen) : null,
    (item.other_years ?? []).map((pair, place) => otherSaying(item, pair, place)),
    item.source === "" || item.years === ""
      ? null
      : button("Another source says otherwise", () => run(() => otherwise(item)), {
          class: "link",
        }),
  ];
}

/** What can be said to say so. */
function sayings(range) {
  const fresh = SAID_BY.map(({ what }, place) => [`new ${place}`, `${what}…`]);
  const there = rowsOf(range, "range_source").map(({ id, what }) => [id, what]);
  return [["", "Not noted"], ...there, ...fresh];
}

function whichOne(source) {
  return textField("Which one?", source.what, saver(source.id, "what", "Source"), {
    hint: "So that you find it again, for example: Summer catalogue 1958.",
  });
}

/** Years that another source gives; both stay, side by side. */
function otherSaying(item, [id, years], place) {
  const source = record(id);
  const save = (text) => {
    const shown = record(item.id).other_years;
    const next = shown.map((pair, at) => (at === place ? [id, text] : pair));
    return saver(item.id, "other_years", "Other years")(next);
  };
  return [
    dateField(`Made, as ${small(source?.what ?? "another source")} says`, years, save),
    source ? whichOne(source) : null,
  ];
}

async function otherwise(item) {
  const source = newSource(item.range, { what: "Another book", trust: 0.8 });
  const edit = {
    id: item.id,
    alter: (now) => ({ ...now, other_years: [...(now.other_years ?? []), [source.id, ""]] }),
  };
  if (await keepRows("Another source", [source], { edits: [edit] })) await redraw();
}

/** What is put down, each with its drawing; a tap asks it again. */
function putDownList(row, features) {
  const put = features.filter((feature) => isPutDown(row, feature));
  if (put.length === 0) return null;
  return el(
    "ul",
    { class: "put-down", "aria-label": "Noted" },
    put.map((feature) => {
      const states = seenOn(row, feature);
      const said = states.map(({ caption }) => caption).join(" or ") || "Not recorded";
      return el(
        "li",
        {},
        button(
          [
            pictured(states[0]?.drawing ?? ""),
            el("span", { class: "quiet" }, feature.name),
            el("strong", {}, said),
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
    heading(2, "Variants"),
    el(
      "ul",
      { class: "found", "aria-label": "Variants" },
      variants.map((one, place) =>
        el(
          "li",
          {},
          button(
            el("strong", {}, one.name || (place === 0 ? "As first noted" : "Without a name yet")),
            () => goTo("version", { id: one.id }),
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
  if (await keepRows("New variant", [variant])) goTo("differing", { id: variant.id });
}

/** Into the collection with it, or to where it is there. */
function mine(item) {
  const pack = record(item.range).key;
  const there = all("piece").find(
    (one) => item.number !== "" && one.pack === pack && one.item === item.number,
  );
  if (there)
    return button("It is in your collection", () => goTo("piece", { id: there.id }), {
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
      const said = "It is in your collection.";
      if (await saveChange("Added to collection", [making(piece)], { said })) redraw();
    });
  return button("It is mine: add to collection", collect, { class: "plain wide" });
}

async function away(item) {
  await deleted("Item", item, [item, ...variantsIn(item)]);
}

/** The variant `id`: what is different on it from the others of its item. */
export async function versionScreen(_, { id }) {
  const variant = record(id);
  if (!variant || variant.trashed !== "") return gone();
  const item = record(variant.item);
  const save = (field, what) => saver(id, field, what);
  const title = heading(1, variant.name || "A variant without a name yet");
  const faults = await faultsHere(variant);
  const name = textField("What it is called", variant.name, save("name", "Name"), {
    hint: "By what is different, for example: with metal horns.",
  });
  const remove = button("Delete", () => run(() => awayWith(variant)), { class: "plain" });
  if (!item || item.gone) return el("section", { class: "shelf" }, title, ...faults, name, remove);
  const features = await featuresFor(variant.range, kindKey(item));
  return el(
    "section",
    { class: "shelf" },
    title,
    ...faults,
    el("p", { class: "quiet" }, `A variant of ${itemTitle(item)}`),
    name,
    dateField("Made", variant.years, save("years", "Years"), {
      hint: "Leave it empty where it is as for the item, or not known.",
    }),
    sourceField(variant),
    commonField(variant),
    putDownList(variant, features),
    button("Something else is different", () => goTo("differing", { id }), {
      class: "plain wide",
    }),
    longField("Notes", variant.note, save("note", "Notes")),
    button("Copy it", () => run(() => copied(variant)), { class: "plain" }),
    remove,
  );
}

async function awayWith(variant) {
  await deleted("Variant", variant, [variant]);
}

/** Another one like it, to change what differs. */
async function copied(variant) {
  const copy = copyOf(variant, { name: "" });
  if (await keepRows("Variant copied", [copy]))
    goTo("differing", { id: copy.id }, { instead: true });
}
