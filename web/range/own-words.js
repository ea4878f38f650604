/** The words of writing a range of one’s own. */

// An item and its variants
// how far each is believed is a guess, no source
export const SAID_BY = [
  { what: "A catalogue", trust: 0.9 },
  { what: "A book", trust: 0.8 },
  { what: "My own piece", trust: 0.9 },
  { what: "Somebody said so", trust: 0.5 },
];
export const ADD_THERE = "If this is another version of it, add it there as a variant.";
export const NUMBER_FIRST =
  "Give it a number first, so that your collection can name it. What you call it will do.";
export const ANSWER_WHAT_YOU_SEE = "Answer what you see";
export const ANOTHER_VARIANT_OF_IT = "Another variant of it";
export const NAME = "Name";
export const MADE = "Made";
export const YEARS = "Years";
export const EXAMPLE_OF_YEARS =
  "For example: about 1957, 1957 to 61, before 1960. Leave it empty if you do not know.";
export const OF_YOUR_OWN_TO_LOOK_AT = "Something of your own to look at";
export const NOTES = "Notes";
export const MORE_ABOUT_IT = "More about it";
export const hasThisNumber = (title, instead) =>
  `Not saved. ${title} has this number already. ${instead}`;
export const NUMBER = "Number";
export const AS_ON_THE_PIECE = "As on the piece or its box. Leave it empty if there is none.";
export const WHO_SAYS_SO = "Who says so";
export const WHO_SAYS_SO_CHANGED = "Who says so changed";
export const HOW_DO_YOU_KNOW = "How do you know?";
export const OTHERWISE_SAID = "Another source says otherwise";
export const newText = (place) => `new ${place}`;
export const NOT_NOTED = "Not noted";
export const WHICH_ONE = "Which one?";
export const SOURCE = "Source";
export const EXAMPLE_OF_A_SOURCE = "So that you find it again, for example: Summer catalogue 1958.";
export const OTHER_YEARS = "Other years";
export const madeAsSaid = (source) => `Made, as ${source} says`;
export const ANOTHER_SOURCE = "another source";
export const ANOTHER_BOOK = "Another book";
export const FURTHER_SOURCE = "Another source";
export const NOTED = "Noted";
export const BETWEEN_STATES = " or ";
export const NOT_RECORDED = "Not recorded";
export const VARIANTS = "Variants";
export const AS_FIRST_NOTED = "As first noted";
export const WITHOUT_A_NAME_YET = "Without a name yet";
export const NEW_VARIANT = "New variant";
export const ALREADY_YOURS = "It is in your collection";
export const IT_IS_IN_YOUR_COLLECTION = "It is in your collection.";
export const ADDED_TO_COLLECTION = "Added to collection";
export const IT_IS_MINE_ADD_TO_COLLECTION = "It is mine: add to collection";
export const THE_ITEM = "Item";
export const A_VARIANT_WITHOUT_A_NAME_YET = "A variant without a name yet";
export const WHAT_IT_IS_CALLED = "What it is called";
export const EXAMPLE_OF_A_VARIANT = "By what is different, for example: with metal horns.";
export const variantOf = (title) => `A variant of ${title}`;
export const EMPTY_AS_FOR_THE_ITEM =
  "Leave it empty if it is the same as for the item, or not known.";
export const SOMETHING_ELSE_IS_DIFFERENT = "Something else is different";
export const COPY_IT = "Copy it";
export const THE_VARIANT = "Variant";
export const VARIANT_COPIED = "Variant copied";

