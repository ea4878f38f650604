import { heldBack, inTurns } from "../data/in-turns.js";
import { all, howMany, recordsEdition } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { choice } from "../parts/fields.js";
import { entry, longListFrom } from "../parts/long-list.js";
import { moneyText, totalText } from "../parts/money.js";
import {
  itemPlace,
  matches,
  stateText,
  title,
  variantText,
  wordsOf,
} from "../parts/piece-names.js";
import { recordPicture } from "../parts/record-picture.js";
import { announce } from "../parts/status.js";
import { linkable } from "./known-now.js";
import { demoOffer } from "../first-steps/demo-offer.js";
import { goTo } from "../parts/navigation.js";
import { packsAtHand, ranges } from "../data/known-ranges.js";
import {
  ADD_A_PIECE,
  ANY,
  BOX,
  BOXED,
  COLLECTION,
  CONDITION,
  countInARangeNow,
  countOf,
  DONOR,
  FILTER_AND_SORT,
  IN_A_RANGE_NOW,
  KEPT_AS,
  KEPT_FOR,
  KIND,
  NO_BOX,
  ONE_IN_A_RANGE_NOW,
  paidForSome,
  PART_OF_THE_COLLECTION,
  PIECES,
  PRINT_FOR_INSURANCE,
  RANGE,
  SEARCH_THE_COLLECTION,
  SORT,
  SORTS,
  SPARE,
} from "./words.js";

const USUAL = {
  text: "",
  range: "",
  kind: "",
  condition: "",
  boxed: "",
  purpose: "",
  sort: "number",
};
let chosen = { ...USUAL };
let sorted = { about: "", pieces: [] };

/**
 * The collection: search, filters, sorting, totals and the list, as `listOf` draws it.
 * @param {typeof pieceList} [listOf]
 */
export async function collectionScreen(state, at, listOf = pieceList) {
  const pieces = all("piece");
  const below = el("div", { class: "results-of" });
  const latest = heldBack();
  const draw = (first) =>
    latest(
      async (isLatest) => {
        const passed = await passing(state);
        // a table would let go of what it lacks
        return isLatest() ? results(state, passed, first, listOf) : [];
      },
      (nodes) => below.replaceChildren(...nodes),
    );
  const filter = (name) => async (value) => {
    chosen = { ...chosen, [name]: value };
    if (await draw()) announce(below.querySelector("p").textContent);
  };
  await draw(at.drawn);
  return el(
    "section",
    { class: "shelf" },
    heading(1, COLLECTION),
    pieces.length === 0 ? [emptyPicture("shelf"), demoOffer(state)] : null,
    el(
      "div",
      { class: "row" },
      button(ADD_A_PIECE, () => goTo("choose", { into: "piece" }), { class: "main" }),
      pieces.length === 0
        ? null
        : button(PRINT_FOR_INSURANCE, () => goTo("print", { what: "insurance" }), {
            class: "plain",
          }),
    ),
    whenKnown(nowKnown(state)),
    pieces.length === 0 ? null : [searchBox(filter("text")), filters(state, filter, listOf)],
    below,
  );
}

/** A place for what is not waited for; it stays hidden where nothing comes. */
function whenKnown(coming) {
  const here = el("div", { hidden: true });
  coming.then((node) => node && here.replaceWith(node));
  return here;
}

/** What was in no range, and is in one by now: each opens, to be linked there. */
async function nowKnown(state) {
  const records = await linkable(state);
  if (records.length === 0) return null;
  return el(
    "details",
    { class: "filters" },
    el("summary", {}, records.length === 1 ? ONE_IN_A_RANGE_NOW : countInARangeNow(records.length)),
    el(
      "ul",
      { class: "found", "aria-label": IN_A_RANGE_NOW },
      records.map((piece) =>
        el(
          "li",
          {},
          button(el("strong", {}, piece.called), () => goTo(piece.type, { id: piece.id }), {
            class: "hit",
          }),
        ),
      ),
    ),
  );
}

function searchBox(save) {
  const control = el("input", {
    id: "within",
    type: "search",
    autocomplete: "off",
    value: chosen.text,
    oninput: () => save(control.value),
  });
  return el(
    "div",
    { class: "field" },
    el("label", { for: "within" }, SEARCH_THE_COLLECTION),
    control,
  );
}

