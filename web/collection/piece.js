import { all, making, record, trashing } from "../data/records.js";
import { blank } from "../data/record-shapes.js";
import { chance } from "../parts/chance.js";
import { button, el, heading } from "../parts/element.js";
import { whatWasSeen } from "../parts/facts.js";
import { knownNow } from "./known-now.js";
import { choice, longField, textField, ticks } from "../parts/fields.js";
import { moneyField } from "../parts/money.js";
import { itemPlace, title, variantLabel, variantPlace, variantsOf } from "../parts/piece-names.js";
import { photoBox } from "../parts/photobox.js";
import { portrait, portraitsReady } from "../parts/portrait.js";
import { priceBox } from "../parts/price-limit.js";
import { differencePictures } from "../parts/ringed-portrait.js";
import { recordFigure } from "../parts/record-picture.js";
import { answerText, percent, variantName } from "../parts/say.js";
import { unsettledLine } from "../parts/unsettled.js";
import { dateField } from "../parts/date-field.js";
import { packsAtHand, readyRange } from "../data/known-ranges.js";
import { saveChange, saver } from "../parts/saving.js";
import { goTo, redraw } from "../parts/navigation.js";
import { run } from "../data/queue.js";

const HOW_CALLED = "Its number and name, for example: 304 brake coach.";

/** One piece of the collection: everything about it, each change saved by itself. */
export async function pieceScreen(state, { id }) {
  const piece = record(id);
  if (!piece || piece.trashed !== "") return gone();
  await readyRange(piece.pack);
  await portraitsReady().catch(() => {}); // without them the piece is still a piece
  const save = (field, what) => saver(id, field, what);
  const pack = packsAtHand.get(piece.pack);
  return el(
    "section",
    { class: "shelf" },
    heading(1, title(packsAtHand, piece)),
    recordFigure(piece),
    await unsettledLine(id),
    piece.item === ""
      ? [
          textField("What it is", piece.called, save("called", "Name"), { hint: HOW_CALLED }),
          await knownNow(state, piece),
        ]
      : variants(piece, pack),
    conditionFields(state, piece, save),
    photoBox(id),
    moneyField(state, "Price paid", piece.paid, save("paid", "Price paid")),
    textField("Where it was bought", piece.where, save("where", "Where")),
    dateField("When", piece.when, save("when", "When")),
    longField("Notes", piece.notes, save("notes", "Notes")),
    el("details", { class: "filters" }, el("summary", {}, "Parts, and what it is kept for"), [
      pack ? partFields(pack, piece, save) : null,
      purposeFields(state, piece, save),
    ]),
    await priceBox(state, piece),
    evidence(pack, piece),
    ways(piece),
  );
}

/** What is shown for a record that is in the bin, or was never here. */
export function gone() {
  return el(
    "section",
    { class: "shelf" },
    heading(1, "It is no longer here"),
    el("p", {}, "It was deleted. If that was a mistake, look in the bin."),
    button("Open the bin", () => goTo("trash"), { class: "main wide" }),
  );
}

/** Condition, box, and the box's own condition. */
export function conditionFields(state, one, save) {
  const scale = [["", "Not noted"], ...state.engine.conditions().map((word) => [word, word])];
  const boxes = [
    ["", "Not noted"],
    ["yes", "Boxed"],
    ["no", "No box"],
  ];
  return [
    choice("Condition", scale, one.condition ?? "", save("condition", "Condition")),
    choice("Box", boxes, one.boxed ?? "", save("boxed", "Box")),
    one.type === "piece"
      ? choice(
          "Condition of the box",
          scale,
          one.box_condition ?? "",
          save("box_condition", "Condition of the box"),
        )
      : null,
  ];
}

