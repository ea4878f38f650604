/** The words of backups, of lists that go out and of what is set aside. */

// What is in no backup
export const NO_FILE_NEEDED = "Nothing here needs a backup file. Your server keeps its own.";
export const NOTHING_OF_YOUR_OWN_YET = "Nothing of your own yet.";
export const everythingIsIn = (time) => `Everything is in the backup of ${time}.`;
export const ONE_RECORD_IS = "1 record is";
export const recordsAre = (waiting) => `${waiting} records are`;
export const inNoFileYet = (count) =>
  `${count} in no backup file yet. Your server has what was sent.`;
export const onlyHere = (count) => `${count} only on this device: there is no backup yet.`;
export const notInTheLast = (count, time) => `${count} not in the last backup, of ${time}.`;

// Backup
export const BACKUP = "Backup";
export const MAKE_A_BACKUP_FILE = "Make a backup file";
export const FILE_HOLDS_EVERYTHING =
  "The file holds everything: pieces, wants, notes, photos, and what you paid. Keep it " +
  "where only you can read it.";
export const RESTORE = "Restore";
export const ADDED_TO_WHAT_IS_HERE =
  "What is in the file is added to what is here. Where both have the same piece, the " +
  "version changed later counts, and the other one stays in its history.";
export const RESTORE_A_BACKUP_FILE = "Restore a backup file";
export const WILL_THE_BROWSER_KEEP_IT = "Will the browser keep it?";
export const FILE_OF_THE_SCREEN = "Make a file of what is on the screen";
export const andMore = (count) => `And ${count} more.`;
export const wouldRemove = (records) => `This file would remove ${records}`;
export const DELETED_WHERE_MADE =
  "They were deleted where the file was made, but are still here. Nothing has changed yet.";
export const RESTORE_AND_KEEP_THEM_HERE = "Restore, and keep them here";
export const RESTORE_AND_BIN = "Restore, and move them to the bin";
export const budgetOf = (day) => `Budget of ${day}`;
export const recordCount = (count) => `${count} records`;
export const nothingWasRestored = (why) => `${why} Nothing was restored.`;
export const DELETED_THERE = "Deleted where the backup was made";
export const couldNotBeRead = (broken, why) =>
  ` ${broken} in the file could not be read and were left out: ${why}`;
export const wentToTheBin = (records) => ` ${records} went to the bin.`;
export const restoredWhat = (added, newer, older, trash, broken) =>
  `Restored: ${added} added, ${newer} updated, ${older} left as they are here because ` +
  `they were changed later.${trash}${broken}`;
export const tryAgainRestored = (why) => `${why} Try again: what was restored so far stays.`;
export const WILL_NOT_PROMISE =
  "The browser will not promise it. Put the app on the home screen, and make a backup.";
export const HAS_PROMISED = "Yes: it has promised to, even when space runs short.";
export const inAPrivateWindow = (answer) =>
  `${answer} In a private window everything is gone when you close it.`;
export const NOT_FOR_CERTAIN = "Not for certain: it may delete it if space runs short.";
export const THIS_BROWSER_DOES_NOT_SAY = "This browser does not say.";
export const ASK_THE_BROWSER_TO_KEEP_IT = "Ask the browser to keep it";

// What was imported
export const PIECES = "Pieces";
export const WANTS = "Wants";
export const NOTES = "Notes";
export const importedFrom = (file) => `Imported from ${file}`;
export const NONE_IS_HERE_ANY_LONGER =
  "None of them is here any longer: they were undone or deleted. Look in the bin.";
export const allOfThe = (place) => `All of the ${place}`;

// What the browser deleted
export const browserHadDeleted = (what, time) =>
  `This browser has deleted what the app had stored on this device: ${what} on ` +
  `${time}. Restore a backup file, or pair again with your own server, and it is back.`;
export const PAIR_WITH_A_SERVER = "Pair with a server";
export const START_EMPTY = "Start empty";
export const browserHasDeleted = (what) =>
  "This browser has just deleted what the app had stored on this device. This window " +
  `still knows ${what}, without photos and history. Do not close it yet.`;
export const PUT_THEM_BACK = "Put them back";
export const MAKE_A_FILE_OF_THEM = "Make a file of them";
export const PUT_BACK_AFTERWARDS = "Put back after the browser deleted it";
export const storedAgain = (what) =>
  `Stored again: ${what}. Photos come back from a backup file or from your server.`;

// Print or save
export const WHICH_RECORDS = [
  ["all", "Everything"],
  ["piece", "The pieces"],
  ["want", "The wants"],
  ["note", "The notes"],
];
export const FORMATS = [
  ["xlsx", "Spreadsheet, XLSX"],
  ["csv", "Plain table, CSV"],
  ["json", "JSON, for programs"],
];
export const PRINT_OR_SAVE = "Print or save";
export const WHAT_A_LIST_SHOWS =
  "A list shows which valuables are in your house. Give it only to those you trust, and " +
  "do not leave it lying about on a shared computer.";
