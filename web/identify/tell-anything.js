import { button, el } from "../parts/element.js";
import { effort } from "../parts/say.js";
import { sheet } from "../parts/sheet.js";
import { ALL_POINTED_OUT, ALL_YOU_CAN_POINT_OUT, POINT_SOMETHING_OUT } from "./words.js";

/** @import { Pack, Session } from "../data/engine-types.d.ts" */

/** Opens the sheet with everything that can still be told of a piece, asked for or not. */
export function openAnything({ pack }, session, choose) {
  const shut = sheet(
    POINT_SOMETHING_OUT,
    list(pack, session, (id) => {
      shut();
      choose(id);
    }) ?? el("p", {}, ALL_POINTED_OUT),
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
  return open && el("details", {}, el("summary", {}, POINT_SOMETHING_OUT), open);
}

function list(pack, session, choose) {
  const answered = session.answers.map((answer) => answer.feature);
  const kind = pack.kinds.findIndex((row) => row.id === session.scope.kind);
  const open = pack.features.filter(
    (feature, place) =>
      !answered.includes(feature.id) && (kind < 0 || (place > 0 && feature.kinds.includes(kind))),
  );
  if (open.length === 0) return null;
  return el(
    "ul",
    { class: "found", "aria-label": ALL_YOU_CAN_POINT_OUT },
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
