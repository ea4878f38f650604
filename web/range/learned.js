/**
 * What the pieces in the collection tell of a range of one's own: said openly with the counts, and
 * switched off where it is not wanted.
 */
import { record } from "../data/records.js";
import { gone } from "../collection/piece.js";
import { el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { percent, small, variantName } from "../parts/say.js";
import { saver } from "../parts/saving.js";
import { compileRange } from "./keep-compiled.js";

/** @import { Gap, Learned, Pack } from "../data/engine-types.d.ts" */

/** What was learned of the range `id`, and the switch. */
export async function learnedScreen(_, { id }) {
  const range = record(id);
  if (!range || range.trashed !== "") return gone();
  const { pack, learned, gaps } = await compileRange(id);
  return el(
    "section",
    { class: "shelf" },
    heading(1, "What your pieces show"),
    el("p", {}, standing(range, learned)),
    choice(
      "Learn from them",
      [
        ["", "Yes"],
        ["no", "No"],
      ],
      range.learns ?? "",
      saver(id, "learns", "Learning"),
      "What you wrote down stays as it is. With “No” the range counts as written.",
    ),
    ...(learned ? told(pack, learned) : []),
    ...unwritten(pack, gaps),
  );
}

/** @param {{ name: string }} range @param {Learned | null} learned */
function standing({ name }, learned) {
  if (!learned || learned.pieces === 0)
    return (
      `No piece of ${name} in your collection says which variant it is yet. Once you say so ` +
      "on a piece, it counts here. What the app only thinks likely never does."
    );
  const count = learned.pieces === 1 ? "1 piece" : `${learned.pieces} pieces`;
  return (
    `${count} in your collection whose variant you named yourself. What the app only ` +
    "thinks likely does not count."
  );
}

/** @param {Pack} pack @param {Learned} learned */
function told(pack, { variants, states, parts }) {
  return [
    ...lines("How often a variant is met", variants, ({ variant, owned, of, share }) => [
      variantName(pack, variant),
      `${owned} of your ${of}: counted as ${percent(share)} of them`,
    ]),
    ...lines("What varies within one variant", states, ({ variant, feature, seen, of, shares }) => [
      variantName(pack, variant),
      seenWords(pack.features[feature], seen, of, shares),
    ]),
    ...lines("Parts that turned out replaced", parts, ({ part, replaced, of, swap }) => [
      pack.parts[part].name,
      `${replaced} of ${of}: counted as ${percent(swap)}`,
    ]),
  ];
}

/** @param {Pack} pack @param {Gap[]} gaps */
function unwritten(pack, gaps) {
  return lines("How much is not written down", gaps, ({ kind, new: alone, of, share }) => [
    pack.kinds[kind].plural,
    `For ${alone} of your ${of}, that one piece is all that tells of its variant. So about ` +
      `${percent(share)} of what you meet is probably not written down yet.`,
  ]);
}

function lines(title, found, words) {
  if (found.length === 0) return [];
  return [
    heading(2, title),
    el(
      "ul",
      { class: "plain-list", "aria-label": title },
      found.map((one) => {
        const [name, said] = words(one);
        return el("li", {}, el("strong", {}, name), " ", said);
      }),
    ),
  ];
}

/** "Wheels: 3 of 4 black; counted as 55%". */
function seenWords({ name, states }, seen, of, shares) {
  const each = states
    .map((state, place) => [small(state.name), seen[place], shares[place]])
    .filter(([, count]) => count > 0)
    .map(([state, count, share]) => `${count} of ${of} ${state} (counted as ${percent(share)})`);
  return `${name}: ${each.join(", ")}`;
}
