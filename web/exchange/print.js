/** Lists as they go on paper: wants, duplicates with what is asked, all pieces for the insurer. */
import { onHomeScreen } from "../data/install.js";
import { photo } from "../data/kept-photos.js";
import { inTurns } from "../data/in-turns.js";
import { turns } from "../data/turns.js";
import { all, record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { ticks } from "../parts/fields.js";
import { moneyText, totalText } from "../parts/money.js";
import { itemPlace, stateText, title, variantText } from "../parts/piece-names.js";
import { portraitsDrawn, portraitsReady } from "../parts/portrait.js";
import { recordPortrait } from "../parts/record-picture.js";
import { dateText, today } from "../parts/days.js";
import { duplicateGroups } from "../collection/duplicates.js";
import { sortedWants } from "../wants/wants.js";
import { packsAtHand, ranges } from "../data/known-ranges.js";
import { notice } from "../parts/status.js";
import { handOutPage } from "./print-page.js";
import { unfolding } from "./unfolding.js";
import {
  andUrgent,
  ASKING,
  BOUGHT,
  CANNOT_PRINT_BY_ITSELF,
  CONDITION_AND_BOX,
  DUPLICATES,
  ITEM,
  LIST_FOR_THE_INSURER,
  MOST,
  OTHER,
  PAID,
  photoOf,
  PHOTOS,
  pieceCount,
  piecesAndPaid,
  PRINT,
  PRINT_THE_PHOTOS_TOO,
  TERMS,
  THE_LIST_WAS_NOT_SHARED,
  TOGETHER,
  togetherIs,
  VARIANT,
  WANTS,
  wantsAndUrgent,
} from "./words.js";

const SHEETS = {
  wants: { name: WANTS, make: wantsSheet },
  duplicates: { name: DUPLICATES, make: duplicatesSheet },
  insurance: { name: LIST_FOR_THE_INSURER, make: insuranceSheet, photos: true },
};
const MOST_PHOTOS = 3; // of one piece
const SMALL = 96; // pixels that a portrait is wide
const LANES = 4; // photos that are read and decoded at a time
const AT_ONCE = 100; // rows that come onto the screen at once; on paper all are

/**
 * A list as it goes on paper; what is a control here is not printed. A sheet is {head, groups:
 * [{name ("": no heading), rows: [{cells, photos, picture}], sum (in a row below, "": none)}],
 * sum, foot}.
 */
export async function printScreen(state, { what }) {
  const { name, make, photos } = SHEETS[what];
  const { head, groups, sum, foot } = await make(state);
  const loading = [portraitsReady().catch(() => {})]; // without them a list is still a list
  const bodies = [];
  for (const group of groups) bodies.push(...(await groupBodies(head, group, loading)));
  const together = sum === "" ? null : el("tfoot", {}, sumRow(head, TOGETHER, sum));
  const table = el(
    "table",
    { class: "paper", role: "table", "aria-label": name },
    el(
      "thead",
      {},
      el(
        "tr",
        {},
        head.map((text) => el("th", { scope: "col" }, text)),
      ),
    ),
    together,
  );
  const { more, whole } = unfolding(table, bodies);
  const apart = onHomeScreen(); // there nothing happens when a page asks to be printed
  const print = async () => {
    whole();
    await Promise.all([...loading, portraitsDrawn().catch(() => {})]);
    if (!apart) window.print();
    else if ((await handOutPage(name, screen)) === "") notice(THE_LIST_WAS_NOT_SHARED);
  };
  const screen = el(
    "section",
    { class: "shelf sheet-of-paper" },
    heading(1, name),
    el("p", { class: "quiet" }, `${dateText(today())}. ${foot}`),
    el("div", { class: "row" }, button(PRINT, print, { class: "main" })),
    apart ? el("p", { class: "quiet no-printer" }, CANNOT_PRINT_BY_ITSELF) : null,
    photos && loading.length > 1
      ? ticks(PHOTOS, [["photos", PRINT_THE_PHOTOS_TOO]], ["photos"], (on) => {
          table.classList.toggle("without-photos", on.length === 0);
          return false;
        })
      : null,
    table,
    more,
  );
  return screen;
}

/**
 * A part of the table under its own heading, which stays with its first row, in as many bodies as
 * come onto the screen one after the other; the screen has its turn in between.
 */
async function groupBodies(head, { name, rows, sum }, loading) {
  const lines = await inTurns(rows, (row) => linesOf(head, row, loading));
  const above =
    name === ""
      ? null
      : el(
          "tr",
          { role: "row", class: "group" },
          el("th", { scope: "rowgroup", colspan: head.length }, name),
        );
  const turn = turns();
  const bodies = [];
  for (let at = 0; at < Math.max(1, lines.length); at += AT_ONCE) {
    const some = lines.slice(at, at + AT_ONCE);
    bodies.push(el("tbody", { role: "rowgroup" }, at === 0 ? above : null, some));
    await turn();
  }
  if (sum !== "") bodies[bodies.length - 1].append(sumRow(head, togetherIs(name), sum));
  return bodies;
}

/** A row, and its photos below it. */
function linesOf(head, { cells, photos, picture }, loading) {
  return [
    el(
      "tr",
      { role: "row" },
      cells.map((text, place) => cell(head[place], place === 0 ? [picture(), text] : text)),
    ),
    photos.length === 0
      ? null
      : el(
          "tr",
          { role: "row", class: "pictures" },
          el("td", { role: "cell", colspan: head.length }, pictures(photos, cells[0], loading)),
        ),
  ];
}

/** A cell; on a narrow screen, where the cells stand below one another, it says what it is. */
function cell(name, text) {
  return el("td", { role: "cell", "data-name": name }, text);
}

function sumRow(head, name, sum) {
  return el(
    "tr",
    { role: "row", class: "sum" },
    el("th", { scope: "row", colspan: head.length - 1 }, name),
    el("td", { role: "cell" }, sum),
  );
}

/**
 * The photos of a piece; `loading` gets a promise for each that resolves when it can be printed.
 */
function pictures(ids, name, loading) {
  return ids.slice(0, MOST_PHOTOS).map((id, place) => {
    const image = el("img", { alt: photoOf(place + 1, name) });
    const before = loading[loading.length - LANES] ?? Promise.resolve();
    loading.push(
      before
        .catch(() => {})
        .then(async () => {
          const picture = await photo(id);
          if (!picture) {
            image.remove();
            return;
          }
          const url = URL.createObjectURL(picture.full);
          image.src = url;
          await image.decode().catch(() => image.remove()); // one that is damaged is left out
          URL.revokeObjectURL(url);
        }),
    );
    return image;
  });
}

const plainRow = (entry, cells) => ({
  cells,
  photos: [],
  picture: () => recordPortrait(entry, SMALL),
});

function wantsSheet(state) {
  const wants = sortedWants();
  const urgent = wants.filter(({ urgency }) => urgency === 3).length;
  const rows = wants.map((want) =>
    plainRow(want, [
      title(packsAtHand, want),
      variantText(packsAtHand, want),
      state.engine.want_words(want, "").join(", "),
      moneyText(state.engine, want.most),
    ]),
  );
  return {
    head: [ITEM, VARIANT, TERMS, MOST],
    groups: [{ name: "", rows, sum: "" }],
    sum: totalText(
      state.engine,
      wants.map(({ most }) => most),
    ),
    foot: wantsAndUrgent(wants.length, urgent > 0 ? andUrgent(urgent) : ""),
  };
}

async function duplicatesSheet(state) {
  const groups = await duplicateGroups(state);
  const pieces = groups.flatMap(({ part_with: ids }) => ids.map(record));
  const rows = pieces.map((piece) =>
    plainRow(piece, [
      title(packsAtHand, piece),
      variantText(packsAtHand, piece),
      stateText(piece),
      moneyText(state.engine, piece.asking),
    ]),
  );
  return {
    head: [ITEM, VARIANT, CONDITION_AND_BOX, ASKING],
    groups: [{ name: "", rows, sum: "" }],
    sum: totalText(
      state.engine,
      pieces.map(({ asking }) => asking),
    ),
    foot: pieceCount(pieces.length),
  };
}

async function insuranceSheet(state) {
  const pieces = all("piece");
  const named = new Map(ranges().map(({ id, name }) => [id, name]));
  const ids = [...new Set([...named.keys(), ...pieces.map(({ pack }) => pack)])];
  const ofRange = (id) => pieces.filter(({ pack }) => pack === id);
  const every = await Promise.all(
    ids.map((id) => rangeGroup(state, named.get(id) ?? (id || OTHER), ofRange(id))),
  );
  const groups = every.filter(({ rows }) => rows.length > 0);
  const paid = pieces.map((piece) => piece.paid).filter(Boolean);
  return {
    head: [ITEM, VARIANT, CONDITION_AND_BOX, BOUGHT, PAID],
    groups: groups.length > 1 ? groups : groups.map((group) => ({ ...group, sum: "" })),
    sum: totalText(state.engine, paid),
    foot: piecesAndPaid(pieces.length, paid.length),
  };
}

async function rangeGroup(state, name, pieces) {
  const place = ({ pack, item }) => itemPlace(packsAtHand.get(pack), item);
  const rows = await inTurns(
    pieces.sort((a, b) => place(a) - place(b)),
    (piece) => ({
      cells: [
        title(packsAtHand, piece),
        variantText(packsAtHand, piece),
        stateText(piece),
        [dateText(piece.when), piece.where].filter(Boolean).join(", "),
        moneyText(state.engine, piece.paid),
      ],
      photos: piece.photos ?? [],
      picture: () => recordPortrait(piece, SMALL),
    }),
  );
  return {
    name,
    rows,
    sum: totalText(
      state.engine,
      pieces.map(({ paid }) => paid),
    ),
  };
}
