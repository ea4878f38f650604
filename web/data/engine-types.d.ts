// Made by python -m tests.web_types of identify/core/types/; change it there.

/**
 * unread (not understood) · reversed (it ends before it begins) · outside (not a year in the life of
 * the range)
 */
export type ClaimProblem = "" | "unread" | "reversed" | "outside";

/**
 * by the years that are likely, and by `could`; open: it cannot be said yet; unknown: the piece is
 * likelier not in the reference at all
 */
export type ClaimWord = "fits" | "possible" | "unlikely" | "ruled out" | "open" | "unknown";

export type IssueSaid = "" | "first issue" | "last issue";

/** A claim as it was read; with a problem nothing else counts. */
export interface Claim {
  about: "years" | "first issue" | "last issue";
  /** years, inclusive */
  first: number;
  last: number;
  /** the date as it was understood, "" where it names an issue */
  edtf: string;
  problem: ClaimProblem;
}

/** Years, inclusive; first 0 for none. */
export interface YearSpan {
  first: number;
  last: number;
}

/** A claim's chances, given that the piece is in the reference. */
export interface Weight {
  /** that its variant was in production at some time in the claimed years */
  could: number;
  /** that it was made in them, never more than `could` */
  chance: number;
}

/** 1 for each kind and item that the piece may well be, else 0. */
export interface MayBe {
  kinds: Array<number>;
  items: Array<number>;
}

/** What says when a state was made on a piece such as this. */
export interface Counting {
  /** index */
  rows: Array<number>;
  /** index */
  changes: Array<number>;
}

/** When the states of an answer were made, on pieces of the kinds and items that it may be. */
export interface SeenYears {
  /** index */
  feature: number;
  /** place in the session's answers */
  answer: number;
  /** years; 0: recorded on none */
  earliest: number;
  latest: number;
  /** the same for a date mark with what lies beyond soft ends of its years */
  first: number;
  last: number;
  /** the first and the last with it */
  variants: Array<number>;
  /** every running change of the feature that applies */
  changes: Array<number>;
}

/**
 * What an answer says of a claim.
 *
 * `bits` are the mean of what the answer does when put to all the others and when it is the only
 * one: left out alone, it would count for nothing where another answer says the same.
 */
export interface Evidence extends SeenYears {
  /** below 0: against the claim */
  bits: number;
}

/** A claim held against the answers. */
export interface Judgement {
  word: ClaimWord;
  could: number;
  chance: number;
  /** strongest first */
  evidence: Array<Evidence>;
  /** the one that would settle it best */
  question: Question | null;
}

/** which figure of 12/5/57 is taken as the day: the first, the second, or neither is known */
export type DayOrder = "day" | "month" | "";

/**
 * unread (not understood) · order (the day and the month cannot be told apart) · month (there is no
 * such month) · day (the month has no such day) · reversed (it ends before it begins)
 */
export type DateProblem = "" | "unread" | "order" | "month" | "day" | "reversed";

/** ~ (about), ? (uncertain), % (both), as EDTF writes them */
export type Mark = "" | "~" | "?" | "%";

/** The years in which a year of two figures is looked for; 0 and 0 for any. */
export interface Life {
  first: number;
  last: number;
}

/** A word, a number or a sign of a date by what it does there. */
export interface DateToken {
  /** one of those in date_tokens.py */
  role: string;
  /** of a month, a season, a part of a decade or year, a decade */
  value: number;
  /** as typed, in capitals */
  text: string;
}

/** Several words that are one, and where what comes after them begins. */
export interface PhraseEnd {
  /** "" for none */
  role: string;
  end: number;
}

/** One date as it was written; with a problem nothing but `why` and `readings` counts. */
export interface OneDate {
  /** without its mark */
  edtf: string;
  /** the first year, month or day of it: YYYY, YYYY-MM or YYYY-MM-DD, "" for open */
  first: string;
  last: string;
  mark: Mark;
  problem: DateProblem;
  /** a sentence on the problem, "" where there is none to be said */
  why: string;
  /** EDTF: what it can be */
  readings: Array<string>;
}

/** Tokens without those for "about" and "perhaps", and the mark that they make. */
export interface Trimmed {
  tokens: Array<DateToken>;
  mark: Mark;
}

/** A date or a span of dates as it was read. */
export interface ReadDate {
  /** "" with a problem */
  edtf: string;
  problem: DateProblem;
  /** what is wrong in a sentence, "" for nothing */
  why: string;
  /** EDTF: the two days that 12/5/57 can be, where the order is not known */
  readings: Array<string>;
}

/**
 * What became of everything that has a number or is asked, for people to be told.
 *
 * Variants are told of numbers that are in both editions only.
 */
export interface EditionNews {
  /** numbers that only the later edition has */
  new: Array<string>;
  /** numbers that it has no more, under any other one */
  gone: Array<string>;
  /** [what it was, what the number is now] */
  moved: Array<Array<string>>;
  /** numbers of which something else is said */
  items: Array<string>;
  /** ids of variants */
  variants_new: Array<string>;
  variants_gone: Array<string>;
  /** of which something else is said */
  variants: Array<string>;
  /** names of features */
  questions_new: Array<string>;
  questions_gone: Array<string>;
  /** that are put otherwise, or have other answers */
  questions: Array<string>;
}

/** Two editions side by side: the place that each thing of the earlier has in the later one. */
export interface Beside {
  /** -1: it has none; so for all of them */
  features: Array<number>;
  /** by feature */
  states: Array<Array<number>>;
  items: Array<number>;
  variants: Array<number>;
}

/** How often answers are wrong, and what the world is like. */
export interface Errors {
  sure: number;
  /** looked at twice, with the same answer */
  twice: number;
  unsure: number;
  /** times the share that the range says is in none; 0: a closed world */
  unrecorded: number;
  /** 1: there is nothing but what is drawn, so "something else" is no answer */
  drawn_all: number;
}

/** P(a sure answer | what is recorded) of one feature, for each answer. */
export interface Sights {
  /** for each of the cells' shares */
  by_code: Array<Array<number>>;
  /** for each kind's background */
  by_kind: Array<Array<number>>;
  /** for each sort of relative and each of the cells' shares */
  kin: Array<Array<Array<number>>>;
  /** for each kind where the piece is in no range and differs in it */
  strange: Array<Array<number>>;
}

/** Classes of rows, parted further by what is recorded of one more feature. */
export interface Parting {
  /** class of each row */
  of: Array<number>;
  /** of each class */
  code: Array<number>;
  /** the class that each was a part of */
  came_from: Array<number>;
}

/**
 * What the answers on one part say, and the classes of rows that they cannot tell apart.
 *
 * With no answer the classes are the kinds.
 */
export interface PartBelief {
  answers: Array<Answer>;
  /** how many answers there are */
  told: number;
  /** class of each row in scope */
  of: Array<number>;
  /** index of the kind of each class */
  kind: Array<number>;
  /** P(answers | the class, the part being its own) */
  own: Array<number>;
  /** P(answers | the class) */
  factors: Array<number>;
  /** P(replaced | the class) */
  swapped: Array<number>;
  /** P(answers | a relative of the class), for each sort */
  kin: Array<Array<number>>;
  /** P(answers | a stranger of a kind) */
  beyond: Array<number>;
  /** by kind of piece: chance of each kind a replacement comes from */
  donors: Array<Array<number>>;
  /** first and last likely year of the part, once asked for */
  years?: Array<number>;
}

/** The rows in scope and what they and their relatives are believed of; it adds up to 1. */
export interface InScope {
  /** index of each; kinds to chances are of each of them */
  rows: Array<number>;
  /** index */
  kinds: Array<number>;
  /** index */
  variants: Array<number>;
  /** index */
  spans: Array<number>;
  priors: Array<number>;
  chances: Array<number>;
  /**
   * for each sort of relative: the chance of an unrecorded variant of its item, of an unrecorded
   * item nearly the same, of one like it
   */
  kin: Array<Array<number>>;
  /**
   * for each sort of relative: what the chance of the row is to be multiplied by to have that of
   * what would be a relative but differs in nothing
   */
  less: Array<Array<number>>;
  /** by kind: the chance of what is like none of them */
  strangers: Array<number>;
  /** by part */
  parts: Array<PartBelief>;
}

/**
 * What is known before the first answer; the same for every answer to come.
 *
 * `parts` are what the last answers on each came to.
 */
export interface Beginning extends InScope {
  /** of the scope */
  kind: string;
  /** of the scope */
  items: Array<string>;
}

/** What is believed after a session's answers. */
export interface Belief extends InScope {
  /** by kind: relatives and strangers together */
  unrecorded: Array<number>;
  /** by row: the chance by what is on no part, to scale */
  bare: Array<number>;
}

/** An answer that says something. */
export interface Heard {
  answer: Answer;
  /** index of the feature */
  place: number;
  /** index of the part it is on, -1: the piece itself */
  part: number;
  /** P(answer | recorded shares), by cell code */
  like: Array<number>;
  /** the same of each sort of relative */
  kin: Array<Array<number>>;
  /** P(answer | background), by kind */
  any: Array<number>;
  /** the same of what is in no range */
  beyond: Array<number>;
}

/**
 * A pack with its reading errors worked out: what all functions take as `engine`.
 *
 * Made by `prepare`, once after loading.
 */
export interface Engine {
  pack: Pack;
  /** by feature: P(answer | state), rows by answer, "sure" */
  sure: Array<Array<Array<number>>>;
  /** the same for "unsure" */
  unsure: Array<Array<Array<number>>>;
  /** the same for "twice" */
  twice: Array<Array<Array<number>>>;
  /** by feature */
  sights: Array<Sights>;
  /** by feature and sort of relative: the chance that each state differs */
  differs: Array<Array<Array<number>>>;
  /** by feature and state: the share of each other state where it differs */
  otherwise: Array<Array<Array<number>>>;
  /** by sort of relative and row: the chance that it would differ in nothing */
  same: Array<Array<number>>;
  /** by feature and kind: share of each state where it differs */
  strange: Array<Array<Array<number>>>;
  /** by kind: share of pieces that are in no range */
  open: Array<number>;
  drawn_all: number;
  /** by part and kind: chance of each kind a replacement is from */
  donors: Array<Array<Array<number>>>;
  /** by feature: the variants whose rows are not all recorded alike */
  varying: Array<Array<number>>;
  /** the last one, kept */
  begun: Array<Beginning>;
  /** made when something is looked for first, and kept */
  index: Array<Index>;
  /** made when records are first held against the pack, and kept */
  shelf: Array<Shelf>;
}

/** What ranges, their items and their variants are called, by pack and by shelfmark. */
export interface Naming {
  ranges: Record<string, string>;
  items: Record<string, string>;
  variants: Record<string, string>;
}

/** A table as it goes into a file, every cell guarded. */
export interface WrittenTable {
  names: Array<string>;
  rows: Array<Array<string>>;
}

/** A part of a workbook: its name in the zip file, and what is in it. */
export interface WorkbookPart {
  name: string;
  text: string;
}

/**
 * The files of a folder, its TOML and its tables taken apart. A table that is not there is
 * empty.
 */
export interface FolderFiles {
  id: string;
  /** range.toml */
  about: Group;
  /** features.toml */
  looks: Group;
  /** the first row names the columns */
  items: Array<Array<string>>;
  variants: Array<Array<string>>;
  changes: Array<Array<string>>;
  sources: Array<Array<string>>;
  moves: Array<Array<string>>;
  drawings: Array<DrawingRow>;
  /** the kit: kinds, parts and features as they are written there, by their ids */
  written: Group;
  /** the kit's drawings, by name */
  drawn: Group;
}

/** A name that the kit has not. */
export interface NotInKit {
  /** of the entries */
  nth: number;
  /** where it stands */
  key: string;
  name: string;
  known: Array<string>;
}

/** The entries of one folder while they are filled in from the kit. */
export interface Picked {
  written: Group;
  /** by what they are called in the kit: their ids here */
  kinds: Record<string, Array<string>>;
  parts: Record<string, Array<string>>;
  wrong: Array<NotInKit>;
}

/** The rows of a folder, and the columns that mean nothing: [file, column]. */
export interface FolderRead {
  rows: RangeRows;
  unknown: Array<Array<string>>;
}

/** names with values of any sort: what is looked at before it is believed */
export type Group = Record<string, any>;

/** Why something does not fit. */
export interface Fault {
  /** a word that gate_words.py has a sentence for */
  why: string;
  /** the field that it is about, "" for none */
  at: string;
}

/** What a sort of record holds. */
export interface RecordShape {
  type: string;
  /** [name, sort of value] */
  fields: Array<Array<string>>;
}

/** The words that a sort of field is held to. */
export interface SortWords {
  sort: string;
  words: Array<string>;
}

/** "": not asked for, or not said of the piece in hand */
export type Met = "met" | "short" | "";

/** currency: the two cannot be compared */
export type PriceMet = "within" | "above" | "currency" | "";

/** of what is held: its variants or its items */
export type Places = "at" | "items";

/** and the chances of them */
export type Shares = "chances" | "shares";

/** The pack's items and variants for look-up. */
export interface Shelf {
  /** index, by shelfmark */
  items: Record<string, number>;
  /** index, by shelfmark */
  variants: Record<string, number>;
  /** by item: its variants */
  inside: Array<Array<number>>;
  /** by variant: its share of its item's prior */
  shares: Array<number>;
}

/** What a piece can be. */
export interface Held {
  record: Piece;
  /** index of the variants */
  at: Array<number>;
  /** of each of them */
  chances: Array<number>;
  /** index of the items */
  items: Array<number>;
  /** chance of each of them */
  shares: Array<number>;
}

/** What is owned of what the pack lists. */
export interface Holdings {
  owned: Array<Held>;
  /** spares and donors */
  spares: Array<Held>;
  /** by variant: chance of owning none */
  lacking: Array<number>;
  /** by item: chance of owning none */
  without: Array<number>;
}

/** A held piece that bears on the one in hand. */
export interface Near {
  record: Piece;
  items: Array<number>;
  /** chance that the two are the same variant */
  same: number;
  /** chance that they are the same item */
  item: number;
}

/** A want, held against the piece in hand. */
export interface Wanted {
  record: Want;
  /** index */
  item: number;
  /** index, -1: any */
  variant: number;
  condition: Met;
  box: Met;
  price: PriceMet;
}

/** What belongs together: a formation, or what is in a boxed set. */
export interface Together {
  sort: "formation" | "set";
  name: string;
  /** index of the set, -1 for a formation */
  item: number;
  /** index of the items */
  members: Array<number>;
}

/** A formation or boxed set of which part is owned. */
export interface Incomplete {
  sort: "formation" | "set";
  name: string;
  /** index of the set, -1 for a formation */
  item: number;
  /** index of the items */
  owned: Array<number>;
  missing: Array<number>;
}

/** What the piece in hand would add to; `missing` is what is missing then. */
export interface Completing extends Incomplete {
  /** that the piece is one of those missing */
  chance: number;
  /** index of the likeliest of them */
  adds: number;
}

/** What is owned twice or more. */
export interface Duplicate {
  /** index */
  item: number;
  /** index, -1 where copies are counted by item */
  variant: number;
  /** id of the best copy */
  keep: string;
  /** ids of the others, worst first */
  part_with: Array<string>;
}