function variants(piece, pack) {
  const item = itemPlace(pack, piece.item);
  if (item < 0)
    return el(
      "p",
      { class: "warn" },
      "This number is not in the range on this device. What you wrote is kept.",
    );
  const places = variantsOf(pack, item);
  const known = piece.of.filter((one) => variantPlace(pack, one.variant) >= 0);
  const sure = known.length === 1 ? known[0].variant : known.length > 1 ? "?" : "";
  const options = [
    ["", "Some variant: not known"],
    ...(known.length > 1 ? [["?", `One of ${known.length}, as below`]] : []),
    ...places.map((place) => [pack.variants[place].id, variantLabel(pack, place)]),
  ];
  const settle = async (variant) => {
    if (variant === "?") return true;
    const place = variantPlace(pack, variant);
    const of = place < 0 ? [] : [{ variant, chance: 1 }];
    const number = place < 0 ? piece.item : pack.items[pack.variants[place].item].number;
    const kept = await saveChange("Variant changed", [
      { id: piece.id, alter: (now) => ({ ...now, item: number, of }) },
    ]);
    if (kept && known.length > 1) run(redraw);
    return kept;
  };
  return [
    choice("Variant", options, sure, settle),
    known.length === 1 && known[0].chance < 1 ? likelyOne(known[0], settle) : null,
    known.length < 2
      ? null
      : el(
          "ul",
          { class: "alike" },
          known.map((one) => possible(pack, one, settle)),
        ),
    known.length < 2 ? null : apart(pack, known),
  ];
}

/** What the app thinks it is, until its owner says so. */
function likelyOne({ variant, chance: value }, settle) {
  const say = () =>
    run(async () => {
      if (await settle(variant)) await redraw();
    });
  return el(
    "p",
    { class: "quiet" },
    `Thought to be this one, ${percent(value)} sure. `,
    button("Yes, it is", say, { class: "link" }),
  );
}

/** The two likeliest with rings where they differ. */
function apart(pack, known) {
  const [one, other] = known.map(({ variant }) => variantPlace(pack, variant));
  const named = (place) => ({ name: variantName(pack, place), variants: [place] });
  const pictures = differencePictures(pack, named(one), named(other));
  return (
    pictures &&
    el("details", { class: "filters" }, el("summary", {}, "What tells them apart"), pictures)
  );
}

function possible(pack, { variant, chance: value }, settle) {
  const label = variantName(pack, variantPlace(pack, variant));
  return el(
    "li",
    {},
    portrait(pack, variantPlace(pack, variant), { size: 160 }),
    el("span", {}, label),
    chance(value),
    button("It is this one", () => settle(variant), {
      class: "link",
      "aria-label": `It is this one: ${label}`,
    }),
  );
}

function partFields(pack, piece, save) {
  const parts = pack.parts.map(({ id, name }) => [id, name]);
  return [
    ticks("Missing parts", parts, piece.missing ?? [], save("missing", "Missing parts")),
    ticks("Replaced parts", parts, piece.replaced ?? [], save("replaced", "Replaced parts")),
  ];
}

function purposeFields(state, piece, save) {
  return [
    choice(
      "Kept as",
      [
        ["", "Part of the collection"],
        ["spare", "A spare, for parts"],
        ["donor", "A donor: parts taken from it"],
      ],
      piece.purpose ?? "",
      save("purpose", "What it is kept as"),
    ),
    ticks(
      "If there are two",
      [["kept", "Keep both: not a duplicate"]],
      piece.kept ? ["kept"] : [],
      (on) => save("kept", "Keep both")(on.length > 0),
    ),
    moneyField(state, "What to ask for it", piece.asking ?? null, save("asking", "What to ask")),
  ];
}

function evidence(pack, { answers = [] }) {
  if (!pack || answers.length === 0) return null;
  return el(
    "details",
    { class: "filters" },
    el("summary", {}, "What you saw when you identified it"),
    whatWasSeen(pack, answers, (answer) => answerText(pack, answer)),
  );
}

function ways(piece) {
  const { id } = piece;
  return el(
    "div",
    { class: "stack" },
    piece.item === ""
      ? null
      : button("Want a better one", () => wantBetter(piece), { class: "plain wide" }),
    button("History", () => goTo("changes", { id }), { class: "plain wide" }),
    button("Move to the bin", () => discard(id, "The piece"), { class: "plain wide" }),
  );
}

/** Puts a record into the bin, and goes back with an Undo. */
export function discard(id, name) {
  run(async () => {
    const said = `${name} is in the bin.`;
    if (await saveChange(`${name} to the bin`, [trashing(id)], { said })) history.back();
  });
}

function wantBetter(piece) {
  const variant = piece.of.length === 1 ? piece.of[0].variant : "";
  const there = all("want").find(
    (one) => one.item === piece.item && one.pack === piece.pack && one.variant === variant,
  );
  if (there) return goTo("want", { id: there.id });
  const want = blank("want", { pack: piece.pack, item: piece.item, variant });
  return run(async () => {
    if (await saveChange("New want", [making(want)])) goTo("want", { id: want.id });
  });
}
