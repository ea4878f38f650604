import { all, record } from "../data/records.js";
import { changeSettings } from "../data/settings.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { choice } from "../parts/fields.js";
import { entry, longList } from "../parts/long-list.js";
import { totalText } from "../parts/money.js";
import { moneyField } from "../parts/money-field.js";
import { stateText, title, variantText } from "../parts/piece-names.js";
import { recordPicture } from "../parts/record-picture.js";
import { packsAtHand, ranges, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { saveChange, saver } from "../parts/saving.js";
import { goTo, redraw } from "../parts/navigation.js";
import {
  askingForSome,
  countToPartWith,
  DUPLICATES,
  KEEP_BOTH,
  keepBothOf,
  KEPT_NO_DUPLICATE,
  NO_DUPLICATES,
  PRINT,
  THE_BEST_ONE,
  THE_SAME_NUMBER_ANY_VARIANT,
  THE_SAME_VARIANT,
  WHAT_COUNTS_AS_THE_SAME,
  WHAT_TO_ASK,
} from "./words.js";

/**
 * What is owned twice, and what to ask for each copy to part with, as `listOf` draws it.
 * @param {(app: any, groups: any[], drawn: number) => any[]} [listOf]
 */
export async function duplicatesScreen(state, at, listOf = duplicateList) {
  const by = state.settings.duplicates;
  const groups = await duplicateGroups(state);
  const parting = groups.flatMap(({ part_with: ids }) => ids.map(record));
  const asking = parting.map((piece) => piece.asking).filter(Boolean);
  return el(
    "section",
    { class: "shelf" },
    heading(1, DUPLICATES),
    parting.length === 0 ? emptyPicture("twins") : null,
    choice(
      WHAT_COUNTS_AS_THE_SAME,
      [
        ["variant", THE_SAME_VARIANT],
        ["item", THE_SAME_NUMBER_ANY_VARIANT],
      ],
      by,
      async (value) => {
        await changeSettings({ duplicates: value });
        run(redraw);
        return true;
      },
    ),
    el(
      "p",
      {},
      parting.length === 0
        ? NO_DUPLICATES
        : [
            countToPartWith(parting.length),
            asking.length > 0 && askingForSome(totalText(state.engine, asking), asking.length),
          ],
    ),
    parting.length === 0
      ? null
      : button(PRINT, () => goTo("print", { what: "duplicates" }), { class: "plain" }),
    ...listOf(state, groups, at.drawn),
  );
}

function duplicateList(state, groups) {
  return longList(DUPLICATES, groups.flatMap(lines), (line) => lineOf(state, line));
}

/** Duplicates of every range: [{pack, item, variant, part_with: [ids]}]. */
export async function duplicateGroups(state) {
  const pieces = all("piece");
  const groups = [];
  for (const { id } of ranges()) {
    const own = pieces.filter((piece) => piece.pack === id);
    if (own.length < 2) continue;
    const ready = await readyRange(id);
    if (!ready) continue;
    groups.push(...state.engine.duplicates(ready, own, state.settings.duplicates));
  }
  return [...groups, ...state.engine.outside_alike(pieces)];
}

/** The lines of one duplicate: its name with the first copy, the other copies, the best one. */
function lines({ keep: best, part_with: ids }) {
  return [...ids.map((id, place) => ({ id, first: place === 0 })), { id: best, best: true }];
}

function lineOf(state, { id, first, best }) {
  const piece = record(id);
  if (best) return row(piece, THE_BEST_ONE);
  return el(
    "div",
    { class: "copy" },
    first ? heading(2, title(packsAtHand, piece)) : null,
    copy(state, piece),
  );
}

function row(piece, lead = "") {
  return entry(
    [`${lead}${variantText(packsAtHand, piece)}`, stateText(piece), piece.notes.split("\n")[0]],
    () => goTo("piece", { id: piece.id }),
    recordPicture(piece),
  );
}

function copy(state, piece) {
  const name = `${title(packsAtHand, piece)}, ${stateText(piece)}`;
  return [
    row(piece),
    moneyField(state, WHAT_TO_ASK, piece.asking ?? null, saver(piece.id, "asking", WHAT_TO_ASK)),
    button(
      KEEP_BOTH,
      () =>
        run(async () => {
          const kept = { id: piece.id, alter: (now) => ({ ...now, kept: true }) };
          const said = KEPT_NO_DUPLICATE;
          if (await saveChange(KEEP_BOTH, [kept], { said })) await redraw();
        }),
      { class: "link", "aria-label": keepBothOf(name) },
    ),
  ];
}
