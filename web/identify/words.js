/** The words of what is looked up beside the question and the answer. */

// The rest of the answer
export const WHY_NOTHING_MORE = {
  nothing: "Nothing left to look at clearly tells these apart:",
  verdict: "Whichever of these it is makes no difference to you:",
};
export const YOUR_ANSWERS = "Your answers";
export const notInTheRange = (chance) => `Not in the range: ${chance}.`;
export const WHAT_IT_MAY_BE =
  "It may be a variant nobody has recorded, a repainted or altered piece, or one of the " +
  "answers may be wrong. A sighting, with photos and what you know of it, helps whoever " +
  "keeps the range.";
export const WHY_NOT_THESE = "Why not these?";
export const WHERE_IT_DOES_NOT_FIT =
  "Where something does not fit, it may be a variant nobody has recorded, a repaired or " +
  "repainted piece, or a slip.";
export const RECORD_IT_AS_A_VARIANT = "Record it as a variant";
export const KEEP_AS_A_SIGHTING = "Keep as a sighting";
export const WHAT_ELSE_IT_COULD_BE = "What else it could be";
export const NOT_IN_THE_RANGE = "Not in the range";
export const ALL_IT_COULD_BE_AND_WHY_NOT = "All it could be, and why not";
export const ONLY_WHAT_YOU_FOUND = "Only the number or name you found was considered. ";
export const LOOK_AT_ALL_PIECES = "Look at all pieces";
export const WHAT_ELSE_WOULD_HELP = "What else would help";
export const I_CAN_DO_THAT = "I can do that";
export const canDoThat = (need) => `I can do that: ${need}`;

// Your answers so far
export const YOUR_ANSWERS_SO_FAR = "Your answers so far";
export const NO_ANSWERS_YET = "No answers yet.";
export const CHANGE = "Change";
export const changeName = (name) => `Change: ${name}`;
export const TAKE_BACK = "Take back";
export const takeBackName = (name) => `Take back: ${name}`;
export const hasNoPart = (part) => `It has no ${part}.`;
export const IT_HAS_ONE_AFTER_ALL = "It has one after all";

// What it could be
export const WHAT_IT_COULD_BE = "What it could be";
export const showMore = (count) => `Show ${count} more`;
export const whoSaysSoOf = (name) => `Who says so? ${name}`;
export const WHO_SAYS_SO = "Who says so?";
export const IN_YOUR_HAND = "In your hand";
export const WHY_NOT = "Why not?";
export const whyNotName = (name) => `Why not ${name}?`;
export const RARER_THAN_THE_FIRST = "It fits what you saw too, but is rarer than the first.";
export const thisCounts = (weight) => `This ${weight}.`;

// The seller’s date
export const WHICH_YEARS = "Which years does the seller say?";
export const SAY_IT_ANOTHER_WAY = "Say it another way";
export const WHAT_DOES_THE_SELLER_SAY = "What does the seller say?";
export const CHECK_IT = "Check it";
export const FORGET_THIS_DATE = "Forget this date";
export const YEARS = "Years";
export const readAs = (claim) => `Read as: ${claim}.`;
export const OR_TAP_WHAT_WAS_SAID = "Or tap what was said";
export const yearsFromTo = (first, last) => `${first} to ${last}`;
export const FIRST_AND_LAST = "From year to year: tap the first and the last";
export const THE_SELLERS_DATE = "The seller’s date";
export const sellerSays = (claim) => `The seller says: ${claim}.`;
export const CHANCE_IT_WAS_MADE_THEN = "Chance it was made then:";
export const CHANCE = "Chance:";
export const SAY_TO_THE_SELLER = "Say to the seller";
export const WHAT_COUNTS_MOST_AGAINST_IT = "What counts most against it";
export const WHAT_COUNTS_MOST_FOR_IT = "What counts most for it";
export const BACK_TO_THE_SELLERS_DATE = "Back to the seller’s date";
export const CHANGE_THIS_DATE = "Change this date";
export const counts = (name, how) => `${name}: it ${how}.`;
export const inUseAndCounts = (years, how) => `, in use ${years}. This ${how}.`;
export const NOTHING_WOULD_SETTLE = "Nothing left to look at would settle it.";
export const settlesItBest = (name) => `What would settle it best: ${name}.`;
export const ASK_WHAT_SETTLES = "Ask the question that settles it";

// More about the question
export const answerCount = (count) => `${count} answers`;
export const BACK_TO_THE_SUGGESTED = "Back to the suggested question";
export const WHY_THIS_QUESTION = "Why this question?";
export const SO_FAR = " so far";
export const POINT_SOMETHING_OUT = "Point something out";
export const TYPE_WHAT_IT_SAYS = "Type what it says";
export const NEXT_PIECE = "Next piece";
export const SAVE_FOR_LATER = "Save for later";
export const THE_ANSWERS_IN_FULL = "The answers in full";

// Reading a mark
export const OR_ELSE = "Or: ";
export const READ_A_MARK = "Read a mark";
export const WHAT_DOES_IT_SAY = "What does it say?";
export const EXAMPLES_OF_MARKS =
  "For example: Regd. Des. 821265, W. Germany, 12/6, the figures under a barcode.";
export const readAsFigures = (read) => `Read as ${read}, in plain figures and letters.`;
export const isFromOrLater = (text, year) => `${text} is from ${year} or later, `;
export const isFromOrEarlier = (text, year) =>
  `${text} from ${year} or earlier: not the same year.`;
export const TAKE_THIS_AS_AN_ANSWER = "Take this as an answer";

