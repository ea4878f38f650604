/** The words of the parts of screens that the first question needs. */

export const dateNotRead = (why) => `That date cannot be read. ${why}`;

// What is known of an item
export const THE_SOURCES_DIFFER = "The sources differ";
export const WHAT_THE_SOURCES_SAY = "What the sources say";
export const onThePiece = (numbers) => `On the piece: ${numbers}.`;
export const belongsWith = (formation) => `Belongs with (${formation})`;
export const SHOULD_BE_IN_THE_BOX = "Should be in the box";
export const CARE =
  "If in doubt, have it checked by a competent person before use, and follow the rules " +
  "where you live.";

// Fields
export const SAVED_HERE = "Saved";

// The keys
export const KEY_NAMES = {
  "⌫": "Delete the last",
  abc: "All letters",
  Next: "Next",
  Done: "Done",
};
export const KEYS = "Keys";

export const PART_NOT_LOADED =
  "This part of the app could not be loaded. With a signal, try again.";

export const SHOW_MORE = "Show more";

export const MONEY_PROBLEMS = {
  amount: "There is no amount in it. Write it like 4.50, £4 or 12/6.",
  word: "One of its words is not a currency. Write it like 4.50, £4 or 12/6.",
  which: "Several currencies are written that way. Write its code too, like 4.50 USD.",
  currency: "The app does not know that currency. Write it with a code like GBP or EUR.",
  mixed: "There are two currencies in it. Write one.",
  decimals: "It has too many decimals. Write it like 4.50.",
  parts: "It has more than 19 shillings, 11 old pence or 99 pence beside a larger unit. Check it.",
  large: "It is too large. Check it.",
  ambiguous: "It can be read in more than one way. Write it like 4.50, £4 or 12/6.",
};
export const AND = " and ";
export const notSaved = (why) => `Not saved. ${why}`;

// Names
export const THE_ONLY_VARIANT = "the only variant";
export const orAnotherNumber = (name) => `${name}, or another number`;
export const NOT_IDENTIFIED = "Not identified";
export const NOT_NAMED_YET = "Not named yet";
export const IN_NO_RANGE = "in no range";
export const NOT_IN_THE_RANGE = "not in the range";
export const ANY_VARIANT = "any variant";
export const SOME_VARIANT = "some variant";
export const otherCount = (count) => `${count} others`;
export const perhapsOr = (label, chance, others) => `perhaps ${label} (${chance}), or ${others}`;
export const boxIn = (box) => `box ${box}`;
export const NO_BOX = "no box";

export const notShown = (names) => `Not shown in the picture: ${names}.`;

// Saving
export const CHANGED_ELSEWHERE_SINCE =
  "Another window or device has since changed or deleted this. Nothing was written over " +
  "it: here is how it stands now.";
export const SAVED = "Saved.";
export const settingsTells = (deletes) => ` ${deletes} Settings tells how to put it there.`;
export const fieldChanged = (what) => `${what} changed`;
export const DELETED_ELSEWHERE_SINCE =
  "Another window or device has since deleted this. It is in the bin.";
export const CHANGED_IN_ANOTHER_WINDOW = "Changed in another window";
export const WHICH_IS_RIGHT =
  "What you changed here was also changed in another window or on another device. Which " +
  "is right?";
export const KEEP_MINE = "Keep mine";
export const KEEP_THE_OTHER_ONE = "Keep the other one";
export const THERE_IS_NOTHING_TO_UNDO = "There is nothing to undo.";
export const CHANGED_AGAIN_SINCE = " What was changed again since stays as it is.";
export const PUT_IT_BACK = "Put it back";
export const PUT_BACK = "Put back";
export const UNDONE = "Undone";
export const UNDO = "Undo";

export const CLOSE = "Close";

export const HIDE_THIS = "Hide this";

// A new version
export const NEW_VERSION_READY = "A new version is ready. Your piece stays where it is.";
export const USE_IT_NOW = "Use it now";
