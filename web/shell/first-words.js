/** The words of the bar, and of the screen that says why the app cannot go on. */

export const OTHER_SCREENS = "Other screens";
export const SETTINGS = "Settings";

export const WRONG_AT_THE_START = "Something went wrong while the app was starting.";
export const TRY_AGAIN = "Try again";
export const MAKE_A_BACKUP_FILE = "Make a backup file";
export const START_WITH_ANOTHER_PIECE = "Start again with another piece";
export const useInstead = (name) => `Use ${name} instead`;
export const THE_APP_CANNOT_GO_ON = "The app cannot go on";
export const NO_BACKUP_FILE = "The backup could not be made. Reload the page, and try again.";

// Told by the app itself
export const OPEN_IT_AGAIN = "Open it again";
export const STEP_WENT_WRONG = "Something went wrong with that step. Your answers so far are kept.";
export const START_AGAIN = "Start again";
export const NO_SIGNAL_WORKS = "No signal: everything still works";
export const NO_SIGNAL_UNTIL_CLOSED = "No signal: works until you close this page";
export const NEW_VERSION_READY = "A new version is ready: see Settings";
export const ANOTHER_WINDOWS_PIECE = "Another window had a piece too. It is kept.";
export const TAKE_IT_UP = "Take it up";
export const PIECE_NOT_READ =
  "This version cannot read the piece you were on. It was set aside: start with it again.";
export const youBeganAt = (time) => `You began this piece on ${time}.`;
export const NEXT_PIECE = "Next piece";
export const RANGE_NO_LONGER_HERE =
  "The range of the piece you had is no longer here. The piece was set aside: start again " +
  "with another range.";
export const ONE_RECORD_NOT_READ = "1 record here cannot be read";
export const recordsNotRead = (count) => `${count} records here cannot be read`;
export const setAsideAndWorks = (what) => `${what}, and set aside. Everything else works.`;
export const LOOK_AT_IT = "Look at it";
export const NEW_VERSION_BROUGHT_IN = "Another window has brought in a new version.";
export const OPEN_IT_HERE_TOO = "Open it here too";
