import { button, el } from "../parts/element.js";
import { effort } from "../parts/say.js";
import { sheet } from "../parts/sheet.js";

/** @import { Pack, Session } from "../data/engine-types.d.ts" */

/** Opens the sheet with everything that can still be told of a piece, asked for or not. */
export function openAnything({ pack }, session, choose) {
  const shut = sheet(
    "Point something out",
    list(pack, session, (id) => {
      shut();
      choose(id);
    }) ?? el("p", {}, "You have pointed out all there is to point out in this range."),
  );
}

/**
 * The same folded away, for another sheet. `choose` gets the id of the feature.
 * @param {Pack} pack
 * @param {Session} session
 * @param {(feature: string) => void} choose
 */
export function anything(pack, session, choose) {
  const open = list(pack, session, choose);
  return open && el("details", {}, el("summary", {}, "Point something out"), open);
}

function list(pack, session, choose) {
  const told = session.answers.map((answer) => answer.feature);
  const kind = pack.kinds.findIndex((one) => one.id === session.scope.kind);
  const open = pack.features.filter(
    (feature, place) =>
      !told.includes(feature.id) && (kind < 0 || (place > 0 && feature.kinds.includes(kind))),
  );
  if (open.length === 0) return null;
  return el(
    "ul",
    { class: "found", "aria-label": "All you can point out" },
    open.map((feature) =>
      el(
        "li",
        {},
        button(
          [el("strong", {}, feature.name), el("span", { class: "quiet" }, effort(feature))],
          () => choose(feature.id),
          { class: "hit" },
        ),
      ),
    ),
  );
}
