/** The words of rows and tables, of running changes and of what is alike. */

// The fields of a row
// figures behind the words are guesses, no source.
export const TRUST = [
  [0.95, "Nearly always right"],
  [0.9, "Right apart from slips"],
  [0.8, "Mostly right"],
  [0.5, "As often wrong as right"],
  [0.2, "Seldom right"],
];
export const SWAPPED = [
  [0.01, "Hardly ever"],
  [0.05, "Seldom: 1 in 20"],
  [0.1, "Now and then: 1 in 10"],
  [0.2, "Often: 1 in 5"],
  [0.4, "Very often: 2 in 5"],
];
export const MET = [
  [3, "Very common"],
  [1, "As often as others"],
  [0.5, "Half as often"],
  [0.2, "Seldom"],
  [0.05, "Hardly ever"],
];
export const LOOK_TAKES = [
  [2, "A glance"],
  [4, "A few seconds"],
  [10, "10 seconds"],
  [30, "Half a minute"],
  [120, "Two minutes"],
];
export const NEEDS = [
  ["nothing", "A look at it"],
  ["loupe", "A loupe"],
  ["body off", "The body taken off"],
];
export const COMPLETE = [
  ["", "Not said"],
  ["a beginning", "A beginning"],
  ["all I know of", "All I know of"],
  ["every catalogue gone through", "Every catalogue gone through"],
];
export const CAPTION = "At most three words. Leave it empty for the name.";
export const TOO_LONG =
  "Not saved. Make it three words and 22 letters at most, so that it fits the card.";
export const CANNOT_BE_EMPTY = "Not saved. This cannot be empty.";
export const asItCame = (now) => `${now}, as it came`;
export const NOT_SAID = "Not said";
export const NO_NAME_YET = "No name yet";
export const WHAT_IS_IN_THE_SET = "What is in the set";
export const notWrittenDown = (names, are) =>
  `Not saved. ${names} ${are} not written down yet. Write it down first, then put it ` +
  "into the set.";
export const BETWEEN_NUMBERS = " and ";
export const SET_IN_ITSELF = "Not saved. A set cannot hold itself.";
export const A_BOXED_SET_OF = "A boxed set of";
export const NUMBERS_OF_THE_SET =
  "The numbers of what is in it, with commas between them. Leave it empty for no set.";
export const WHO_SAYS_IT = "Who says so?";
export const WHO_SAYS_SO = "Who says so";
export const HOW_OFTEN_IS_IT_MET = "How often is it met?";
export const WHAT_IT_IS = "What it is";
export const BELONGS_TOGETHER_AS = "Belongs together with others as";
export const TRAIN = "Train";
export const EXAMPLE_OF_A_TRAIN = "One name for all of them, for example: Coast Limited.";
export const PRINTED_ON_THE_PIECE_ITSELF = "Printed on the piece itself";
export const NUMBERS_OR_NAMES = "Running numbers or names, with commas between them.";
export const NAME = "Name";
export const NAME_OF_SEVERAL = "Name of several";
export const WORDS_UNDER_ITS_DRAWING = "Words under its drawing";
export const HOW_COMPLETE_IS_IT = "How complete is it?";
export const HOW_COMPLETE = "How complete";
export const WHAT_COMPLETE_MEANS =
  "The less complete, the sooner the app says that a piece is in no range.";
export const HOW_OFTEN_WAS_IT_SWAPPED = "How often was it swapped?";
export const OF_THE_PIECES_THAT_YOU_MEET = "Of the pieces that you meet.";
export const WHAT_REPLACED_MEANS = "What a replaced one means for the price";
export const PRICE_OF_A_REPLACED_ONE = "Price of a replaced one";
export const WHAT_TO_TAKE_CARE_WITH = "What to take care with";
export const CAUTION = "Caution";
export const ONLY_FOR_THESE = "Only for these; none ticked: for everything";
export const EXAMPLE_OF_A_SOURCE = "So that you find it again: Summer catalogue 1958.";
export const FROM_WHEN = "From when";
export const YEAR = "Year";
export const WHEN_WRITTEN = "When it was written or printed.";
export const HOW_FAR_CAN_IT_BE_TRUSTED = "How far can it be trusted?";
export const TITLE_OF_ITS_CARD = "Title of its card";
export const THE_QUESTION_IN_FULL = "The question in full";
export const WHERE_TO_LOOK = "Where to look";
export const WHICH_PART_IS_IT_ON = "Which part is it on?";
export const THE_PIECE_ITSELF = "The piece itself, which nobody swaps";
export const PART = "Part";
export const WHAT_HAS_IT = "What has it; none ticked: everything";
export const WHAT_DOES_IT_TAKE_TO_SEE_IT = "What does it take to see it?";
export const WHAT_IT_TAKES = "What it takes";
export const HOW_LONG_DOES_A_LOOK_TAKE = "How long does a look take?";
export const WHAT_YOU_SEE = "What you see";
export const WAS_CALLED = "Was called";
export const OLD_NUMBER = "Old number";
export const IS_CALLED_NOW = "Is called now";
export const NEW_NUMBER = "New number";
export const EMPTY_WHERE_NO_MORE = "Leave it empty if it no longer has one.";
export const NOTES = "Notes";
export const A_SOURCE_WITHOUT_A_NAME_YET = "A source without a name yet";
export const NOTHING_WRITTEN_YET = "Nothing written yet";
export const NO_MORE = "no more";
export const WITHOUT_A_NAME_YET = "Without a name yet";
export const swappedHow = (often) => `swapped: ${often}`;
export const HOW_OFTEN_NOT_SAID = "not said";