function filters(state, filter, listOf) {
  const any = [["", ANY]];
  const kinds = new Map();
  for (const pack of packsAtHand.values())
    for (const kind of pack.kinds) kinds.set(kind.id, kind.plural);
  const conditions = state.engine.conditions().map((word) => [word, word]);
  const set = ["range", "kind", "condition", "boxed", "purpose"].some(
    (name) => chosen[name] !== "",
  );
  return el(
    "details",
    { class: "filters", open: set },
    el("summary", {}, FILTER_AND_SORT),
    listOf === pieceList ? choice(SORT, SORTS, chosen.sort, filter("sort")) : null,
    choice(
      RANGE,
      [...any, ...ranges().map(({ id, name }) => [id, name])],
      chosen.range,
      filter("range"),
    ),
    choice(KIND, [...any, ...kinds], chosen.kind, filter("kind")),
    choice(CONDITION, [...any, ...conditions], chosen.condition, filter("condition")),
    choice(BOX, [...any, ["yes", BOXED], ["no", NO_BOX]], chosen.boxed, filter("boxed")),
    choice(
      KEPT_AS,
      [...any, ["own", PART_OF_THE_COLLECTION], ["spare", SPARE], ["donor", DONOR]],
      chosen.purpose,
      filter("purpose"),
    ),
  );
}

/** The pieces that the filters let through, in the order that was chosen. */
export function chosenPieces(state) {
  const words = wordsOf(chosen.text);
  const pieces = all("piece");
  const ordered = orderHere() ?? byKeys(pieces.map(keyed(state)));
  return ordered.filter((piece) => passes(piece, words));
}

/** The same, the screen having its turn in between: at first all that is written is read. */
async function passing(state) {
  const words = wordsOf(chosen.text);
  const about = orderAbout();
  const ordered = orderHere() ?? byKeys(await inTurns(all("piece"), keyed(state)));
  sorted = { about, pieces: ordered };
  const fits = await inTurns(ordered, (piece) => passes(piece, words));
  return ordered.filter((_, place) => fits[place]);
}

async function results(state, shown, first, listOf) {
  const count = howMany("piece");
  const paid = shown.filter((piece) => piece.paid).map((piece) => piece.paid);
  const sum = paid.length === 0 ? "" : paidForSome(totalText(state.engine, paid), paid.length);
  const some = shown.length === count ? count : countOf(shown.length, count);
  return [
    el("p", { class: "quiet" }, `${some} ${count === 1 ? "piece" : "pieces"}.${sum}`),
    ...(await listOf(state, shown, first)),
  ];
}

function pieceList(state, shown, first) {
  return longListFrom(PIECES, shown, (piece) => pieceRow(state, piece), first);
}

/** A piece as an entry of a list. */
export function pieceRow(state, piece) {
  const standing = [
    stateText(piece),
    KEPT_FOR[piece.purpose] ?? "",
    moneyText(state.engine, piece.paid),
  ];
  return entry(
    [
      title(packsAtHand, piece),
      variantText(packsAtHand, piece),
      standing.filter(Boolean).join(" · "),
    ],
    () => goTo("piece", { id: piece.id }),
    recordPicture(piece),
  );
}

function passes(piece, words) {
  const { range, kind, condition, boxed, purpose } = chosen;
  const pack = packsAtHand.get(piece.pack);
  const item = pack?.items[itemPlace(pack, piece.item)];
  return (
    (range === "" || piece.pack === range) &&
    (kind === "" || (item && pack.kinds[item.kind].id === kind)) &&
    (condition === "" || piece.condition === condition) &&
    (boxed === "" || piece.boxed === boxed) &&
    (purpose === "" || piece.purpose === (purpose === "own" ? "" : purpose)) &&
    matches(packsAtHand, piece, words)
  );
}

/** The pieces in the order that was chosen, as long as nothing has changed; else undefined. */
function orderHere() {
  return sorted.about === orderAbout() ? sorted.pieces : undefined;
}

function orderAbout() {
  return [recordsEdition(), chosen.sort, ...ranges().map(rangeHere)].join(" ");
}

const rangeHere = ({ id, version }) => `${id} ${version} ${packsAtHand.has(id)}`;

/** What a piece is ordered by. */
function keyed(state) {
  const rank = {
    latest: (piece) => -Date.parse(piece.made),
    condition: (piece) => -state.engine.condition_rank(piece.condition),
    paid: (piece) => -(piece.paid?.minor ?? -1),
  }[chosen.sort];
  const place = new Map(ranges().map(({ id }, index) => [id, index * 1e6]));
  const number = (piece) => {
    const at = itemPlace(packsAtHand.get(piece.pack), piece.item);
    return (place.get(piece.pack) ?? 9e8) + (at < 0 ? 5e5 : at);
  };
  return (piece) => ({ piece, rank: rank ? rank(piece) : 0, number: number(piece) });
}

function byKeys(keys) {
  keys.sort((a, b) => a.rank - b.rank || a.number - b.number);
  return keys.map(({ piece }) => piece);
}
