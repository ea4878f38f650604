/** The words of ranges and sightings: adding, sharing, following a range. */

// Proposing to the keepers
export const STATES_OF_A_PROPOSAL = {
  waiting: "waits",
  taken: "was taken",
  declined: "was declined",
};
export const PROPOSE_IT_TO_THE_KEEPERS = "Propose it to the keepers";
export const proposalOf = (day, state, said) => `That of ${day} ${state}.${said}`;
export const PROPOSED = "Proposed";
export const WHAT_THE_KEEPERS_GET =
  "They get what was seen, what you noted of it and its photos, and nothing else that you " +
  "keep. They look at it before anybody else sees it.";
export const WORD_OF_THE_KEEPERS = "The word that the keepers gave you";
export const SEND_IT = "Send it";
export const SENT_TO_THE_KEEPERS = "Sent. The keepers of the range look at it.";
export const nothingWasSent = (why) => `${why} Nothing was sent.`;
export const keepersAnswered = (status) => `The keepers’ server answered ${status}.`;
export const KEEPERS_NOT_REACHED =
  "The keepers’ server cannot be reached. Try again where there is a signal.";

// A range as a folder
export const NO_RANGE_IN_IT = "There is no range in it: its folder must hold a file “range.toml”.";
export const inLine = (line) => ` in line ${line}`;
export const fileNotRead = (name, place) =>
  `The file “${name}” cannot be read${place}: texts stand in quotation marks, lists in ` +
  "square brackets. Mend it in a text editor, then import it again.";
export const FOLDER_PART_NOT_HERE =
  "The part that reads such folders is not on this device yet. Try it with a signal.";

export const THE_WHOLE_FILE = "the whole file";

// Sightings
export const SIGHTINGS = "Sightings";
export const NO_SIGHTINGS_YET =
  "No sightings yet. When a piece is not in the range, or shows something new, the answer offers " +
  "to keep it as a sighting.";
export const SEND_THE_FILE =
  "Send the file to whoever keeps the range: it has what was seen, when it was made, and " +
  "the photos.";
export const SAVE_ALL_AS_A_FILE = "Save all as a file";
export const NOT_IN_THE_RANGE = "Not in the range";
export const SIGHTING = "Sighting";
export const WHAT_TO_CALL_IT = "What to call it";
export const NAME = "Name";
export const EXAMPLE_OF_A_SIGHTING = "In a few words: blue, with a silver roof.";
export const ITEM = "Item";
export const YEARS = "Years";
export const HOW_DO_YOU_KNOW = "How do you know?";
export const NOTE = "Note";
export const SAVE_IT_AS_A_FILE = "Save it as a file";
export const ALL_SIGHTINGS = "All sightings";
export const MOVE_TO_THE_BIN = "Move to the bin";
export const THE_SIGHTING = "The sighting";
export const IT_IS_A_VARIANT_OF = "It is a variant of";
export const NOT_KNOWN = "Not known";
export const ONLY_IF_YOU_KNOW = "Only if you know it: a dated box, a receipt, a gift.";
export const TYPE_YEARS_HERE = "Type years here, such as 1957 or late fifties.";
export const WHEN_WAS_IT_MADE = "When was it made?";
export const BEYOND_THE_SOURCES = "This goes beyond what the sources say:";
export const knownFrom = (feature, seen, years) => `${feature}, ${seen}: known from ${years}.`;
export const WHAT_WAS_SEEN = "What was seen";

export const picturesAreLarge = (megabytes) =>
  `The photos and drawings of this range come to ${megabytes} MB. It works here, and nothing is ` +
  "lost; but nobody can follow or add one of more than 40 MB. Draw what a drawing can show, and " +
  "take those photos out.";
export const PHOTO_NOT_SMALL = "That photo cannot be made small enough. Take one with less in it.";

// About a range
export const WHAT_THE_COUNTRY_DOES =
  "What is printed on pieces for this country then helps to date them.";
