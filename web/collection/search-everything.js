import { heldBack, inTurns } from "../data/in-turns.js";
import { all } from "../data/records.js";
import { el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { longList } from "../parts/long-list.js";
import { matches, wordsOf } from "../parts/piece-names.js";
import { announce } from "../parts/status.js";
import { pieceRow } from "./collection.js";
import { noteRow } from "../notebook/notebook.js";
import { wantRow } from "../wants/wants.js";
import { packsAtHand } from "../data/known-ranges.js";
import {
  ANY_WORD,
  COLLECTION,
  foundCount,
  NOTEBOOK,
  SEARCH_EVERYTHING,
  SEARCH_FOR,
  WANTS,
} from "./words.js";

const SORTS = [
  { type: "piece", name: COLLECTION, row: pieceRow },
  { type: "want", name: WANTS, row: wantRow },
  { type: "note", name: NOTEBOOK, row: noteRow },
];
let sought = "";

/** What has these words, the screen having its turn in between: at first all of it is read. */
async function foundOf({ type, name, row }, words) {
  const those = words.length === 0 ? [] : all(type);
  const fits = await inTurns(those, (kept) => matches(packsAtHand, kept, words));
  return { name, row, some: those.filter((_, place) => fits[place]) };
}

/** Search across everything that was ever written down. */
export async function findScreen(state) {
  const below = el("div", {});
  const latest = heldBack();
  const draw = () => {
    const words = wordsOf(sought);
    return latest(
      () => Promise.all(SORTS.map((sort) => foundOf(sort, words))),
      (groups) => show(words, groups),
    );
  };
  const show = (words, groups) => {
    const count = groups.reduce((sum, { some }) => sum + some.length, 0);
    const said = words.length === 0 ? ANY_WORD : foundCount(count);
    below.replaceChildren(
      ...(count === 0 ? [emptyPicture("lens")] : []),
      el("p", { class: "quiet" }, said),
      ...groups
        .filter(({ some }) => some.length > 0)
        .flatMap(({ name, row, some }) => [
          heading(2, `${name} (${some.length})`),
          ...longList(name, some, (kept) => row(state, kept)),
        ]),
    );
    if (words.length > 0) announce(said);
  };
  const control = el("input", {
    id: "everything",
    type: "search",
    autocomplete: "off",
    value: sought,
    oninput: () => {
      sought = control.value;
      draw();
    },
  });
  await draw();
  return el(
    "section",
    { class: "shelf" },
    heading(1, SEARCH_EVERYTHING),
    el("div", { class: "field" }, el("label", { for: "everything" }, SEARCH_FOR), control),
    below,
  );
}
