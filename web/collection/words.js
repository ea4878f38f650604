/** The words of the collection. */

// History
export const historyOfName = (name) => `History: ${name}`;
export const HISTORY = "History";
export const NOTHING_HAS_BEEN_CHANGED_YET = "Nothing has been changed yet.";
export const recordCount = (count) => `${count} records`;
export const ON_ANOTHER_DEVICE = "on another device";
export const UNDO_THIS = "Undo this";
export const undoThis = (what, about) => `Undo this: ${what}, ${about}`;
export const asItWas = (when) => `As it was ${when}`;
export const THE_EARLIER_VERSION_IS_BACK = "The earlier version is back.";
export const EARLIER_VERSION_PUT_BACK = "Earlier version put back";
export const fieldAsItWas = (field, when, time) => `${field} as it was ${when}: ${time}`;
export const onAnotherDeviceAt = (time) => `${time} · on another device`;

// Choosing a number
export const WHAT_IS_CHOSEN = { piece: "What have you got?", want: "What do you want?" };
export const NEW_RECORD = { piece: "New piece", want: "New want" };
export const NOTHING_FOUND = "Nothing found";
export const foundCount = (count) => `${count} found`;
export const notCalledSo = (text) =>
  `Nothing in this range is called “${text}”. Try part of the number or one word of ` +
  "the name. If no range has it, it is kept as you typed it.";
export const FOUND = "Found";
export const BETTER_IDENTIFIED =
  "If it is in your hand, identify it instead: that finds the variant too.";
export const RANGE = "Range";
export const NUMBER_OR_NAME = "Number or name";
export const NOT_IN_ANY_RANGE = "Not in any range";

// The list
export const KEPT_FOR = { spare: "spare for parts", donor: "donor of parts" };
export const SORTS = [
  ["number", "By number"],
  ["latest", "Latest first"],
  ["condition", "Best condition first"],
  ["paid", "Dearest first"],
];
export const COLLECTION = "Collection";
export const ADD_A_PIECE = "Add a piece";
export const PRINT_FOR_INSURANCE = "Print for insurance";
export const ONE_IN_A_RANGE_NOW = "1 is in a range now";
export const countInARangeNow = (count) => `${count} are in a range now`;
export const IN_A_RANGE_NOW = "In a range now";
export const SEARCH_THE_COLLECTION = "Search the collection";
export const ANY = "Any";
export const FILTER_AND_SORT = "Filter and sort";
export const SORT = "Sort";
export const KIND = "Kind";
export const CONDITION = "Condition";
export const BOX = "Box";
export const BOXED = "Boxed";
export const NO_BOX = "No box";
export const KEPT_AS = "Kept as";
export const PART_OF_THE_COLLECTION = "Part of the collection";
export const SPARE = "Spare";
export const DONOR = "Donor";
export const paidForSome = (paid, count) => ` Paid ${paid} for ${count} of them.`;
export const countOf = (count, all) => `${count} of ${all}`;
export const PIECES = "Pieces";

// Duplicates
export const DUPLICATES = "Duplicates";
export const WHAT_COUNTS_AS_THE_SAME = "What counts as the same";
export const THE_SAME_VARIANT = "The same variant";
export const THE_SAME_NUMBER_ANY_VARIANT = "The same number, any variant";
export const NO_DUPLICATES =
  "No duplicates. Pieces whose variant is not certain are not counted, nor spares, donors and " +
  "those you mean to keep.";
export const countToPartWith = (count) => `${count} to part with.`;
export const askingForSome = (asking, count) => ` Asking ${asking} for ${count} of them.`;
export const PRINT = "Print";
export const THE_BEST_ONE = "The best one: ";
export const WHAT_TO_ASK = "What to ask";
export const KEEP_BOTH = "Keep both";
export const KEPT_NO_DUPLICATE = "Kept. It no longer counts as a duplicate.";
export const keepBothOf = (name) => `Keep both: ${name}`;

// Sets and trains
export const SETS_AND_TRAINS = "Sets and trains";
export const NO_INCOMPLETE_SETS = "You have no incomplete sets or trains.";
export const WHAT_SETS_LACK = "What yours still lack, the nearest to complete first.";
export const youHave = (count, all, names) => `You have ${count} of ${all}: ${names}.`;
export const boxedSet = (name) => `${name} (boxed set)`;
export const ALREADY_WANTED = "Wanted";
export const wantedName = (name) => `Wanted: ${name}`;
export const WANT_IT = "Want it";
export const wantName = (name) => `Want it: ${name}`;
export const NEW_WANT = "New want";
export const ON_YOUR_LIST = "It is on your list.";

