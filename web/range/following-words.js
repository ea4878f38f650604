/** The words of following a range from an address, and of sightings that others send. */

// A range beside yours
export const writtenDownYourself = (name) =>
  `You have written down a range yourself that is this one, or began as it: ${name}. ` +
  "Import this one into yours, or delete yours first.";
export const NEW_NUMBER = "new number";
export const NEW_NUMBERS = "new numbers";
export const NEW_VARIANT = "new variant";
export const NEW_VARIANTS = "new variants";
export const NEW_QUESTION = "new question";
export const NEW_QUESTIONS = "new questions";
export const ONE_NUMBER_CHANGED = "number changed";
export const NUMBERS_CHANGED = "numbers changed";
export const ONE_VARIANT_CHANGED = "variant changed";
export const VARIANTS_CHANGED = "variants changed";
export const QUESTION_CHANGED = "question changed";
export const QUESTIONS_CHANGED = "questions changed";
export const NUMBER_IS_NOW_ANOTHER = "number renumbered";
export const NUMBERS_ARE_NOW_OTHERS = "numbers renumbered";
export const NUMBER_TAKEN_OUT = "number removed";
export const NUMBERS_TAKEN_OUT = "numbers removed";
export const VARIANT_TAKEN_OUT = "variant removed";
export const VARIANTS_TAKEN_OUT = "variants removed";
export const QUESTION_TAKEN_OUT = "question removed";
export const QUESTIONS_TAKEN_OUT = "questions removed";
export const SMALL_CORRECTIONS_ONLY = "small corrections only";

// What is wrong with a file
export const ASK_AGAIN = "Ask for it again.";
export const notARange = (AGAIN) => `this is not a range, or the file is damaged. ${AGAIN}`;
export const rangeIsDamaged = (AGAIN) => `this range is damaged. ${AGAIN}`;
export const wasChanged = (AGAIN) => `this was changed after it was made, or is damaged. ${AGAIN}`;
export const notReadAsARange = (place) =>
  `this is not a range that this version of the app can read (${place}).`;
export const CALLED_ALL = "a range cannot be called “all”. Rename its folder.";
export const contradictsItself = (AGAIN) => `it contradicts itself. ${AGAIN}`;
export const A_TABLE_IS_MISSING = "a table is missing";
export const NOTHING_WRITTEN_IN_IT = "nothing is written down in it yet.";

// Following
export const FOLLOW_A_RANGE = "Follow a range";
export const WHAT_FOLLOWING_IS =
  "Whoever keeps a range can give you its address on the internet. The app fetches the " +
  "range from there, and newer editions of it when there is signal. Nothing of yours is " +
  "sent.";
export const ADDRESS_OF_THE_RANGE = "Address of the range";
export const PASTE = "Paste";
export const LOOK_AT_IT = "Look at it";
export const NOT_TO_BE_PASTED =
  "This phone does not let the app paste. Hold a finger on the field, then tap Paste.";
export const RANGES_THERE = "Ranges there";
export const WHICH_ONE = "Which one?";
export const takesThePlaceOf = (name) => `It takes the place of the ${name} that you have.`;
export const FOLLOW_IT = "Follow it";

// Editions
export const EDITION_STAYS = "The edition that you have stays.";
export const OLDER_EDITION =
  "The address gives an edition that is older than yours. Whoever keeps the range may have gone " +
  "back to it.";
export const newestEditionOf = (name) => `You have the newest edition of ${name}.`;
export const newerEdition = (name, news) => `${name} has a newer edition: ${news}.`;
export const olderEditionOf = (name) => `An older edition of ${name}`;
export const TAKE_THE_OLDER = "Take the older one all the same";
export const youFollow = (name) => `You follow ${name} from now on.`;

