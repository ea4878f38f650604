import { all, making } from "../data/records.js";
import { blank } from "../data/record-shapes.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { itemName } from "../parts/say.js";
import { ranges, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { goTo, redraw } from "../parts/navigation.js";

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
    heading(1, "Sets and trains"),
    wholes.length === 0 ? emptyPicture("train") : null,
    el(
      "p",
      {},
      wholes.length === 0
        ? "You have no incomplete sets or trains."
        : "What yours still lack, the nearest to complete first.",
    ),
    wholes.map((whole) => wholeOf(whole)),
  );
}

function wholeOf({ pack, sort, name, owned, missing }) {
  const own =
    `You have ${owned.length} of ${owned.length + missing.length}: ` +
    `${owned.map((place) => itemName(pack, place)).join("; ")}.`;
  return el(
    "section",
    {},
    heading(2, sort === "set" ? `${name} (boxed set)` : name),
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
      ? button("Wanted", () => goTo("want", { id: there.id }), {
          class: "plain",
          "aria-label": `Wanted: ${name}`,
        })
      : button("Want it", () => wanted(pack.id, number), {
          class: "plain",
          "aria-label": `Want it: ${name}`,
        }),
  ];
}

function wanted(pack, item) {
  return run(async () => {
    const want = blank("want", { pack, item });
    if (await saveChange("New want", [making(want)], { said: "It is on your list." }))
      await redraw();
  });
}