export const ABOUT_THE_RANGE = "About the range";
export const NAME_OF_THE_RANGE = "Name of the range";
export const WHO_MADE_IT = "Who made it";
export const MAKER = "Maker";
export const WHO_WROTE_IT_DOWN = "Who wrote it down";
export const WHOSE_NAME = "Your name, for those whom you share it with.";
export const SCALE = "Scale";
export const GAUGE = "Gauge";
export const WHAT_THE_BODIES_ARE_MADE_OF = "What the bodies are made of";
export const MATERIAL = "Material";
export const EXAMPLE_OF_A_MATERIAL = "For example: tinplate. Leave it empty where it differs.";
export const COUNTRY = "Country";
export const ABOUT_IT = "About it";
export const MADE = "Made";
export const EXAMPLE_OF_YEARS = "For example: 1950 to 1965. Leave it empty where you do not know.";
export const SHARE_AS_A_FOLDER = "Share it as a folder of files";
export const WHAT_THE_FOLDER_IS =
  "A zip with tables and drawings that other programs can read. It can be imported again " +
  "under Ranges.";
export const DELETE_THIS_RANGE = "Delete this range";
export const TRACK_NOT_SAVED =
  "Not saved. Write the width of the track in millimetres, for example: 16.5.";
export const WIDTH_OF_THE_TRACK_IN_MM = "Width of the track in mm";
export const NOT_SAID = "Not said";
export const recordCount = (count) => `${count} records`;
export const RANGE_DELETED = "Range deleted";
export const rangeIsInTheBin = (name) =>
  `${name} is in the bin, with all that is written down in it.`;
export const whetherToDelete = (name) => `Delete ${name}?`;
export const NOTHING_OF_YOURS = "Nothing in your collection belongs to it.";
export const belongToIt = (held, belong) =>
  `${held} of your collection, wants and notebook ${belong} to it. They stay, with ` +
  "their numbers, but the app can no longer say what they are.";
export const CAN_BE_PUT_BACK = "It goes to the bin, and can be put back from there.";
export const DELETE_IT = "Delete it";

// Changed numbers
export const LOOK_AT_THEM = "Look at them";
export const changedNumbersIn = (name) => `Changed numbers in ${name}`;
export const haveNewNumber = (records, have) => `${records} now ${have} new number or variant`;
export const HAS_ITS = "has its";
export const HAVE_THEIR = "have their";
export const pointToNothing = (records, point, are) =>
  `${records} ${point} to what is no longer in it and ${are} kept as before`;
export const hasChanged = (name, names) => `${name} has changed: ${names}.`;
export const ONE_RECORD_OF_YOURS = "1 record of yours";
export const recordsOfYours = (count) => `${count} records of yours`;
export const CHANGED_NUMBERS = "Changed numbers";
export const EVERYTHING_POINTS_RIGHT = "Everything you keep points to what is in the ranges.";
export const POINT_TO_NOTHING =
  "These point to what is no longer in the range. They are kept as they are, until you " +
  "choose again.";
export const NO_LONGER_IN_THE_RANGE = "No longer in the range";
export const CHOOSE_AGAIN = "Choose again";
export const chooseAgain = (name) => `Choose again: ${name}`;
export const WERE_GIVEN_NEW_NUMBERS =
  "These were given their new number or variant. History can undo it.";
export const MOVED = "Moved";
export const FOUND = "Found";
export const SOME_VARIANT_OF_IT = "Some variant of it";
export const NUMBER_OR_NAME = "Number or name";
export const CHOSEN_AGAIN = "Chosen again";
export const IT_POINTS_TO_THIS_NOW = "It points to this now.";