// Taking it up
export const NOTE_UPDATED = "Note updated";
export const nothingWasSaved = (why) => `${why} Nothing was saved.`;
export const atTable = (table) => `table ${table}`;
export const IT_IS_IN_YOUR_COLLECTION = "It is in your collection.";
export const ADDED_TO_COLLECTION = "Added to collection";
export const NEW_WANT = "New want";
export const IT_IS_ON_YOUR_LIST = "It is on your list.";
export const IT_IS_KEPT_UNDER_SIGHTINGS = "It is kept under Sightings.";
export const NEW_SIGHTING = "New sighting";

// Pointing something out
export const ALL_POINTED_OUT = "You have pointed out all there is to point out in this range.";
export const ALL_YOU_CAN_POINT_OUT = "All you can point out";

// The timeline
export const BARS = {
  candidate: "Could be",
  piece: "The piece without its parts",
  part: "Part",
  mark: "Seen",
  claim: "Seller",
};
export const andProbably = (done) => `, probably ${done}`;
export const says = (claim) => `says ${claim}`;
export const TIMELINE = "Timeline";

// Pieces at hand
export const GROUPS = [
  ["Worth buying", ["wanted", "completes", "upgrade"]],
  ["Not in your collection", ["new"]],
  ["Look closer", ["", "unrecorded", "item", "other"]],
  ["In your collection", ["same"]],
];
export const PIECES_AT_HAND = "Pieces at hand";
export const NO_OTHER_PIECE_IS_AT_HAND = "No other piece is at hand.";
export const A_SWIPE_BRINGS_THE_NEXT = "A swipe to the left brings up the next one.";
export const CLEAR_THEM_ALL = "Clear them all";
export const askedSum = (asked) => `${asked} asked`;
export const CLEARED_AWAY = "They are cleared away. Their notes stay in the notebook.";
export const UNDO = "Undo";

export const SEEN_IN_OTHER_YEARS = "Seen it in other years? Keep as a sighting";

// Who says so?
export const HOW_TRUSTED = [
  [0.8, "well trusted"],
  [0.6, "fairly trusted"],
  [0.4, "not fully trusted"],
  [0, "doubtful"],
];
export const noSourceIsGiven = (before) => `${before}no source is given.`;
export const SINCE_THE_RANGE_BEGAN = "since the range began";
export const THE_SOURCES_DIFFER = "The sources differ:";
export const allVariants = (name) => `${name}, all variants`;
export const seenAs = (seen) => `Seen: ${seen}.`;
export const onItems = (numbers) => ` (on ${numbers})`;
export const fromDay = (day) => `from ${day}`;
export const upToDay = (from, day, only) => `${from}, up to ${day}${only}`;
export const beforeDay = (not, day) => `${not} before ${day}`;
export const afterDay = (not, day) => `${not} after ${day}`;
export const IN_ALL_YEARS = "in all years";
export const NO_RECORDED_VARIANT_HAS_IT = "No recorded variant has it.";
export const FIRST_AND_LAST_ARE =
  "From the years of the variants that have it. The first and last are:";
export const NO_VARIANT_FITS = "No recorded variant fits what you saw.";
export const whatYouSaw = (name) => `What you saw: ${name}`;

// Why this question
export const TELLS_MOST_FOR_YOU = " It tells you most about what you have, want or lack.";
export const WOULD_SHOW_NOBODY = " It would show whether it is one nobody has recorded.";
export const NARROWS_THE_YEARS = " What it is has been settled; this narrows the years.";
export const TELLS_MOST_FOR_ITS_TIME =
  "Of all you could look at, this tells you most for the time it takes.";
export const LOOK_AT_SOMETHING_ELSE = "Look at something else";

export const chanceOfYears = (first, last, listed) =>
  `Chance of each year, from ${first} to ${last}. Likeliest: ${listed}.`;

// Price, condition and box
export const WHAT_YOU_PAID_BEFORE = "What you paid before";
export const NOT_NOTED = "Not noted";
export const BOXED = "Boxed";
export const PRICE_ASKED = "Price asked";
export const CONDITION = "Condition";
export const BOX = "Box";
export const ADD_IT_TO_WANTS = "Add to wants";

// Do its parts belong together?
export const WHAT_REPLACED_MEANS =
  "A replaced part usually lowers the price. Check that the price is not one for an untouched " +
  "piece.";
export const almostCertainly = (done) => `almost certainly ${done}`;
export const probably = (done) => `probably ${done}`;
export const perhaps = (done) => `perhaps ${done}`;
export const COULD_BE_ORIGINAL = "could be original";
export const isReplaced = (part, how) => `${part} ${how}: not what it usually has`;
export const isRecordedWithout = (part, how, number, seen) =>
  `${part} ${how}: no ${number} is recorded with what you saw (${seen})`;
export const pieceOf = (years, own) => `Piece ${years}${own}`;
export const NOT_ALL_ORIGINAL = "Not all original, by the look of it.";
export const SOMETHING_DOES_NOT_FIT = "It could be all original, but something does not quite fit.";
export const ALL_ORIGINAL_SO_FAR = "What you looked at could be all original.";
export const chanceAllOriginal = (chance) =>
  `Chance that it is all original, including what you didn’t check: ${chance}.`;
export const chanceOf = (done, chance) => `Chance that it was ${done}: ${chance}.`;
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

// The four lines of the answer
export const DO_ITS_PARTS_BELONG_TOGETHER = "Do its parts belong together?";
export const NO_PARTS_LOOKED_AT = "You have not looked at any of its parts yet.";
export const NOTHING_TO_COMPARE = "Your collection is empty, and so is your list of wants.";
export const AT_HOME = "At home";
export const PRICE_CONDITION_AND_BOX = "Price, condition and box";
