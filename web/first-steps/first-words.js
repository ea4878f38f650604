/** What is offered at the first start. */

export const BROWSER_DELETED_IT = "Nothing is here: this browser has deleted it.";
export const NOTHING_IN_COLLECTION = "Nothing is in your collection yet.";
export const lookRoundWithDemo = (none) =>
  `${none} You can look round with a demo collection: it is made up, and can be ` +
  "removed again.";
export const TRY_THE_DEMO = "Try the demo";
export const START_EMPTY = "Start empty";
export const REMOVE_THE_DEMO_COLLECTION = "Remove the demo collection";
export const DEMO_IN_THE_BIN = "The demo collection is in the bin.";
export const DEMO_COLLECTION_REMOVED = "Demo collection removed";

export const EMPTY_COLLECTION =
  "Your collection is empty. A made-up one shows what the app can do.";
export const KEPT_IN_SAFARI_BEFORE =
  "What you kept in Safari before is not here. Make a backup there, and restore it here: " +
  "More, then Backup.";
export const FIRST_STEPS = "First steps";
