/** The words of the start, the question and the answer. */

// Price, condition and box
export const NO_BOX = "No box";
export const OPEN_IT_IN_THE_COLLECTION = "Open it in the collection";
export const ADD_TO_COLLECTION = "Add to collection";
export const OPEN_YOUR_NOTE = "Open your note";

/** The label of the button that leads here. */
export const CHECK_THE_DATE = "Check the seller’s date";

// Other pieces at hand
export const PERHAPS_NOT_IN_THE_RANGE = "Perhaps not in the range";
export const ONE_OTHER_PIECE = "1 other piece at hand";
export const otherPieces = (count) => `${count} other pieces at hand`;

// Which range
export const gaugeAndYears = (gauge, first, last) => `${gauge} gauge, ${first} to ${last}.`;
export const INVENTED_TO_TRY = "Invented, to try the app with: no such models exist.";
export const INVENTED_RANGE = "Invented range";
export const ABOUT_THIS_RANGE = "About this range";
export const RANGE = "Range";

// The start
export const WHAT_HAVE_YOU_GOT = "What have you got?";
export const NEXT_FROM_THE_SAME_BOX = "Next from the same box";
export const PHOTO_FOR_LATER = "Photo for later";
export const IS_IT_MINE = "Is it mine?";
export const SELLERS_DATE = "Seller’s date";
export const READ_A_MARK = "Read a mark";
export const STARTED_AGAIN_BEFORE = "Started again. ";
export const UNDO_THAT = "Undo that";
export const NOT_SURE = "Not sure";
export const NOT_SURE_ASK_ME = "Not sure: ask me";
export const WHAT_KIND_OF_PIECE_IS_IT = "What kind of piece is it?";
export const NUMBER_OR_NAME = "Number or name";
export const ON_IT_OR_ITS_BOX = " on it or its box";
export const NOTHING_FOUND = "Nothing found";
export const foundCount = (count) => `${count} found`;
export const notCalledSo = (text) =>
  `Nothing in this range is called “${text}”. Try part of the number or one word of ` +
  "the name, check the range below, or clear the field and choose the kind.";
export const FOUND = "Found";
export const likeIt = (count) => `${count} like it`;
export const IN_YOUR_COLLECTION = "In your collection";
export const ON_YOUR_LIST = "On your list";
export const IN_NO_RANGE = "In no range";
export const onYourListUpTo = (most) => `on your list up to ${most}`;
export const IT_IS_ON_YOUR_LIST = "on your list";
export const NOT_YOURS = "Not yours";
export const yours = (owned) => `Yours: ${owned}`;
export const IF_ONE_CHARACTER_WAS_MISREAD = "if one character was misread";
export const hasOnIt = (matched) => `has “${matched}” on it`;

// What is known so far
export const YEARS_NOT_RECORDED = "years not recorded";
export const SO_FAR = "So far: ";
export const REPLACED = "replaced";
export const partProbably = (part, done) => `${part} probably ${done}`;
export const someVariantOf = (name) => `${name}, some variant`;
export const NOT_ENOUGH_TO_GO_ON_YET = "Not enough to go on yet";
export const andPartProbably = (part, done) => ` ${part} probably ${done}.`;
export const savedAndPossible = (possible, years, verdict, replaced) =>
  `Saved. ${possible}.${years}${verdict}${replaced}`;
export const WHAT_YOU_SAW_OF_IT = "What you saw of it";
export const whatYouSawOf = (names) => `What you saw of it (${names})`;
export const looksLikeYears = (years) => ` By itself it looks like ${years}.`;
export const replacedAndOwn = (part, done, chance, seen, own) =>
  `${part}: probably ${done} (${chance}). ${seen} does not fit the rest, so it counts ` +
  `for little in the answer.${own}`;