// A table of rows
export const NUMBER = "Number";
export const ITEM = "Item";
export const WHAT_IT_IS_CALLED = "What it is called";
export const MADE = "Made";
export const SHOW_MORE = "Show more";
export const ITEMS_AS_A_TABLE = "Items as a table";
export const VARIANTS_AS_A_TABLE = "Variants as a table";
export const HOW_TO_GO_ABOUT =
  "Arrow up and down, or Enter, go from row to row; Tab goes from cell to cell. Enter in " +
  "the last row begins a new one. Each cell is saved when you leave it.";
export const TABLE = "Table";
export const SEVERAL = "Several";
export const ADD_AN_ITEM = "Add an item";
export const ADD_A_VARIANT = "Add a variant";
export const A_VARIANT_WITHOUT_A_NAME_YET = "A variant without a name yet";
export const severalOf = (name) => `Several: ${name}`;
export const OPEN = "Open";
export const openName = (name) => `Open ${name}`;
export const ONE_OF_SEVERAL = "One of several";
export const NOT_RECORDED = "Not recorded";
export const notSaved = (wrong) => `Not saved. ${wrong}`;
export const numberTaken = (title) =>
  `Not saved. ${title} has this number already. Change one of the two.`;
export const ITEM_FIRST = "Write down an item first, then its variants.";
export const NEW_ITEM = "New item";
export const NEW_VARIANT = "New variant";
export const WHAT_TO_CHANGE = "What to change";
export const ofAllOfThem = (label) => `${label} of all of them`;
export const rowsChanged = (count) => `${count} rows changed.`;
export const SEVERAL_ROWS_CHANGED = "Several rows changed";
export const rowsFollow = (count) => `${count} rows:`;
export const CHANGE_THEM = "Change them";

// What is alike
export const whatChanged = (what) => `${what} changed`;
export const NOT_SO = "Not so";
export const CHOOSE = "Choose";
export const MISTAKEN_FOR_EACH_OTHER = "What is mistaken for each other";
export const bothOf = (first, second) => `${first} and ${second}`;
export const EASILY_MISTAKEN = "Easily mistaken for each other";
export const THIS_ONE = "This one";
export const IS_MISTAKEN_FOR = "is mistaken for";
export const TWO_THAT_LOOK_ALIKE = "Two that look alike";
export const WHEN_IT_IS_ASKED = "When it is asked";
export const ONLY_WHERE_SEEN = "Asked only where this is seen";
export const ASKED_OF_EVERY_PIECE = "It is asked of every piece that can have it.";
export const WHERE_YOU_LOOK_FIRST = "Where you look first";
export const WHAT_IS_SEEN_THERE = "What is seen there";
export const ONLY_IF_ELSE_IS_SEEN = "Ask it only where something else is seen";

// Running changes
export const allKinds = (kinds) => `all ${kinds}`;
export const AT_SOME_TIME = "at some time";
export const fromDay = (day) => `from ${day}`;
export const untilDay = (day) => `until ${day}`;
export const fromTo = (since, until) => `from ${since} to ${until}`;
export const SOMETHING = "Something";
export const changeLine = (feature, state, when, where) =>
  `${feature}: ${state}, ${when}, on ${where}.`;
export const RUNNING_CHANGES = "Running changes";
export const WHAT_RUNNING_CHANGES_ARE =
  "What was made differently from some year on, such as a new coupling.";
export const ADD_A_RUNNING_CHANGE = "Add a running change";
export const ON_WHAT = "On what?";
export const WHAT_CHANGED_ON_ALL_OF_THEM = "What changed on all of them.";
export const WHAT_CHANGED = "What changed?";
export const TAP_WHAT_CHANGED = "Tap what was made differently.";
export const TAP_WHAT_IS_SEEN = "Tap what is seen from then on.";
export const NEW_RUNNING_CHANGE = "New running change";
export const FROM = "From";
export const EXAMPLE_OF_FROM =
  "For example: about 1956. Leave it empty if it was so from the start.";
export const UNTIL = "Until";
export const EMPTY_IF_IT_STAYED =
  "Leave it empty if it stayed so, or until the next change of the same thing.";
export const ON = "On";
export const WHERE_IT_CHANGED = "On what";
export const IT_IS_IN_THE_BIN = "It is in the bin.";
export const RUNNING_CHANGE_DELETED = "Running change deleted";
export const fromAsSaid = (source) => `From, as ${source} says`;
export const ANOTHER_SOURCE = "another source";
export const FURTHER_SOURCE = "Another source";
export const HOW_DO_YOU_KNOW = "How do you know?";
export const OTHERWISE_SAID = "Another source says otherwise";
export const ANOTHER_BOOK = "Another book";

// What a change says
export const TIMELINE = "Timeline";
export const OTHER = "Other";
export const FROM_THE_START = "from the start";
export const WHAT_IT_CHANGES = "What it changes";
export const NOTHING_OF_THAT_KIND = "Nothing of that kind is written down yet.";
export const saysWhatIsSeen = (titles) => `It says what is seen on ${titles}.`;
export const changesNothing = (titles, feature) =>
  `It changes nothing on ${titles}: there ${feature} tells the variants apart.`;
export const changesNothingYet = (titles, feature) =>
  `It changes nothing yet on ${titles}: there ${feature} is noted as it is on the ` +
  "piece you had, whatever the year.";
export const RUNNING_CHANGE_APPLIED = "Running change applied";
export const untilThenAndAfter = (was, now) => `${was} until then, ${now} after`;
