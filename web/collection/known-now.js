/** What is in no range, and the ranges that have come to know it. */
import { packsAtHand, ranges, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { inTurns } from "../data/in-turns.js";
import { all } from "../data/records.js";
import { button, el } from "../parts/element.js";
import { redraw } from "../parts/navigation.js";
import { itemName } from "../parts/say.js";
import { saveChange } from "../parts/saving.js";
import { isInRange, LINKED_NOW, LINKED_TO_A_RANGE } from "./words.js";

const looked = new WeakMap(); // by range: what it knows of each name, which many records share

/** The items of a range that something in no range may be. */
function knownTo(state, ready, record) {
  if (!looked.has(ready)) looked.set(ready, new Map());
  const names = looked.get(ready);
  if (!names.has(record.called)) names.set(record.called, state.engine.known_now(ready, record));
  return names.get(record.called);
}

/** The items that a piece or want in no range may be now: [{range, name, pack, number}]. */
async function itemsFor(state, record) {
  const items = [];
  for (const { id, name } of ranges()) {
    const ready = await readyRange(id);
    if (!ready) continue;
    for (const item of knownTo(state, ready, record))
      items.push({ range: name, name: itemName(ready.pack, item), pack: id, item });
  }
  return items;
}

/** Offers to link what is in no range to what a range knows of that name; null: nothing does. */
export async function knownNow(state, record) {
  const items = await itemsFor(state, record);
  if (items.length === 0) return null;
  const link = ({ pack, item }) =>
    run(async () => {
      const { number } = packsAtHand.get(pack).items[item];
      const alter = (now) => ({ ...now, pack, item: number });
      const said = LINKED_NOW;
      if (await saveChange(LINKED_TO_A_RANGE, [{ id: record.id, alter }], { said })) await redraw();
    });
  return el(
    "div",
    { class: "stack" },
    items.map((item) =>
      button(isInRange(item.name, item.range), () => link(item), { class: "plain wide" }),
    ),
  );
}

/** The pieces and wants in no range that a range knows by now. */
export async function linkable(state) {
  const outside = [...all("piece"), ...all("want")].filter(({ item }) => item === "");
  const known = await inTurns(outside, async (entry) => (await itemsFor(state, entry)).length > 0);
  return outside.filter((_, place) => known[place]);
}