// The answer
export const HOW_SURE = {
  "it is": "It is",
  "almost certainly": "Almost certainly",
  "very likely": "Very likely",
  probably: "Probably",
  "could be": "Could be",
};
export const UNDO = "Undo";
export const WHY_NOT_THE_OTHERS = "Why not the others";
export const YOUR_ANSWERS = "Your answers";
export const KEEP_ASKING = "Keep asking";
export const TAKE_CARE = "Take care";
export const EVERYTHING_ELSE = "Everything else";
export const SAVE_FOR_LATER = "Save for later";
export const SAVE_NEXT_IN_BOX = "Save, next in box";
export const NEXT_PIECE = "Next piece";
export const SURE = " sure";
export const byNumber = (reading) => `By number: ${reading}`;
export const byItsNumber = (reading) => `By its number or name: ${reading}`;
export const IT_IS = " it is ";
export const UNUSUAL_TOGETHER = "What you saw is unusual for it, taken together. Look once more.";
export const DOES_NOT_FIT = "Does not fit: ";
export const lookAgainAt = (name) => `Look again: ${name}`;
export const notLookedAtThem = (names) => `Not looked at: ${names}. `;
export const NOBODY_HAS_RECORDED = "It could be one nobody has recorded.";
export const LOOK_NOW = "Look now";
export const NOT_ENOUGH_WAS_SEEN = "Not enough was seen";
export const COULD_BE_ANYTHING =
  "You could not see anything that was asked, so it could be anything in this range.";
export const ONE_OF_THESE = "One of these";
export const THIS_IS_NOT_IN_THE_RANGE = "This is not in the range";
export const NO_VARIANT_FITS = "No recorded variant fits what you saw.";
export const ADD_TO_YOUR_OWN_RANGE = "Add to your own range";
export const KEEP_AS_A_SIGHTING = "Keep as a sighting";
export const WHAT_CAME_CLOSEST = "What came closest:";

// The four lines of the answer
export const ITS_PARTS = "Its parts";
export const WHAT_YEAR = "What year?";
export const PRICE = "Price";
export const WHAT_IS_ASKED = "What is asked?";
export const YOURS_OR_WANTED = "Yours or wanted";
export const yoursOrWantedIs = (verdict) => `Yours or wanted: ${verdict}`;
export const ADD_TO_WANTS = "add to wants";
export const ITS_MARKS_DISAGREE = "Its marks disagree";
export const PARTS_FIT = "Parts fit";
export const nameReplaced = (name, done) => `${name} ${done}?`;
export const lookAtName = (name) => `Look at the ${name}`;
export const ABOVE_YOUR_LIMIT = ", above your limit";
export const WITHIN_YOUR_LIMIT = ", within your limit";

// What is said after a tap
export const DATE_IS_FORGOTTEN = "The seller’s date is forgotten.";
export const STARTED_AGAIN = "Started again.";
export const TAKEN_BACK = "Taken back.";
export const STALLSIDE = "Stallside";
export const SHOW_THE_ANSWER = "Show the answer";

// Does it look like this?
export const LOOK_AGAIN = "Look again";
export const TAP_WHAT_FITS_AFTER_ALL = "Tap what fits after all.";
export const AS_I_SAID = "As I said";
export const DONE = "Done";
export const WHAT_DIFFERS = "What differs?";
export const ALL_FITS = "All fits";
export const THE_REST_FITS = "The rest fits";
export const DOES_IT_LOOK_LIKE_THIS = "Does it look like this? Tap what differs.";
export const IT_FITS_AFTER_ALL = "It fits after all";
export const IT_DOES_NOT_FIT = "It does not fit";
export const ASK_IN_WORDS = "Ask in words";
export const SKIP_THIS = "Skip this";

// A question
export const HINTS = {
  sure: "Tap what you see.",
  unsure: "Tap your best guess.",
  several: "Tick all it could be, then Done.",
};
export const CHECKING =
  "It is nearly settled. This would show whether it is one nobody has recorded.";
export const LOOK_ONCE_MORE = "Your answer here does not fit the rest. Look once more.";
export const YOUR_PHOTO = "Your photo";
export const SKIP_LAST_CHECK = "Skip last check";
export const answerWas = (answer) => `Your answer was: ${answer}.`;
export const TICK_AT_LEAST_ONE_FIRST = "Tick at least one first.";
export const IM_GUESSING = "I’m guessing";
export const MORE = "More";
export const noPart = (part) => `No ${part}`;
export const SOMETHING_ELSE = "Something else";
export const CANT_SEE_IT = "Can’t see it";
export const MY_BEST_GUESS = "My best guess";
export const TWO_OR_MORE = "Two or more";

// Which of these?
export const WHICH_OF_THESE = "Which of these?";
export const NONE_OF_THESE = "None of these";
