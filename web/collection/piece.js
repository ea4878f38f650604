import { all, making, record, trashing } from "../data/records.js";
import { blank } from "../data/record-shapes.js";
import { chance } from "../parts/chance.js";
import { button, el, heading } from "../parts/element.js";
import { whatWasSeen } from "../parts/facts.js";
import { knownNow } from "./known-now.js";
import { choice, longField, textField, ticks } from "../parts/fields.js";
import { moneyField } from "../parts/money-field.js";
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
import {
  A_DONOR_PARTS_TAKEN_FROM_IT,
  A_SPARE_FOR_PARTS,
  BOX,
  BOXED,
  CONDITION,
  CONDITION_OF_THE_BOX,
  EXAMPLE_OF_A_NAME,
  HISTORY,
  IF_THERE_ARE_TWO,
  isInTheBin,
  isThisOne,
  IT_IS_NO_LONGER_HERE,
  IT_IS_THIS_ONE,
  IT_WAS_DELETED,
  KEEP_BOTH,
  KEEP_BOTH_NOT_A_DUPLICATE,
  KEPT_AS,
  MISSING_PARTS,
  MOVE_TO_THE_BIN,
  NAME,
  NEW_WANT,
  NO_BOX,
  NOT_NOTED,
  NOTES,
  NUMBER_NOT_IN_RANGE,
  oneOfBelow,
  OPEN_THE_BIN,
  PART_OF_THE_COLLECTION,
  PARTS_AND_PURPOSE,
  PRICE_PAID,
  REPLACED_PARTS,
  SOME_VARIANT_NOT_KNOWN,
  THE_PIECE,
  thoughtToBeThis,
  toTheBin,
  VARIANT,
  VARIANT_CHANGED,
  WANT_A_BETTER_ONE,
  WHAT_IT_IS,
  WHAT_IT_IS_KEPT_AS,
  WHAT_TELLS_THEM_APART,
  WHAT_TO_ASK,
  WHAT_TO_ASK_FOR_IT,
  WHAT_YOU_SAW_THEN,
  WHEN,
  WHERE,
  WHERE_IT_WAS_BOUGHT,
  YES_IT_IS,
} from "./words.js";

const HOW_CALLED = EXAMPLE_OF_A_NAME;

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
          textField(WHAT_IT_IS, piece.called, save("called", NAME), { hint: HOW_CALLED }),
          await knownNow(state, piece),
        ]
      : variants(piece, pack),
    conditionFields(state, piece, save),
    photoBox(id),
    moneyField(state, PRICE_PAID, piece.paid, save("paid", PRICE_PAID)),
    textField(WHERE_IT_WAS_BOUGHT, piece.where, save("where", WHERE)),
    dateField(WHEN, piece.when, save("when", WHEN)),
    longField(NOTES, piece.notes, save("notes", NOTES)),
    el("details", { class: "filters" }, el("summary", {}, PARTS_AND_PURPOSE), [
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
    heading(1, IT_IS_NO_LONGER_HERE),
    el("p", {}, IT_WAS_DELETED),
    button(OPEN_THE_BIN, () => goTo("trash"), { class: "main wide" }),
  );
}

/** Condition, box, and the box's own condition. */
export function conditionFields(state, kept, save) {
  const scale = [["", NOT_NOTED], ...state.engine.conditions().map((word) => [word, word])];
  const boxes = [
    ["", NOT_NOTED],
    ["yes", BOXED],
    ["no", NO_BOX],
  ];
  return [
    choice(CONDITION, scale, kept.condition ?? "", save("condition", CONDITION)),
    choice(BOX, boxes, kept.boxed ?? "", save("boxed", BOX)),
    kept.type === "piece"
      ? choice(
          CONDITION_OF_THE_BOX,
          scale,
          kept.box_condition ?? "",
          save("box_condition", CONDITION_OF_THE_BOX),
        )
      : null,
  ];
}

