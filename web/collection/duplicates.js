import { all, record } from "../data/records.js";
import { keepSettings } from "../data/settings.js";
import { button, el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { entry, longList } from "../parts/long-list.js";
import { moneyField, totalText } from "../parts/money.js";
import { stateText, title, variantText } from "../parts/piece-names.js";

/**
 * What is owned twice, and what to ask for each copy to part with, as `listOf` draws it.
 * @param {(app: any, keep: any, groups: any[], drawn: number) => any[]} [listOf]
 */
export async function duplicatesScreen(app, keep, at, listOf = duplicateList) {
  const by = app.settings.duplicates;
  const groups = await duplicateGroups(app, keep);
  const parting = groups.flatMap(({ part_with: ids }) => ids.map(record));
  const asking = parting.map((piece) => piece.asking).filter(Boolean);
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Duplicates"),
    choice(
      "What counts as the same",
      [
        ["variant", "The same variant"],
        ["item", "The same item, any variant"],
      ],
      by,
      async (value) => {
        app.settings = { ...app.settings, duplicates: value };
        await keepSettings(app.settings);
        keep.run(keep.redraw);
        return true;
      },
    ),
    el(
      "p",
      {},
      parting.length === 0
        ? "None. Pieces whose variant is not certain are not counted, nor spares, donors and " +
            "those kept on purpose."
        : [
            `${parting.length} to part with.`,
            asking.length > 0 &&
              ` Asking ${totalText(app.engine, asking)} for ${asking.length} of them.`,
          ],
    ),
    parting.length === 0
      ? null
      : button("Print", () => keep.open("print", { what: "duplicates" }), { class: "plain" }),
    ...listOf(app, keep, groups, at.drawn),
  );
}

function duplicateList(app, keep, groups) {
  return longList("Duplicates", groups.flatMap(lines), (line) => lineOf(app, keep, line));
}

/** Duplicates of every range: [{pack, item, variant, keep, part_with: [ids]}]. */
export async function duplicateGroups(app, keep) {
  const pieces = all("piece");
  const found = [];
  for (const { id } of keep.ranges) {
    const own = pieces.filter((piece) => piece.pack === id);
    if (own.length < 2) continue;
    const ready = await keep.ready(id);
    if (!ready) continue;
    found.push(...app.engine.duplicates(ready, own, app.settings.duplicates));
  }
  return found;
}

/** The lines of one duplicate: its name with the first copy, the other copies, the best one. */
function lines({ keep: best, part_with: ids }) {
  return [...ids.map((id, place) => ({ id, first: place === 0 })), { id: best, best: true }];
}

function lineOf(app, keep, { id, first, best }) {
  const piece = record(id);
  if (best) return row(keep, piece, "The best one: ");
  return el(
    "div",
    { class: "copy" },
    first ? heading(2, title(keep.packs, piece)) : null,
    copy(app, keep, piece),
  );
}

function row(keep, piece, lead = "") {
  return entry(
    [`${lead}${variantText(keep.packs, piece)}`, stateText(piece), piece.notes.split("\n")[0]],
    () => keep.open("piece", { id: piece.id }),
    piece.photos[0],
  );
}

function copy(app, keep, piece) {
  const name = `${title(keep.packs, piece)}, ${stateText(piece)}`;
  return [
    row(keep, piece),
    moneyField(
      app,
      "What to ask",
      piece.asking ?? null,
      keep.saver(piece.id, "asking", "What to ask"),
    ),
    button(
      "Keep it on purpose",
      () =>
        keep.run(async () => {
          const kept = { id: piece.id, alter: (now) => ({ ...now, kept: true }) };
          const said = "It is kept, and no duplicate any more.";
          if (await keep.change("Kept on purpose", [kept], { said })) await keep.redraw();
        }),
      { class: "link", "aria-label": `Keep it on purpose: ${name}` },
    ),
  ];
}
