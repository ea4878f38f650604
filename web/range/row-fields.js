/** What can be written of each sort of row of a range, as fields that save themselves. */
import { record } from "../data/records.js";
import { dateField } from "../parts/date-field.js";
import { choice, longField, textField, ticks } from "../parts/fields.js";
import { small } from "../parts/say.js";
import { saver } from "../parts/saving.js";
import { rowsOf } from "./own-range.js";

// How far a source is believed, how often a part is met replaced, how often a variant is met: the
// figures behind the words are guesses, no source.
const TRUST = [
  [0.95, "Nearly always right"],
  [0.9, "Right apart from slips"],
  [0.8, "Mostly right"],
  [0.5, "As often wrong as right"],
  [0.2, "Seldom right"],
];
const SWAPPED = [
  [0.01, "Hardly ever"],
  [0.05, "Seldom: 1 in 20"],
  [0.1, "Now and then: 1 in 10"],
  [0.2, "Often: 1 in 5"],
  [0.4, "Very often: 2 in 5"],
];
const MET = [
  [3, "Very common"],
  [1, "As often as others"],
  [0.5, "Half as often"],
  [0.2, "Seldom"],
  [0.05, "Hardly ever"],
];
const LOOK_TAKES = [
  [2, "A glance"],
  [4, "A few seconds"],
  [10, "10 seconds"],
  [30, "Half a minute"],
  [120, "Two minutes"],
];
const NEEDS = [
  ["nothing", "A look at it"],
  ["loupe", "A loupe"],
  ["body off", "The body taken off"],
];
const COMPLETE = [
  ["", "Not said"],
  ["a beginning", "A beginning"],
  ["all I know of", "All I know of"],
  ["every catalogue gone through", "Every catalogue gone through"],
];
const CAPTION = "At most three words. Leave it empty for the name.";
const TOO_LONG = "Not saved. Make it three words and 22 letters at most, so that it fits the card.";

/** A saver of a field of a row. */
const keep = (row, field, what) => saver(row.id, field, what);

/** What is needed: an empty one is not kept. */
function needed(row, field, label, hint) {
  const save = keep(row, field, label);
  const check = (text) => (text === "" ? "Not saved. This cannot be empty." : save(text));
  return textField(label, row[field], check, { hint });
}

/** A few words under a drawing. */
function caption(row, field, label) {
  const save = keep(row, field, label);
  const check = (text) =>
    text.length > 22 || text.split(/\s+/).length > 3 ? TOO_LONG : save(text);
  return textField(label, row[field], check, { hint: CAPTION });
}

/** A figure that is chosen by what it means; another one that stands there is kept to choose. */
function figure(row, field, label, figures, hint) {
  const now = row[field];
  const there = figures.some(([value]) => value === now) || now === null;
  const all = there ? figures : [...figures, [now, `${now}, as it came`]];
  const save = keep(row, field, label);
  const known = now === null ? [["", "Not said"], ...all] : all;
  return choice(
    label,
    known.map(([value, words]) => [String(value), words]),
    now === null ? "" : String(now),
    (text) => save(text === "" ? null : Number(text)),
    hint,
  );
}

/** The rows of a sort, to choose one from. */
function options(range, type, none) {
  const named = rowsOf(range, type).map(({ id, name, what }) => [
    id,
    name || what || "No name yet",
  ]);
  return [["", none], ...named];
}

function kinds(row, label) {
  const known = rowsOf(row.range, "range_kind").map(({ id, plural, name }) => [id, plural || name]);
  return ticks(label, known, row.kinds, keep(row, "kinds", label));
}

/** A list of short texts, typed with commas between them. */
function listed(row, field, label, hint) {
  const save = keep(row, field, label);
  const parted = (text) =>
    text
      .split(/[,\n]+|;/)
      .map((one) => one.trim())
      .filter(Boolean);
  return textField(label, row[field].join(", "), (text) => save(parted(text)), { hint });
}

/** The numbers of the items in a boxed set. */
function contents(row) {
  const save = keep(row, "contains", "What is in the set");
  const items = rowsOf(row.range, "range_item");
  const numberOf = (id) => items.find((item) => item.id === id)?.number ?? "";
  const check = (text) => {
    const numbers = text
      .split(/[,\n]+|;/)
      .map((one) => one.trim())
      .filter(Boolean);
    const found = numbers.map((number) => items.find((item) => item.number === number));
    const missing = numbers.filter((_, place) => !found[place]);
    if (missing.length > 0)
      return (
        `Not saved. ${missing.join(" and ")} ${missing.length === 1 ? "is" : "are"} not written ` +
        "down yet. Write it down first, then put it into the set."
      );
    if (found.some((item) => item?.id === row.id)) return "Not saved. A set cannot hold itself.";
    return save(found.map((item) => item?.id));
  };
  return textField("A boxed set of", row.contains.map(numberOf).join(", "), check, {
    hint: "The numbers of what is in it, with commas between them. Leave it empty for no set.",
  });
}

