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
  "the range are under “About the range”.";
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
  `Something is noted for ${feature}, which ${kinds} cannot have. Say there that ` +
  "they can, or remove it.";
export const notAskedOf = (feature) =>
  `Something is noted for ${feature}, which is not asked of a piece like this. ` +
  "Remove it, or change when it is asked.";
export const ON_NONE_OF_THESE_KINDS =
  "What changed there is on none of these kinds. Change what it is on.";
export const ITEM_OF_ANOTHER_KIND = "It names an item of another kind. Change what it is on.";
export const stillIsThere = (what) => `There is still ${what} like that. Delete this line.`;
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

// Trying it
export const TRYING_PART_NOT_HERE =
  "The part that tries a range out is not on this device yet. Try it with a signal.";
export const tryName = (name) => `Try ${name}`;
export const NOTHING_TO_TRY = "Nothing is written down yet. Write down a piece first, then try it.";
export const TRYING_IT = "Trying it…";
export const ASK_AS_AT_A_STALL = "Ask me as it would at a stall";
export const HOW_SURE_IT_GETS = "How sure it gets";
export const WHAT_IT_ASKS_FIRST = "What it asks first";
export const FINISH_THE_PIECE_FIRST =
  "You are identifying a piece. Finish it or start again, then try the range.";
export const fewestToMost = (fewest, most) => `, from ${fewest} to ${most}`;
export const takenForUnknown = (were) => ` ${were} taken for something in no range.`;
export const unknownWere = (unknown) => `${unknown} were`;
export const howItWent = (count, right, questions, range, chance, beyond) =>
  `${count} pieces were drawn from what you wrote down, with a slip or a part from ` +
  `another piece now and then: ${right} were named right, after ` +
  `${questions === 1 ? "1 question" : `${questions} questions`} as a rule${range}. On average ` +
  `it was then ${chance} sure.${beyond}`;
export const NOT_KNOWING_WHAT_IT_IS = "Not knowing what it is";
export const NOTHING_TO_ASK_YET = "nothing to ask yet";
export const WHAT_IT_CANNOT_TELL_APART = "What it cannot tell apart";
export const ALL_TOLD_APART = "Every variant can be told from every other.";
export const NOT_TOLD_APART = "Not told apart";
export const bothOf = (first, second) => `${first} and ${second}`;
export const NOTHING_DIFFERS =
  "Nothing that is written down differs. Look for something that does.";
export const wouldSettleIt = (names) => `${names} would settle it, with a closer look.`;
export const WORTH_A_LOOK_NEXT_TIME = "Worth a look next time";
export const WORTH_A_LOOK = "Worth a look";
export const featureOf = (name, variant) => `${name} of ${variant}`;
export const MAY_SEPARATE = "It may separate it from one like it.";
export const NOT_WRITTEN_DOWN_EVERYWHERE = "Not written down everywhere";
export const NOWHERE_YET = "nowhere yet";
export const notOfAll = (without, all) =>
  `not of ${without} of the ${all} variants that can have it`;