// The address
export const LOOKING = "Looking…";
/** What an address lacks, in sentences: the problems of fetch-range.js. */
export const TOLD = {
  address:
    "The app cannot fetch from this address. It has to begin with https and hold no password.",
  "no answer":
    "Nothing that this app may read answers at this address. Compare it letter by letter, and " +
    "try again later.",
  closed:
    "Something answers at this address, but it does not let other apps read it. Whoever keeps " +
    "the range has to allow that: ask them.",
  large: "What is at this address is larger than 40 MB: too large to be a range.",
  cut: "The range did not come through whole. Try again where the signal is better.",
  slow: "This address takes too long to answer. Try again later.",
  page: "There is a page at this address, and no range. Ask whoever keeps it for the range’s own.",
};
export const NOTHING_AT_THIS_ADDRESS =
  "There is nothing at this address, or no longer. Ask whoever keeps the range.";
export const LETS_ONLY_SOME_IN =
  "This address lets only some people in. Ask whoever keeps the range for an open one.";
export const answeredWithAnError = (status) =>
  `The address answered with an error (${status}). Try again later.`;
export const ADDRESS_FIRST = "Type or paste an address first.";
export const NOT_AN_ADDRESS =
  "This is not an address. It looks like https://trains.example.org/range";
export const BEGINS_WITH_HTTP =
  "This address begins with http, which anybody on the way can change. Put https in its place.";
export const NO_SIGNAL = "There is no signal. Try again where there is one.";
export const cannotBeUsed = (problem) => `What is at this address cannot be used: ${problem}`;
export const ANOTHER_RANGE_THERE =
  "There is a different range at this address now. Ask its keeper.";
export const NOT_PUBLISHED =
  "This range can be used, but what is written down in it was not published. Ask whoever " +
  "keeps it for the range as a file.";
export const SEVERAL_THERE = "There are several ranges at this address now. Follow one again.";
export const NO_LONGER_THERE =
  "This range is no longer among those at its address. Ask whoever keeps it.";

// One range
export const NOT_HERE = "Not here";
export const NO_LONGER_HERE = "This range is no longer on this device.";
export const CAME_WITH_THE_APP = "came with the app";
export const SHARE_IT = "Share it";
export const STOP_FOLLOWING_IT = "Stop following it";
export const REMOVE_IT = "Remove it";
export const NOBODY_WROTE_IT = "It does not say who wrote it down.";
export const writtenDownBy = (by) => `Written down by ${by}.`;
export const itemNumbers = (items) => `${items} numbers.`;
export const madeFromTo = (first, last) => `Made ${first} to ${last}.`;
export const editionOf = (day) => `Edition of ${day}.`;
export const MADE_UP = "It is made up: there is no such range.";
export const LOOK_FOR_A_NEWER_EDITION = "Look for a newer edition";
export const EDITIONS = "Editions";
export const editionCame = (time, news) => `The edition that you have came on ${time}: ${news}.`;
export const followedSince = (time) => `You have followed it since ${time}.`;
export const lastLookedTrouble = (time, trouble) => `Last looked on ${time}: ${trouble}`;
export const lastLooked = (time) => `Last looked on ${time}.`;
export const LOOKS_ONCE_A_DAY =
  "The app looks by itself once a day, while it is open with signal and no piece is being " +
  "identified. Where a number has changed, your pieces get the new one.";
export const IMPORT_INTO_YOUR_OWN = "Import it into a range of your own";
export const CAME_WITHOUT_WRITING =
  "This range came ready to be used, without what was written down. Ask whoever gave it " +
  "to you to share it out of their app again.";

export const alsoSeen = (names) => `Also seen: ${names}.`;

// Sightings from others
export const WHY_NOT_TAKEN = {
  "no item":
    "It does not say which number it is a variant of. Choose it, or write it down as a new one.",
  "nothing new": "It says nothing that your range does not say already.",
  unread: "Its years cannot be read. Ask whoever sent it.",
  unsure:
    "It was made in different years from those you know of, but it may be one of several " +
    "variants. Ask whoever sent it to look again.",
};
export const sightingsOf = (name) => `Sightings of ${name}`;
export const WHAT_SIGHTINGS_IN_ARE =
  "Whoever uses your range can send you a file of what they saw: in their app under " +
  "Sightings. Nothing is changed until you take it in.";
export const CORRECTS_ONE =
  "Whoever sent it has changed it since you settled it. Look at what your range has of it already.";