/** What each variant would mean, by variant; the fields are those of the verdict. */
export interface Meanings {
  same: Array<number>;
  other: Array<number>;
  new: Array<number>;
  wanted: Array<number>;
  dear: Array<number>;
  double: Array<number>;
  upgrade: Array<number>;
  completes: Array<number>;
  /** equal for variants that mean the same, chances taken to a tenth */
  kind: Array<number>;
}

/** The records worked out for the piece in hand, once for many answers. */
export interface Studied {
  hand: Hand;
  held: Holdings;
  wants: Array<Wanted>;
  started: Array<Incomplete>;
  meanings: Meanings;
}

/**
 * A record that points to what a newer version of its pack calls otherwise, or has no more.
 *
 * What is gone stays named.
 */
export interface Moved {
  id: string;
  /** how many names moved */
  changed: number;
  /** how many are no more */
  gone: number;
  /** where it points now */
  item: string;
  variant: string;
  of: Array<Chance>;
}

/** A record or some of its fields by name, before it is known to be one: any JSON */
export type Fields = Record<string, any>;

/** A column as the person has it. */
export interface AskedColumn {
  name: string;
  /** the id of a field, "" is left out */
  field: string;
  /**
   * of a column of dates: day or month (first in 12/5/57), ask (nothing in the column tells),
   * mixed (both come up), "" (does not matter)
   */
  order: string;
}

/** A column with a guessed field. */
export interface ReadColumn extends AskedColumn {
  sure: number;
  why: string;
}

/** What a column can be. */
export interface FieldName {
  id: string;
  /** in words */
  name: string;
}

/** A row of a file. */
export interface CellsRow {
  /** in the file, from 1 */
  row: number;
  cells: Array<string>;
}

/** A row with the name by which a later import knows it again. */
export interface KeyedRow extends CellsRow {
  key: string;
}

/** A row that could not be imported, with what is wrong. */
export interface LeftOutRow extends CellsRow {
  wrong: Array<string>;
}

/** What a file holds, empty rows left out; with something in `wrong` nothing else counts. */
export interface FileTable {
  rows: Array<CellsRow>;
  /** how the file was taken, and what is odd about it */
  notes: Array<string>;
  sheet: string;
  /** empty for a text file */
  sheets: Array<string>;
  /** why it cannot be taken at all, "" where it can */
  wrong: string;
}

/** A file as a table. */
export interface ReadTable {
  sheet: string;
  /** empty for a text file */
  sheets: Array<string>;
  /** the row with the names of the columns, 0 for none */
  header: number;
  /** this app wrote it, and the columns are sure */
  own: boolean;
  /** what the rows seem to be; "" for a file of its own, whose rows say so */
  type: string;
  columns: Array<ReadColumn>;
  fields: Array<FieldName>;
  rows: Array<CellsRow>;
  /** how the file was taken, and what is odd about it */
  notes: Array<string>;
}

/** A table with the names of its columns. */
export interface Headed {
  header: number;
  own: boolean;
  names: Array<string>;
  rows: Array<CellsRow>;
  notes: Array<string>;
}

/** How large a share of a column's cells each of these fields could hold; none: no cells. */
export interface ColumnShares {
  number: number;
  price: number;
  when: number;
  condition: number;
  boxed: number;
  name: number;
  /** 1: there are no cells */
  none: number;
}

/** A field that a column may be. */
export interface ColumnOffer {
  sure: number;
  place: number;
  field: string;
  why: string;
}

/** The cells of a row by what they say, before it is a record. */
export interface CellsSaid {
  field: string;
  /** of the column */
  name: string;
  cell: string;
  order: string;
}

/** What a row may be known by again. */
export interface RowName {
  /** the id of a record, in a file that this app wrote */
  own: string;
  /** the list's own number of the row */
  numbered: string;
  number: string;
  /** number, range and words in one */
  said: string;
}

/** The keys of all rows of a table. */
export interface Keys {
  keys: Array<string>;
  /** numbers that come twice */
  notes: Array<string>;
}

/** What a cell says; with something in `wrong` that is a sentence about it, and no more. */
export interface CellRead {
  value: any;
  /** what the value leaves out of the cell */
  more: string;
  wrong: string;
}

/** What a cell says of a box. */
export interface BoxRead {
  has: string;
  condition: string;
  more: string;
  wrong: string;
}

/** One item: its pack and place there, and what is compared. */
export interface Entry {
  pack: string;
  place: number;
  number: string;
  name: string;
  plain: string;
  unzeroed: string;
  canonical: string;
  carried: Array<string>;
  /** of the name and the kind, each once */
  words: Array<number>;
  /** the words of the name alone */
  spelt: Array<number>;
  /** of those */
  letters: number;
  size: number;
  sum: number;
}

/** A known word that a text may mean. */
export interface WordMeant {
  word: number;
  /** 0 to 1 */
  like: number;
}

/** A state with what must stand in a text for it: each list of words is enough. */
export interface StateWords {
  feature: number;
  state: string;
  phrases: Array<Array<string>>;
  /** words that name it without saying what of, if nothing else uses them */
  bare: Array<string>;
}

/** What texts can say about the variants of one range. */
export interface Wording {
  states: Array<StateWords>;
}

/** All items of some ranges, with the weight of each word: the rarer, the more it says. */
export interface Reference {
  engines: Array<Engine>;
  entries: Array<Entry>;
  /** of each engine, the words that name its range */
  ranges: Array<Array<string>>;
  words: Array<string>;
  /** of each word */
  places: Record<string, number>;
  rarity: Array<number>;
  /** of each word, the entries that it is of */
  holders: Array<Array<number>>;
  /** of each word that was looked up, its place in `near` */
  near_at: Record<string, number>;
  near: Array<Array<WordMeant>>;
  /** of each engine, once it is asked for */
  wordings: Array<Array<Wording>>;
  /** of each text that was read, its place in `read` */
  read_at: Record<string, number>;
  /** the variants that it may mean */
  read: Array<Array<Chance>>;
}

/** What a row says of which item it is. */
export interface Query {
  number: string;
  name: string;
  description: string;
  range: string;
}

/** What speaks for an item: a kind of evidence, and its size. */
export interface Clue {
  word: string;
  size: number;
}

/** what an item was known by */
export type Found = "number" | "misread" | "name" | "number and name";

/** An item that a row may mean. */
export interface ItemMeant {
  /** place in the reference */
  entry: number;
  sure: number;
  how: Found;
}

/** The known words that a text means. */
export interface Spoken {
  words: Array<number>;
  /** of each word of the reference, 0 to 1 */
  likes: Array<number>;
  size: number;
}

/** A state that a text names. */
export interface Hit {
  feature: number;
  state: string;
}

/** How many parts of a variant's name stand in a text, and whether all do. */
export interface NamedPart {
  count: number;
  /** 1: all */
  whole: number;
}

/** An item that a row may mean, as it is offered. */
export interface Offer {
  pack: string;
  /** its number */
  item: string;
  name: string;
  sure: number;
  how: Found;
  of: Array<Chance>;
  /** id, where it is known */
  variant: string;
  /** the variant's name */
  which: string;
  /** what it puts into a record */
  sets: Fields;
}

/** Something of a row that could not be taken as it is. */
export interface RowProblem {
  /** its name, "" for the row */
  column: string;
  /** names the row and the column */
  sentence: string;
}

/** A field that was changed in the app and in the file. */
export interface FieldClash {
  field: string;
  ours: any;
  theirs: any;
  cell: string;
  sentence: string;
}

/** What an import changes in a record that is there already. */
export interface SameRecord {
  id: string;
  sets: Fields;
  before: Fields;
  clashes: Array<FieldClash>;
}

/** What becomes of a row. */
export interface Outcome {
  row: number;
  key: string;
  /** "", or a sentence: no record can be made of this row */
  failed: string;
  /** complete but for id, made and changed where it is new */
  record: Fields | null;
  /** of a failed row: what to write once one is chosen */
  if_chosen?: Fields | null;
  /** the best three */
  candidates: Array<Offer>;
  /** what is put into a record where none of them is taken */
  none: Fields;
  /** place in candidates, -1: none is sure enough */
  chosen: number;
  /** of the chosen one, 0 where none is */
  sure: number;
  problems: Array<RowProblem>;
  same: SameRecord | null;
}

/** A row while it is read as a piece, a want or a note. */
export interface RowSoFar {
  reference: Reference;
  sort: string;
  row: KeyedRow;
  texts: Array<CellsSaid>;
  currency: string;
  problems: Array<RowProblem>;
  /** of the notes */
  lines: Array<string>;
  cells: Record<string, string>;
  values: Fields;
  /** field of the record -> name of its column */
  heads: Record<string, string>;
}

/** What an import changes in a record, and the fields that were changed on both sides. */
export interface Changes {
  sets: Fields;
  both: Array<string>;
}

/** The record of a row that this app wrote, and what was wrong: [[field, sentence]]. */
export interface OwnRecord {
  record: Fields;
  problems: Array<Array<string>>;
  /** fields that were not there when it was written */
  absent: Array<string>;
  /** why it is no record, "" where it is one */
  wrong: string;
}

/** What the column "further" says. */
export interface Further {
  fields: Fields;
  absent: Array<string>;
  wrong: string;
}

/** What is the same for all rows. */
export interface Importing {
  reference: Reference;
  /** piece, want or note; "" for a file that this app wrote */
  sort: string;
  /** the one meant where none is written */
  currency: string;
  columns: Array<AskedColumn>;
}

/** A piece whose owner says which variant it is, with what was seen of it. */
export interface Specimen {
  /** number */
  item: string;
  /** id */
  variant: string;
  answers: Array<Answer>;
  /** ids of parts that its owner knows to be replaced */
  replaced: Array<string>;
}

/** How often a variant is owned, of the pieces of its item. */
export interface VariantTold {
  /** index */
  variant: number;
  owned: number;
  of: number;
  /** how often it is met among the variants of its item, as is now reckoned */
  share: number;
}

/** What was seen of a feature on the pieces of one variant. */
export interface StateTold {
  /** index */
  variant: number;
  feature: number;
  /** by state: how many pieces */
  seen: Array<number>;
  of: number;
  /** by state, as is now reckoned */
  shares: Array<number>;
}

/** How often a part was replaced. */
export interface PartTold {
  /** index */
  part: number;
  replaced: number;
  /** pieces on which it was looked at */
  of: number;
  /** as is now reckoned */
  swap: number;
}

/** All that owned pieces tell. */
export interface Learned {
  pieces: number;
  variants: Array<VariantTold>;
  states: Array<StateTold>;
  parts: Array<PartTold>;
}

/** How much of a kind is not written down, as is now reckoned. */
export interface Gap {
  /** index */
  kind: number;
  /** pieces that the range would not know without them */
  new: number;
  of: number;
  /** of the pieces met that are in no range */
  share: number;
}

export type ListField = "" | "number" | "name" | "kind" | "variant" | "years" | "source" | "note" | "carried" | "seen";

/** the id of a feature, and ids of its states */
export type StatesSeen = [string, Array<string>];

/** What a cell may mean: a state or a kind, and what it is called. */
export interface Choice {
  id: string;
  texts: Array<string>;
}

/** A feature that a column may be of. */
export interface LookedAt {
  id: string;
  texts: Array<string>;
  states: Array<Choice>;
}

/** What a column is: a field, and for `seen` which feature and what its cells may mean. */
export interface ColumnUse {
  field: ListField;
  feature: string;
  /** of a kind: the kinds */
  states: Array<Choice>;
  /** of a guess, 0 to 1 */
  sure: number;
}

/** A text that none of the states or kinds is called like. */
export interface Unread {
  column: number;
  text: string;
}

/** What a row of the list says. */
export interface LineRead {
  /** from 0 */
  line: number;
  number: string;
  name: string;
  /** id, "" not said */
  kind: string;
  variant: string;
  years: string;
  source: string;
  note: string;
  carried: Array<string>;
  seen: Array<StatesSeen>;
  unread: Array<Unread>;
}

/** A version, as the rows of one number differ. */
export interface ListedVariant {
  line: number;
  name: string;
  years: string;
  note: string;
  seen: Array<StatesSeen>;
}

/** All rows of one number. */
export interface ListedItem {
  lines: Array<number>;
  number: string;
  name: string;
  kind: string;
  years: string;
  source: string;
  note: string;
  carried: Array<string>;
  /** on all of them */
  seen: Array<StatesSeen>;
  variants: Array<ListedVariant>;
}

/** of a sentence, to be joined by who shows it */
export type Parts = Array<string | number>;

export type NumberProblem = "" | "none" | "empty" | "letters" | "long" | "low" | "unused" | "beyond" | "year" | "count" | "check";

/** A piece of a shape: see core/mark_shapes.py. */
export interface ShapePiece {
  kind: "figures" | "letters" | "pence" | "word" | "district" | "text" | "gap" | "space";
  least: number;
  most: number;
  text: string;
}

/** A state of a mark, and the number from which it is that one. */
export interface StateFrom {
  state: string;
  number: number;
}

/**
 * A series of numbers that ran on over the years.
 *
 * Each of `rows` is [number, first, before, memory], lowest number first: from this number on
 * numbers were given from the year `first` (0: none was until the next row; -1: none by the year
 * `before`); numbers below it are of the year `before` at the latest (0: not known); `memory` is 1
 * where that is from memory, else 0.
 */
export interface SeriesTable {
  id: string;
  country: string;
  /** id of the mark: design, patent */
  kind: string;
  name: string;
  /** what was done in the year of a number: registered, granted */
  done: string;
  example: string;
  note: string;
  states: Array<StateFrom>;
  rows: Array<Array<number>>;
  /** place of the source of each row, -1: none */
  sources: Array<number>;
}

/** When bars of these lengths came: [first year, memory]. */
export interface BarTables {
  twelve: Array<number>;
  thirteen: Array<number>;
}

/** Words that name a mark, or stand before the numbers of some series. */
export interface MarkWordsEntry {
  words: Array<string>;
  feature: string;
  /** "": the number says which */
  state: string;
  countries: Array<string>;
  series: Array<string>;
}

/** What a mark without words looks like. */
export interface ShapeEntry {
  pieces: Array<ShapePiece>;
  feature: string;
  state: string;
  countries: Array<string>;
  /** its figures are a number of one of these */
  series: Array<string>;
}

/** A rate beside the word for a tax: the wording of the mark "rate", and where both stand. */
export interface TaxRate {
  /** "": none */
  state: string;
  start: number;
  end: number;
}

/** One end of the years of a wording. */
export interface MarkEnd {
  /** 0: open */
  year: number;
  /** "15 February 1971" */
  when: string;
  /** rules out what is beyond it */
  hard: boolean;
  label: string;
  /** place, -1: none */
  source: number;
  /** years beyond a soft end in which it grows rarer */
  tail: number;
}

/** When a wording was in use in some countries. */
export interface WordingRow {
  feature: string;
  state: string;
  countries: Array<string>;
  wording: string;
  since: MarkEnd;
  until: MarkEnd;
  note: string;
}

/** An id with its name. */
export interface NamedOne {
  id: string;
  name: string;
}

/** A mark and its wordings. */
export interface MarkFeature {
  id: string;
  name: string;
  states: Array<NamedOne>;
}

/** Who says so, where it was read, and what kind of authority that is. */
export interface MarkSource {
  what: string;
  read: string;
  kind: string;
}

/** What numbers are read by. */
export interface NumberTables {
  series: Array<SeriesTable>;
  barcode: BarTables;
}

