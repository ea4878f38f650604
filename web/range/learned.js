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
import {
  alonePiecesTell,
  HOW_MUCH_IS_NOT_WRITTEN_DOWN,
  HOW_OFTEN_A_VARIANT_IS_MET,
  LEARN_FROM_THEM,
  LEARNING,
  namedByYou,
  NO,
  noneSaysWhich,
  ofYourCountedAs,
  pieceCount,
  replacedCountedAs,
  stateCountedAs,
  TURNED_OUT_REPLACED,
  VARIES_WITHIN_ONE,
  WHAT_NO_MEANS,
  WHAT_YOUR_PIECES_SHOW,
  YES,
} from "./trying-words.js";

/** @import { Gap, Learned, Pack } from "../data/engine-types.d.ts" */

/** What was learned of the range `id`, and the switch. */
export async function learnedScreen(_, { id }) {
  const range = record(id);
  if (!range || range.trashed !== "") return gone();
  const { pack, learned, gaps } = await compileRange(id);
  return el(
    "section",
    { class: "shelf" },
    heading(1, WHAT_YOUR_PIECES_SHOW),
    el("p", {}, standing(range, learned)),
    choice(
      LEARN_FROM_THEM,
      [
        ["", YES],
        ["no", NO],
      ],
      range.learns ?? "",
      saver(id, "learns", LEARNING),
      WHAT_NO_MEANS,
    ),
    ...(learned ? lessons(pack, learned) : []),
    ...unwritten(pack, gaps),
  );
}

/** @param {{ name: string }} range @param {Learned | null} learned */
function standing({ name }, learned) {
  if (!learned || learned.pieces === 0) return noneSaysWhich(name);
  const count = learned.pieces === 1 ? "1 piece" : pieceCount(learned.pieces);
  return namedByYou(count);
}

/** @param {Pack} pack @param {Learned} learned */
function lessons(pack, { variants, states, parts }) {
  return [
    ...lines(HOW_OFTEN_A_VARIANT_IS_MET, variants, ({ variant, owned, of, share }) => [
      variantName(pack, variant),
      ofYourCountedAs(owned, of, percent(share)),
    ]),
    ...lines(VARIES_WITHIN_ONE, states, ({ variant, feature, seen, of, shares }) => [
      variantName(pack, variant),
      seenWords(pack.features[feature], seen, of, shares),
    ]),
    ...lines(TURNED_OUT_REPLACED, parts, ({ part, replaced, of, swap }) => [
      pack.parts[part].name,
      replacedCountedAs(replaced, of, percent(swap)),
    ]),
  ];
}

/** @param {Pack} pack @param {Gap[]} gaps */
function unwritten(pack, gaps) {
  return lines(HOW_MUCH_IS_NOT_WRITTEN_DOWN, gaps, ({ kind, new: alone, of, share }) => [
    pack.kinds[kind].plural,
    alonePiecesTell(alone, of, percent(share)),
  ]);
}

function lines(title, counts, words) {
  if (counts.length === 0) return [];
  return [
    heading(2, title),
    el(
      "ul",
      { class: "plain-list", "aria-label": title },
      counts.map((count) => {
        const [name, said] = words(count);
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
    .map(([state, count, share]) => stateCountedAs(count, of, state, percent(share)));
  return `${name}: ${each.join(", ")}`;
}
