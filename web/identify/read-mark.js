import { CannotGoOn, loadFurther } from "../data/engine.js";
import { markTables } from "../data/packs.js";
import { run } from "../data/queue.js";
import { button, el, heading } from "../parts/element.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import {
  EXAMPLES_OF_MARKS,
  isFromOrEarlier,
  isFromOrLater,
  OR_ELSE,
  READ_A_MARK,
  readAsFigures,
  TAKE_THIS_AS_AN_ANSWER,
  WHAT_DOES_IT_SAY,
  WHO_SAYS_SO,
} from "./words.js";

/**
 * The sheet where whatever is read on the piece says what it is and when it was in use. `pack`: the
 * range a piece is being identified in, and `answer`: takes an answer to one of its questions; both
 * null where no piece is.
 */
export function openReadMark(pack = null, answer = null) {
  return run(async () => {
    try {
      openForm(await loadFurther(), await markTables(), pack, answer);
    } catch (error) {
      if (!(error instanceof CannotGoOn)) throw error;
      notice(error.message);
    }
  });
}

function openForm(rules, tables, pack, answer) {
  const said = el("div", { role: "status", class: "mark-said" });
  const field = el("input", {
    id: "mark-text",
    type: "text",
    autocomplete: "off",
    autocapitalize: "off",
    spellcheck: "false",
    enterkeyhint: "done",
    "aria-describedby": "mark-hint",
    oninput: () => said.replaceChildren(...readingOf(rules, tables, field.value, taking)),
  });
  const taking = { pack, answer: (given) => (close(), answer(given)) };
  const close = sheet(
    READ_A_MARK,
    el("label", { for: "mark-text" }, WHAT_DOES_IT_SAY),
    el("p", { id: "mark-hint", class: "quiet" }, EXAMPLES_OF_MARKS),
    field,
    said,
  );
}

/** What is to be said of a text, as elements. */
function readingOf(rules, tables, text, taking) {
  if (text.trim() === "") return [];
  const read = rules.read_mark(tables, text);
  if (read.problem !== "") return [el("p", {}, sentence(rules.nothing_said(read)))];
  const spans = read.marks.map((mark) => rules.mark_span(tables, mark.readings[0]));
  return [
    read.changed ? el("p", {}, readAsFigures(read.read)) : "",
    ...read.marks.flatMap((mark) => [
      heading(3, mark.text),
      ...mark.readings.flatMap((reading, place) => saidOf(rules, tables, reading, place, taking)),
    ]),
    ...rules
      .years_apart(spans)
      .map(([late, early]) =>
        el(
          "p",
          { class: "differ" },
          [
            isFromOrLater(read.marks[late].text, spans[late].first),
            isFromOrEarlier(read.marks[early].text, spans[early].last),
          ].join(""),
        ),
      ),
  ];
}

/** One reading of a mark. */
function saidOf(rules, tables, reading, place, taking) {
  const { what, lines, who } = rules.reading_said(tables, reading);
  return [
    el("p", {}, el("strong", {}, (place > 0 ? OR_ELSE : "") + what.join(""))),
    ...lines.map((line) => el("p", {}, sentence(line))),
    take(reading, taking),
    who.length > 0 &&
      el(
        "details",
        {},
        el("summary", {}, WHO_SAYS_SO),
        el(
          "ul",
          { class: "plain-list" },
          who.map((line) => el("li", {}, line)),
        ),
      ),
  ].filter(Boolean);
}

/** The button that makes the reading an answer; null where no question has it. */
function take({ feature, state }, { pack, answer }) {
  const asked = pack?.features.find(
    ({ id, states }) =>
      new RegExp(`(?:^|_)mark_${feature}$`).test(id) &&
      states.some(({ id: each }) => each === state),
  );
  return (
    asked &&
    button(TAKE_THIS_AS_AN_ANSWER, () =>
      answer({ feature: asked.id, how: "sure", states: [state] }),
    )
  );
}

/** Parts from the engine as a sentence. */
function sentence(parts) {
  const text = parts.join("");
  return text[0].toUpperCase() + text.slice(1);
}
