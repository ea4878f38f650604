/** The words of the start, the question and the answer. */

// Price, condition and box
export const WHAT_YOU_PAID_BEFORE = "What you paid before";
export const NOT_NOTED = "Not noted";
export const BOXED = "Boxed";
export const NO_BOX = "No box";
export const PRICE_ASKED = "Price asked";
export const CONDITION = "Condition";
export const BOX = "Box";
export const OPEN_IT_IN_THE_COLLECTION = "Open it in the collection";
export const ADD_TO_COLLECTION = "Add to collection";
export const OPEN_YOUR_NOTE = "Open your note";
export const ADD_IT_TO_WANTS = "Add to wants";

/** The label of the button that leads here. */
export const CHECK_THE_DATE = "Check the seller’s date";

// Other pieces at hand
export const PERHAPS_NOT_IN_THE_RANGE = "Perhaps not in the range";
export const ONE_OTHER_PIECE = "1 other piece at hand";
export const otherPieces = (count) => `${count} other pieces at hand`;

// Do its parts belong together?
export const WHAT_REPLACED_MEANS =
  "A replaced part usually lowers the price. Check that it is not one for an untouched piece.";
export const ALMOST_CERTAINLY_REPLACED = "almost certainly replaced";
export const PROBABLY_REPLACED = "probably replaced";
export const PERHAPS_REPLACED = "perhaps replaced";
export const COULD_BE_ORIGINAL = "could be original";
export const isReplaced = (part, how) => `${part} ${how}: not what it usually has`;
export const pieceOf = (years, own) => `Piece ${years}${own}`;
export const NOT_ALL_ORIGINAL = "Not all original, by the look of it.";
export const SOMETHING_DOES_NOT_FIT = "It could be all original, but something does not quite fit.";
export const ALL_ORIGINAL_SO_FAR = "What you looked at could be all original.";
export const chanceAllOriginal = (chance) =>
  `Chance that it is all original, including what you didn’t check: ${chance}.`;
export const chanceReplaced = (chance) => `Chance that it was replaced: ${chance}.`;
export const countsForLittle = (replaced) =>
  ` What you saw of it counts for little in the answer. ${replaced}`;
export const PIECE_ITSELF = "piece itself";
export const isFrom = (name, seen, year) => `The ${name} (${seen}) is from ${year}`;
export const orLaterIsFrom = (name, seen) => ` or later, the ${name} (${seen}) from `;
export const orEarlierTogether = (year, cannot) =>
  `${year} or earlier: they ${cannot} be from the `;
export const CAN_HARDLY = "can hardly";
export const SAME_YEAR = "same year. ";
export const readBothAgain = (years) => `${years}Read both again.`;
export const anOlder = (years, name) => `${years}An older ${name}?`;
export const aLater = (years, name) => `${years}A later ${name}?`;

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
export const READ_A_MARK_ON_IT = "Read a mark on it";
export const STARTED_AGAIN_BEFORE = "Started again. ";
export const UNDO_THAT = "Undo that";
export const NOT_SURE = "Not sure";
export const NOT_SURE_ASK_ME = "Not sure: ask me";
export const WHAT_SORT_OF_PIECE_IS_IT = "What sort of piece is it?";
export const NUMBER_OR_NAME = "Number or name";
export const ON_IT_OR_ITS_BOX = " on it or its box";
export const NOTHING_FOUND = "Nothing found";
export const foundCount = (count) => `${count} found`;
export const notCalledSo = (text) =>
  `Nothing in this range is called “${text}”. Try part of the number or one word of ` +
  "the name, check the range below, or empty the field and choose the kind.";
export const FOUND = "Found";
export const likeIt = (count) => `${count} like it`;
export const IN_YOUR_COLLECTION = "In your collection";
export const ON_YOUR_LIST = "On your list";
export const IN_NO_RANGE = "In no range";
export const onYourListUpTo = (most) => `on your list up to ${most}`;
export const IT_IS_ON_YOUR_LIST = "on your list";
export const NOT_IN_YOUR_COLLECTION = "Not in your collection";
export const youHave = (owned) => `You have ${owned}`;
export const IF_ONE_CHARACTER_WAS_MISREAD = "if one character was misread";
export const hasOnIt = (matched) => `has “${matched}” on it`;

// What is known so far
export const YEARS_NOT_RECORDED = "years not recorded";
export const SO_FAR = "So far: ";
export const partProbablyReplaced = (part) => `${part} probably replaced`;
export const someVariantOf = (name) => `${name}, some variant`;
export const NOT_ENOUGH_TO_GO_ON_YET = "Not enough to go on yet";
export const andPartProbablyReplaced = (part) => ` ${part} probably replaced.`;
export const savedAndPossible = (possible, years, verdict, replaced) =>
  `Saved. ${possible}.${years}${verdict}${replaced}`;
export const WHAT_YOU_SAW_OF_IT = "What you saw of it";
export const whatYouSawOf = (names) => `What you saw of it (${names})`;
export const looksLikeYears = (years) => ` By itself it looks like ${years}.`;
export const replacedAndOwn = (part, chance, seen, own) =>
  `${part}: probably replaced (${chance}). ${seen} does not fit the rest, so it counts ` +
  `for little in the answer.${own}`;