// What is seen
export const CANT_SEE_IT = "Can’t see it";
export const SOMETHING_ELSE = "Something else";
export const THAT_WILL_DO = "That will do";
export const IN_WORDS = "In words";
export const THE_LAST_ONE = "the last one";
export const ONE_THING_LEFT = "1 thing left";
export const thingsLeft = (count) => `${count} things left`;
export const TAP_WHAT_YOU_SEE = "Tap what you see.";
export const THAT_IS_ALL_THERE_IS = "That is all there is to look at";
export const notedFor = (title) => `What you saw is noted for ${title}.`;
export const BACK_TO_IT = "Back to it";
export const THE_NEXT_PIECE = "The next piece";
export const WHAT_DO_YOU_SEE = "What do you see?";
export const WHAT_DO_YOU_SEE_THERE = "What do you see there?";
export const isNoted = (called) => `${called} noted`;
export const WHERE_DO_YOU_LOOK = "Where do you look? For example: lamp brackets";
export const IN_TWO_OR_THREE_WORDS = "In two or three words.";
export const WHAT_YOU_SEE = "What you see";
export const PHOTOGRAPH_IT = "Photograph it";
export const ADD_IT = "Add it";
export const NAME_IT_IN_WORDS = "Name what you see first, in two or three words.";
export const WHAT_IS_DIFFERENT = "What is different?";
export const THAT_IS_ALL = "That is all";

// What it is made of
export const KINDS_OF_PIECE = "Kinds of piece";
export const A_KIND_OF_PIECE = "a kind of piece";
export const NEW_KIND = "New kind";
export const WHAT_TO_LOOK_AT = "What to look at";
export const SOMETHING_TO_LOOK_AT = "something to look at";
export const SOMETHING_NEW = "Something new";
export const PARTS_THAT_GET_SWAPPED = "Parts that get swapped";
export const A_PART = "a part";
export const NEW_PART = "New part";
export const CATALOGUES_AND_BOOKS = "Catalogues and books";
export const A_SOURCE = "a source";
export const NEW_SOURCE = "New source";
export const WHAT_TO_TAKE_CARE_WITH = "What to take care with";
export const A_CAUTION = "a caution";
export const NUMBERS_THAT_CHANGED = "Numbers that changed";
export const WHAT_IT_IS_MADE_OF = "What it is made of";
export const newOne = (kind) => `New: ${kind}`;
export const addOne = (kind) => `Add ${kind}`;
export const DRAW_OR_PHOTOGRAPH_IT = "Draw or photograph it";
export const CHANGE_THE_DRAWING = "Change the drawing";
export const somethingElseNumber = (number) => `Something else ${number}`;
export const NEW_WHAT_CAN_BE_SEEN = "New: what can be seen";
export const WHAT_CAN_BE_SEEN_THERE = "What can be seen there";
export const TAKES_TWO = "It takes two to choose between: with this one alone it is not asked.";
export const ADD_WHAT_CAN_BE_SEEN = "Add what can be seen";
export const ORDER_CHANGED = "Order changed";
export const oneUp = (name) => `${name}: one up`;
export const rowDeleted = (name) => `${name} deleted`;
export const IT_IS_IN_THE_BIN = "It is in the bin.";
export const whetherToDelete = (name) => `Delete ${name}?`;
export const placesSaySo = (places, say) =>
  `${places} in this range ${say} so, which no longer counts once it is deleted. Nothing else ` +
  "is lost, and it is all there again once you take this out of the bin.";
export const placeCount = (uses) => `${uses} places`;
export const DELETE_IT = "Delete it";

// Putting a piece in
export const MAKERS_NAME = "The maker’s name, or what collectors call it.";
export const NAME_THE_RANGE_FIRST =
  "Name the range first: the maker’s name, or what collectors call it.";
export const ADD_TO_YOUR_OWN_RANGE = "Add to your own range";
export const WHAT_IS_IT = "What is it?";
export const intoName = (name) => `Into ${name}`;
export const OR_INTO_A_NEW_ONE = "Or into a new one";
export const WHAT_IS_IT_CALLED = "What is it called?";
export const BEGIN_A_NEW_RANGE = "Begin a new range";
export const pieceInto = (name) => `A piece put into ${name}`;

// Pieces that are held
export const HELD_BY_IT =
  "Not saved. What you keep of it goes by this number. Give it another one rather than none.";