/** packs/marks.json. */
export interface MarkTables extends NumberTables {
  words: Array<MarkWordsEntry>;
  shapes: Array<ShapeEntry>;
  rows: Array<WordingRow>;
  features: Array<MarkFeature>;
  sources: Array<MarkSource>;
  countries: Array<NamedOne>;
}

/** A number that was read, and when it was given. */
export interface DatedNumber {
  /**
   * none (there is no number) · empty · letters (not figures only) · long (more than 8) · low
   * (below the table) · unused (none given there) · beyond (not reached yet) · year (1234/79: not
   * numbered by the year then) · count (barcode: not 8, 12 or 13) · check
   */
  problem: NumberProblem;
  /** without gaps; where they cannot be read, the text */
  figures: string;
  /**
   * for letters: the text with look-alikes (O, I, S, ...) as figures, "" if that is no number
   * either; it is told, never taken
   */
  meant: string;
  /** application: a patent's number with its year; UPC-A: with 13 figures, a 0 in front */
  kind: "" | "application" | "EAN-8" | "EAN-13" | "UPC-A";
  number: number;
  /** years */
  first: number;
  /** 0: open */
  last: number;
  /** some of it is from memory */
  memory: boolean;
  /** place in the table, or -1 */
  row: number;
  /**
   * what is right; low: the lowest number and its year; unused: the first number not given and
   * the next that was, or 0; beyond: the number not reached, and by which year; year: the first
   * and the last; check: the last figure
   */
  near: Array<number>;
}

/** One thing that a mark can be. */
export interface Reading {
  feature: string;
  /** "": not known */
  state: string;
  countries: Array<string>;
  /** "": no number of a series */
  series: string;
  /** places of the rows that say when */
  rows: Array<number>;
  number: DatedNumber;
  /** nothing before the number says what it is */
  bare: boolean;
}

/** A mark in a text: from where to where, and what it can be. */
export interface MarkFound {
  start: number;
  end: number;
  text: string;
  readings: Array<Reading>;
}

/** What a text on a piece says. */
export interface MarkRead {
  problem: "" | "empty" | "nothing";
  /** as plain capitals */
  read: string;
  /** whether figures or letters of another script were read as ours */
  changed: boolean;
  /**
   * for nothing: the text with letters that look like figures as figures, where that is a mark; it
   * is told, never taken
   */
  meant: string;
  marks: Array<MarkFound>;
}

/** A reading in words. */
export interface ReadingSaid {
  what: Parts;
  lines: Array<Parts>;
  who: Array<string>;
}

/** The years that a reading leaves, 0 where open. */
export interface MarkSpan {
  first: number;
  last: number;
  first_hard: boolean;
  last_hard: boolean;
}

/** Two marks of one piece that cannot be of one year, or hardly. */
export interface MarkClash {
  /** places among what was seen */
  late: number;
  early: number;
  /** not even with what lies beyond soft ends of their years */
  hard: boolean;
}

/** misread: look-alikes or a slip had to be forgiven; carried: on the piece itself */
export type HowFound = "number" | "misread" | "carried" | "name";

/** An item that a text could mean. */
export interface Match {
  /** index */
  item: number;
  /** 0 to 1 */
  score: number;
  how: HowFound;
  /** the recorded text */
  matched: string;
}

/** A number as it is compared. */
export interface Spelt {
  /** capitals and figures only */
  plain: string;
  /** every look-alike as its figure */
  canonical: string;
}

/** A number of the pack. */
export interface Listed extends Spelt {
  /** index */
  item: number;
  /** as it is recorded */
  text: string;
  /** 1: on the piece itself, 0: in the catalogue */
  carried: number;
}

/** An item that every word of a text fits. */
export interface Fitting {
  item: number;
  score: number;
}

/** What is looked through. */
export interface Index {
  numbers: Array<Listed>;
  /** every word once */
  words: Array<string>;
  /** how many figures each word has */
  figures: Array<number>;
  /** of each word, the items with it */
  items: Array<Array<number>>;
  /** how many items there are */
  count: number;
}

/** An amount in whole minor units (new pence, cents, yen) and 48ths of one on top. */
export interface Money {
  minor: number;
  /** 48ths of a minor unit, 0 to 47; only old money and halfpence have any */
  over?: number;
  /** the ISO 4217 code */
  currency: string;
  /** the text that it was read from, "" for a sum */
  typed: string;
}

/** fmt: skip */
export type MoneyProblem = "" | "empty" | "amount" | "word" | "which" | "currency" | "mixed" | "decimals" | "parts" | "large" | "ambiguous";

/** Money read from a text, or why not. */
export interface ReadMoney {
  money: Money | null;
  problem: MoneyProblem;
}

/** Two amounts added; those in two currencies are not. */
export interface Sum {
  money: Money | null;
  problem: "" | "currency";
}

/** Which of two amounts is more; those in two currencies are not compared. */
export interface Order {
  /** 1: the first, -1: the other, 0: neither */
  order: number;
  problem: "" | "currency";
}

/** Sterling before 1971. */
export interface OldMoney {
  pounds: number;
  shillings: number;
  pence: number;
  farthings: number;
}

/**
 * What a screen shows money with.
 *
 * `digits` is given since a browser's own table differs from ISO 4217 (the forint has none there).
 */
export interface MoneyParts {
  currency: string;
  /** decimals of the currency */
  digits: number;
  /** whole units */
  whole: number;
  /** and minor units, rounded half up */
  part: number;
  /** nothing was rounded */
  exact: boolean;
  /** for sterling that is a whole number of farthings */
  old: OldMoney | null;
}

/** A number, a word or a sign of a typed amount. */
export interface Token {
  sort: "n" | "w" | "/" | "-";
  /** of a number: its figures; a bare fraction has the group "" */
  groups?: Array<string>;
  /** of a number: what parts the groups */
  points?: Array<string>;
  /** of a number: 1 to 3 for a fraction after it */
  quarters?: number;
  /** of a word: in capitals */
  word?: string;
}

/** A number found in a text, and where it ends. */
export interface Figures {
  token: Token;
  end: number;
}

/** What a typed amount looks like. */
export interface Shape {
  /** its tokens in one letter each */
  shape: string;
  numbers: Array<Token>;
  /** how often a currency is written */
  marked: number;
  /** "" for none */
  currency: string;
  problem: MoneyProblem;
}

/** A number's figures before and after its decimal point. */
export interface Decimal {
  whole: string;
  decimals: string;
  problem: MoneyProblem;
}

/** A currency, and how it is written in capitals. */
export interface Marked {
  /** ISO 4217 */
  code: string;
  /** its decimals */
  digits: number;
  marks: Array<string>;
  /** the hundredth part */
  small: Array<string>;
}

/** A currency that can be read. */
export interface Currency {
  /** ISO 4217 */
  code: string;
  /** its decimals */
  digits: number;
}

/**
 * A hybrid logical clock: the greatest time seen anywhere so far, and a counter for what comes
 * at the same.
 */
export interface Clock {
  wall: number;
  count: number;
}

/**
 * One change of one record, as the server keeps it; never changed again (but for `scrubbed`).
 *
 * Whatever else it, or its fields, hold is kept and passed on.
 */
export interface Operation extends Clock {
  /** "<device>.<n>"; device: "d" and 16 random of a-z 0-9; n: 1, 2, 3, ... */
  id: string;
  /** id of what it changes ("r..."; "p...": a photo) */
  record: string;
  /** of a record, photo, device (its name), or one that only a newer version knows */
  type: string;
  /** ids, sorted: the record's heads when it was written */
  parents: Array<string>;
  /** ISO 8601, what the device's own clock said: for people */
  time: string;
  /** as in the journal */
  group: string;
  /** as in the journal */
  what: string;
  /** as in the journal */
  undoes: string;
  /** what was written; a field taken away is null */
  fields: Record<string, any>;
  /** its fields were deleted for good, and are {} */
  scrubbed?: boolean;
}

/** What an operation's id says. */
export interface OperationId {
  device: string;
  n: number;
}

/** An operation as the rules take it; of one that is not here yet nothing is known. */
export interface Written extends Clock {
  id: string;
  device: string;
  n: number;
  parents: Array<string>;
  type: string;
  /** [name, JSON text with sorted keys] */
  fields: Array<Array<string>>;
}

/** A value of a field, and the operation that wrote it. */
export interface FieldValue {
  /** JSON */
  text: string;
  id: string;
}

/** A field with several values: the one shown first, then the latest first. */
export interface Clash {
  field: string;
  values: Array<FieldValue>;
}

/** The operations that wrote a field. */
export interface Writers {
  name: string;
  places: Array<number>;
}

/** What all known operations of one record come to. */
export interface Merged {
  type: string;
  /** [name, JSON text] */
  fields: Array<Array<string>>;
  clashes: Array<Clash>;
  /** ids that no known operation names as parents, sorted */
  heads: Array<string>;
  trashed: boolean;
  /** deleted for good */
  gone: boolean;
  /** trashed on one device, changed or restored on another meanwhile */
  brought_back: boolean;
  /** ids of operations whose values were deleted for good */
  scrub: Array<string>;
}

/** How far a device has pulled. */
export interface Reached {
  /** of the server's data */
  epoch: string;
  /** where the last pull ended */
  after: number;
  /** and the operation there */
  last: string;
}

/** What a device knows of itself and of the server. */
export interface Device extends Reached {
  /** its id */
  device: string;
  /** of its last operation */
  n: number;
  clock: Clock;
  /** how often the server was found to be another, or an older one */
  round: number;
}

/** What the server says to a pull. */
export interface PullAnswer extends Reached {
  /** it begins from the beginning */
  from_start: boolean;
}

/** What a device knows after a pull. */
export interface Pulled extends Reached {
  round: number;
}

/** The operations of a record that no other names as a parent. */
export interface Heads {
  record: string;
  heads: Array<string>;
}

/** A change that is no operation yet. */
export interface Unsealed {
  record: string;
  /** ms */
  time: number;
}

/** What makes an operation of a change. */
export interface Sealed extends Clock {
  id: string;
  device: string;
  n: number;
  parents: Array<string>;
}

/** Operations made of changes, one each, and where the device stands then. */
export interface Sealing {
  n: number;
  clock: Clock;
  ops: Array<Sealed>;
  heads: Array<Heads>;
}

/** An operation, to be held against another under the same id. */
export interface Compared {
  scrubbed: boolean;
  /** all of it as canonical JSON */
  text: string;
  /** the same without what deleting for good changes: `fields`, `what`, `scrubbed` */
  bare: string;
}

/** An operation that came from elsewhere. */
export interface Arriving extends Clock {
  id: string;
  device: string;
  /** not known · known · another one is known under this id */
  here: "" | "same" | "other";
}

/** What to do with operations that came; places among them. */
export interface Meeting {
  clock: Clock;
  /** to take in */
  take: Array<number>;
  /** here already */
  known: Array<number>;
  /** ids that stand for another operation here */
  moved: Array<string>;
  /** a copy of this device went another way */
  fork: boolean;
}

/** An operation of this device's journal that may need another id. */
export interface Unheld {
  id: string;
  device: string;
  parents: Array<string>;
  /** the mark under which a pull brought it, "" for none */
  held: string;
}

/** An operation under its new id. */
export interface Renamed {
  /** in what was given */
  place: number;
  id: string;
  device: string;
  n: number;
  parents: Array<string>;
}

/** Other ids, where a copy of this device went another way; it goes on as `device`. */
export interface Forking {
  device: string;
  n: number;
  /** 0: the next pull begins from the beginning */
  after: number;
  last: string;
  ops: Array<Renamed>;
}

export type Pair = [string, string];

/** A range. */
export interface OwnRange extends OfAllRecords {
  type: "range";
  /** the id of the compiled range */
  key: string;
  name: string;
  maker: string;
  /** millimetres */
  gauge: number | null;
  scale: string;
  /** of the bodies */
  material: string;
  /** two capitals, "" not said */
  country: string;
  /** EDTF: the life of the range, "" not said */
  years: string;
  about: string;
  /** who writes it down, "" not said */
  by: string;
  invented: boolean;
  /** name and drawing of "range-gauge", "range-material", "none" */
  drawings: Array<Pair>;
  /** from the pieces that are owned; "" it does */
  learns: "" | "no";
  /** whether the own server lets others follow it; "" it does not */
  shared: "" | "yes";
}

/** What all rows of a range have. */
export interface RowOfRange extends OfAllRecords {
  /** id of the range */
  range: string;
  at: number | null;
}

/** A sort of piece. */
export interface OwnKind extends RowOfRange {
  type: "range_kind";
  key: string;
  name: string;
  plural: string;
  /** of its card, at most three words and 22 characters; "" the name */
  caption: string;
  /** how complete the range is, in the words of completeness.py, "" not said */
  complete: string;
  /** SVG, or a photo as a data: URL, "" none */
  drawing: string;
}

/** A part that can be swapped. */
export interface OwnPart extends RowOfRange {
  type: "range_part";
  key: string;
  name: string;
  /** chance that it was replaced on a piece that is met */
  swap: number | null;
  /** what a replaced one means for the price */
  replaced: string;
  /** said in place of "replaced" of what is altered where it is */
  altered?: string;
}

/** Something to take care with. */
export interface OwnCaution extends RowOfRange {
  type: "range_caution";
  /** ids of kinds; empty: all */
  kinds: Array<string>;
  text: string;
}

/** Something to look at. */
export interface OwnFeature extends RowOfRange {
  type: "range_feature";
  key: string;
  /** the feature of the shelf that it was picked from, "" for none */
  kit: string;
  name: string;
  /** of its card, as short as a caption; "" the name */
  title: string;
  question: string;
  where: string;
  /** id of the part it is on, "" for the piece itself */
  part: string;
  /** that a look takes */
  seconds: number | null;
  needs: "" | "nothing" | "loupe" | "body off";
  /** ids of the kinds that have it; empty: all */
  kinds: Array<string>;
  /** [id of another feature, id of a state of it]: asked only where it has one */
  only_if: Array<Pair>;
  /** ids of states that are taken for one another */
  mistaken: Array<Pair>;
  /** of a portrait (core/looks.py), "" none */
  layer: string;
  /** why it is not in a portrait */
  unseen: string;
}

/** What can be seen there. */
export interface OwnState extends RowOfRange {
  type: "range_state";
  /** id of the feature */
  feature: string;
  key: string;
  name: string;
  caption: string;
  /** in a portrait: a word of its feature's layer, "" none */
  look: string;
  drawing: string;
}

/** What has a number in the catalogue. */
export interface OwnItem extends RowOfRange {
  type: "range_item";
  number: string;
  name: string;
  /** id of the kind */
  kind: string;
  /** EDTF */
  years: string;
  /** id of the source that says so, "" not said */
  source: string;
  /** [id of a source, EDTF] */
  other_years: Array<Pair>;
  formation: string;
  /** ids of the items in a boxed set */
  contains: Array<string>;
  /** numbers and names on the piece itself */
  carried: Array<string>;
  note: string;
}

/** A version of an item. */
export interface OwnVariant extends RowOfRange {
  type: "range_variant";
  /** id of the item */
  item: string;
  key: string;
  name: string;
  years: string;
  source: string;
  other_years: Array<Pair>;
  /** how often it is met; 1 is ordinary */
  common: number | null;
  note: string;
}

/** A running change. */
export interface OwnChange extends RowOfRange {
  type: "range_change";
  feature: string;
  /** that was fitted */
  state: string;
  /** EDTF, "" since the range began */
  since: string;
  /** EDTF, "" until the next one */
  until: string;
  kinds: Array<string>;
  items: Array<string>;
  source: string;
  other_from: Array<Pair>;
  note: string;
}

