/** The words of the notebook. */

// Bought
export const WHAT_DID_YOU_PAY = "What did you pay?";
export const PRICE_PAID = "Price paid";
export const ADD_TO_COLLECTION = "Add to collection";
export const IT_IS_IN_YOUR_COLLECTION = "It is in your collection.";
export const BOUGHT = "Bought";
export const atTable = (table) => `table ${table}`;

// The day of a meet
export const TODAY = "Today";
export const openOffers = (names) => `Open offers: ${names}.`;
export const BETWEEN_SUMS = " and ";
export const ifAllTaken = (open, left) => `${open} If all are taken: ${left}`;

// One note
export const NOTE = "Note";
export const LEFT = "Left";
export const PRICE_ASKED = "Price asked";
export const MY_OFFER = "My offer";
export const OFFER = "Offer";
export const TABLE = "Table";
export const HALL = "Hall";
export const COME_BACK_AT = "Come back at";
export const ANY_WORDS_FOR_WHEN = "However you like: 14:30, or after lunch.";
export const HISTORY = "History";
export const MOVE_TO_THE_BIN = "Move to the bin";
export const THE_NOTE = "The note";
export const GO_ON_IDENTIFYING = "Go on identifying";
export const IDENTIFY_IT = "Identify it";
export const NEXT_FROM_THE_SAME_BOX = "Next from the same box";
export const IDENTIFIED = "Identified";
export const DECISION = "Decision";
export const OPEN_IT_IN_THE_COLLECTION = "Open it in the collection";
export const BOUGHT_ADD_TO_COLLECTION = "Bought: add to collection";
export const LEFT_IT_CROSS_IT_OFF = "Left it: cross it off";
export const CROSSED_OFF = "Crossed off.";
export const STILL_TO_DECIDE = "Still to decide";
export const TO_BE_DECIDED_AGAIN = "To be decided again.";

// The list
export const notesOf = (count, all) => `${count} of ${all} notes`;
export const NOTES = "Notes";
export const NOTEBOOK = "Notebook";
export const NEW_NOTE = "New note";
export const SETTLE_THE_DAY = "Settle the day";
export const SHOW = "Show";
export const ALL_NOTES = "All notes";
export const askedSum = (asked) => `asked ${asked}`;
export const offerSum = (offer) => `offer ${offer}`;
export const backAt = (comeBack) => `back ${comeBack}`;
export const NOTHING_SPENT_TODAY = "Nothing spent today.";
export const spentToday = (names) => `Spent today: ${names}.`;
export const leftOfBudget = (left) => `Left: ${left}.`;
export const aboveBudget = (above) => `That is ${above} over budget.`;
export const TODAYS_BUDGET = "Today’s budget";

// Reminders
export const atPlace = (place) => ` at ${place}`;
export const comeBackTo = (time, name, where) => `${time}: come back to ${name}${where}.`;
export const OPEN_THE_NOTE = "Open the note";

// Settling the day
export const ALL_SETTLED = "Everything from today is settled.";
export const WHAT_BECAME_OF_THESE = "What became of these? Bought asks what you paid in the end.";
export const STILL_OPEN = "Still open";
export const boughtName = (name) => `Bought: ${name}`;
export const LEFT_IT = "Left it";
export const leftName = (name) => `Left it: ${name}`;