// A range from a file
export const importName = (name) => `Import ${name}`;
export const IT_HAS_1_ITEM = "It has 1 item.";
export const hasItems = (count) => `It has ${count} items.`;
export const WHO_WROTE_IT = "Who wrote it?";
export const WHO_SAYS_WHAT = "So that others know who says what.";
export const putTogetherWith = (name) => `Put it together with your ${name}`;
export const KEEP_IT_BESIDE_YOURS = "Keep it beside yours";
export const IMPORT_IT = "Import it";
export const ONLY_USE_IT_AS_IT_IS = "Only use it as it is";
export const ONE_DRAWING_IS = "1 drawing is";
export const drawingsAre = (large) => `${large} drawings are`;
export const ONE_THING_MEANS = "1 thing in it means";
export const thingsMean = (unread) => `${unread} things in it mean`;
export const nothingInThisRange = (things, are) =>
  `${things} nothing in this range, and ${are} left out: a kind, a source, a number or ` +
  "what is seen may be spelt wrong. Correct the files first, or import the range as " +
  "it is.";
export const drawingsTooLarge = (drawings) =>
  `${drawings} too large and left out. Make them smaller, then import it again.`;
export const THE_COLUMN = "The column";
export const THE_COLUMNS = "The columns";
export const columnsLeftOut = (columns, names, are) =>
  `${columns} ${names} ${are} left out: nothing to look at has that name. Give it ` +
  "the name of something to look at, then import it again.";
export const ANOTHER_COLLECTOR = "Another collector";
export const CONTRADICTS_ITSELF =
  "This file contradicts itself. Nothing was changed. Ask for it again.";
export const importedAndDiffers = (items, who, places) =>
  `${items} imported. ${who} differs in ${places}: both are kept.`;
export const itemsImported = (items) => `${items} imported.`;
export const nameImported = (name) => `${name} imported`;
export const itemCount = (count) => `${count} items`;
export const ONE_PLACE = "one place";
export const placeCount = (count) => `${count} places`;

// Ranges
export const RANGES = "Ranges";
export const IN_USE = "In use";
export const FROM_SOMEBODY_ELSE = "From somebody else";
export const FOLLOW_FROM_AN_ADDRESS = "Follow a range from an address";
export const WHAT_A_RANGE_FILE_IS =
  "A range can come as a file from somebody who wrote it down. What it says is theirs: " +
  "the app checks only that it can be read.";
export const WRITTEN_DOWN_BY_YOU = "Written down by you";
export const YOUR_OWN = "Your own";
export const A_RANGE_OF_YOUR_OWN = "A range of your own";
export const BY_YOU = "written down by you";
export const followedFrom = (host) => `followed from ${host}`;
export const ADDED_FROM_A_FILE = "added from a file";
export const firstToLast = (first, last) => `${first} to ${last}`;
export const LOOK_AT_IT = "Look at it";
export const lookAtRange = (name) => `Look at ${name}`;
export const SHARE = "Share";
export const shareName = (name) => `Share ${name}`;
export const REMOVE = "Remove";
export const removeName = (name) => `Remove ${name}`;
export const ADD_A_RANGE_FROM_A_FILE = "Add a range from a file";
export const isAsInTheFile = (name) => `${name} is now as in the file.`;
export const isAdded = (name) => `${name} is added.`;
export const TOO_LARGE_FOR_A_RANGE = "this is too large to be a range.";
export const finishThePieceOf = (name) =>
  `You are identifying a piece of ${name}. Finish it or start again, then remove the range.`;
export const isRemoved = (name) => `${name} is removed. Your own pieces of it stay.`;
export const PUT_IT_BACK = "Put it back";
export const IDENTIFY_RANGE = "identify range";

export const MAKING_PART_NOT_HERE =
  "The part that makes a range of what you wrote down is not on this device yet. Try it " +
  "with a signal.";

// Two ranges that two devices took in
export const RANGES_TOLD_APART = "Ranges told apart";
export const twoOfOneName = (name) =>
  `${name} was imported on two of your devices, and not the same way. Both are kept; what you ` +
  "recorded belongs to the one that was there first. To make one of them, share one as a file, " +
  "add it again, and put it together with the other.";