export const ADD_SIGHTINGS_FROM_A_FILE = "Add sightings from a file";
export const NONE_WAIT = "No sightings are waiting.";
export const ONE_MORE_WAITS = "1 more waits behind these.";
export const moreWait = (more) => `${more} more wait behind these.`;
export const sightingsOfAnother = (name, range) =>
  `${name}: these sightings are of another range, not ${range}.`;
export const waitAlready = (most) =>
  `${most} sightings wait already. Take them in or leave them first.`;
export const NO_ROOM = "There is no space left for them on this device. Nothing was added.";
export const ofAnotherRange = (sightings) => ` ${sightings} of another range, left out.`;
export const SOME_WAITED = " Some of them waited here already.";
export const SOME_SETTLED = " Some of them were taken in or left before.";
export const ALL_WAIT = "All of these wait here already.";
export const ALL_SETTLED = "All of these were taken in or left before.";
export const ALL_KNOWN = "All of these wait here already, or were taken in or left before.";
export const toLookAt = (sightings, waited, settled) =>
  `${sightings} to look at.${waited}${settled}`;
export const sightingCount = (count) => `${count} sightings`;
export const NOT_SIGHTINGS = "this is not a file of sightings, or it is damaged. Ask for it again.";
export const TOO_LARGE = "this is too large for a file of sightings.";
export const A_SIGHTING_WITHOUT_A_NAME = "A sighting without a name";
export const notedOn = (time) => `Noted on ${time}.`;
export const photoOf = (number, name) => `Photo ${number} of ${name}`;
export const NOTHING_IN_RANGE_YET = "Nothing is written down in this range yet.";
export const TAKE_IT_IN = "Take it in";
export const WRITE_AS_NEW = "Write it down as a new number";
export const LEAVE_IT = "Leave it";
export const IT_IS_A_VARIANT_OF = "It is a variant of";
export const NOT_KNOWN = "Not known";
export const IT_WOULD_CHANGE = "It would change:";
export const WHAT_WOULD_CHANGE = "It would change";
export const BETWEEN_STATES = " or ";
export const andMade = (day) => `, made ${day}`;
export const newVariantOf = (item, of, name, made) =>
  `A new variant of ${item} ${of}: ${name}${made}.`;
export const NONE = "None";
export const fromAsWell = (feature, state, when) =>
  `${feature}, ${state}: from ${when} as well, by this sighting.`;
export const madeAsWell = (item, name, when) =>
  `${item} ${name}: made ${when} as well, by this sighting.`;
export const TRYING_WHAT_THAT_DOES = "Trying what that does…";
export const NO_LONGER_TOLD_APART = "can no longer be told apart by looking";
export const TOLD_APART_FROM_THEN = "can be told apart from then on";
export const otherwiseNamed = (tried, otherwise) =>
  `Of ${tried} pieces drawn from the range as it would be, ${otherwise} would be named ` +
  "differently from now.";
export const OWN_NAMED_OTHERWISE =
  "The one piece of your own that you answered questions about would be named differently.";
export const OWN_NAMED_AS_NOW =
  "The one piece of your own that you answered questions about would be named as now.";
export const ownOtherwiseNamed = (own, otherwise) =>
  `Of the ${own} pieces of your own that you answered questions about, ${otherwise} would be ` +
  "named differently from now.";
export const TAKEN_FOR_ONE_IN_NO_RANGE = "taken for one in no range";
export const namedAs = (name) => `named “${name}”`;
export const isAsBefore = (now) => `A piece like this one is ${now}, as before.`;
export const isNowAndWouldBe = (now, then) =>
  `A piece like this one is ${now} now, and would be ${then}.`;
export const STAYS_AS_IT_IS = "What can be told apart stays as it is.";
export const pairBecomes = (first, second, what) => `${first} and ${second} ${what}.`;
export const ONE_MORE_PAIR = "The same goes for 1 more pair.";
export const morePairs = (more) => `The same goes for ${more} more pairs.`;
export const isInRangeNow = (name) => `The sighting is in ${name} now.`;
export const SIGHTING_TAKEN_IN = "Sighting taken in";
export const LEFT_OUT_AS_IT_IS = "The sighting is left out. Your range stays as it is.";
export const PUT_IT_BACK = "Put it back";