/** Who says so. */
export interface OwnSource extends RowOfRange {
  type: "range_source";
  key: string;
  what: string;
  year: string;
  /** how far its years are to be believed, 0 to 1 */
  trust: number | null;
}

/** A number or a key that was another one before. */
export interface OwnMove extends RowOfRange {
  type: "range_move";
  what: "" | "item" | "variant";
  was: string;
  now: string;
  note: string;
}

/** fmt: skip */
export type OwnRow = OwnKind | OwnPart | OwnCaution | OwnFeature | OwnState | OwnItem | OwnVariant | OwnChange | OwnSource | OwnMove;

/** index of a source, and the years that it says (EDTF) */
export type Said = [number, string];

/** What the range is, and when it was made. */
export interface Range {
  name: string;
  maker: string;
  gauge_mm: number;
  /** "22.5 mm" */
  gauge: string;
  material: string;
  scale: string;
  country: string;
  /** year */
  first: number;
  /** year */
  last: number;
  about: string;
  /** who wrote it down */
  by?: string;
  invented: boolean;
}

/** A sort of piece: locomotive, coach, wagon. */
export interface Kind {
  id: string;
  name: string;
  plural: string;
  caption?: string;
  /** share of its pieces that the range leaves out, as far as it says */
  open?: number;
}

/** A part that can be swapped. */
export interface Part {
  id: string;
  name: string;
  /** chance that it was replaced */
  swap: number;
  /** what that means for the price */
  replaced: string;
  /**
   * what is said of it in place of "replaced", as "repainted": it is no piece by itself, is
   * altered where it is and never missing
   */
  altered?: string;
}

/** Something to take care with. */
export interface Caution {
  /** index of the kinds it is said of; empty: all */
  kinds: Array<number>;
  text: string;
}

/** Who says so. */
export interface Source {
  id: string;
  what: string;
  year: string;
  trust: number;
}

/** One of what a feature can look like. */
export interface State {
  id: string;
  name: string;
  /** of its drawing, at most three words; left out: the name is as short */
  caption?: string;
  /** key into the drawings */
  drawing: string;
  /** in a portrait: a word of its layer (core/looks.py) */
  look?: string;
}

export type Needs = "nothing" | "loupe" | "body off";

/** What is said when something is asked about. */
export interface Asked {
  id: string;
  name: string;
  /** of its card, at most three words */
  title?: string;
  question: string;
  /** to look */
  where: string;
}

/** Something to look at; the first one is always "kind". */
export interface Feature extends Asked {
  /** index of the part it is on; -1: the piece itself */
  part: number;
  /** that a look takes */
  seconds: number;
  needs: Needs;
  states: Array<State>;
  /** pairs of states that are easily mistaken for one another */
  mistaken: Array<[number, number]>;
  /** index of the kinds that have it */
  kinds: Array<number>;
  /** index of a state "none" that the compiler added, or -1 */
  none: number;
  /** of a portrait (core/looks.py) */
  layer?: string;
  /** why it is not in a portrait */
  unseen?: string;
  /** of a date mark: the share of the pieces that carry such a mark */
  seen?: number;
  /** for each sort of relative that is in no range: the chance that each state differs on it */
  differs?: Array<Array<number>>;
}

/** What has a number in the catalogue. */
export interface Item {
  /** "i" and its place */
  id: string;
  number: string;
  name: string;
  /** index */
  kind: number;
  years: string;
  said: Array<Said>;
  /** the name of what it runs in, "" for none */
  formation: string;
  /** index of the items in a boxed set */
  contains: Array<number>;
  /** numbers and names on the piece itself */
  carried: Array<string>;
  note: string;
  /** in joined packs: the id of its own */
  pack?: string;
}

/** A version of an item that collectors tell apart. */
export interface Variant {
  id: string;
  name: string;
  /** index */
  item: number;
  years: string;
  said: Array<Said>;
  note: string;
}

export interface Bounds {
  from: string;
  to: string;
}

/** A running change: a state of a feature that came `from` then, and went `to` then (EDTF). */
export interface Change extends Bounds {
  /** index */
  feature: number;
  /** index among the feature's */
  state: number;
  /** index of the kinds it applies to */
  kinds: Array<number>;
  /** and of the items, where it applies to these alone */
  items: Array<number>;
  said: Array<Said>;
  note: string;
  /** of a date mark: who says when it ended */
  said_to?: Array<Said>;
  /** of a date mark: whether each end rules out what is beyond it */
  hard?: Array<boolean>;
}

export type Moving = "item" | "variant";

/** A number or an id that was `from` in an earlier version, and is `to` now ("": gone). */
export interface Move extends Bounds {
  what: Moving;
  note: string;
}

/**
 * One row for each issue of a variant: a span of years and what is recorded of each feature.
 *
 * Rows of one variant stand together; priors add up to 1. Within a year running changes are taken
 * as independent, so one row with the share of each state says the same as a row for each
 * combination, exactly. Years with the same shares make one row; a feature named in a `when` is
 * split into a row for each of its states.
 */
export interface Rows {
  /** index, by row */
  variant: Array<number>;
  /** index, by row */
  kind: Array<number>;
  prior: Array<number>;
  /** index, by row */
  span: Array<number>;
}

/** Years of production, from `first` on; the weights add up to 1. */
export interface Span {
  first: number;
  weights: Array<number>;
}

/** What is recorded of one feature. */
export interface Cells {
  /**
   * the share of each state, to 6 decimals where running changes give it; the first is [], and
   * means not recorded
   */
  shares: Array<Array<number>>;
  /** index into shares, by row */
  codes: Array<number>;
}

/** A compiled pack, or several joined by `join`. */
export interface Pack {
  format: 1;
  /** the folder's name; "all" for joined ones */
  id: string;
  /** first 16 hex digits of the SHA-256 of everything else */
  version: string;
  range: Range;
  kinds: Array<Kind>;
  parts: Array<Part>;
  cautions: Array<Caution>;
  sources: Array<Source>;
  features: Array<Feature>;
  items: Array<Item>;
  variants: Array<Variant>;
  changes: Array<Change>;
  rows: Rows;
  spans: Array<Span>;
  /** one a feature */
  cells: Array<Cells>;
  /**
   * by feature and kind the share of each state among recorded rows of the kind, by prior, with
   * half a row shared out evenly over the states
   */
  backgrounds: Array<Array<Array<number>>>;
  /** svg text, or a photo as a data: URL */
  drawings: Record<string, string>;
  /** left out where there are none */
  moves?: Array<Move>;
  /** in joined packs: their ids */
  packs?: Array<string>;
}

export type MeasureName = "gauge" | "material";

/** Something that is asked of joined packs, and told of each by its range. */
export interface Measure extends Asked {
  /** the range's field */
  told_by: MeasureName;
}

export type Listing = "kinds" | "parts" | "sources" | "spans" | "items" | "variants";

/** Where a pack's things begin in the joined lists. */
export interface Begins {
  kinds: number;
  parts: number;
  sources: number;
  spans: number;
  items: number;
  variants: number;
  rows: number;
  features: number;
}

/**
 * known: one state is recorded · several: one of these · unknown: not recorded · said: no feature
 * tells it, but the name does
 */
export type Recorded = "known" | "several" | "unknown" | "said";

/** One layer of a portrait: the body, its colour, the wheels, ... */
export interface Layer {
  /** one of LAYERS in core/looks.py */
  layer: string;
  /** how it looks, most likely; "" where nothing says */
  look: string;
  /** all that it can be, likeliest first; more than one at `several` */
  looks: Array<string>;
  /** index of the feature that tells it; -1: the name does */
  feature: number;
  recorded: Recorded;
}

/** What is drawn of a variant. A layer that the piece does not have is not in it. */
export interface Portrait {
  layers: Array<Layer>;
  /** a name that it carries, "" for none */
  name: string;
  /** a number that it carries */
  number: string;
  /** colour of the lettering, as its name says; "" where it does not */
  letters: string;
  /** colour of the lines, the band or the upper half */
  second: string;
  /** logs, container, drums or coal; "" where no name says */
  load: string;
  /** of a set: the bodies of what is in it */
  contents: Array<string>;
}

/** What the portraits of a range are made from: worked out once, by `sitting`. */
export interface Sitting {
  /** of each variant */
  rows: Array<Array<number>>;
  /** of each feature; "" for none */
  layers: Array<string>;
  /** of each feature and state; "" where nothing says */
  looks: Array<Array<string>>;
}

/** A place on the leader's portrait to compare with the piece. */
export interface Ring {
  /** index */
  feature: number;
  /** index: what the portrait shows of it */
  state: number;
  layer: string;
}

/** The leader, and what to compare on its portrait; no rings: nothing. */
export interface Ringed {
  /** index, -1: there is none */
  variant: number;
  rings: Array<Ring>;
}

/** A portrait to choose, and what that says. */
export interface Picture {
  /** index */
  variant: number;
  /** of each of the features: the states that look like it */
  states: Array<Array<number>>;
}

/** Portraits to choose from; none: nothing. */
export interface Pictures {
  /** in which they differ: indexes */
  features: Array<number>;
  /** of each of these: whether a picture needs words for it */
  captioned: Array<boolean>;
  /** all that is drawn of them */
  layers: Array<string>;
  pictures: Array<Picture>;
}

/** How variants look in a feature. */
export interface Looked {
  /** index */
  feature: number;
  /** of each variant; "" where it is not recorded */
  looks: Array<string>;
  /** that telling it would give */
  bits: number;
}

/** What looks the same. */
export interface Tally {
  /** the look */
  id: string;
  /** place of the first variant that looks so */
  first: number;
  /** their chance together */
  held: number;
}

/** The variants that are left to tell apart. */
export interface Left {
  /** indexes, likeliest first */
  variants: Array<number>;
  /** the chance of each */
  held: Array<number>;
  /** of each: where in what is believed its issues stand */
  issues: Array<Array<number>>;
}

/** Pictures that could be shown, and what that would tell. */
export interface Choosing {
  /** bits by second */
  rate: number;
  /** in what they differ */
  telling: Array<Looked>;
  /** places of the variants that are drawn, among those that are left */
  at: Array<number>;
  /** how each of those that are left looks in all that is looked at */
  names: Array<string>;
}

/** A feature in which two pieces differ. */
export interface Difference {
  /** index */
  feature: number;
  /** index of the state that the one has, likeliest */
  one: number;
  other: number;
}

/** In what two pieces differ, as far as both are recorded. */
export interface Apart {
  /** portraits show it */
  seen: Array<Difference>;
  unseen: Array<Difference>;
}

/** The rows whose relatives count, when it is asked what a stray piece looks like. */
export interface Kin {
  /** index */
  rows: Array<number>;
  /** for each sort: the chance of each row's relatives, with those that differ in nothing */
  weights: Array<Array<number>>;
  /** by row: the chance of these, of all sorts */
  same: Array<number>;
  /** by part, and last for the piece itself: the class of each row */
  of: Array<Array<number>>;
  /** all the chance of relatives, of those rows too that do not count */
  whole: number;
  /** by kind */
  strangers: Array<number>;
}

/** The rows that still count, those of an outcome together, and outcomes numbered from 0. */
export interface Focus {
  /** index */
  rows: Array<number>;
  /** chance of each row */
  weights: Array<number>;
  /** by part, and last for the piece itself: the class of each row */
  of: Array<Array<number>>;
  /** where the rows of each outcome begin, and last their count */
  starts: Array<number>;
  /** each outcome's first row */
  first: Array<number>;
  /** and by part its class */
  first_of: Array<Array<number>>;
  /** the outcome of each number */
  names: Array<number>;
  /** the number of each outcome, -1: none */
  number: Array<number>;
  /** numbers of outcomes with more rows than one */
  many: Array<number>;
  /** by number, what is in no range last, for as much as it counts */
  chances: Array<number>;
  /** the chance of what is in no range, as it is believed */
  beyond: number;
  /** rows whose outcome is not their variant */
  elsewhere: number;
  kin: Kin;
}

/**
 * What says how likely each answer is about one feature.
 *
 * A class of rows is `code * length of kinds + its class of doubt`.
 */
export interface Look {
  /** by row of the pack */
  codes: Array<number>;
  /** the only variants that can have rows of more classes; None: any */
  varying: Array<number> | null;
  rows: Array<number>;
  of: Array<number>;
  first_of: Array<number>;
  /** by class of doubt */
  doubts: Array<number>;
  /** by class of doubt */
  kinds: Array<number>;
  /** P(answer) by the record */
  by_code: Array<Array<number>>;
  by_kind: Array<Array<number>>;
  /** by answer: P(answer) for each kind where the part was replaced */
  spares: Array<Array<number>>;
  /** by class: what view_from found; []: not yet */
  made: Array<Array<number>>;
  /** P(answer) by kind, where the piece is in no range and differs */
  strange: Array<Array<number>>;
  kin: Kin;
  /** class of each of its rows */
  kin_of: Array<number>;
  /** P(answer) by code, for each sort of relative */
  by_kin: Array<Array<Array<number>>>;
  strangers: Array<number>;
}

/** How likely it is that there is nothing to look at. */
export interface Away {
  /** 1 for each kind without the feature */
  lacking: Array<number>;
  by_code: Array<number>;
  by_kind: Array<number>;
  /** by kind, where the part was replaced */
  replaced: Array<number>;
}

/** Outcomes all of whose rows are of one class, and the others. */
export interface Parted {
  /** by class: the chance of the outcomes that are of it alone */
  alike: Array<number>;
  /** the other outcomes */
  mixed: Array<number>;
}

/**
 * P(outcome, answer) for one feature: scales[outcome] * views[outcome][answer].
 *
 * The last outcome is the unrecorded.
 */
export interface Joint {
  scales: Array<number>;
  views: Array<Array<number>>;
}

/** What a question is worth. */
export interface Worth {
  /** what the answer is expected to tell of the outcome */
  bits: number;
  /** the chance that there is nothing to look at */
  absent: number;
}

/** A question with what it is worth. */
export interface Scored {
  /** index */
  feature: number;
  bits: number;
  /** bits by second of looking, in steps */
  score: number;
}

/** Every question worth asking, best first. */
export interface Questions {
  open: Array<Scored>;
  /** those that need something the person has not got */
  shut: Array<Scored>;
  focus: Focus;
}

/** What is left if a state is seen. */
export interface IfSeen {
  /** index */
  state: number;
  /** how many outcomes have at least a hundredth of the best one's chance then */
  variants: number;
}

/** What each answer leaves. */
export interface Leaves {
  /** chance of each state */
  expected: Array<number>;
  groups: Array<IfSeen>;
}

/** "": not said */
export type Condition = "" | "as new" | "excellent" | "very good" | "good" | "fair" | "poor";

/** "": not said */
export type Boxed = "" | "yes" | "no";

export type Purpose = "" | "spare" | "donor";

/** One of what a piece may be. */
export interface Chance {
  /** id of the variant, "" for some variant of the item */
  variant: string;
  chance: number;
  /** number of the item; on a piece it stands in the record itself */
  item?: string;
}

/** The row of a list that a record was imported from, and what stood there. */
export interface Came {
  key: string;
  cells: Record<string, string>;
  values: Record<string, any>;
}

