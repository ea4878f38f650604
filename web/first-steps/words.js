/** The words of the first steps, and of the lines that guide through them. */

export const DEMO_COLLECTION = "Demo collection";
export const DEMO_NOT_LOADED = "The demo could not be loaded. With a signal, try again.";

// What the guide says on the way
export const LOCOMOTIVE_OR_CAR = "Locomotive or power car";
/** A screen that is not on the way. */
export const ELSEWHERE = {
  text: "Look round as you like. To go on, tap Identify in the bar.",
  at: "#places [data-screen=identify]",
};
/** A sheet that is not on the way: read it, and close it. */
export const SHEET = {
  text: "Take your time over this. To go on, tap Close.",
  at: ".sheet-foot button",
};
export const justLikeYours = (name) => `It is just like your ${name}. Tap “All fits”.`;
export const CHOOSE_A_PICTURE = "You can choose a picture. Here tap “Ask in words”.";
export const notQuiteLikeYours = (name) =>
  `Your ${name} is not quite like that. Tap “Ask in words”.`;
export const LOOK_AT_THE_QUESTION = "Look at the question, and tap what you see.";
export const yoursHasNo = (missing) => `Yours has no ${missing}. Tap “No ${missing}”.`;
export const onYours = (name, state) => `On your ${name}: ${state}. Tap that.`;
export const cannotBeSeenOnYours = (name) =>
  `That cannot be seen on your ${name}. Tap “Can’t see it”.`;
export const tapTheKind = (kind) => `Tap what kind of piece it is: ${kind}.`;
export const IDENTIFY_A_PIECE_AT_A_STALL = "Identify a piece at a stall";
export const ABOUT_THE_STALL = "A blue engine, and a minute to find out which.";
export const THE_BLUE_ENGINE =
  "You are holding a blue electric engine with flat ends: two bogies, plastic horns on the roof, " +
  "its number at one end. There is no box.";
export const ALL_OF_THE_STALL = "That is what you are holding, and when it was made. That’s all.";
export const HAVE_IT_ALREADY = "Check whether you have it already";
export const ABOUT_HAVING_IT =
  "A small diesel with its number on it, and the demo collection at home.";
export const THE_BLUE_SHUNTER =
  "You are holding a small blue diesel shunter, as new, with P 24 underneath. For this, " +
  "pretend the demo collection is yours.";
export const TYPE_P24 = "Type P24 into the field at the top, then tap the one that is found.";
export const IS_THIS_BETTER = "You have one. Is this better? Tap “Price”.";
export const ALL_OF_HAVING_IT = "So you know whether it is better than yours. That’s all.";
export const NOW_TAP_CLOSE = "Now tap “Close”.";
export const CHOOSE_AS_NEW = "Under “Condition” choose: as new.";
export const CONFIRM_THE_DATE = "Confirm the date a seller claims";
export const ABOUT_THE_DATE = "A grey goods van, and a seller who says 1951.";
export const THE_GREY_VAN =
  "You are holding a grey goods van with sliding doors. There are large initials on its side, " +
  "printed and flat. The seller says: “That is a 1951 one.”";
export const WAGON = "Wagon";
export const TAP_CHECK_THE_DATE = "Tap “Check the seller’s date”.";
export const ALL_OF_THE_DATE = "There is the verdict, and a sentence to say aloud. That’s all.";
export const NOW_THE_DATE = "Now the seller’s date: tap “More”.";
export const NOW_TAP_SELLERS_DATE = "Now tap “Seller’s date”.";
export const NOW_TAP_1951 = "Now tap “1951”.";
export const TAP_1950S = "Tap “1950s”.";
export const NOTE_A_BARGAIN_FOR_LATER = "Note a bargain for later";
export const ABOUT_THE_BARGAIN = "A dining car that you want, and a queue behind you.";
export const THE_DINING_CAR =
  "You are holding a long brown dining car with thin lines and seats inside, in good condition. " +
  "It is at table 9, for £22. For this, pretend the demo collection and its wants are yours.";
export const COACH = "Coach";
export const TYPE_THE_PRICE =
  "Type the price under “Price asked”: 22. It is kept when you leave the field.";
export const TYPE_THE_TABLE = "Under “Table” type 9, so that you find it again.";
export const IT_WAITS_FOR_YOU = "It is kept. Tap Notebook in the bar: there it waits for you.";
export const ALL_OF_THE_BARGAIN = "There it is, with its table and its price. That’s all.";
export const NOTE_IS_BEGUN = "You have begun a note: open it again.";
export const TIME_IS_SHORT = "Time is short.";
export const TAP_SAVE_FOR_LATER = "Tap “Save for later”.";
export const goTapMore = (go) => `${go} Tap “More”.`;

// Around the lines
export const WHAT_YOU_HOLD = "What you are holding";
export const DEMO_COLLECTION_NOT_LOADED =
  "The demo collection could not be loaded. With a signal, try again.";
export const REMIND_ME = "Remind me";
export const LEAVE = "Leave";
export const LEAVE_THE_FIRST_STEPS = "Leave the first steps";
export const TRY_ANOTHER = "Try another";
export const MADE_UP_AND_NOTHING_KEPT =
  "It is made up, and so is its maker. Everything else is the real app. None of " +
  "this is kept: when you leave, your own collection is as it was.";
export const BEGIN = "Begin";
export const GO_ON = "Go on";

export const FOUR_THINGS_TO_TRY =
  "Four things to try with a made-up piece, on the real screens, with a line that says " +
  "what to do. Leave whenever you like: none of it is kept, and what you have here " +
  "stays as it is.";
