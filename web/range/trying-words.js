/** The words of trying a range: what does not go together, what pieces show. */

// What does not go together
export const ANOTHER_ONE = "another one";
export const A_VARIANT_WITHOUT_A_NAME = "a variant without a name";
export const THE_OTHER_RUNNING_CHANGE = "the other running change";
export const hasTheNumberToo = (other, number) =>
  `${other} has the number ${number} too. Give one of them another number, or delete ` +
  "one and add it to the other as a variant.";
export const ITEM_NOT_THERE =
  "The item that it is a variant of is not there any more. Choose another one in the " +
  "table of variants, or delete it.";
export const ITEM_DELETED =
  "The item that it is a variant of was deleted. Put the item back, or delete it.";
export const outsideTheRange = (years, life) =>
  `${years} lies outside the years of the range, ${life}. Change one of them; those of ` +
  "the range stand under “About the range”.";
export const outsideOf = (years, name, life) =>
  `${years} lies outside the years of ${name}, ${life}. Change one of them.`;
export const notReadAsYears = (text) =>
  `“${text}” cannot be read as years. Write them as 1957, or 1957 to 61.`;
export const dayDoesNotExist = (text) =>
  `“${text}” names a day that does not exist. Write the years again.`;
export const endsBeforeItBegins = (text) =>
  `“${text}” ends before it begins. Write the earlier year first.`;
export const beginsAfterItEnds = (from, to) =>
  `It begins (${from}) after it ends (${to}). Write the earlier one first.`;
export const YEARS_OF_ANOTHER_SOURCE =
  "Another source gives years, but nobody else does. Fill in “Made” as well.";
export const goRound = (names) => `These lead round in a circle: ${names}. Break it at one.`;
export const ROUND_TO = ", then ";
export const kindCannotHave = (feature, kinds) =>
  `What is seen of ${feature} is noted, which ${kinds} cannot have. Say there that ` +
  "they can, or remove it.";
export const notAskedOf = (feature) =>
  `What is seen of ${feature} is noted, which is not asked of a piece like this. ` +
  "Remove it, or change when it is asked.";
export const ON_NONE_OF_THESE_KINDS =
  "What changed there is on none of these kinds. Change what it is on.";
export const ITEM_OF_ANOTHER_KIND = "It names an item of another kind. Change what it is on.";
export const stillIsThere = (what) => `There still is such ${what}. Delete this line.`;
export const A_NUMBER = "a number";
export const A_VARIANT = "a variant";
export const pointsNowhere = (text) =>
  `It points to “${text}”, which is not there. Change or delete it.`;
export const SUCH_PIECES = "such pieces";
export const NOT_WITH_THE_REST =
  "Something in it does not go together with the rest. Look through what it says.";
export const countsAsUnknown = (wrong) => `${wrong} Until then it counts as not known.`;
export const WHAT_DOES_NOT_GO_TOGETHER = "What does not go together";
export const UNKNOWN_UNTIL_MENDED =
  "It counts as not known until it is put right. Nothing is lost.";
export const andMore = (more) => `And ${more} more.`;
export const A_RUNNING_CHANGE = "A running change";
export const A_PIECE = "A piece";
export const putNameBack = (name) => `Put ${name} back`;
export const ITEM_PUT_BACK = "Item put back";

// What pieces show
export const WHAT_YOUR_PIECES_SHOW = "What your pieces show";
export const LEARN_FROM_THEM = "Learn from them";
export const YES = "Yes";
export const NO = "No";
export const LEARNING = "Learning";
export const WHAT_NO_MEANS =
  "What you wrote down stays as it is. With “No” the range counts as written.";
export const noneSaysWhich = (name) =>
  `No piece of ${name} in your collection says which variant it is yet. Once you say ` +
  "so on a piece, it counts here. What the app only thinks likely never does.";
export const pieceCount = (pieces) => `${pieces} pieces`;
export const namedByYou = (count) =>
  `${count} in your collection whose variant you named yourself. What the app only ` +
  "thinks likely does not count.";
export const HOW_OFTEN_A_VARIANT_IS_MET = "How often a variant is met";
export const ofYourCountedAs = (owned, all, chance) =>
  `${owned} of your ${all}: counted as ${chance} of them`;
export const VARIES_WITHIN_ONE = "What varies within one variant";
export const TURNED_OUT_REPLACED = "Parts that turned out replaced";
export const replacedCountedAs = (replaced, all, chance) =>
  `${replaced} of ${all}: counted as ${chance}`;
export const HOW_MUCH_IS_NOT_WRITTEN_DOWN = "How much is not written down";
export const alonePiecesTell = (alone, all, chance) =>
  `For ${alone} of your ${all}, that one piece is all that tells of its variant. So ` +
  `about ${chance} of what you meet is probably not written down yet.`;
export const stateCountedAs = (count, all, state, chance) =>
  `${count} of ${all} ${state} (counted as ${chance})`;
