import { button, el } from "../parts/element.js";
import { effort } from "../parts/say.js";

/**
 * Everything that can still be told of a piece, whether the engine would ask it or not: a list for a
 * sheet. `choose` gets the id of the feature.
 */
export function anything(pack, session, choose) {
  const told = session.answers.map((answer) => answer.feature);
  const kind = pack.kinds.findIndex((one) => one.id === session.scope.kind);
  const open = pack.features.filter(
    (feature, place) =>
      !told.includes(feature.id) && (kind < 0 || (place > 0 && feature.kinds.includes(kind))),
  );
  if (open.length === 0) return null;
  return el(
    "details",
    {},
    el("summary", {}, "Tell something else that you see"),
    el(
      "ul",
      { class: "found", "aria-label": "All that can be told" },
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
    ),
  );
}