/** What all records have. */
export interface OfAllRecords {
  /** "r" and random letters and digits */
  id: string;
  /** ISO 8601 time */
  made: string;
  /** ISO 8601 time */
  changed: string;
  /** "", or the time it went to the bin */
  trashed: string;
  came?: Came | null;
  /** from the demo collection */
  demo?: boolean;
  /** deleted for good: only id, type and times are left */
  gone?: boolean;
}

/** A piece that is owned. */
export interface Piece extends OfAllRecords {
  type: "piece";
  /** id of the pack that it is in, "" in none */
  pack: string;
  /** number of the item, "" where it is in no reference */
  item: string;
  /** its name, where it is in no reference */
  called: string;
  /** one with 1: known; several: one of these; none: some variant of the item */
  of: Array<Chance>;
  /** the session's: the evidence */
  answers: Array<Answer>;
  condition: Condition;
  boxed: Boxed;
  box_condition: Condition;
  /** ids of parts */
  missing: Array<string>;
  /** ids of parts */
  replaced: Array<string>;
  paid: Money | null;
  /** where it was bought */
  where: string;
  /** EDTF, "" not said */
  when: string;
  /** ids of photos */
  photos: Array<string>;
  notes: string;
  /** a duplicate kept on purpose */
  kept: boolean;
  purpose: Purpose;
  /** what to ask for it */
  asking: Money | null;
  /** the identification it came from, so that it is not made twice */
  session?: string;
}

/** Something that is looked for. */
export interface Want extends OfAllRecords {
  type: "want";
  pack: string;
  /** number of the item, "" where it is in no reference */
  item: string;
  /** its name, where it is in no reference */
  called: string;
  /** id of the variant, "" for any */
  variant: string;
  /** the least that is good enough */
  least: Condition;
  /** with its box, or either */
  box: "" | "yes";
  most: Money | null;
  /** 1 (no hurry) to 3 (urgent) */
  urgency: number;
  notes: string;
}

/** A piece that was looked at and left for later. */
export interface Note extends OfAllRecords {
  type: "note";
  pack: string;
  of: Array<Chance>;
  answers: Array<Answer>;
  condition: Condition;
  boxed: Boxed;
  hall: string;
  table: string;
  asked: Money | null;
  offer: Money | null;
  come_back: string;
  decision: "open" | "bought" | "left";
  photos: Array<string>;
  text: string;
  /** id of the piece that it became, "" for none */
  piece: string;
  session?: string;
}

/**
 * A piece that was seen and tells the reference something.
 *
 * Handed out as {format: 1, kind: "identify sightings", made, sightings}, with each photo in place
 * as {width, height, full: data: URL}; `python -m identify sighting` makes a change of the pack's
 * CSV files of it.
 */
export interface Sighting extends OfAllRecords {
  type: "sighting";
  pack: string;
  /** of the pack */
  version: string;
  /** id of the kind, "" not known */
  kind: string;
  /** number of the item, "" not known */
  item: string;
  /** what to call it */
  called: string;
  /** no variant of the pack goes with it */
  unrecorded: boolean;
  of: Array<Chance>;
  answers: Array<Answer>;
  /** EDTF of when it was made, "" not known */
  years: string;
  /** how that is known */
  text: string;
  photos: Array<string>;
  session?: string;
}

/** What may be spent on a day. */
export interface Budget extends OfAllRecords {
  type: "budget";
  /** YYYY-MM-DD; the id is made of it, so that two devices make one record of one day */
  day: string;
  amount: Money | null;
}

export type AnyRecord = Piece | Want | Note | Sighting | Budget;

/** What is said of a want in words. */
export interface Wish {
  /** a condition */
  least?: string;
  box?: string;
  urgency?: number;
}

/** What any record says that points into a pack. */
export interface InPack {
  id: string;
  pack: string;
  item?: string;
  variant?: string;
  of?: Array<Chance>;
}

/** The records that the verdict is about. */
export interface Records {
  pieces: Array<Piece>;
  wants: Array<Want>;
}

/** What is said of the piece in hand; "" where it is not said. */
export interface Hand {
  condition: Condition;
  boxed: Boxed;
  asked: Money | null;
}

/** A photo as a file has it; the phone keeps `full` and `small` as blobs. */
export interface Photo {
  /** "p" and random letters and digits */
  id: string;
  /** a JPEG without metadata, as a data: URL */
  full: string;
  small: string;
  width: number;
  height: number;
}

/**
 * One change of one record. Every change is one strict transaction that reads the records as
 * they are stored, writes them changed and appends an entry for each (`change` in
 * web/data/records.js); a change that is not on the disk is never called saved.
 */
export interface JournalEntry {
  /** ISO 8601 */
  time: string;
  /** id of the record */
  record: string;
  /** its type */
  type: string;
  /** what one tap changed has one group */
  group: string;
  /** in words */
  what: string;
  /** only the fields that differ; None for a new record */
  before: Record<string, any> | null;
  after: Record<string, any>;
  /** the group that was undone, "" for none */
  undoes: string;
  /** history only, such as a version from a backup that was not taken up */
  side: boolean;
  /** its place in the journal of this phone */
  seq?: number;
}

/**
 * Everything, in one file; the demo collection is such a file.
 *
 * A restore merges: operations stay what they are; of each record that they do not explain the
 * version with the later `changed` counts, the other one goes into the journal.
 */
export interface Backup {
  format: 1;
  kind: "identify backup";
  /** ISO 8601 time */
  made: string;
  records: Array<AnyRecord>;
  journal: Array<JournalEntry>;
  photos: Array<Photo>;
}

export type TextPair = [string, string];

/** a feature, and what is written of it: a state, states parted by |, or ? for not recorded */
export type CellText = [string, string];

/** a feature, and states of it */
export type StatesOf = [string, Array<string>];

/** The range itself. */
export interface RangeRow {
  name: string;
  maker: string;
  gauge_mm: number;
  /** "22.5 mm", "" not said */
  gauge: string;
  scale: string;
  country: string;
  /** EDTF: its life */
  years: string;
  about: string;
  material: string;
  /** who wrote it down, "" not said */
  by?: string;
  invented: boolean;
}

/** A sort of piece. */
export interface KindRow {
  id: string;
  name: string;
  plural: string;
  /** of its card, "" the name */
  caption: string;
  complete: string;
}

/** A part that can be swapped. */
export interface PartRow {
  id: string;
  name: string;
  swap: number;
  replaced: string;
  altered: string;
}

/** Something to take care with. */
export interface CautionRow {
  /** empty: every kind */
  kinds: Array<string>;
  text: string;
}

/** What can be seen. */
export interface StateRow {
  id: string;
  name: string;
  caption: string;
  /** in a portrait: a word of its layer (core/looks.py), "" none */
  look: string;
}

/** Something to look at. */
export interface FeatureRow {
  id: string;
  name: string;
  /** of its card, "" the name */
  title: string;
  question: string;
  where: string;
  /** "" the piece itself */
  part: string;
  seconds: number;
  needs: Needs;
  /** every kind has it */
  every: boolean;
  /** the kinds that have it, where not every one does */
  kinds: Array<string>;
  /** only where these features have one of these states */
  when: Array<StatesOf>;
  mistaken: Array<TextPair>;
  states: Array<StateRow>;
  /** of a portrait, "" none */
  layer: string;
  /** why it is not in a portrait */
  unseen: string;
  /** of a date mark: the share of the pieces that carry such a mark */
  seen: number;
}

/** Who says so. */
export interface SourceRow {
  id: string;
  what: string;
  year: string;
  trust: number;
}

/** What has a number in the catalogue. */
export interface ItemRow {
  number: string;
  name: string;
  kind: string;
  years: string;
  source: string;
  /** [source, years] */
  other_years: Array<TextPair>;
  formation: string;
  contains: Array<string>;
  carried: Array<string>;
  note: string;
  cells: Array<CellText>;
}

/** A version of an item. */
export interface VariantRow {
  id: string;
  /** number */
  item: string;
  name: string;
  years: string;
  source: string;
  other_years: Array<TextPair>;
  common: number;
  note: string;
  cells: Array<CellText>;
}

/** A running change. Of a date mark also who says when it ended, and which ends are hard. */
export interface ChangeRow {
  feature: string;
  state: string;
  since: string;
  until: string;
  kinds: Array<string>;
  items: Array<string>;
  source: string;
  other_from: Array<TextPair>;
  note: string;
  to_source: string;
  hard: Array<boolean>;
}

/** What was called otherwise before, or is no more. */
export interface MoveRow {
  what: Moving;
  was: string;
  now: string;
  note: string;
}

/** A drawing (SVG) or a photo (a data: URL) by its name. */
export interface DrawingRow {
  id: string;
  text: string;
}

/** A whole range. */
export interface RangeRows {
  id: string;
  range: RangeRow;
  kinds: Array<KindRow>;
  parts: Array<PartRow>;
  cautions: Array<CautionRow>;
  features: Array<FeatureRow>;
  sources: Array<SourceRow>;
  items: Array<ItemRow>;
  variants: Array<VariantRow>;
  changes: Array<ChangeRow>;
  moves: Array<MoveRow>;
  drawings: Array<DrawingRow>;
}

/** fmt: skip */
export type Table = "range" | "kinds" | "parts" | "cautions" | "features" | "sources" | "items" | "variants" | "changes" | "moves" | "drawings";

/** fmt: skip */
export type Wrong = "twice" | "unknown" | "complete" | "life" | "unread" | "day" | "reversed" | "outside" | "unsourced" | "no years" | "meaning" | "state twice" | "one state" | "no kind" | "no states" | "itself" | "circle" | "no variant" | "outside item" | "question mark" | "cell twice" | "not of kind" | "no such there" | "change kind" | "change item" | "late" | "there still" | "no drawing" | "none undrawn" | "no such drawing" | "unused" | "too many" | "kept id";

/** A field of a row; "" the row as a whole. */
export interface Spot {
  table: Table;
  row: number;
  field: string;
}

/** What is wrong, and where: a field of a row. The words are found by who shows it. */
export interface RowMistake {
  table: Table;
  row: number;
  /** of a feature: the place of the state it is about, else -1 */
  state: number;
  field: string;
  why: Wrong;
  /** the texts it is about */
  said: Array<string>;
  /** what would have been known, where something is not */
  known: Array<string>;
  /** the row that it does not go with, -1 for none */
  other: number;
}

/** A range that is looked through, and the mistakes found so far. */
export interface Checked {
  rows: RangeRows;
  /** the tables that could not be read at all */
  unread: Array<string>;
  mistakes: Array<RowMistake>;
  /** whether its life is two plain years */
  known_life: boolean;
  first: number;
  last: number;
  /** the places of features and items by their names */
  features: Record<string, number>;
  items: Record<string, number>;
}

/** The share of a state. */
export interface StateShare {
  state: string;
  share: number;
}

/** The years of a wording, in decimal years, and how its weight falls beyond soft ends. */
export interface Window {
  state: string;
  start: number;
  end: number;
  rise: number;
  fall: number;
  low_before: number;
  low_after: number;
}

/** A wording of a date mark: where and when, and the running change that it is in a range. */
export interface MarkRowUsed {
  countries: Array<string>;
  window: Window;
  change: ChangeRow;
  /** those of its ends */
  sources: Array<SourceRow>;
}

/** A date mark as it is merged into ranges. */
export interface MarkUsed {
  feature: FeatureRow;
  /** the first of these that a range has carries it */
  parts: Array<string>;
  rows: Array<MarkRowUsed>;
  drawings: Array<DrawingRow>;
}

/** The years of the wordings of a date mark that is merged into a range. */
export interface MarkYears {
  feature: string;
  windows: Array<Window>;
  seen: number;
}

/** A range with the date marks of its country. */
export interface MergedRows {
  rows: RangeRows;
  marks: Array<MarkYears>;
}

/**
 * What one EDTF text says, in decimal years: 1957 is 1957.0 to 1958.0.
 *
 * first, last: the strict bounds. earliest, latest: with what "about" and "uncertain" add.
 * start, end: the bounds between which the beginning, and the end, are evenly likely. What is
 * open is beyond -FAR or FAR (year_bounds.py).
 */
export interface YearBounds {
  problem: "" | "unread" | "day" | "reversed";
  first: number;
  last: number;
  earliest: number;
  latest: number;
  start: Array<number>;
  end: Array<number>;
}

/** What one source says, with its trust. */
export interface WeighedYears {
  trust: number;
  years: YearBounds;
}

/** The different cells of one feature; the first is not recorded. */
export interface CellTable {
  states: Array<Array<number>>;
  shares: Array<Array<number>>;
  at: Record<string, number>;
}

/** Running changes that count together, and the code of each year; -1 not worked out yet. */
export interface ChangeGroup {
  feature: number;
  places: Array<number>;
  codes: Array<number>;
}

/** What splitting the variants of a range keeps to hand. */
export interface Split {
  rows: RangeRows;
  marks: Array<MarkYears>;
  first: number;
  last: number;
  /** by feature, the kind first */
  states: Array<Array<string>>;
  /** the features, each after those that it depends on */
  order: Array<number>;
  /** by feature: those it depends on */
  parents: Array<Array<number>>;
  /** and the states they must have */
  wanted: Array<Array<Array<number>>>;
  /** by feature: 1 where others depend on it */
  splits: Array<number>;
  /** by feature and kind: 1 where it has it */
  having: Array<Array<number>>;
  /** by feature: the place in `marks`, -1 */
  mark: Array<number>;
  /** by feature */
  changes: Array<Array<number>>;
  cells: Array<CellTable>;
  groups: Array<ChangeGroup>;
  group_at: Record<string, number>;
  /** by mark and year: the code */
  usual: Array<Array<number>>;
  /** by change */
  middles: Array<number>;
  /** the places of sources, items, kinds and features by their names */
  trust: Record<string, number>;
  items: Record<string, number>;
  kinds: Record<string, number>;
  features: Record<string, number>;
}

/** What part of a year's production is like: a code for each feature, and its share. */
export interface Made {
  codes: Array<number>;
  weight: number;
}

/** A code for each feature, and the weight in each year of the range's life. */
export interface Issue {
  codes: Array<number>;
  years: Array<number>;
}

/** The issues of a variant; or the features that split it into too many. */
export interface Issues {
  issues: Array<Issue>;
  too_many: Array<number>;
}

/** The issues of all variants: rows, spans, and by feature the code of each row. */
export interface IssueTable {
  rows: Rows;
  spans: Array<Span>;
  codes: Array<Array<number>>;
}

/** A feature, the state it is held against, the chance of what is seen if alike, and if not. */
export interface LikeTerm {
  feature: number;
  state: number;
  same: number;
  apart: number;
}

/** An issue near one that is left out. */
export interface NearIssue {
  prior: number;
  terms: Array<LikeTerm>;
}

/**
 * The rows of a range that can be compiled, its first and last year (0 where no year is named
 * at all), and what was wrong with the others.
 */
export interface Usable {
  rows: RangeRows;
  first: number;
  last: number;
  mistakes: Array<RowMistake>;
}

/** What does not go together, at a record of a range of one's own. */
export interface RowFault {
  /** of the record; of the range where it is about none */
  id: string;
  /** as in RowMistake; "number twice" and "no item" besides */
  why: string;
  said: Array<string>;
  /** id of the record that it does not go with, "" for none */
  other: string;
  field: string;
}

