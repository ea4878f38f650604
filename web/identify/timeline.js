/**
 * What was made when, on one axis of years: candidates, parts, what was seen, the claim. Every row
 * says its name and its years as text, and its bar has the shape of its sort, so that neither
 * colour nor sight is needed.
 */
import { el, heading, svg } from "../parts/element.js";
import { bounded, span, variantName } from "../parts/say.js";
import { at, axis, decades, rule } from "../parts/time-axis.js";
import { claimSpan, claimWords, seenWords } from "./claim-words.js";
import { done, saidReplaced } from "./replaced.js";
import { BARS, andProbably, says, TIMELINE } from "./words.js";

/** @import { Claim, Pack, SeenYears, Session, View } from "../data/engine-types.d.ts" */

const CANDIDATES = 3;
const MARKS = 5;

/** The rows of the time line: [{sort, name, first, last}]. `claim` may be null. */
function timelineRows(pack, session, view, seen, claim) {
  const rows = view.variants
    .filter(({ first, chance }) => first > 0 && chance >= 0.01)
    .slice(0, CANDIDATES)
    .map(({ variant, first, last }) => ({
      sort: "candidate",
      name: variantName(pack, variant),
      first,
      last,
    }));
  if (view.whole.first > 0 && view.parts.length > 0) {
    rows.push({ sort: "piece", name: "", first: view.whole.first, last: view.whole.last });
  }
  for (const part of view.parts) {
    const { first, last } = part;
    const replaced = saidReplaced(part) ? andProbably(done(pack, part.part)) : "";
    const name = pack.parts[part.part].name + replaced;
    if (first > 0) rows.push({ sort: "part", name, first, last });
  }
  rows.push(...marks(pack, session, seen));
  if (claim && view.items.length > 0) {
    const [first, last] = claimSpan(pack, claim, view.items[0].item);
    rows.push({ sort: "claim", name: says(claimWords(claim)), first, last });
  }
  return rows;
}

/** What was seen on the piece itself that is not found in all years, the shortest time first. */
function marks(pack, session, seen) {
  const { first, last } = pack.range;
  return seen
    .filter(
      ({ feature, earliest, latest }) =>
        pack.features[feature].part < 0 && earliest > 0 && (earliest > first || latest < last),
    )
    .sort((a, b) => a.latest - a.earliest - (b.latest - b.earliest))
    .slice(0, MARKS)
    .map((entry) => ({
      sort: "mark",
      name: `${pack.features[entry.feature].name}, ${seenWords(pack, session, entry)}`,
      first: entry.earliest,
      last: entry.latest,
    }));
}

/**
 * The time line with its heading; null when there is nothing to set side by side.
 * @param {Pack} pack
 * @param {Session} session
 * @param {View} view
 * @param {SeenYears[]} seen
 * @param {Claim | null} claim
 */
export function timeline(pack, session, view, seen, claim = null) {
  const rows = timelineRows(pack, session, view, seen, claim);
  if (rows.length < 2) return null;
  const bars = rows.filter(({ sort }) => sort === "claim");
  return [
    heading(2, TIMELINE),
    el(
      "div",
      { class: "timeline" },
      axis(pack.range),
      el(
        "ul",
        { "aria-label": TIMELINE },
        rows.map((row) =>
          el(
            "li",
            {},
            el(
              "span",
              {},
              el("strong", {}, BARS[row.sort]),
              `${row.name === "" ? "" : `: ${row.name}`} `,
              el("span", { class: "when" }, `(${when(pack, row)})`),
            ),
            barOf(pack.range, row, bars),
          ),
        ),
      ),
    ),
  ];
}

function when(pack, { sort, first, last }) {
  return ["part", "mark"].includes(sort) ? bounded(pack, first, last) : span(first, last);
}

function barOf(range, { sort, first, last }, claims) {
  const x = at(range, first);
  const width = Math.max(at(range, last + 1) - x, 0.8);
  const shape = { x: `${x}%`, width: `${width}%` };
  return svg(
    "svg",
    { class: "time-row", "aria-hidden": "true", focusable: "false" },
    decades(range).map((year) => rule(at(range, year), "time-decade")),
    svg("rect", { ...shape, y: "15%", height: "70%", class: `time-${sort}` }),
    sort === "mark" ? [x, x + width].map((end) => rule(end, "time-end")) : null,
    claims.flatMap((claim) =>
      [claim.first, claim.last + 1].map((year) => rule(at(range, year), "time-claimed")),
    ),
  );
}