export const NUMBER_CHANGED = "Number changed";
export const recordsOfIt = (records) => `${records} of it`;
export const ONE_RECORD_OF_YOURS_IS = "1 record of yours is";
export const recordsOfYoursAre = (mine) => `${mine} records of yours are`;
export const THEY_STAY =
  "They stay in your collection, wants or notebook with their number, but the app can no " +
  "longer say what they are. If it only has a new number, change the number instead: they " +
  "follow.";
export const DELETE_IT_ANYWAY = "Delete it anyway";

export const withoutANumber = (kind) => `${kind} without a number yet`;
export const PIECE = "Piece";

// Drawing
export const FILLS = [
  ["", "No colour"],
  ["#1d1d1d", "Black"],
  ["#8a8f94", "Grey"],
  ["#ffffff", "White"],
  ["#b3202a", "Red"],
  ["#7a1f2b", "Maroon"],
  ["#e07b1f", "Orange"],
  ["#f2c230", "Yellow"],
  ["#e9dcb5", "Cream"],
  ["#2f6b3a", "Green"],
  ["#274b8f", "Blue"],
  ["#6b4a2e", "Brown"],
];
export const DRAWING = "Drawing";
export const A_DRAWING = "A drawing";
export const DRAW_IT_INSTEAD = "Draw it instead";
export const AS_IT_IS_SHOWN = "As it is shown with the question:";
export const THE_DRAWING = "The drawing. Its shapes are listed below it.";
export const LIST_OF_SHAPES = "Shapes";
export const END_THE_LINE = "End the line";
export const WHAT_IS_LOOKED_AT = "what to look at";
export const AROUND_IT = "around it";
export const REMOVED = "Removed.";
export const THE_CHOSEN_SHAPE = "The chosen shape";
export const moveWord = (word) => `Move ${word}`;
export const WHAT_TO_LOOK_AT_OR_AROUND_IT = "What to look at, or around it";
export const REMOVE = "Remove";
export const TAKE_BACK = "Take back";
export const FILLED_WITH = "Filled with";
export const PUT_ONE_IN_THE_MIDDLE = "Put one in the middle";
export const DRAW = "Draw";
export const CHOOSE_AND_MOVE = "Choose and move";
export const HOW = "How";
export const LOOK_AT_OR_AROUND = "What to look at (black); else around it (grey)";

export const SHAPE_NAMES = {
  line: "Line",
  polyline: "Line with corners",
  rect: "Rectangle",
  circle: "Circle",
  ellipse: "Ellipse",
  path: "Free hand",
  polygon: "Polygon",
  text: "Text",
};

// A range of one’s own
export const WRITE_DOWN_A_PIECE = "Write down a piece";
export const NOTHING_WRITTEN_DOWN =
  "Nothing is written down yet. Take a piece in your hand and begin with it.";
export const WRITTEN_DOWN = "Written down";
export const FROM_A_LIST = "From a list";
export const ITEMS_AS_A_TABLE = "Items as a table";
export const VARIANTS_AS_A_TABLE = "Variants as a table";
export const TRY_AND_SEE = "Try it, and see what is missing";
export const WHAT_YOUR_PIECES_SHOW = "What your pieces show";
export const SIGHTINGS_FROM_OTHERS = "Sightings from others";
export const variantCount = (count) => `${count} variants`;
export const AS_YOU_WOULD_SAY = "As you would say it to another collector.";
export const isThereAlready = (name) =>
  `${name} is there already. Give this one another name, or write into that one.`;
export const NAME_IT_FIRST = "Give it a name first: the maker’s, or what collectors call it.";
export const NEW_RANGE = "New range";
export const A_RANGE_OF_YOUR_OWN = "A range of your own";
export const BEGIN = "Begin";
export const WHAT_HAVE_YOU_GOT = "What have you got?";
export const TAP_WHAT_IT_IS = "Tap what it is.";
export const LIKE_ONE_OF_THESE = "Like one of these?";
export const LIKE_NONE_OF_THEM = "Like none of them";
export const NEW_PIECE_WRITTEN_DOWN = "New piece written down";