// Known to a range now
export const LINKED_NOW = "It is linked to the range now.";
export const LINKED_TO_A_RANGE = "Linked to a range";
export const isInRange = (name, range) => `It is ${name} in ${range}`;

// One piece
export const EXAMPLE_OF_A_NAME = "Its number and name, for example: 304 brake coach.";
export const WHAT_IT_IS = "What it is";
export const NAME = "Name";
export const PRICE_PAID = "Price paid";
export const WHERE_IT_WAS_BOUGHT = "Where it was bought";
export const WHERE = "Where";
export const WHEN = "When";
export const NOTES = "Notes";
export const PARTS_AND_PURPOSE = "Parts, and what it is kept for";
export const IT_IS_NO_LONGER_HERE = "It is no longer here";
export const IT_WAS_DELETED = "It was deleted. If that was a mistake, look in the bin.";
export const OPEN_THE_BIN = "Open the bin";
export const NOT_NOTED = "Not noted";
export const CONDITION_OF_THE_BOX = "Condition of the box";
export const NUMBER_NOT_IN_RANGE =
  "This number is not in the range on this device. What you wrote is kept.";
export const SOME_VARIANT_NOT_KNOWN = "Some variant: not known";
export const oneOfBelow = (count) => `One of ${count}, as below`;
export const VARIANT_CHANGED = "Variant changed";
export const VARIANT = "Variant";
export const thoughtToBeThis = (chance) => `Thought to be this one, ${chance} sure. `;
export const YES_IT_IS = "Yes, it is";
export const WHAT_TELLS_THEM_APART = "What tells them apart";
export const IT_IS_THIS_ONE = "It is this one";
export const isThisOne = (label) => `It is this one: ${label}`;
export const MISSING_PARTS = "Missing parts";
export const REPLACED_PARTS = "Replaced parts";
export const A_SPARE_FOR_PARTS = "A spare, for parts";
export const A_DONOR_PARTS_TAKEN_FROM_IT = "A donor: parts taken from it";
export const WHAT_IT_IS_KEPT_AS = "What it is kept as";
export const IF_THERE_ARE_TWO = "If there are two";
export const KEEP_BOTH_NOT_A_DUPLICATE = "Keep both: not a duplicate";
export const WHAT_TO_ASK_FOR_IT = "What to ask for it";
export const WHAT_YOU_SAW_THEN = "What you saw when you identified it";
export const WANT_A_BETTER_ONE = "Want a better one";
export const MOVE_TO_THE_BIN = "Move to the bin";
export const THE_PIECE = "The piece";
export const isInTheBin = (name) => `${name} is in the bin.`;
export const toTheBin = (name) => `${name} to the bin`;

// Searching everything
export const WANTS = "Wants";
export const NOTEBOOK = "Notebook";
export const ANY_WORD = "Any word: a name, a note, a place, a hall.";
export const SEARCH_EVERYTHING = "Search everything";
export const SEARCH_FOR = "Search for";

// The bin
export const RECORD_TYPES = {
  piece: "Piece",
  want: "Want",
  note: "Note",
  sighting: "Sighting",
  budget: "Budget",
  range: "Range",
  range_kind: "Kind of piece",
  range_part: "Part",
  range_caution: "Caution",
  range_feature: "Feature",
  range_state: "What can be seen",
  range_item: "Item",
  range_variant: "Variant",
  range_change: "Running change",
  range_source: "Source",
  range_move: "Old number",
};
export const BIN = "Bin";
export const NOTHING_IS_IN_THE_BIN = "Nothing is in the bin.";
export const KEPT_UNTIL_EMPTIED = "Everything here, photos too, is kept until you empty the bin.";
export const IN_THE_BIN = "In the bin";
export const PHOTOS_REMOVED = "Photos removed";
export const A_REMOVED_PHOTO = "A removed photo";
export const EMPTY_THE_BIN = "Empty the bin";
export const ENTRY = "Entry";
export const deletedAt = (time) => `Deleted ${time}`;
export const PUT_BACK = "Put back";
export const IT_IS_BACK_WHERE_IT_WAS = "It is back where it was.";
export const TAKEN_OUT_OF_THE_BIN = "Taken out of the bin";
export const putBack = (name) => `Put back: ${name}`;
export const WHETHER_TO_EMPTY = "Empty the bin?";
export const DELETED_FOR_GOOD =
  "Everything in it is deleted for good, with its photos and history. This is the one " +
  "thing Undo cannot take back.";
export const DELETE_FOR_GOOD = "Delete for good";
export const THE_BIN_IS_EMPTY = "The bin is empty.";
