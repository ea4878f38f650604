/** What can be written of each sort of row of a range, as fields that save themselves. */
import { record } from "../data/records.js";
import { dateField } from "../parts/date-field.js";
import { choice, longField, textField, ticks } from "../parts/fields.js";
import { small } from "../parts/say.js";
import { saver } from "../parts/saving.js";
import { rowsOf } from "./own-range.js";
import {
  A_BOXED_SET_OF,
  A_SOURCE_WITHOUT_A_NAME_YET,
  asItCame,
  BELONGS_TOGETHER_AS,
  BETWEEN_NUMBERS,
  CANNOT_BE_EMPTY,
  CAPTION,
  CAUTION,
  COMPLETE,
  EMPTY_WHERE_NO_MORE,
  EXAMPLE_OF_A_SOURCE,
  EXAMPLE_OF_A_TRAIN,
  FROM_WHEN,
  HOW_COMPLETE,
  HOW_COMPLETE_IS_IT,
  HOW_FAR_CAN_IT_BE_TRUSTED,
  HOW_LONG_DOES_A_LOOK_TAKE,
  HOW_OFTEN_IS_IT_MET,
  HOW_OFTEN_NOT_SAID,
  HOW_OFTEN_WAS_IT_SWAPPED,
  IS_CALLED_NOW,
  LOOK_TAKES,
  MET,
  NAME,
  NAME_OF_SEVERAL,
  NEEDS,
  NEW_NUMBER,
  NO_MORE,
  NO_NAME_YET,
  NOT_SAID,
  NOTES,
  NOTHING_WRITTEN_YET,
  notWrittenDown,
  NUMBERS_OF_THE_SET,
  NUMBERS_OR_NAMES,
  OF_THE_PIECES_THAT_YOU_MEET,
  OLD_NUMBER,
  ONLY_FOR_THESE,
  PART,
  PRICE_OF_A_REPLACED_ONE,
  PRINTED_ON_THE_PIECE_ITSELF,
  SET_IN_ITSELF,
  SWAPPED,
  swappedHow,
  THE_PIECE_ITSELF,
  THE_QUESTION_IN_FULL,
  TITLE_OF_ITS_CARD,
  TOO_LONG,
  TRAIN,
  TRUST,
  WAS_CALLED,
  WHAT_COMPLETE_MEANS,
  WHAT_DOES_IT_TAKE_TO_SEE_IT,
  WHAT_HAS_IT,
  WHAT_IS_IN_THE_SET,
  WHAT_IT_IS,
  WHAT_IT_TAKES,
  WHAT_REPLACED_MEANS,
  WHAT_TO_TAKE_CARE_WITH,
  WHAT_YOU_SEE,
  WHEN_WRITTEN,
  WHERE_TO_LOOK,
  WHICH_PART_IS_IT_ON,
  WHO_SAYS_IT,
  WHO_SAYS_SO,
  WITHOUT_A_NAME_YET,
  WORDS_UNDER_ITS_DRAWING,
  YEAR,
} from "./row-words.js";

// How far a source is believed, how often a part is met replaced, how often a variant is met: the

/** A saver of a field of a row. */
const keep = (row, field, what) => saver(row.id, field, what);

/** What is needed: an empty one is not kept. */
function needed(row, field, label, hint) {
  const save = keep(row, field, label);
  const check = (text) => (text === "" ? CANNOT_BE_EMPTY : save(text));
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
  const all = there ? figures : [...figures, [now, asItCame(now)]];
  const save = keep(row, field, label);
  const known = now === null ? [["", NOT_SAID], ...all] : all;
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
  const named = rowsOf(range, type).map(({ id, name, what }) => [id, name || what || NO_NAME_YET]);
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
      .map((number) => number.trim())
      .filter(Boolean);
  return textField(label, row[field].join(", "), (text) => save(parted(text)), { hint });
}

/** The numbers of the items in a boxed set. */
function contents(row) {
  const save = keep(row, "contains", WHAT_IS_IN_THE_SET);
  const items = rowsOf(row.range, "range_item");
  const numberOf = (id) => items.find((item) => item.id === id)?.number ?? "";
  const check = (text) => {
    const numbers = text
      .split(/[,\n]+|;/)
      .map((number) => number.trim())
      .filter(Boolean);
    const members = numbers.map((number) => items.find((item) => item.number === number));
    const missing = numbers.filter((_, place) => !members[place]);
    if (missing.length > 0)
      return notWrittenDown(missing.join(BETWEEN_NUMBERS), missing.length === 1 ? "is" : "are");
    if (members.some((item) => item?.id === row.id)) return SET_IN_ITSELF;
    return save(members.map((item) => item?.id));
  };
  return textField(A_BOXED_SET_OF, row.contains.map(numberOf).join(", "), check, {
    hint: NUMBERS_OF_THE_SET,
  });
}

