import { el } from "./element.js";
import { CARE } from "./first-words.js";

/** @import { Pack } from "../data/engine-types.d.ts" */

/**
 * What to take care of with a piece of this kind.
 * @param {Pack} pack
 * @param {number} kind
 */
export function cautions(pack, kind) {
  const texts = pack.cautions
    .filter(({ kinds }) => kinds.length === 0 || kinds.includes(kind))
    .map(({ text }) => text);
  if (texts.length === 0) return null;
  return [
    el(
      "ul",
      { class: "plain-list" },
      texts.map((text) => el("li", {}, text)),
    ),
    el("p", { class: "quiet" }, CARE),
  ];
}
