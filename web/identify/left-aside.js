/** A piece that is left, with what is known of it: for the list of the pieces at hand. */
import { current } from "../data/piece-at-hand.js";
import { itemName, variantName } from "../parts/say.js";
import { leading, verdictTitle } from "./verdict-words.js";
import { ONE_OTHER_PIECE, otherPieces, PERHAPS_NOT_IN_THE_RANGE } from "./first-words.js";

const CLEAR = 0.4;

/** The piece at hand as it goes to the others. */
export function left({ pack, view, piece }) {
  const [best] = view.variants;
  const [item] = view.items;
  const known = best && view.unrecorded <= best.chance;
  const { scope } = current(piece).session;
  const name = !known
    ? PERHAPS_NOT_IN_THE_RANGE
    : best.chance >= CLEAR
      ? variantName(pack, best.variant)
      : itemName(pack, item.item);
  const summary = {
    name,
    variants: known ? [best.variant] : [],
    kind: scope.kind || (item && !pack.packs ? pack.kinds[pack.items[item.item].kind].id : ""),
    word: view.verdict ? leading(view.verdict).word : "",
    verdict: view.verdict ? verdictTitle(view.verdict) : "",
    asked: piece.hand?.asked ?? null,
  };
  return { ...piece, told: summary, left: new Date().toISOString() };
}

/** How many pieces are at hand besides the one on the screen, in words; "" for none. */
export function trayText(count) {
  if (count === 0) return "";
  return count === 1 ? ONE_OTHER_PIECE : otherPieces(count);
}
