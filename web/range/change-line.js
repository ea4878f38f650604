/**
 * What a running change does, seen at once: a time line of what was fitted when, with sources that
 * disagree side by side, and the pieces that it speaks of.
 */
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { dateText } from "../parts/days.js";
import { button, el, heading, svg } from "../parts/element.js";
import { anyOf, small } from "../parts/say.js";
import { at, axis, decades, rule } from "../parts/time-axis.js";
import { compileRange, everyRow, rangingRules } from "./keep-compiled.js";
import { itemTitle } from "./item-title.js";
import { keepRows, newChange, seenField } from "./own-range.js";
import {
  changesNothing,
  changesNothingYet,
  FROM_THE_START,
  fromDay,
  NOTHING_OF_THAT_KIND,
  OTHER,
  RUNNING_CHANGE_APPLIED,
  saysWhatIsSeen,
  TIMELINE,
  untilThenAndAfter,
  WHAT_IT_CHANGES,
} from "./row-words.js";

/** @import { ChangeEffect, OwnChange, Saying } from "../data/engine-types.d.ts" */

/**
 * The time line and what the change does, as elements. `again` draws them anew.
 * @param {OwnChange} change
 */
export async function whatItDoes(change, again) {
  const [ranging, { pack }] = await Promise.all([rangingRules(), compileRange(change.range)]);
  const { first, last } = pack?.range ?? { first: 0, last: 0 };
  const effect = ranging.effect_of_change(everyRow(change.range), change, first, last);
  return [...(first > 0 ? line(effect, first, last) : []), ...onPieces(change, effect, again)];
}

/** @param {ChangeEffect} effect */
function line({ stretches }, first, last) {
  const range = { first, last };
  const rows = stretches.flatMap(({ state, sayings, end, change }) =>
    sayings.map((saying) => ({ state, saying, end, change })),
  );
  return [
    heading(2, TIMELINE),
    el(
      "div",
      { class: "timeline" },
      axis(range),
      el(
        "ul",
        { "aria-label": TIMELINE },
        rows.map(({ state, saying, end }) =>
          el(
            "li",
            {},
            el("strong", {}, record(state)?.name ?? OTHER),
            ` ${sayingWords(saying)}`,
            bar(range, saying, end),
          ),
        ),
      ),
    ),
  ];
}

/** "from about 1956 (A catalogue)". @param {Saying} saying */
function sayingWords({ source, since }) {
  const from = since === "" ? FROM_THE_START : fromDay(dateText(since));
  const who = record(source)?.what ?? "";
  return who === "" ? from : `${from} (${who})`;
}

/** Hollow where it may have begun by then, full where it had. */
function bar(range, { earliest, latest }, end) {
  const may = at(range, earliest);
  const sure = at(range, latest);
  const until = at(range, end);
  const box = (x, to, name) =>
    svg("rect", {
      x: `${x}%`,
      width: `${Math.max(to - x, 0.8)}%`,
      y: "15%",
      height: "70%",
      class: name,
    });
  return svg(
    "svg",
    { class: "time-row", "aria-hidden": "true", focusable: "false" },
    decades(range).map((year) => rule(at(range, year), "time-decade")),
    sure > may ? box(may, sure, "time-piece") : null,
    box(sure, until, "time-candidate"),
  );
}

const titles = (ids) =>
  anyOf(
    ids.map((id) => itemTitle(record(id))),
    "and",
  );

/** @param {OwnChange} change @param {ChangeEffect} effect */
function onPieces(change, effect, again) {
  const { speaks, silent, told_by: toldBy, before } = effect;
  const feature = small(record(change.feature)?.name ?? "it");
  const out = [heading(2, WHAT_IT_CHANGES)];
  if (speaks.length + silent.length + toldBy.length === 0)
    out.push(el("p", {}, NOTHING_OF_THAT_KIND));
  if (speaks.length > 0) out.push(el("p", {}, saysWhatIsSeen(titles(speaks))));
  if (toldBy.length > 0) out.push(el("p", {}, changesNothing(titles(toldBy), feature)));
  if (silent.length > 0) {
    out.push(el("p", {}, changesNothingYet(titles(silent), feature)));
    if (before !== "") out.push(letIt(change, effect, again));
  }
  return out;
}

/** A tap that lets the change speak where only what the piece in the hand had is put down. */
function letIt(change, { silent, before, stretches }, again) {
  const was = record(before).name;
  const now = record(change.state).name;
  const field = seenField(change.feature);
  const there = stretches.some(({ state }) => state === before);
  const settle = () =>
    run(async () => {
      const alike = silent.filter((id) => [before, change.state].includes(record(id)[field][0]));
      const edits = alike.map((id) => ({ id, alter: (seen) => ({ ...seen, [field]: [] }) }));
      const { feature, kinds, items } = change;
      const fresh = there
        ? []
        : [newChange(change.range, { feature, state: before, kinds, items })];
      if (await keepRows(RUNNING_CHANGE_APPLIED, fresh, { edits })) await again();
    });
  return button(untilThenAndAfter(was, small(now)), settle, { class: "plain wide" });
}