/** Who says so, of those that are written down. */
export function sourceField(row, label = WHO_SAYS_IT) {
  return choice(
    label,
    options(row.range, "range_source", NOT_SAID),
    row.source,
    keep(row, "source", WHO_SAYS_SO),
  );
}

/** How often a variant is met. */
export function commonField(row) {
  return figure(row, "common", HOW_OFTEN_IS_IT_MET, MET);
}

/** What an item may have besides. */
export function furtherFields(item) {
  return [
    choice(
      WHAT_IT_IS,
      options(item.range, "range_kind", NOT_SAID),
      item.kind,
      keep(item, "kind", WHAT_IT_IS),
    ),
    contents(item),
    textField(BELONGS_TOGETHER_AS, item.formation, keep(item, "formation", TRAIN), {
      hint: EXAMPLE_OF_A_TRAIN,
    }),
    listed(item, "carried", PRINTED_ON_THE_PIECE_ITSELF, NUMBERS_OR_NAMES),
  ];
}

const FIELDS = {
  range_kind: (row) => [
    needed(row, "name", NAME),
    needed(row, "plural", NAME_OF_SEVERAL),
    caption(row, "caption", WORDS_UNDER_ITS_DRAWING),
    choice(
      HOW_COMPLETE_IS_IT,
      COMPLETE,
      row.complete,
      keep(row, "complete", HOW_COMPLETE),
      WHAT_COMPLETE_MEANS,
    ),
  ],
  range_part: (row) => [
    needed(row, "name", NAME),
    figure(row, "swap", HOW_OFTEN_WAS_IT_SWAPPED, SWAPPED, OF_THE_PIECES_THAT_YOU_MEET),
    longField(WHAT_REPLACED_MEANS, row.replaced, keep(row, "replaced", PRICE_OF_A_REPLACED_ONE)),
  ],
  range_caution: (row) => [
    longField(WHAT_TO_TAKE_CARE_WITH, row.text, keep(row, "text", CAUTION)),
    kinds(row, ONLY_FOR_THESE),
  ],
  range_source: (row) => [
    needed(row, "what", WHAT_IT_IS, EXAMPLE_OF_A_SOURCE),
    dateField(FROM_WHEN, row.year, keep(row, "year", YEAR), {
      hint: WHEN_WRITTEN,
    }),
    figure(row, "trust", HOW_FAR_CAN_IT_BE_TRUSTED, TRUST),
  ],
  range_feature: (row) => [
    needed(row, "name", NAME),
    caption(row, "title", TITLE_OF_ITS_CARD),
    needed(row, "question", THE_QUESTION_IN_FULL),
    textField(WHERE_TO_LOOK, row.where, keep(row, "where", WHERE_TO_LOOK)),
    choice(
      WHICH_PART_IS_IT_ON,
      options(row.range, "range_part", THE_PIECE_ITSELF),
      row.part,
      keep(row, "part", PART),
    ),
    kinds(row, WHAT_HAS_IT),
    choice(
      WHAT_DOES_IT_TAKE_TO_SEE_IT,
      NEEDS,
      row.needs || "nothing",
      keep(row, "needs", WHAT_IT_TAKES),
    ),
    figure(row, "seconds", HOW_LONG_DOES_A_LOOK_TAKE, LOOK_TAKES),
  ],
  range_state: (row) => [
    needed(row, "name", WHAT_YOU_SEE),
    caption(row, "caption", WORDS_UNDER_ITS_DRAWING),
  ],
  range_move: (row) => [
    textField(WAS_CALLED, row.was, keep(row, "was", OLD_NUMBER)),
    textField(IS_CALLED_NOW, row.now, keep(row, "now", NEW_NUMBER), {
      hint: EMPTY_WHERE_NO_MORE,
    }),
    longField(NOTES, row.note, keep(row, "note", NOTES)),
  ],
};

/** The fields of a row. */
export function fieldsOf(row) {
  return FIELDS[row.type](row);
}

/** What a row is called in lists. */
export function rowName(row) {
  if (row.type === "range_source") return row.what || A_SOURCE_WITHOUT_A_NAME_YET;
  if (row.type === "range_caution") return row.text || NOTHING_WRITTEN_YET;
  if (row.type === "range_move") return `${row.was} → ${row.now || NO_MORE}`;
  return row.name || WITHOUT_A_NAME_YET;
}

/** What is said beside its name. */
export function rowAbout(row) {
  if (row.type === "range_part")
    return swappedHow(
      small(SWAPPED.find(([value]) => value === row.swap)?.[1] ?? HOW_OFTEN_NOT_SAID),
    );
  if (row.type === "range_feature") return record(row.part)?.name ?? "";
  return "";
}
