/** The words of importing a list. */

// The columns
export const SORTS_OF_ROWS = [
  ["piece", "Pieces of the collection"],
  ["want", "Wants"],
  ["note", "Notes from stalls"],
];
export const ORDERS_OF_DAYS = [
  ["day", "Day first: 12/5 is 12 May"],
  ["month", "Month first: 12/5 is 5 December"],
];
export const sayHowDatesAre = (name) =>
  `First say how the dates in “${name}” are written: the column does not show it.`;
export const fileRows = (name, count) => `${name}: ${count} rows`;
export const SHEET = "Sheet";
export const WRITTEN_BY_THIS_APP = "This app wrote it, so its columns are known.";
export const WHAT_THE_ROWS_ARE = "What the rows are";
export const RANGES_TO_LOOK_IN = "Ranges to look in";
export const PRICES_ARE_IN = "Prices with no currency are in";
export const SEE_WHAT_CHANGES = "See what changes";
export const ANOTHER_FILE = "Another file";
export const WHICH_ROW_HAS_THE_HEADINGS = "Which row has the headings";
export const NONE = "None";
export const rowNumber = (row) => `Row ${row}`;
export const THE_COLUMNS = "The columns";
export const WHAT_EACH_WAS_READ_AS =
  "What each was read as. Change what is wrong. A column that you leave out is not imported.";
export const LEAVE_IT_OUT = "Leave it out";
export const daysOf = (column) => `Days of ${column}`;
export const columnNumber = (number) => `column ${number}`;
export const CHOOSE = "Choose";
export const columnOf = (number) => `Column ${number}`;
export const NOTHING_IN_IT = "It is empty.";

// The rows
export const FATES = {
  new: "new",
  changed: "changed",
  same: "here already",
  back: "taken out of the bin",
  trash: "in the bin here: left there",
  out: "left out",
  open: "not imported until you choose a number",
  failed: "cannot be imported",
};
export const HAVE_ALREADY = {
  item: "you have one already",
  variant: "you have this variant already",
};
export const TAKE_THE_LIKELIEST = "Take the likeliest for all of them";
export const openAreNotSure = (open, are) =>
  `${open} ${are} uncertain. What you do not choose is imported in your own words.`;
export const THERE_IS_NOTHING_TO_IMPORT = "There is nothing to import";
export const importCount = (count) => `Import ${count}`;
export const rowsOf = (count, all) => `${count} of ${all} rows`;
export const ROWS = "Rows";
export const WHAT_CHANGES = "What changes";
export const BACK_TO_THE_COLUMNS = "Back to the columns";
export const SHOW = "Show";
export const TAKE_ONE_OUT = "Take this 1 out of the bin and import it";
export const takeTheseOut = (count) => `Take these ${count} out of the bin and import them`;
export const IN_THE_BIN_HERE = "In the bin here";
export const ONE_REMARK = "1 remark on the numbers";
export const remarkCount = (count) => `${count} remarks on the numbers`;
export const TO_CHOOSE = "To choose";
export const NEW = "New";
export const CHANGED = "Changed";
export const NOT_ALL_COULD_BE_READ = "Not all could be read";
export const HERE_ALREADY = "Here already";
export const NOT_IMPORTED = "Not imported";
export const allRows = (count) => `All rows (${count})`;
export const saveLeftOut = (rows) => `Save the ${rows} left out as a file`;
export const rowCount = (count) => `${count} rows`;
export const rowName = (row, name) => `Row ${row}: ${name}`;
export const readAsWhat = (names) => `Read as: ${names}`;
export const NOTHING_IN_THE_ROW = "it is empty";
export const SOMETHING_ELSE_KEEP_MY_WORDS = "Something else: keep my words";
export const LEAVE_THIS_ROW_OUT = "Leave this row out";
export const rowIs = (row) => `Row ${row} is`;
export const rowField = (row, field) => `Row ${row}, ${field}`;
export const LEAVE_IT_FOR_NOW = "Leave it as it is here for now";
export const KEEP_WHAT_IS_HERE = "Keep what is here";
export const TAKE_WHAT_IS_IN_THE_FILE = "Take what is in the file";

// What becomes of the rows
export const YOU_LEFT_IT_OUT = "You left it out.";
export const TAKEN_OUT_OF_THE_BIN = "taken out of the bin";
export const HERE_ALREADY_UNCHANGED = "here already, unchanged";
export const IN_THE_BIN_AND_LEFT = "in the bin here, and left there";
export const TO_BE_CHOSEN = "without a number, to be chosen";
export const CANNOT_BE_IMPORTED = "cannot be imported";
export const LEFT_OUT = "left out";

// The file
export const IMPORT_A_LIST = "Import a list";
export const CHOOSE_A_FILE = "Choose a file";
export const OR_DRAG_IT_HERE = "Or drag it here.";
export const LIST_KEPT_ELSEWHERE =
  "A list that you have kept elsewhere, as CSV or XLSX: of pieces, of wants, or of what " +
  "you saw at stalls. Nothing is saved before you have seen what changes.";
export const READING_THE_FILE = "Reading the file…";
export const rowsRead = (count) => `${count} rows read.`;
export const LOOKING_AT_EACH_ROW = "Looking at each row";
export const ROWS_LOOKED_AT = "Rows looked at";
export const noneOfRows = (length) => `0 of ${length} rows`;
export const STOP = "Stop";
export const importedFromFile = (count, name) => `${count} imported from ${name}`;
export const importedCount = (written) => `${written} imported`;
export const UNDO_TAKES_ALL_BACK =
  "Undo takes it all back at once. Importing the same file again changes nothing.";
export const LOOK_AT_THEM = "Look at them";

// The file
export const READER_NOT_HERE =
  "The part that reads and writes lists is not on this device yet. Try it with a signal.";
export const CANNOT_BE_READ_ANY_MORE = "This file cannot be read any more. Choose it again.";
export const NO_BOOK =
  "This file is not a workbook that can be read. Open it in a spreadsheet program, save it as " +
  "XLSX and choose that file.";
export const NO_SHEET_WITH_CELLS = "There is no sheet with cells in this workbook.";
export const noSuchSheet = (sheet, sheets) => `There is no sheet “${sheet}”. There are: ${sheets}.`;
export const tooManyCells = (sheet) =>
  `The sheet “${sheet}” goes on for more cells than can be looked at. Copy the table alone into ` +
  "a new workbook.";
export const wouldTake = (size) =>
  `Unpacked, this file would take ${size} MB. It was not opened. Copy the table into a new ` +
  "workbook, without empty rows and pictures.";
export const leftOutFile = (day) => `stallside-left-out-rows-valuables-${day}.csv`;
