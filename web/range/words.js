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
  "None yet. When a piece is not in the range, or shows something new, the answer offers " +
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

export const PHOTO_NOT_SMALL = "That photo does not come small enough. Take one with less in it.";