/** The records of a range of one's own by sort, and what each is called, by its id. */
export interface OwnRecords {
  whole: Group;
  records: Array<Group>;
  kinds: Array<Group>;
  parts: Array<Group>;
  features: Array<Group>;
  states: Array<Group>;
  items: Array<Group>;
  sources: Array<Group>;
  kind_names: Record<string, string>;
  part_names: Record<string, string>;
  feature_names: Record<string, string>;
  state_names: Record<string, string>;
  /** by the id of a state, that of its feature */
  state_features: Record<string, string>;
  item_names: Record<string, string>;
  source_names: Record<string, string>;
}

/** The records that rows are made into, while that goes on. */
export interface RecordsMade {
  /** id of the range */
  range: string;
  /** the records that there are, by sort and name */
  there: Record<string, Group>;
  /** which of them belong to a row */
  used: Record<string, number>;
  /** of the records made, by sort and name */
  ids: Record<string, string>;
  /** ids for new ones */
  fresh: Array<string>;
  /** of the fresh ids */
  next: number;
  /** the place of the last one */
  at: number;
  /** the ids of the features that the range has */
  live: Record<string, number>;
  records: Array<Group>;
}

/** Two halves of a range while they are put together. */
export interface BothRanges {
  /** mine, and then both */
  rows: RangeRows;
  /** the id of the source that stands for the other collector */
  who: string;
  name: string;
  /** what their sources are called in mine */
  sources: Record<string, string>;
  /** and their variants */
  variants: Record<string, string>;
  /** items that came in */
  added: number;
  /** in how many places they say different things */
  differ: number;
}

/** From when on, as one source says: decimal years, evenly likely between the two. */
export interface Saying {
  /** id of the record, "" nobody named */
  source: string;
  /** EDTF, "" from the start */
  since: string;
  earliest: number;
  latest: number;
}

/** A state of a feature, from when on, by each source, until when. */
export interface Stretch {
  /** id of the record */
  change: string;
  state: string;
  /** the change's own first */
  sayings: Array<Saying>;
  /** decimal year: its own end, or when the next one came */
  end: number;
}

/** What a change says to each piece that it is on, by ids of items. */
export interface ChangeEffect {
  /** nothing is put down there: the change says what is seen */
  speaks: Array<string>;
  /** something is put down there, whatever the year */
  silent: Array<string>;
  /** it is what tells the variants of the piece: the change says nothing */
  told_by: Array<string>;
  /** the state that most of the silent ones have instead, "" none */
  before: string;
  /** of the same feature on the same pieces, in order */
  stretches: Array<Stretch>;
}

/**
 * sure (one state) · twice (the same, looked at twice) · unsure (one state, "I think") ·
 * several (one of these) · other (something else than any drawing) · cannot (can't tell)
 */
export type How = "sure" | "twice" | "unsure" | "several" | "other" | "cannot";

/**
 * what is wrong with an answer: it names no feature, way of answering or state that the pack has, or
 * more or fewer states than that way takes; "" for nothing
 */
export type AnswerProblem = "" | "feature" | "how" | "count" | "state";

/** What was seen of one feature. */
export interface Answer {
  /** id of the feature */
  feature: string;
  how: How;
  /** ids of its states */
  states: Array<string>;
  /** true: a sure look before it said something else */
  changed?: boolean;
}

/** What the search is limited to; empty: nothing. */
export interface Scope {
  /** id of a kind, "" for any */
  kind: string;
  /** numbers of items */
  items: Array<string>;
}

/** The answers about one piece, and what they are about. Made by `new_session`. */
export interface Session {
  /** id of the compiled pack */
  pack: string;
  /** and its version */
  version: string;
  scope: Scope;
  /** what can be done besides looking: "loupe", "body off" */
  able: Array<string>;
  /** ids of parts that are not there (no box): their features are not asked */
  missing: Array<string>;
  /** oldest first, one a feature */
  answers: Array<Answer>;
  /** true: what would prove the leader wrong is not asked for */
  unchecked?: boolean;
}

/** Something of a session that the pack no longer knows. */
export interface Dropped {
  /** the id, or an item's number */
  what: string;
  reason: "feature" | "how" | "count" | "state" | "item" | "kind" | "part";
}

/** A session made to fit a pack, and what had to go. */
export interface Mended {
  session: Session;
  dropped: Array<Dropped>;
}

/** A sighting (records.py), as far as it concerns the range. */
export interface Sighted {
  /** number, "" not known */
  item: string;
  called: string;
  unrecorded: boolean;
  /** likeliest first */
  of: Array<Chance>;
  /** those that the range knows */
  answers: Array<Answer>;
  /** EDTF, "" not known */
  years: string;
  /** how that is known */
  text: string;
}

/** Years that stand beside those of a row from now on. */
export interface OtherYears {
  table: "items" | "variants" | "changes";
  row: number;
  years: string;
}

/** What a sighting would change. */
export interface Proposal {
  /** nothing can be made of it */
  why: "" | "no item" | "nothing new" | "unread" | "unsure";
  /** a new one, or none */
  variants: Array<VariantRow>;
  /** what was seen of it that no cell can hold, in words */
  beside: Array<string>;
  other: Array<OtherYears>;
}

/** A text of which the rows up to a place are parsed. */
export interface Parsing {
  text: string;
  delimiter: string;
  at: number;
  rows: Array<Array<string>>;
  /** of these rows, how many hold more than blanks */
  filled: number;
  /** rows whose quotation marks do not match, from 1 */
  loose: Array<number>;
}

/** A text that is not in Unicode, by the likeliest of the older encodings. */
export interface OlderText {
  text: string;
  /** of the encoding */
  name: string;
}

/** The text of a file, and what to say about its encoding. */
export interface FileText {
  text: string;
  notes: Array<string>;
}

/** Characters of one sort that stand together, in capitals. */
export interface Run {
  sort: string;
  text: string;
}

/** Two variants that nothing visible tells apart, and the features that would. */
export interface Alike {
  /** index */
  one: number;
  other: number;
  /** features that need a loupe or a screwdriver */
  would: Array<number>;
  /** and what each of them tells */
  bits: Array<number>;
  /** the prior of the rarer of the two */
  met: number;
}

/** What pairs are looked for by. */
export interface ToPart {
  /** without errors and swaps */
  engine: Engine;
  session: Session;
  /** of each variant */
  rows: Array<Array<number>>;
  /** of each variant */
  priors: Array<number>;
  /** the variants that are met at all */
  met: Array<number>;
  /** by variant and visible feature: the share of each state */
  looks: Array<Array<Array<number>>>;
}

/** Where a row of chance numbers stands. */
export interface Luck {
  at: number;
}

/** A piece that is drawn from a range and identified, question by question. */
export interface Trial {
  /** what it is */
  variant: number;
  /** by feature: the state that is answered, with slips */
  says: Array<number>;
  session: Session;
  done: boolean;
  /** whether it was named as what it is */
  right: boolean;
  /** whether it was said to be in no range */
  unknown: boolean;
  /** of what it was named as */
  chance: number;
}

/** What came of all of them. */
export interface Tried {
  count: number;
  right: number;
  unknown: number;
  /** the mean */
  questions: number;
  /** questions of the quickest and of the longest */
  fewest: number;
  most: number;
  /** the mean chance of what was named */
  sure: number;
}

/** A feature that is not recorded everywhere. */
export interface Unrecorded {
  /** index */
  feature: number;
  /** variants of which nothing is recorded */
  without: number;
  /** variants that can have it */
  of: number;
}

/** Something to look at when the piece is in the hand again. */
export interface LookNext {
  /** index */
  variant: number;
  feature: number;
  score: number;
  /** whether it may tell it from another that it cannot be told from now */
  apart: boolean;
}

/** Whatever has an id. */
export interface Named {
  id: string;
}

/** item: owns one of the item, but it is not known whether it is this variant; "": none has 95 % */
export type Word = "" | "unrecorded" | "wanted" | "upgrade" | "same" | "completes" | "other" | "item" | "new";

export type Weighty = "unrecorded" | "wanted" | "upgrade" | "same" | "completes" | "other";

/** than the best owned copy; "": a condition is not said */
export type Better = "yes" | "no" | "";

/** The verdict in a word, and what it rests on. */
export interface Reason {
  /** the first of these that has 95 %, in the order above but for "item" before "new" */
  word: Word;
  /** how many variants hold 95 % together */
  candidates: number;
  /** ids of the wants or pieces that it rests on */
  records: Array<string>;
}

/** An owned piece that may be the same. */
export interface NearPiece {
  /** id */
  piece: string;
  /** the same variant */
  same: number;
  /** the same item */
  item: number;
}

/** An owned boxed set with a piece like this inside. */
export interface SetNear {
  /** id of the set's record */
  piece: string;
  /** index of the set */
  item: number;
  chance: number;
}

/** A want that the piece in hand may meet. */
export interface WantNear {
  /** id */
  want: string;
  chance: number;
  /** not short of what it asks, if it is the right piece */
  met: boolean;
  condition: Met;
  box: Met;
  price: PriceMet;
}

/** The best owned copy: "better than this?". */
export interface ToBeat {
  /** id */
  piece: string;
  condition: Condition;
  boxed: Boxed;
  /** the one in hand */
  better: Better;
}

/** What was paid for such a piece. */
export interface Paid {
  /** id */
  piece: string;
  money: Money;
  /** EDTF */
  when: string;
  same: number;
  item: number;
}

/**
 * What the piece may mean, each weighed by the chances of the variants.
 *
 * A piece held without its variant counts for each variant of the item by its prior; spares,
 * donors and the bin are not owned.
 */
export interface Weighed {
  /** owns this very variant; same, other, new and unrecorded add up to 1 */
  same: number;
  /** owns another variant of the item */
  other: number;
  /** owns none of the item */
  new: number;
  /** a want is met: right item and variant, and not short of condition or box */
  wanted: number;
  /** the same, and more is asked than any such want allows */
  dear: number;
  /** same, and no want is met */
  double: number;
  /**
   * same, and better than every copy: in better condition, or in equal condition and boxed where
   * the copy is not; nothing is better while one of the conditions is not said
   */
  upgrade: number;
  /** new, and others of its formation or boxed set are owned */
  completes: number;
}

/** The verdict on the piece in hand, and the records that say so. */
export interface Verdict extends Weighed {
  /** it is not in the reference */
  unrecorded: number;
  /**
   * the likeliest variants that hold 95 % together all mean the same: equal in wanted, dear and
   * completes, and to a tenth in same, new and upgrade
   */
  settled: boolean;
  reason: Reason;
  /** likeliest first */
  owned: Array<NearPiece>;
  /** the same for spares and donors */
  spares: Array<NearPiece>;
  sets: Array<SetNear>;
  wants: Array<WantNear>;
  beat: ToBeat | null;
  completing: Array<Completing>;
  /** newest first */
  paid: Array<Paid>;
}

/**
 * variant, check (what would prove the leader wrong), again (what does not fit it, looked at once
 * more), years (once the variant is settled), verdict (while that is not), claim (in a judgement)
 */
export type About = "variant" | "check" | "again" | "years" | "verdict" | "claim";

/**
 * "" · sure (one variant has 95 %) · unrecorded (95 % that it is not in the reference) · nothing (no
 * question is left that is worth asking) · unseen (nor was anything seen that decides it) · verdict
 * (settled, and the records have something to say)
 */
export type Stop = "" | "sure" | "unrecorded" | "nothing" | "unseen" | "verdict";

/** from 95 % and checked, 95 %, 85 %, 60 %, below (core/certainty.py) */
export type HowSure = "it is" | "almost certainly" | "very likely" | "probably" | "could be";

export type HowReplaced = "almost certainly" | "probably" | "perhaps" | "";

/** What to ask about, the questions, and whether to stop. */
export interface Aim {
  about: About;
  asked: Questions;
  stop: Stop;
}

/** A variant that it may be. */
export interface Candidate {
  /** index */
  variant: number;
  chance: number;
  /** its likely years, given the answers */
  first: number;
  last: number;
}

/** An item that it may be. */
export interface ItemChance {
  /** index */
  item: number;
  chance: number;
}

/** When a recorded piece was made; 0 where there is nothing to say. */
export interface Years {
  /** [year, chance], in order */
  chances: Array<Array<number>>;
  /** the shortest span with 90 % */
  first: number;
  last: number;
  /** the years with at least 1 % */
  earliest: number;
  latest: number;
}

/** A part with an answer, given that the piece is in the reference. */
export interface Suspect {
  /** index */
  part: number;
  /** chance that it was replaced */
  swapped: number;
  /** the word for it; "" where it could be original */
  how: HowReplaced;
  /** index of the answered features on it */
  features: Array<number>;
  /** likely years of the part by itself, whatever it is fitted to */
  first: number;
  last: number;
}

/** Whether all of it can belong together. */
export interface Whole {
  /** chance that no part was replaced */
  original: number;
  /** likely years by what is on no part */
  first: number;
  last: number;
}

export type Owning = "same" | "other" | "new";

/** The chances of the verdicts, if a state is seen. */
export interface Meant {
  same: number;
  other: number;
  new: number;
  unrecorded: number;
}

/** The next question, and why it is asked. */
export interface Question {
  /** index */
  feature: number;
  /** what its answer is expected to tell of what it is about */
  bits: number;
  about: About;
  /** chance of each state */
  expected: Array<number>;
  groups: Array<IfSeen>;
  /** by state, of a question about the verdict */
  means?: Array<Meant>;
}

/** Another question worth asking. */
export interface Worthwhile {
  /** index */
  feature: number;
  bits: number;
}

/** A question that is not asked because of what it needs. */
export interface WouldTell extends Worthwhile {
  needs: Needs;
}

/** Whether what was seen fits the leader, whatever else it could be. */
export interface Fit {
  /** of answers as surprising as these, or more, were it just that */
  chance: number;
  /** places of the answers that do not fit it, worst first */
  odd: Array<number>;
  passed: boolean;
}

/** Candidates, years, suspect parts, the next question, and whether to stop. */
export interface View {
  /** chance that the piece is in no row of the reference */
  unrecorded: number;
  /** by chance, those with at least 0.0005, at most 40 */
  variants: Array<Candidate>;
  /** the same way */
  items: Array<ItemChance>;
  /** number of variants with at least a hundredth of the leader's chance */
  possible: number;
  years: Years;
  /** most suspect first */
  parts: Array<Suspect>;
  whole: Whole;
  question: Question | null;
  /** the next best questions, at most 6 */
  others: Array<Worthwhile>;
  stop: Stop;
  /** at "nothing": the variants that hold 95 % together, not to be told apart */
  alike: Array<number>;
  would_tell: Array<WouldTell>;
  /** of the leader */
  how_sure: HowSure;
  /** of the leader; None where nothing is in scope */
  fit: Fit | null;
  /** features that would have proved it wrong, and were not looked at */
  unseen: Array<number>;
  /** what it means for the collector, from `assess_for` */
  verdict?: Verdict;
}

/** What one answer says between a variant and the leader. */
export interface Against {
  /** index */
  feature: number;
  /** place in the session's answers */
  answer: number;
  /** above 0: against this variant and for the leader */
  bits: number;
  /** the states that this variant is recorded with; empty: not recorded */
  recorded: Array<number>;
}

