import { all, making } from "../data/records.js";
import { blank } from "../data/record-shapes.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { itemName } from "../parts/say.js";
import { ranges, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { goTo, redraw } from "../parts/navigation.js";
import {
  ALREADY_WANTED,
  boxedSet,
  NEW_WANT,
  NO_INCOMPLETE_SETS,
  ON_YOUR_LIST,
  SETS_AND_TRAINS,
  WANT_IT,
  wantedName,
  wantName,
  WHAT_SETS_LACK,
  youHave,
} from "./words.js";

/** What is missing from each train and boxed set of which part is owned. */
export async function formationsScreen(state) {
  const pieces = all("piece");
  const wholes = [];
  for (const { id } of ranges()) {
    const own = pieces.filter((piece) => piece.pack === id);
    if (own.length === 0) continue;
    const ready = await readyRange(id);
    if (!ready) continue;
    wholes.push(
      ...state.engine.incomplete(ready, own).map((whole) => ({ ...whole, pack: ready.pack })),
    );
  }
  wholes.sort((a, b) => a.missing.length - b.missing.length);
  return el(
    "section",
    { class: "shelf" },
    heading(1, SETS_AND_TRAINS),
    wholes.length === 0 ? emptyPicture("train") : null,
    el("p", {}, wholes.length === 0 ? NO_INCOMPLETE_SETS : WHAT_SETS_LACK),
    wholes.map((whole) => wholeOf(whole)),
  );
}

function wholeOf({ pack, sort, name, owned, missing }) {
  const own = youHave(
    owned.length,
    owned.length + missing.length,
    owned.map((place) => itemName(pack, place)).join("; "),
  );
  return el(
    "section",
    {},
    heading(2, sort === "set" ? boxedSet(name) : name),
    el("p", { class: "quiet" }, own),
    el(
      "ul",
      { class: "missing" },
      missing.map((place) => el("li", { class: "row" }, missingItem(pack, place))),
    ),
  );
}

function missingItem(pack, place) {
  const { number } = pack.items[place];
  const name = itemName(pack, place);
  const there = all("want").find((want) => want.pack === pack.id && want.item === number);
  return [
    el("span", {}, name),
    there
      ? button(ALREADY_WANTED, () => goTo("want", { id: there.id }), {
          class: "plain",
          "aria-label": wantedName(name),
        })
      : button(WANT_IT, () => wanted(pack.id, number), {
          class: "plain",
          "aria-label": wantName(name),
        }),
  ];
}

function wanted(pack, item) {
  return run(async () => {
    const want = blank("want", { pack, item });
    if (await saveChange(NEW_WANT, [making(want)], { said: ON_YOUR_LIST })) await redraw();
  });
}