function variants(piece, pack) {
  const item = itemPlace(pack, piece.item);
  if (item < 0) return el("p", { class: "warn" }, NUMBER_NOT_IN_RANGE);
  const places = variantsOf(pack, item);
  const known = piece.of.filter((entry) => variantPlace(pack, entry.variant) >= 0);
  const sure = known.length === 1 ? known[0].variant : known.length > 1 ? "?" : "";
  const options = [
    ["", SOME_VARIANT_NOT_KNOWN],
    ...(known.length > 1 ? [["?", oneOfBelow(known.length)]] : []),
    ...places.map((place) => [pack.variants[place].id, variantLabel(pack, place)]),
  ];
  const settle = async (variant) => {
    if (variant === "?") return true;
    const place = variantPlace(pack, variant);
    const of = place < 0 ? [] : [{ variant, chance: 1 }];
    const number = place < 0 ? piece.item : pack.items[pack.variants[place].item].number;
    const kept = await saveChange(VARIANT_CHANGED, [
      { id: piece.id, alter: (now) => ({ ...now, item: number, of }) },
    ]);
    if (kept && known.length > 1) run(redraw);
    return kept;
  };
  return [
    choice(VARIANT, options, sure, settle),
    known.length === 1 && known[0].chance < 1 ? likelyOne(known[0], settle) : null,
    known.length < 2
      ? null
      : el(
          "ul",
          { class: "alike" },
          known.map((entry) => possible(pack, entry, settle)),
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
    thoughtToBeThis(percent(value)),
    button(YES_IT_IS, say, { class: "link" }),
  );
}

/** The two likeliest with rings where they differ. */
function apart(pack, known) {
  const [first, second] = known.map(({ variant }) => variantPlace(pack, variant));
  const named = (place) => ({ name: variantName(pack, place), variants: [place] });
  const pictures = differencePictures(pack, named(first), named(second));
  return (
    pictures &&
    el("details", { class: "filters" }, el("summary", {}, WHAT_TELLS_THEM_APART), pictures)
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
    button(IT_IS_THIS_ONE, () => settle(variant), {
      class: "link",
      "aria-label": isThisOne(label),
    }),
  );
}

function partFields(pack, piece, save) {
  const parts = pack.parts.map(({ id, name }) => [id, name]);
  const loose = pack.parts.filter(({ altered }) => !altered).map(({ id, name }) => [id, name]);
  return [
    ticks(MISSING_PARTS, loose, piece.missing ?? [], save("missing", MISSING_PARTS)),
    ticks(REPLACED_PARTS, parts, piece.replaced ?? [], save("replaced", REPLACED_PARTS)),
  ];
}

function purposeFields(state, piece, save) {
  return [
    choice(
      KEPT_AS,
      [
        ["", PART_OF_THE_COLLECTION],
        ["spare", A_SPARE_FOR_PARTS],
        ["donor", A_DONOR_PARTS_TAKEN_FROM_IT],
      ],
      piece.purpose ?? "",
      save("purpose", WHAT_IT_IS_KEPT_AS),
    ),
    ticks(
      IF_THERE_ARE_TWO,
      [["kept", KEEP_BOTH_NOT_A_DUPLICATE]],
      piece.kept ? ["kept"] : [],
      (on) => save("kept", KEEP_BOTH)(on.length > 0),
    ),
    moneyField(state, WHAT_TO_ASK_FOR_IT, piece.asking ?? null, save("asking", WHAT_TO_ASK)),
  ];
}

function evidence(pack, { answers = [] }) {
  if (!pack || answers.length === 0) return null;
  return el(
    "details",
    { class: "filters" },
    el("summary", {}, WHAT_YOU_SAW_THEN),
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
      : button(WANT_A_BETTER_ONE, () => wantBetter(piece), { class: "plain wide" }),
    button(HISTORY, () => goTo("changes", { id }), { class: "plain wide" }),
    button(MOVE_TO_THE_BIN, () => discard(id, THE_PIECE), { class: "plain wide" }),
  );
}

/** Puts a record into the bin, and goes back with an Undo. */
export function discard(id, name) {
  run(async () => {
    const said = isInTheBin(name);
    if (await saveChange(toTheBin(name), [trashing(id)], { said })) history.back();
  });
}

function wantBetter(piece) {
  const variant = piece.of.length === 1 ? piece.of[0].variant : "";
  const there = all("want").find(
    (want) => want.item === piece.item && want.pack === piece.pack && want.variant === variant,
  );
  if (there) return goTo("want", { id: there.id });
  const want = blank("want", { pack: piece.pack, item: piece.item, variant });
  return run(async () => {
    if (await saveChange(NEW_WANT, [making(want)])) goTo("want", { id: want.id });
  });
}
