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

/** Search across everything that was ever written down. */
export function findScreen(state) {
  const below = el("div", {});
  const draw = () => {
    const words = wordsOf(sought);
    const found = SORTS.map(({ type, name, row }) => {
      const some =
        words.length === 0 ? [] : all(type).filter((one) => matches(packsAtHand, one, words));
      return { name, row, some };
    });
    const count = found.reduce((sum, { some }) => sum + some.length, 0);
    const said = words.length === 0 ? ANY_WORD : foundCount(count);
    below.replaceChildren(
      ...(count === 0 ? [emptyPicture("lens")] : []),
      el("p", { class: "quiet" }, said),
      ...found
        .filter(({ some }) => some.length > 0)
        .flatMap(({ name, row, some }) => [
          heading(2, `${name} (${some.length})`),
          ...longList(name, some, (one) => row(state, one)),
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
  draw();
  return el(
    "section",
    { class: "shelf" },
    heading(1, SEARCH_EVERYTHING),
    el("div", { class: "field" }, el("label", { for: "everything" }, SEARCH_FOR), control),
    below,
  );
}