/** Who says so, of those that are written down. */
export function sourceField(row, label = "Who says so?") {
  return choice(
    label,
    options(row.range, "range_source", "Not said"),
    row.source,
    keep(row, "source", "Who says so"),
  );
}

/** How often a variant is met. */
export function commonField(row) {
  return figure(row, "common", "How often is it met?", MET);
}

/** What an item may have besides. */
export function furtherFields(item) {
  return [
    choice(
      "What it is",
      options(item.range, "range_kind", "Not said"),
      item.kind,
      keep(item, "kind", "What it is"),
    ),
    contents(item),
    textField("Belongs together with others as", item.formation, keep(item, "formation", "Train"), {
      hint: "One name for all of them, for example: Night mail.",
    }),
    listed(
      item,
      "carried",
      "Printed on the piece itself",
      "Running numbers or names, with commas between them.",
    ),
  ];
}

const FIELDS = {
  range_kind: (row) => [
    needed(row, "name", "Name"),
    needed(row, "plural", "Name of several"),
    caption(row, "caption", "Words under its drawing"),
    choice(
      "How complete is it?",
      COMPLETE,
      row.complete,
      keep(row, "complete", "How complete"),
      "The more complete, the sooner the app says that a piece is in no range.",
    ),
  ],
  range_part: (row) => [
    needed(row, "name", "Name"),
    figure(row, "swap", "How often was it swapped?", SWAPPED, "Of the pieces that you meet."),
    longField(
      "What a replaced one means for the price",
      row.replaced,
      keep(row, "replaced", "Price of a replaced one"),
    ),
  ],
  range_caution: (row) => [
    longField("What to take care with", row.text, keep(row, "text", "Caution")),
    kinds(row, "Only for these; none ticked: for everything"),
  ],
  range_source: (row) => [
    needed(row, "what", "What it is", "So that you find it again: Summer catalogue 1958."),
    dateField("From when", row.year, keep(row, "year", "Year"), {
      hint: "When it was written or printed.",
    }),
    figure(row, "trust", "How far can it be trusted?", TRUST),
  ],
  range_feature: (row) => [
    needed(row, "name", "Name"),
    caption(row, "title", "Title of its card"),
    needed(row, "question", "The question in full"),
    textField("Where to look", row.where, keep(row, "where", "Where to look")),
    choice(
      "Which part is it on?",
      options(row.range, "range_part", "The piece itself, which nobody swaps"),
      row.part,
      keep(row, "part", "Part"),
    ),
    kinds(row, "What has it; none ticked: everything"),
    choice(
      "What does it take to see it?",
      NEEDS,
      row.needs || "nothing",
      keep(row, "needs", "What it takes"),
    ),
    figure(row, "seconds", "How long does a look take?", LOOK_TAKES),
  ],
  range_state: (row) => [
    needed(row, "name", "What you see"),
    caption(row, "caption", "Words under its drawing"),
  ],
  range_move: (row) => [
    textField("Was called", row.was, keep(row, "was", "Old number")),
    textField("Is called now", row.now, keep(row, "now", "New number"), {
      hint: "Leave it empty where it is no more.",
    }),
    longField("Notes", row.note, keep(row, "note", "Notes")),
  ],
};

/** The fields of a row. */
export function fieldsOf(row) {
  return FIELDS[row.type](row);
}

/** What a row is called in lists. */
export function rowName(row) {
  if (row.type === "range_source") return row.what || "A source without a name yet";
  if (row.type === "range_caution") return row.text || "Nothing written yet";
  if (row.type === "range_move") return `${row.was} → ${row.now || "no more"}`;
  return row.name || "Without a name yet";
}

/** What is said beside its name. */
export function rowAbout(row) {
  if (row.type === "range_part")
    return `swapped: ${small(SWAPPED.find(([value]) => value === row.swap)?.[1] ?? "not said")}`;
  if (row.type === "range_feature") return record(row.part)?.name ?? "";
  return "";
}
