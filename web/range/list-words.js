/** The words of writing a range down from a list. */

// The file
export const NO_LIST_IN_IT = "There is no list in it: the first row must say what the columns are.";
export const tooManyRows = (rows) =>
  `This list has ${rows} rows, and at most 2,000 are taken in at once. Split it, and ` +
  "import one part after the other.";

// The list
export const rowsRead = (count) => `${count} rows read.`;
export const FROM_A_LIST = "From a list";
export const ROW_FOR_EACH =
  "A row for each item or variant, and a first row that says what the columns are. " +
  "Nothing is saved before you have seen what changes.";
export const CHOOSE_A_FILE = "Choose a file";
export const PASTE_IT_HERE = "Or paste it here, from a spreadsheet or a page";
export const READ_WHAT_I_PASTED = "Read what I pasted";
export const seenIn = (key) => `seen ${key}`;
export const somethingCalled = (name) => `Something to look at, called “${name}”`;
export const columnNumber = (number) => `Column ${number}`;
export const EMPTY = "Empty";
export const twoColumnsAre = (twice) => `Two columns are “${twice}”. Leave one of them out.`;
export const whatAreTheColumns = (count) => `${count} rows: what are the columns?`;
export const WHAT_ARE_THEY = "What are they, if neither the name nor a column says?";
export const SEE_WHAT_CHANGES = "See what changes";
export const ANOTHER_LIST = "Another list";
export const NEW_ITEM = "new item";
export const NEW_ITEMS = "new items";
export const FURTHER_VARIANT = "further variant";
export const FURTHER_VARIANTS = "further variants";
export const IS_THERE_ALREADY = "is there already";
export const ARE_THERE_ALREADY = "are there already";
export const leftOutNameless = (left) => `${left} without a number or a name left out`;
export const WHAT_CHANGES = "What changes";
export const WRITE_THEM_DOWN = "Write them down";
export const BACK_TO_THE_COLUMNS = "Back to the columns";
export const ROWS = "Rows";
export const rowStart = (line) => `Row ${line} `;
export const somethingNew = (text) => `Something new: ${text}`;
export const LEAVE_IT_OPEN = "Leave it open";
export const IN_1_ROW = "In 1 row";
export const inRows = (count) => `In ${count} rows`;
export const rowIsWrong = (line, text, wrong) => `Row ${line}: “${text}”. ${wrong}`;
export const WHAT_ARE_THESE = "What are these?";
export const SAID_ONCE = "Say it once: it counts for every row that has it.";
export const YEARS_THAT_CANNOT_BE_READ = "Years that cannot be read";
export const THEY_STAY_EMPTY = "They stay empty; everything else in the rows is imported.";
export const ONE_ITEM_IS = "1 item of the list is";
export const itemsAre = (count) => `${count} items of the list are`;
export const thoseInTheRange = (those) => `${those} in the range.`;

// What is meant
/** What a column can be, besides something to look at. */
export const FIELDS = [
  ["", "Leave it out"],
  ["number", "Number"],
  ["name", "Name"],
  ["kind", "What it is"],
  ["variant", "What the variant is called"],
  ["years", "Made"],
  ["source", "Who says so"],
  ["carried", "Printed on the piece itself"],
  ["note", "Notes"],
];
export const newText = (text) => `new ${text}`;
export const isWrittenDown = (name) => `${name}: is written down already, and stays as it is`;
export const isNewItem = (name) => `${name}: a new item`;
export const isVariantOf = (name) => `${name}: a variant of it`;
