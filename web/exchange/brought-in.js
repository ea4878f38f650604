/** The records that one import brought in or changed, and no others. */
import { record } from "../data/records.js";
import { look } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { longListFrom } from "../parts/long-list.js";
import { pieceRow } from "../collection/collection.js";
import { noteRow } from "../notebook/notebook.js";
import { wantRow } from "../wants/wants.js";
import { goTo } from "../parts/navigation.js";
import { allOfThe, importedFrom, NONE_IS_HERE_ANY_LONGER, NOTES, PIECES, WANTS } from "./words.js";

/** @type {[string, string, string, Function][]} */
const SORTS = [
  ["piece", PIECES, "collection", pieceRow],
  ["want", WANTS, "wants", wantRow],
  ["note", NOTES, "notebook", noteRow],
];

/** The screen; `at.group`: the change that brought them in, `at.file`: the name of the file. */
export async function cameScreen(state, at) {
  const ids = await look(["journal"], async (there) =>
    (await there.where("journal", "group", at.group)).map((entry) => entry.record),
  );
  const brought = [...new Set(ids)].map(record).filter((kept) => kept && kept.trashed === "");
  const lists = await Promise.all(
    SORTS.map(async ([type, label, place, row]) => {
      const some = brought.filter((kept) => kept.type === type);
      if (some.length === 0) return null;
      return [
        heading(2, `${label}: ${some.length}`),
        ...(await longListFrom(label, some, (entry) => row(state, entry), at.drawn)),
        button(allOfThe(place), () => goTo(place), { class: "plain wide" }),
      ];
    }),
  );
  return el(
    "section",
    { class: "shelf" },
    heading(1, importedFrom(at.file)),
    brought.length === 0 ? el("p", {}, NONE_IS_HERE_ANY_LONGER) : null,
    lists,
  );
}
