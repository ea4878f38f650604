/** What is told where something cannot be kept, read or had, at the start already. */

export const REASONING_NOT_LOADED =
  "The part that does the reasoning could not be loaded. With a signal, try again.";

export const SAFARI_DELETES =
  "Safari deletes what a page has stored after seven days without use, unless the page is on the " +
  "home screen.";

// Ranges
export const ANY_RANGE = "Any range";
export const EVERY_RANGE_AT_ONCE =
  "Every range at once: you are first asked for the gauge and the material.";
export const THE_LIST_OF_RANGES = "the list of ranges";
export const NO_RANGE_HERE =
  "There is no range to identify from. The person who runs this site must add one.";
export const rangeNamed = (name) => `the range ${name}`;
export const THE_TABLES_OF_MARKS = "the tables of marks";
export const THE_DATE_MARKS = "the date marks";
export const THE_SHELF_OF_FEATURES = "the list of features";
export const rangeNotRead = (name) =>
  `The range ${name} cannot be read by this version of the app. With a signal, try ` +
  "again: a newer version may be ready.";
export const noSignalFor = (what) =>
  `Could not load ${what}: there is no signal, and it is not stored on this device ` +
  "yet. Try again with a signal.";
export const siteGaveError = (what, status) =>
  `Could not load ${what}: the site gave error ${status}. Try again later.`;
export const damagedWhat = (what) =>
  `Could not read ${what}: it is damaged. With a signal, try again.`;

// Records
export const DELETED_FOR_GOOD = "Deleted for good";

// The storage
export const NEWER_WINDOW =
  "Another window opened a newer version. Close this one and go on there.";
export const NO_STORAGE =
  "This browser does not let the app store anything (a private window, perhaps). It works, but " +
  "forgets when you leave.";
export const STORAGE_NOT_OPENED =
  "The browser cannot open its storage just now. The app works, but shows nothing of what was " +
  "saved, and forgets when you leave. Close it, and open it again.";
export const STORAGE_CLOSED =
  "The browser has closed its storage and will not open it again. What was saved before is still " +
  "there. Close the app, open it again, and check that the last step is there.";
export const NEWER_VERSION_USED_IT =
  "A newer version of this app has been used here. With a signal, close the app and " +
  "open it again to get that version.";
export const ANOTHER_WINDOW_HOLDS_IT =
  "This app is open in another window. Close the other window, then open this one again.";

export const STORAGE_NOT_READ =
  "The browser cannot read its storage. What was saved is still there. Close the app and open " +
  "it again.";
export const NO_SPACE_LEFT =
  "There is no space left: the last step is not stored. Free some space, then go on.";
export const STEP_NOT_STORED =
  "The last step could not be stored. It is lost when you leave this page.";