/** engine.js, and further.js with it: what the screens may call. */
export interface EngineModule {
  /** What every other function takes as `engine`: the pack with its reading errors worked out. */
  prepare(pack: Pack): Engine;
  /** A session with no answer, over the whole pack. */
  new_session(engine: Engine): Session;
  /**
   * The session with one more answer, in place of an earlier one to the same feature. A sure one
   * that says the same again is one that was looked at twice; one that says something else has
   * changed.
   */
  answered(session: Session, answer: Answer): Session;
  /** The session without its answer to `feature`. */
  without(session: Session, feature: string): Session;
  /**
   * A saved session made to fit this pack.
   *
   * What the pack no longer knows is set aside and named, so that the screen can say so.
   */
  mend(engine: Engine, session: Session): Mended;
  /**
   * The items that a number or a name could mean, best first, at most `limit`.
   *
   * Empty for a text that fits nothing. The first call takes longer than the next.
   */
  find(engine: Engine, text: string, limit: number): Array<Match>;
  /**
   * The view of a session: candidates, years, suspect parts, next question, whether to stop.
   *
   * The next question is about the variant; once that is settled, about the years.
   */
  assess(engine: Engine, session: Session): View;
  /**
   * One pack from several compiled ones, to be given to `prepare`.
   *
   * Ids get the pack's id in front; an item also says its `pack`. Packs weigh by their variants.
   */
  join(packs: Array<Pack>): Pack;
  /** The id of the pack that is as good as alone in a session over joined packs, or "". */
  settled(engine: Engine, session: Session): string;
  /**
   * A session over joined packs, carried over to the engine of one of them alone.
   *
   * Answers to features of other packs, and on gauge and material, have done their work.
   */
  narrowed(alone: Engine, session: Session): Session;
  /** The years of each answer that names a state, in the order of the answers. */
  seen_years(engine: Engine, session: Session): Array<SeenYears>;
  /**
   * The date marks among what was seen (from seen_years) that cannot be of one year, or hardly:
   * {late, early: places in `seen`; hard: also with what lies beyond soft ends}.
   */
  marks_apart(pack: Pack, seen: Array<SeenYears>): Array<MarkClash>;
  /** What each of them can be: the same as long as a piece stays the same. */
  spread_all(engine: Engine, pieces: Array<Piece>): Array<Held>;
  /** The same where it is known what each piece can be, by spread_all(). */
  study_held(engine: Engine, entries: Array<Held>, asked: Array<Want>, hand: Hand): Studied;
  /** assess_for() with the records and the hand worked out before, by study(). */
  assess_studied(engine: Engine, session: Session, studied: Studied): View;
  /**
   * The ids of what is in no range and could be meant by a typed number or name.
   *
   * Its name begins as the text does, or has a word beginning like each word of the text.
   */
  outside_named(records: Array<Piece | Want>, text: string): Array<string>;
  /** The words of the scale, best first. */
  conditions(): Array<string>;
  /** Formations and boxed sets of which part is owned, those with the least missing first. */
  incomplete(engine: Engine, pieces: Array<Piece>): Array<Incomplete>;
  /** What is wrong with a record as it is kept; one of a sort that is not known here may be. */
  record_fault(record: any): Fault | null;
  /** The names of known fields of a record that hold something else than they should. */
  misfits(kind: string, record: Group): Array<string>;
  /** What a new record of this sort holds: [[name, value]]. */
  new_fields(kind: string): Array<Array<any>>;
  /**
   * What to compare on the leader's portrait, what tells most first; no rings where the leader
   * does not lead enough, or fewer than two looks would still tell something; no more of them than
   * settle it. `shown` is from `sitting`. A ring that fits is an answer: that state, seen.
   */
  rings(engine: Engine, shown: Sitting, session: Session): Ringed;
  /**
   * What was seen and does not fit the leader, to be looked at once more on its portrait, which
   * shows how the leader is recorded; worst first.
   */
  odd_rings(engine: Engine, shown: Sitting, session: Session): Ringed;
  /**
   * What each answer said between this variant and the leader, strongest first.
   *
   * Each answer in turn is left out; `bits` is how far putting it back moves the odds towards the
   * leader, so it allows for swapped parts and misread answers.
   */
  why_not(engine: Engine, session: Session, variant: number): Array<Against>;
  /** A claim read: what it is about, its years and the same as EDTF. */
  read_claim(engine: Engine, text: string): Claim;
  /** Hold a claim (from read_claim, with no problem) against the answers. */
  judge(engine: Engine, session: Session, claim: Claim): Judgement;
  /**
   * A date, a year or a span of them from a typed text.
   *
   * order: which figure of 12/5/57 is the day; where that is not known and both are possible, the
   * date is refused with both readings.
   */
  read_date(text: string, order: DayOrder, life: Life): ReadDate;
  /** Whether a typed text says that the date is not known. */
  says_not_known(text: string): boolean;
  /** What "1957~/1961~" says: "about 1957 to 1961". What is not EDTF stays as it is. */
  date_in_words(edtf: string): string;
  /**
   * Money from a typed text, or what is wrong with it. usual: the currency that is meant where
   * none is written. Old money is sterling, whatever is usual.
   */
  read_money(text: string, usual: string): ReadMoney;
  /** Which is more, in one currency. */
  compare_money(first: Money, second: Money): Order;
  /** The sum in each currency, in the order in which the currencies first come up. */
  totals(amounts: Array<Money>): Array<Money>;
  /** What a screen shows money with. */
  money_parts(money: Money): MoneyParts;
  /** The currencies that can be read, the usual ones first. */
  currencies(): Array<Currency>;
  /**
   * What is owned twice or more, in the pack's order.
   *
   * by: "variant" or "item". Copies kept on purpose, spares and donors are left out. Worst is by
   * condition (one that is not said counts as worst), then without a box, then with the most parts
   * missing or replaced.
   */
  duplicates(engine: Engine, pieces: Array<Piece>, by: string): Array<Duplicate>;
  /** What a want asks for besides the piece, in words; most: its limit as text, "" for none. */
  want_words(want: Wish, most: string): Array<string>;
  /**
   * What is called the same twice or more, as `duplicates` gives it; `item`, `variant`: -1.
   *
   * Spares, donors and what is kept on purpose are left out, as in `duplicates`; capitals, spaces
   * and signs make no difference.
   */
  outside_alike(pieces: Array<Piece>): Array<Duplicate>;
  /** The items of a range that something in none may be: by its number, else by its name. */
  known_now(engine: Engine, record: Piece | Want): Array<number>;
  /** 6 for the best word of the scale down to 1 for the worst; 0 for one that is not on it. */
  condition_rank(word: string): number;
  /**
   * The records of this pack that point to what moved or is gone, each with where they point now.
   *
   * What is gone stays named as it was. Variants that became one have their chances added.
   */
  moved(engine: Engine, records: Array<InPack>): Array<Moved>;
  /** The same for a record in a file, which is of a sort that is known here. */
  file_record_fault(record: any): Fault | null;
  /**
   * What is wrong with an entry of the journal, be it an operation or not; `stored`: it is kept
   * here already, perhaps since before clocks had a limit.
   */
  entry_fault(entry: any, stored: boolean): Fault | null;
  /**
   * What is wrong with an operation as it goes between a device and the server; `stored`: the
   * server has it already.
   */
  operation_fault(op: any, stored: boolean): Fault | null;
  /** What is wrong with what stands beside the two pictures of a photo in a file. */
  photo_fault(photo: any): Fault | null;
  /**
   * Whether a value is a time that was or can be: 2026-11-01T10:00:00Z, also with fractions of a
   * second, or with +01:00 in place of Z.
   */
  is_time(value: any): boolean;
  /** Whether a value is a SHA-256 in hexadecimal figures: what a picture is called. */
  is_sum(value: any): boolean;
  /** A fault of the gate as a sentence, with the name of the field that it is about. */
  fault_words(fault: Fault): string;
  /** What a text on a piece says. Several readings of a mark: it can be each of them. */
  read_mark(tables: MarkTables, text: string): MarkRead;
  /**
   * {what, lines, who}: what a reading is, sentences about its years, who says so. `what` and
   * each line are parts to be joined.
   */
  reading_said(tables: MarkTables, reading: Reading): ReadingSaid;
  /** What to do about a text in which no mark was read; [] where one was. */
  nothing_said(read: MarkRead): Parts;
  /** The years that a reading leaves: {first, last (0: open), first_hard, last_hard}. */
  mark_span(tables: MarkTables, reading: Reading): MarkSpan;
  /**
   * [[late, early]]: places of two spans ({first, last}, 0: open) with no year in common, the one
   * that begins latest against each that has ended by then.
   */
  years_apart(spans: Array<MarkSpan>): Array<Array<number>>;
  /** What the portraits of a range are made from, to be kept while they are drawn. */
  sitting(pack: Pack): Sitting;
  /**
   * What is drawn of a variant, or of several of an item: what can be one or the other is then
   * `several`. `shown` is from `sitting`; `answers` (of a piece at hand, else []) say which it is
   * where one of several is recorded, or nothing.
   */
  portrait(pack: Pack, shown: Sitting, variants: Array<number>, answers: Array<Answer>): Portrait;
  /**
   * The portraits to choose from, likeliest first, and what the choice of each answers; none
   * where that would not help. `shown` is from `sitting`, `asked` the feature (index) that would be
   * asked about in words.
   *
   * Variants that look the same share a picture. A picture answers the features in which the
   * pictures differ, and no other: by the states that look like it.
   */
  pictures(engine: Engine, shown: Sitting, session: Session, asked: number): Pictures;
  /**
   * In what two pieces differ: two candidates; or the piece at hand (`first`, with its answers)
   * and one at home. What is not recorded of either, or can be the same, is no difference.
   */
  differences(pack: Pack, shown: Sitting, first: Array<number>, second: Array<number>, answers: Array<Answer>): Apart;
  /** Whether what was seen of a feature is recorded for no variant of this item. */
  never_recorded(engine: Engine, session: Session, item: number, place: number): boolean;
}

/** further.js: what the start does not wait for. */
export interface FurtherModule {
  /**
   * What each answer said between this variant and the leader, strongest first.
   *
   * Each answer in turn is left out; `bits` is how far putting it back moves the odds towards the
   * leader, so it allows for swapped parts and misread answers.
   */
  why_not(engine: Engine, session: Session, variant: number): Array<Against>;
  /** A claim read: what it is about, its years and the same as EDTF. */
  read_claim(engine: Engine, text: string): Claim;
  /** Hold a claim (from read_claim, with no problem) against the answers. */
  judge(engine: Engine, session: Session, claim: Claim): Judgement;
  /**
   * A date, a year or a span of them from a typed text.
   *
   * order: which figure of 12/5/57 is the day; where that is not known and both are possible, the
   * date is refused with both readings.
   */
  read_date(text: string, order: DayOrder, life: Life): ReadDate;
  /** Whether a typed text says that the date is not known. */
  says_not_known(text: string): boolean;
  /** What "1957~/1961~" says: "about 1957 to 1961". What is not EDTF stays as it is. */
  date_in_words(edtf: string): string;
  /**
   * Money from a typed text, or what is wrong with it. usual: the currency that is meant where
   * none is written. Old money is sterling, whatever is usual.
   */
  read_money(text: string, usual: string): ReadMoney;
  /** Which is more, in one currency. */
  compare_money(first: Money, second: Money): Order;
  /** The sum in each currency, in the order in which the currencies first come up. */
  totals(amounts: Array<Money>): Array<Money>;
  /** What a screen shows money with. */
  money_parts(money: Money): MoneyParts;
  /** The currencies that can be read, the usual ones first. */
  currencies(): Array<Currency>;
  /**
   * What is owned twice or more, in the pack's order.
   *
   * by: "variant" or "item". Copies kept on purpose, spares and donors are left out. Worst is by
   * condition (one that is not said counts as worst), then without a box, then with the most parts
   * missing or replaced.
   */
  duplicates(engine: Engine, pieces: Array<Piece>, by: string): Array<Duplicate>;
  /** What a want asks for besides the piece, in words; most: its limit as text, "" for none. */
  want_words(want: Wish, most: string): Array<string>;
  /**
   * What is called the same twice or more, as `duplicates` gives it; `item`, `variant`: -1.
   *
   * Spares, donors and what is kept on purpose are left out, as in `duplicates`; capitals, spaces
   * and signs make no difference.
   */
  outside_alike(pieces: Array<Piece>): Array<Duplicate>;
  /** The items of a range that something in none may be: by its number, else by its name. */
  known_now(engine: Engine, record: Piece | Want): Array<number>;
  /** 6 for the best word of the scale down to 1 for the worst; 0 for one that is not on it. */
  condition_rank(word: string): number;
  /**
   * The records of this pack that point to what moved or is gone, each with where they point now.
   *
   * What is gone stays named as it was. Variants that became one have their chances added.
   */
  moved(engine: Engine, records: Array<InPack>): Array<Moved>;
  /** The same for a record in a file, which is of a sort that is known here. */
  file_record_fault(record: any): Fault | null;
  /**
   * What is wrong with an entry of the journal, be it an operation or not; `stored`: it is kept
   * here already, perhaps since before clocks had a limit.
   */
  entry_fault(entry: any, stored: boolean): Fault | null;
  /**
   * What is wrong with an operation as it goes between a device and the server; `stored`: the
   * server has it already.
   */
  operation_fault(op: any, stored: boolean): Fault | null;
  /** What is wrong with what stands beside the two pictures of a photo in a file. */
  photo_fault(photo: any): Fault | null;
  /**
   * Whether a value is a time that was or can be: 2026-11-01T10:00:00Z, also with fractions of a
   * second, or with +01:00 in place of Z.
   */
  is_time(value: any): boolean;
  /** Whether a value is a SHA-256 in hexadecimal figures: what a picture is called. */
  is_sum(value: any): boolean;
  /** A fault of the gate as a sentence, with the name of the field that it is about. */
  fault_words(fault: Fault): string;
  /** What a text on a piece says. Several readings of a mark: it can be each of them. */
  read_mark(tables: MarkTables, text: string): MarkRead;
  /**
   * {what, lines, who}: what a reading is, sentences about its years, who says so. `what` and
   * each line are parts to be joined.
   */
  reading_said(tables: MarkTables, reading: Reading): ReadingSaid;
  /** What to do about a text in which no mark was read; [] where one was. */
  nothing_said(read: MarkRead): Parts;
  /** The years that a reading leaves: {first, last (0: open), first_hard, last_hard}. */
  mark_span(tables: MarkTables, reading: Reading): MarkSpan;
  /**
   * [[late, early]]: places of two spans ({first, last}, 0: open) with no year in common, the one
   * that begins latest against each that has ended by then.
   */
  years_apart(spans: Array<MarkSpan>): Array<Array<number>>;
  /** What the portraits of a range are made from, to be kept while they are drawn. */
  sitting(pack: Pack): Sitting;
  /**
   * What is drawn of a variant, or of several of an item: what can be one or the other is then
   * `several`. `shown` is from `sitting`; `answers` (of a piece at hand, else []) say which it is
   * where one of several is recorded, or nothing.
   */
  portrait(pack: Pack, shown: Sitting, variants: Array<number>, answers: Array<Answer>): Portrait;
  /**
   * The portraits to choose from, likeliest first, and what the choice of each answers; none
   * where that would not help. `shown` is from `sitting`, `asked` the feature (index) that would be
   * asked about in words.
   *
   * Variants that look the same share a picture. A picture answers the features in which the
   * pictures differ, and no other: by the states that look like it.
   */
  pictures(engine: Engine, shown: Sitting, session: Session, asked: number): Pictures;
  /**
   * In what two pieces differ: two candidates; or the piece at hand (`first`, with its answers)
   * and one at home. What is not recorded of either, or can be the same, is no difference.
   */
  differences(pack: Pack, shown: Sitting, first: Array<number>, second: Array<number>, answers: Array<Answer>): Apart;
  /** Whether what was seen of a feature is recorded for no variant of this item. */
  never_recorded(engine: Engine, session: Session, item: number, place: number): boolean;
}

