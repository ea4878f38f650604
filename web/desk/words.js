/** The words of a wide window. */

// What it could be
export const WHAT_IT_COULD_BE = "What it could be";

// Changing several
export const BOXED_OR_NOT = [
  ["", "Not noted"],
  ["yes", "Boxed"],
  ["no", "No box"],
];
export const KEPT_AS_WHAT = [
  ["", "Part of the collection"],
  ["spare", "A spare, for parts"],
  ["donor", "A donor: parts taken from it"],
];
export const YES_OR_NO = [
  ["", "No"],
  ["yes", "Yes"],
];
export const URGENCIES = [
  ["3", "Urgent"],
  ["2", "Ordinary"],
  ["1", "No hurry"],
];
export const CONDITION = "Condition";
export const BOX = "Box";
export const CONDITION_OF_THE_BOX = "Condition of the box";
export const WHERE_IT_WAS_BOUGHT = "Where it was bought";
export const WHEN_IT_WAS_BOUGHT = "When it was bought";
export const PRICE_PAID = "Price paid";
export const WHAT_TO_ASK_FOR_IT = "What to ask for it";
export const KEPT_AS = "Kept as";
export const KEEP_BOTH = "Keep both";
export const NOTES = "Notes";
export const LOWEST_CONDITION = "Lowest condition";
export const ONLY_WITH_ITS_BOX = "Only with its box";
export const MOST_TO_PAY = "Most to pay";
export const HOW_URGENT = "How urgent";
export const CHOOSE = "Choose";
export const NOT_NOTED = "Not noted";
export const EMPTY_IT = "Empty it";
export const CHANGE = "Change";
export const changeCount = (count) => `Change ${count}`;
export const CHOOSE_A_FIELD_FIRST = "Choose a field and what to set it to first.";
export const countChanged = (name, counted) => `${name} of ${counted} changed`;
export const changeThese = (count, these) => `Change ${count} ${these}`;
export const WHICH_FIELD = "Which field";
export const nothingChanges = (count) => `Nothing changes: all ${count} have it already.`;
export const AND_OTHERS = ", and others";
export const nowThere = (names, left) => `Now there: ${names}${left}.`;
export const itAlready = (count, verb) => ` ${count} ${verb} it already.`;
export const changeTo = (count, all, to, rest, had) =>
  `${count} of ${all} change to: ${to}.${rest} ${had}`;

// Photos dropped on a piece
export const nothingWasChanged = (said) => `${said} Nothing was changed.`;
export const PHOTO_ADDED = "Photo added";
export const photosAdded = (count) => `${count} photos added`;
export const ONE_PHOTO_ADDED = "1 photo added.";
export const photosAddedNow = (count) => `${count} photos added.`;

// A table
export const THE_HIGHEST_FIRST = "the highest first";
export const THE_LOWEST_FIRST = "the lowest first";
export const IN_THE_USUAL_ORDER = "In the usual order.";
export const sortedBy = (column, how) => `By ${column}, ${how}.`;
export const moreCount = (count) => `${count} more`;
export const selectedCount = (count) => `${count} selected`;

// Keys
/** @type {[string, string[][]][]} */
export const KEYS_OF = [
  [
    "Anywhere",
    [
      ["/", "Search"],
      ["?", "This list"],
      ["Ctrl Z", "Undo"],
    ],
  ],
  [
    "In a table",
    [
      ["↑ ↓", "From row to row; the column heads are above the first"],
      ["Page up, Page down, Home, End", "Further along"],
      ["← →", "From column head to column head; Enter sorts"],
      ["Space", "Select the row, or not"],
      ["Shift ↑ ↓", "Select from here to there"],
      ["Ctrl A", "Select all"],
      ["Escape", "Select none"],
      ["Enter", "Open the row"],
      ["E", "Change a field of what is selected, or of this row"],
      ["Delete", "What is selected, or this row, to the bin"],
    ],
  ],
  ["At a question", [["1 to 9", "The answer with that number"]]],
];
export const KEYS = "Keys";
export const KEYS_WHILE_NOT_TYPING = "They work only while you are not typing in a field.";
export const USE_SINGLE_KEYS = "Use single keys (/ ? E Delete, 1 to 9)";

// The list beside
export const COLLECTION = "Collection";
export const WANTS = "Wants";
export const NOTEBOOK = "Notebook";
export const theOthersOf = (title) => `${title}: the others`;

// The tables
export const URGENCY_IN_A_TABLE = { 3: "urgent", 2: "", 1: "no hurry" };
export const BOX_IN_A_TABLE = { yes: "boxed", no: "no box" };
export const PIECES = "Pieces";
export const DUPLICATES = "Duplicates";
export const SELECTED = "Selected";
export const HOW_TO_SELECT =
  "Click a row to select it, with Shift or Ctrl for several; its name opens it.";
export const selectedNamed = (named) => `${named} selected.`;
export const CHANGE_A_FIELD = "Change a field";
export const TO_THE_BIN = "To the bin";
export const inTheBinNamed = (named) => `${named} in the bin.`;
export const toTheBinNamed = (named) => `${named} to the bin`;
export const NUMBER = "Number";
export const NAME = "Name";
export const VARIANT = "Variant";
export const boxStanding = (standing) => `box ${standing}`;
export const PAID = "Paid";
export const BOUGHT = "Bought";
export const WHERE = "Where";
export const ASKING = "Asking";
export const AT_LEAST = "At least";
export const URGENCY = "Urgency";
export const TO_DO = "To do";
export const KEEP_THE_BEST = "keep: the best";
export const PART_WITH = "part with";
