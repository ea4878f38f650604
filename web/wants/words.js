/** The words of the wants. */

// Sharing
export const WANTED_LINES = "Wanted:";
export const COPIED_TO_PASTE = "Copied. Paste it into a message.";
export const COPY_THIS_TEXT = "Copy this text.";
export const SELECT_ALL = "Select all";

// The list and one want
export const WANTS = "Wants";
export const NO_WANTS_YET =
  "No wants yet. When you identify a piece on this list, the app will say so.";
export const ADD_A_WANT = "Add a want";
export const PRINT = "Print";
export const SHARE_AS_TEXT = "Share as text";
export const MISSING_FROM_SETS = "What is missing from sets and trains";
export const ANY = "Any";
export const WHAT_IT_IS = "What it is";
export const NAME = "Name";
export const EXAMPLE_OF_A_NAME = "Its number and name, for example: 304 brake coach.";
export const VARIANT = "Variant";
export const ANY_VARIANT = "Any variant";
export const LOWEST_CONDITION = "Lowest condition";
export const BOX = "Box";
export const ONLY_WITH_ITS_BOX = "Only with its box";
export const MOST_TO_PAY = "Most to pay";
export const HOW_URGENT = "How urgent";
export const URGENT = "Urgent";
export const ORDINARY = "Ordinary";
export const NO_HURRY = "No hurry";
export const URGENCY = "Urgency";
export const NOTES = "Notes";
export const HISTORY = "History";
export const MOVE_TO_THE_BIN = "Move to the bin";
export const THE_WANT = "The want";