/** trying.js: what a range of one's own is tried with. */
export interface TryingModule {
  /** What every other function takes as `engine`: the pack with its reading errors worked out. */
  prepare(pack: Pack): Engine;
  /** The engine as if nothing were misread and no part ever replaced. */
  without_errors(pack: Pack): Engine;
  /** What `alike_with` goes by: `engine` without errors and swaps. */
  to_part(engine: Engine): ToPart;
  /** The variants that cannot be told from the one at this place of `met`, of those after it. */
  alike_with(apart: ToPart, place: number): Array<Alike>;
  /**
   * For each feature, the bits it tells about the variant as a first question, of the kind of
   * piece (or of all of them) where it tells most.
   */
  worths(engine: Engine): Array<number>;
  /** One of `count` pieces, at even steps along the prior, so that chance adds little. */
  new_trial(engine: Engine, seed: number, place: number, count: number): Trial;
  /** Ask the next question of a trial and answer it; or end it, where there is none. */
  ask_on(engine: Engine, trial: Trial): null;
  /** What came of trials that are done. */
  told_of(trials: Array<Trial>): Tried;
  /** The features that are asked first of a kind of piece ("" : not known), best first. */
  first_asked(engine: Engine, kind: string, most: number): Array<number>;
  /**
   * The features that are not recorded of every variant which can have them: those recorded
   * nowhere first.
   */
  unrecorded_features(pack: Pack): Array<Unrecorded>;
  /**
   * At most so many looks, the most telling first: a feature that needs nothing in the hand and
   * is not recorded of a variant. `worth_of`: the bits of each feature as a first question.
   */
  looks_to_take(pack: Pack, alike: Array<Alike>, worth_of: Array<number>, most: number): Array<LookNext>;
  /**
   * The same piece, to be identified by another edition of its range: what is seen on it stays,
   * by the places of features and states, which have to be the same in both.
   */
  twin_of(engine: Engine, trial: Trial): Trial;
  /** The id of the variant that a piece with these answers is named as; "" for one in no range. */
  named_as(engine: Engine, session: Session): string;
}

/** merging.js: the rules of syncing. */
export interface MergingModule {
  /** The clock after something was done here at `now` (the device's own time, ms). */
  tick(clock: Clock, now: number): Clock;
  /** The clock after something was heard of that happened at `other`. */
  heard(clock: Clock, other: Clock, now: number): Clock;
  /** A clock that is no further than clocks may go: where the counter is full, it carries over. */
  in_reach(wall: number, count: number): Clock;
  /** One record of all its known operations, each given once, in any order. */
  merged(ops: Array<Written>): Merged;
  /** The name for what the server holds now: another one whenever it may hold less than before. */
  mark_of(state: Device): string;
  /**
   * What makes operations of what was changed here, in the order in which it was.
   *
   * heads: of those records, as merged from what was known when the changes were made: before
   * anything else is taken in.
   */
  sealed(state: Device, entries: Array<Unsealed>, heads: Array<Heads>): Sealing;
  /**
   * Whether the answer to this question is to be thrown away.
   *
   * The state has moved on since it was asked; what lies between would be missed.
   */
  is_late(state: Device, asked: Reached): boolean;
  /**
   * The state after a pull's answer.
   *
   * Where the answer begins from the beginning, nothing counts as held any more.
   */
  pulled(state: Device, answer: PullAnswer): Pulled;
  /** Whether two operations under one id are the same, as far as neither was deleted for good. */
  same_operation(first: Compared, second: Compared): boolean;
  /**
   * What to do with operations that came from the server, or from a backup file, at `now` (ms).
   *
   * A fork is a copy of a device that went another way (one was restored from an old copy, or two
   * use one). Before anything is taken in, forked() then gives other ids to what stands in the way.
   */
  met(state: Device, ops: Array<Arriving>, now: number): Meeting;
  /**
   * Other ids, where a copy of this device went another way: it goes on as `device`, a new id.
   *
   * ops: in the order of the journal, all that are not held under mark_of(state), and those `moved`:
   * ids under which the server holds other operations. New ids get the moved; this device's own that
   * no pull ever brought; and what is not held and has one of these as a parent. The rest stay as
   * they are: others may know them.
   */
  forked(state: Device, device: string, ops: Array<Unheld>, moved: Array<string>): Forking;
  /** The device and the number in an operation's id, "<device>.<n>". */
  parts_of_id(ident: string): OperationId;
  /** An operation as merging.py takes it. */
  for_merging(op: Operation): Written;
  /** An operation as it is held against another under the same id. */
  comparable(op: Operation): Compared;
}

/** tables.js: lists into the collection, and out of it. */
export interface TablesModule {
  /** Why a file of so many bytes is not read, "" where it is. */
  too_heavy(size: number): string;
  /** Why a file of so many bytes that begins so holds no table, "" where it may. */
  no_table_in(start: string, size: number): string;
  /** Which sort of file begins so, each byte as the character of its number. */
  sort_of_file(start: string): "workbook" | "json" | "text";
  /**
   * Why an archive with files of these names is no workbook that is read, "" where it may be.
   *
   * mimetype: what the file of that name says, "" for none.
   */
  no_workbook_in(names: Array<string>, mimetype: string): string;
  /** The table of a JSON file that this app wrote. */
  records_table(text: string): FileTable;
  /** What to say of cells that hold an error: [[cell, what stands there]]. */
  errors_said(errors: Array<Array<string>>): Array<string>;
  /** What to say of merged cells (A1:D1): the value is in the first only. */
  merged_said(merged: Array<string>): Array<string>;
  /** What to say of so many formulas; empty: the cells of those without a kept value. */
  formulas_said(count: number, empty: Array<string>): Array<string>;
  /** What to say of a workbook with several sheets, where nobody asked for one. */
  sheets_said(sheet: string, sheets: Array<string>): Array<string>;
  /** The table of a text with what a spreadsheet wrote for its errors taken out, and told. */
  without_sheet_errors(table: FileTable): FileTable;
  /**
   * The encoding of a file, each byte as the character of its number, and its name where a mark
   * or its zeros tell it; without a name it is to be tried.
   */
  encoding_of(raw: string): Array<string>;
  /**
   * The text of a file by encoding_of(), and what to say about it.
   *
   * raw: each byte as the character of its number. decoded: the same in that encoding, with the sign
   * \ufffd for what cannot be read. bytes_above: the characters from 128 to 255, in order.
   */
  text_of_file(raw: string, decoded: string, name: string, bytes_above: string): FileText;
  /** Why a text is none: it holds more control characters than any table; "" where it is one. */
  no_text_in(text: string): string;
  /** A text of which the table is to be parsed, by what it says of itself or what parts it. */
  begun_table(text: string): Parsing;
  /** Parses so many rows more, or what is left of them. */
  parse_on(parsing: Parsing, most: number): null;
  /** Whether a text was parsed to its end, or to more rows than can be taken. */
  parsed_whole(parsing: Parsing): boolean;
  /** The table of a text that was parsed to its end, with what is odd about it. */
  table_parsed(parsing: Parsing): FileTable;
  /** Why a table of that size cannot be taken, "" where it can. */
  too_large(rows: Array<CellsRow>): string;
  /** Whether these are the columns of a table that this app wrote. */
  is_own(names: Array<string>): boolean;
  /** What a spreadsheet calls its column: 0 is A, 26 is AA. */
  column_letters(place: number): string;
  /** All items of these ranges; the rarer a word is among them, the more it says. */
  new_reference(engines: Array<Engine>): Reference;
  /**
   * The names of the columns and the rows below. asked: the row of headings where it is known,
   * 0 for none, -1 where it is to be found.
   */
  headed(table: FileTable, asked: number): Headed;
  /** The cells of a column that are looked at, those that hold something. */
  cells_below(rows: Array<CellsRow>, place: number, columns: number): Array<string>;
  /** How large a share of a column's cells each field could hold. */
  column_shares(cells: Array<string>, reference: Reference): ColumnShares;
  /** A file as a table with guessed columns, once the cells of each column were looked at. */
  table_read(table: FileTable, headed_rows: Headed, shares: Array<ColumnShares>, file_name: string): ReadTable;
  /** What a row may be known by again. fields: of each column. */
  name_of_row(sort: string, fields: Array<string>, row: CellsRow): RowName;
  /** The keys of all rows of a table, and sentences about numbers that come twice. */
  keys_of(sort: string, names: Array<RowName>, rows: Array<CellsRow>): Keys;
  /** What is the same for all rows. sort: what they are to be, "" for a file of this app. */
  new_importing(reference: Reference, sort: string, currency: string, columns: Array<AskedColumn>): Importing;
  /** What becomes of a row. existing: the record of an earlier import of it, None for none. */
  row_matched(about: Importing, row: KeyedRow, existing: Fields | null): Outcome;
  /** The file (CSV) of rows that could not be imported, each with what is wrong in front. */
  rows_given_back(header: Array<string>, rows: Array<LeftOutRow>): string;
  /**
   * The codes of the currencies that a word in capitals can mean.
   *
   * sort: "marks" for the whole unit (the code itself counts), "small" for the hundredth part.
   */
  written_as(word: string, sort: "marks" | "small"): Array<string>;
  /** The names in some ranges. */
  naming_of(packs: Array<Pack>): Naming;
  /** The fields that have a column for these records, in order. */
  columns_for(records: Array<Fields>): Array<string>;
  /** The texts of a record's columns, by field, not guarded. fields: by columns_for(). */
  cells_of(record: Fields, fields: Array<string>, naming: Naming): Record<string, string>;
  /** The table of these cells_of(): its headings and rows, every cell guarded. */
  table_of(fields: Array<string>, table_cells: Array<Record<string, string>>): WrittenTable;
  /** A table of records as CSV. */
  records_csv(table: WrittenTable): string;
  /** A table of records as the parts of a workbook. */
  records_workbook(table: WrittenTable): Array<WorkbookPart>;
  /** Records as JSON. made: the time. */
  records_json(records: Array<Fields>, made: string): string;
  /** What a file of records is called: it says what it holds. */
  records_file_name(ending: string, day: string): string;
  /**
   * The page for the wants among some records, those in the bin left out. Notes are left out
   * too: they are for oneself.
   *
   * title: "" for the usual one; day: in words; pictures: addresses of pictures by the id of the
   * want, "" for none.
   */
  wants_page(records: Array<Fields>, naming: Naming, title: string, day: string, pictures: Record<string, string>): string;
  /** What the page is called: it tells nothing of the house. */
  wants_file_name(day: string): string;
}

/** ranging.js: compiled ranges from rows. */
export interface RangingModule {
  /** The rows of a range of one's own: `whole` is the record of the range, `records` its rows. */
  rows_of_records(whole: Group, records: Array<Group>): RangeRows;
  /**
   * The records of a range without mistakes: that of the range, which is put into `whole` (with
   * its id), and those of its rows.
   */
  records_of_rows(rows: RangeRows, whole: Group, there: Array<Group>, fresh: Array<string>): Array<Group>;
  /** How many records the rows of a range come to at most: so many fresh ids are needed. */
  rows_needed(rows: RangeRows): number;
  /**
   * What can be compiled of the rows, which are mended where they stand, and all that is wrong
   * with them: its places are those of the rows as they were given, and of what is left of them
   * where mending showed more.
   */
  usable(rows: RangeRows, marks: Array<MarkUsed>): Usable;
  /**
   * The compiled range of rows without mistakes, from its first year to its last, with the date
   * marks of its country; all but its version.
   */
  compiled_range(whole: RangeRows, first: number, last: number, marks: Array<MarkUsed>): Pack;
  /**
   * Mine with what theirs has besides, both changed where they stand. `who` is the id of a source
   * that stands for them where they name none, `name` what they are called.
   */
  put_together(mine: RangeRows, theirs: RangeRows, who: string, name: string): BothRanges;
  /**
   * Let a range that another collector wrote say so: who it is stands as the source wherever it
   * names none.
   */
  said_by(rows: RangeRows, who: string, name: string): null;
  /**
   * How many fields name what the range does not have, which records cannot hold: a kind, a
   * source, an item or a state. What a move says of a number stays as it is.
   */
  names_unknown(rows: RangeRows): number;
  /** What specimens tell of a range, as it says itself (not of one that has learned already). */
  learned_from(pack: Pack, specimens: Array<Specimen>): Learned;
  /** Put what was learned into a compiled range, where it stands. Its version is not changed. */
  take_in_learned(pack: Pack, learned: Learned): null;
  /** The ids of the variants that nothing but pieces has told of. */
  from_pieces_alone(rows: RangeRows): Array<string>;
  /**
   * By kind of which any is owned: how many pieces there are, how many the range would not know
   * without them, and so the share that is not written down; `alone` as of from_pieces_alone.
   */
  gaps_told(pack: Pack, specimens: Array<Specimen>, alone: Array<string>): Array<Gap>;
  /** Put what was told into a compiled range, where it stands. */
  take_in_gaps(pack: Pack, gaps: Array<Gap>): null;
  /** What a change does, of the rows of its range; `first` and `last`: the range's life. */
  effect_of_change(records: Array<Group>, change: Group, first: number, last: number): ChangeEffect;
  /** What each column of a list seems to be; each field but `seen` once, each feature once. */
  column_uses(headings: Array<string>, lines: Array<Array<string>>, features: Array<LookedAt>, kinds: Array<Choice>): Array<ColumnUse>;
  /** The kind that the name of an item names; "" for none, or several. */
  kind_in_name(name: string, kinds: Array<Choice>): string;
  /**
   * What the rows of a list say. A row without a number and name is of the item above it where
   * it says something else; an empty one says nothing.
   */
  read_lines(lines: Array<Array<string>>, columns: Array<ColumnUse>): Array<LineRead>;
  /**
   * The items of a list, in its order; rows of one number are variants of one item. A row
   * without a number is an item of its own unless another one has its name.
   */
  listed_items(reads: Array<LineRead>): Array<ListedItem>;
  /** A text of which nothing was parsed yet. */
  unparsed(text: string, delimiter: string): Parsing;
  /** Parses so many rows more, or what is left of them. */
  parse_on(parsing: Parsing, most: number): null;
  /** The rows of a folder. */
  rows_of_folder(given: FolderFiles): FolderRead;
  /** The files of a folder but for its drawings: their names and texts. */
  files_of_rows(rows: RangeRows): Array<DrawingRow>;
  /** All that does not go together in a range of one's own. */
  faults_of_records(whole: Group, records: Array<Group>): Array<RowFault>;
  /** What `after` has, lacks and says otherwise than `before`. */
  news_of_edition(before: Pack, after: Pack): EditionNews;
  /**
   * What a sighting would change in `rows`. `pack`: compiled of them; `seen`: the years of its
   * plain looks there; `fields`: the features that a variant has cells for.
   */
  proposal_of(rows: RangeRows, pack: Pack, sighting: Sighted, seen: Array<SeenYears>, fields: Array<string>): Proposal;
  /** The answers that name one state: of these it is asked when it was made. */
  plain_looks(answers: Array<Answer>): Array<Answer>;
  /**
   * Change `mine` as proposed: `rows` are those of it that the range is made of, which the
   * proposal speaks of.
   */
  take_in_proposal(rows: RangeRows, proposal: Proposal, mine: RangeRows): null;
}