export const AS_A_FILE = "As a file";
export const ON_PAPER = "On paper";
export const WITH_THE_MOST_TO_PAY = "With condition, box and the most you would pay";
export const DUPLICATES = "Duplicates";
export const WITH_WHAT_YOU_ASK_FOR_EACH = "With what you ask for each";
export const LIST_FOR_THE_INSURER = "List for the insurer";
export const EVERY_PIECE_AND_PRICE = "Every piece with photos, and what was paid";
export const WANTS_FOR_A_FRIEND = "Wants for a friend";
export const EVERYTHING_WITH_PHOTOS = "Everything, with photos";
export const WHAT_A_BACKUP_HOLDS =
  "A backup holds all of it, history and photos too, and can be restored. It works with " +
  "no server.";
export const MAKE_THE_FILE = "Make the file";
export const WHAT = "What";
export const AS = "As";
export const THERE_ARE_NONE_OF_THOSE_YET = "There are none of those yet.";
export const CAN_BE_IMPORTED_AGAIN = " Changed in a spreadsheet, it can be imported again.";
export const itWillHold = (records, again) =>
  `It will hold ${records}: what each is, its condition, where it is from and what ` +
  `was paid, and your notes. No photos.${again}`;
export const WANTED = "Wanted";
export const YOU_HAVE_NO_WANTS_YET = "You have no wants yet.";
export const onePageWith = (wants) =>
  `One page to look at in any browser, with ${wants}: item, variant, condition and ` +
  "box. Nothing about what you own, and none of your notes.";
export const wantCount = (count) => `${count} wants`;
export const THE_MOST_YOU_WOULD_PAY = "The most you would pay";
export const SAY_THAT_TOO = "Say that too";
export const SEND_THE_PAGE = "Send the page";

// Handing a file out
export const THE_FILE_IS_READY = "The file is ready";
export const CHOOSE_WHERE = "Choose where to put it, for instance “Save to Files”.";
export const SHARE = "Share";

// Lists on paper
export const TOGETHER = "Together";
export const THE_LIST_WAS_NOT_SHARED = "The list was not shared.";
export const PRINT = "Print";
export const CANNOT_PRINT_BY_ITSELF =
  "An app on the home screen cannot print by itself. Tap Print, then choose Print from " +
  "what is offered.";
export const PHOTOS = "Photos";
export const PRINT_THE_PHOTOS_TOO = "Print the photos too";
export const togetherIs = (name) => `Together, ${name}`;
export const photoOf = (place, name) => `Photo ${place} of ${name}`;
export const ITEM = "Item";
export const VARIANT = "Variant";
export const TERMS = "Terms";
export const MOST = "Most";
export const wantsAndUrgent = (count, urgent) => `${count} wants${urgent}.`;
export const andUrgent = (urgent) => `, ${urgent} urgent`;
export const CONDITION_AND_BOX = "Condition and box";
export const ASKING = "Asking";
export const pieceCount = (count) => `${count} pieces.`;
export const OTHER = "Other";
export const BOUGHT = "Bought";
export const PAID = "Paid";
export const piecesAndPaid = (count, paid) =>
  `${count} pieces. What was paid is known for ${paid} of them; it is not what they ` +
  "are worth today.";

// Saving a backup
export const NOT_SHARED =
  "The backup was not shared, and does not count as made. Try again, and choose where " +
  "to put it, for instance “Save to Files”.";
export const wentWhereChosen = (name, count) =>
  `${name}, with ${count} records, went where you chose. Check it is there.`;
export const wentToDownloads = (name, count) =>
  `${name}, with ${count} records, went to this device’s downloads. Check it is there, ` +
  "and copy it to another place.";
export const holdsOnlyRecords = (part, count) =>
  `${part} holds ${count} records, without photos and history. Keep your last backup ` +
  "as well: restore first that one, then this.";

// Where a file went
export const wasNotShared = (name) => `${name} was not shared.`;
export const isInDownloads = (name) => `${name} went to this device’s downloads.`;
export const isWhereChosen = (name) => `${name} went where you chose.`;

// Set aside
export const SET_ASIDE_FROM = {
  records: "A record kept on this device",
  journal: "A change in the history of this device",
  photos: "A photo kept on this device",
  server: "A change from the server",
  sent: "A change made on this device that the server will not take",
  photo: "A photo that the server will not take",
};
export const SET_ASIDE = "Set aside";
export const NOTHING_IS_SET_ASIDE = "Nothing is set aside.";
export const WHAT_IS_SET_ASIDE =
  "The app cannot read these, or the server will not take them. Everything else works. A " +
  "file of them helps whoever looks after the app to find out why.";
export const SAVE_THEM_ALL_AS_A_FILE = "Save them all as a file";
export const SOMETHING = "Something";
export const setAsideAt = (time) => `Set aside ${time}`;
export const LOOK_AT_IT = "Look at it";
export const lookAtName = (name) => `Look at it: ${name}`;
export const deleteName = (name) => `Delete: ${name}`;
export const bytesOf = (count, type) => `(${count} bytes, ${type})`;
export const DELETE_IT = "Delete it?";
export const deletedForGood = (name) =>
  `${name} is then deleted from this device for good. If you are not sure, save it as ` +
  "a file first.";
export const DELETE_FOR_GOOD = "Delete for good";
