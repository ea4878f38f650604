/**
 * Every screen. What stands here makes its line under More and its walks by the tests.
 *
 *   title  its name
 *   menu   what it says of itself under More, or a function of `standing` that gives it (null: no
 *          line now); left out: it is reached in another way
 *   way    the screen that leads to it ("bar": the bar at the bottom), and what is tapped there: a
 *          button called like the title, or the first entry of a list ("list Pieces")
 *   undo   false: nothing of it can be undone
 *   still  it is not drawn anew by itself: what is tapped there could be another thing then, or it
 *          would begin from its first rows
 *   load   gives its function of what is shown: the state of the app, the entry of the history, in
 *          a wide window what draws its list as a table, the lines of the menu; `identify` is there
 *          from the start
 */
import { loaded } from "../parts/loaded-later.js";
import { SETTINGS } from "./first-words.js";
import {
  A_DRAWING,
  A_NOTE,
  A_PIECE,
  A_PIECE_WRITTEN_DOWN,
  A_RANGE,
  A_RANGE_OF_YOUR_OWN,
  A_RUNNING_CHANGE,
  A_SIGHTING,
  A_VARIANT_WRITTEN_DOWN,
  A_WANT,
  ADD_A_PIECE,
  ADD_A_RUNNING_CHANGE,
  ANOTHER_VARIANT_OF_IT,
  ANSWER_WHAT_YOU_SEE,
  BACKUP,
  BIN,
  CHANGE_THE_DRAWING,
  CHANGED_NUMBERS,
  CHANGED_ON_TWO_DEVICES,
  COLLECTION,
  DEVICES_AND_SYNC,
  DUPLICATES,
  FIRST_STEPS,
  FOLLOW_FROM_AN_ADDRESS,
  FOUR_THINGS_TO_TRY,
  FROM_A_LIST,
  HISTORY,
  IDENTIFY,
  IMPORT_A_LIST,
  ITEMS_AS_A_TABLE,
  LIGHT_LOUPE_HOME_SCREEN,
  LOOK_AT_THEM,
  LOOK_BACK_AND_UNDO,
  MORE,
  NOT_KNOWN_YET,
  NOTEBOOK,
  ONE_OF_THEM,
  ONE_OF_YOUR_OWN,
  PIECES_WANTS_AND_NOTES,
  PRINT,
  PRINT_OR_SAVE,
  RANGES,
  SEARCH_EVERYTHING,
  SET_ASIDE,
  SETS_AND_TRAINS,
  SEVERAL_DEVICES,
  SIGHTINGS,
  SIGHTINGS_FROM_OTHERS,
  TO_SETTLE,
  TRY_IT,
  WANTS,
  WAYS_OUT,
  WHAT_CANNOT_BE_READ_OR_SENT,
  WHAT_IT_IS_MADE_OF,
  WHAT_WAS_DELETED_PHOTOS_TOO,
  WHAT_YOU_HAVE_TWICE,
  WHAT_YOU_IDENTIFY_FROM,
  WHAT_YOUR_PIECES_SHOW,
  WHAT_YOURS_STILL_LACK,
  WRITE_DOWN_A_PIECE,
  YOUR_OWN_LIST_AS_CSV_OR_XLSX,
} from "./words.js";

export const SCREENS = {
  identify: { title: IDENTIFY, way: ["bar"], still: true },
  collection: {
    title: COLLECTION,
    way: ["bar"],
    load: async () => (await loaded(import("../collection/collection.js"))).collectionScreen,
  },
  piece: {
    title: A_PIECE,
    way: ["collection", "list Pieces"],
    load: async () => (await loaded(import("../collection/piece.js"))).pieceScreen,
  },
  choose: {
    title: ADD_A_PIECE,
    way: ["collection"],
    load: async () => (await loaded(import("../collection/choose-item.js"))).chooseScreen,
  },
  wants: {
    title: WANTS,
    way: ["bar"],
    load: async () => (await loaded(import("../wants/wants.js"))).wantsScreen,
  },
  want: {
    title: A_WANT,
    way: ["wants", "list Wants"],
    load: async () => (await loaded(import("../wants/wants.js"))).wantScreen,
  },
  notebook: {
    title: NOTEBOOK,
    way: ["bar"],
    load: async () => (await loaded(import("../notebook/notebook.js"))).notebookScreen,
  },
  note: {
    title: A_NOTE,
    way: ["notebook", "list Notes"],
    load: async () => (await loaded(import("../notebook/note.js"))).noteScreen,
  },
  more: {
    title: MORE,
    way: ["bar"],
    load: async () => (await loaded(import("../shell/menu.js"))).moreScreen,
  },
  aside: {
    title: SET_ASIDE,
    menu: ({ aside }) => (aside > 0 ? WHAT_CANNOT_BE_READ_OR_SENT : null),
    way: ["more"],
    load: async () => (await loaded(import("../exchange/set-aside.js"))).setAsideScreen,
  },
  settle: {
    title: TO_SETTLE,
    menu: ({ clashes }) => (clashes > 0 ? CHANGED_ON_TWO_DEVICES : null),
    way: ["more"],
    still: true,
    load: async () => (await loaded(import("../sync/settle.js"))).settleScreen,
  },
  steps: {
    title: FIRST_STEPS,
    menu: FOUR_THINGS_TO_TRY,
    way: ["more"],
    load: async () => (await loaded(import("../first-steps/steps.js"))).stepsScreen,
  },
  find: {
    title: SEARCH_EVERYTHING,
    menu: PIECES_WANTS_AND_NOTES,
    way: ["more"],
    load: async () => (await loaded(import("../collection/search-everything.js"))).findScreen,
  },
  duplicates: {
    title: DUPLICATES,
    menu: WHAT_YOU_HAVE_TWICE,
    way: ["more"],
    load: async () => (await loaded(import("../collection/duplicates.js"))).duplicatesScreen,
  },
  formations: {
    title: SETS_AND_TRAINS,
    menu: WHAT_YOURS_STILL_LACK,
    way: ["more"],
    load: async () => (await loaded(import("../collection/formations.js"))).formationsScreen,
  },
  ranges: {
    title: RANGES,
    menu: WHAT_YOU_IDENTIFY_FROM,
    way: ["more"],
    load: async () => (await loaded(import("../range/ranges.js"))).rangesScreen,
  },
  range: {
    title: A_RANGE,
    way: ["ranges", "list In use"],
    load: async () => (await loaded(import("../range/one-range.js"))).oneRangeScreen,
  },
  follow: {
    title: FOLLOW_FROM_AN_ADDRESS,
    way: ["ranges"],
    still: true,
    load: async () => (await loaded(import("../range/follow-range.js"))).followScreen,
  },
  newrange: {
    title: A_RANGE_OF_YOUR_OWN,
    way: ["ranges"],
    still: true,
    load: async () => (await loaded(import("../range/own.js"))).newRangeScreen,
  },
  own: {
    title: ONE_OF_YOUR_OWN,
    way: ["ranges", "list Your own"],
    load: async () => (await loaded(import("../range/own.js"))).ownScreen,
  },
  writing: {
    title: WRITE_DOWN_A_PIECE,
    way: ["own"],
    still: true,
    load: async () => (await loaded(import("../range/own.js"))).writingScreen,
  },
  entry: {
    title: A_PIECE_WRITTEN_DOWN,
    way: ["own", "list Written down"],
    load: async () => (await loaded(import("../range/own-item.js"))).entryScreen,
  },
  version: {
    title: A_VARIANT_WRITTEN_DOWN,
    way: ["entry", "list Variants"],
    load: async () => (await loaded(import("../range/own-item.js"))).versionScreen,
  },
  looking: {
    title: ANSWER_WHAT_YOU_SEE,
    way: ["entry"],
    still: true,
    load: async () => (await loaded(import("../range/own-look.js"))).lookingScreen,
  },
  differing: {
    title: ANOTHER_VARIANT_OF_IT,
    way: ["entry"],
    still: true,
    load: async () => (await loaded(import("../range/own-look.js"))).differingScreen,
  },
  trying: {
    title: TRY_IT,
    way: ["own"],
    load: async () => (await loaded(import("../range/trying.js"))).tryingScreen,
  },
  learned: {
    title: WHAT_YOUR_PIECES_SHOW,
    way: ["own"],
    load: async () => (await loaded(import("../range/learned.js"))).learnedScreen,
  },
  proposed: {
    title: SIGHTINGS_FROM_OTHERS,
    way: ["own"],
    load: async () => (await loaded(import("../range/sightings-in.js"))).proposedScreen,
  },
  running: {
    title: A_RUNNING_CHANGE,
    way: ["own", "list Running changes"],
    load: async () => (await loaded(import("../range/running.js"))).runningScreen,
  },
  newrunning: {
    title: ADD_A_RUNNING_CHANGE,
    way: ["own"],
    still: true,
    load: async () => (await loaded(import("../range/running.js"))).newRunningScreen,
  },
  moved: {
    title: CHANGED_NUMBERS,
    way: ["ranges"],
    load: async () => (await loaded(import("../range/moved-names.js"))).movedScreen,
  },
  rows: {
    title: WHAT_IT_IS_MADE_OF,
    way: ["own", "list What it is made of"],
    load: async () => (await loaded(import("../range/own-rows.js"))).rowsScreen,
  },
  row: {
    title: ONE_OF_THEM,
    way: ["rows", "list Kinds of piece"],
    load: async () => (await loaded(import("../range/own-rows.js"))).rowScreen,
  },
  listin: {
    title: FROM_A_LIST,
    way: ["own"],
    still: true,
    load: async () => (await loaded(import("../range/list-in.js"))).listInScreen,
  },
  table: {
    title: ITEMS_AS_A_TABLE,
    way: ["own"],
    load: async () => (await loaded(import("../range/row-table.js"))).tableScreen,
  },
  pad: {
    title: A_DRAWING,
    way: ["row", CHANGE_THE_DRAWING],
    load: async () => (await loaded(import("../range/drawing-pad.js"))).padScreen,
  },
  sightings: {
    title: SIGHTINGS,
    menu: NOT_KNOWN_YET,
    way: ["more"],
    load: async () => (await loaded(import("../range/sightings.js"))).sightingsScreen,
  },
  sighting: {
    title: A_SIGHTING,
    way: ["sightings", "list Sightings"],
    load: async () => (await loaded(import("../range/sightings.js"))).sightingScreen,
  },
  devices: {
    title: DEVICES_AND_SYNC,
    menu: SEVERAL_DEVICES,
    way: ["more"],
    still: true,
    load: async () => (await loaded(import("../sync/devices.js"))).devicesScreen,
  },
  import: {
    title: IMPORT_A_LIST,
    menu: YOUR_OWN_LIST_AS_CSV_OR_XLSX,
    way: ["more"],
    load: async () => (await loaded(import("../exchange/import.js"))).importScreen,
  },
  came: {
    title: LOOK_AT_THEM,
    way: ["import"],
    load: async () => (await loaded(import("../exchange/brought-in.js"))).cameScreen,
  },
  export: {
    title: PRINT_OR_SAVE,
    menu: WAYS_OUT,
    way: ["more"],
    load: async () => (await loaded(import("../exchange/export.js"))).exportScreen,
  },
  print: {
    title: PRINT,
    way: ["wants"],
    still: true,
    load: async () => (await loaded(import("../exchange/print.js"))).printScreen,
  },
  backup: {
    title: BACKUP,
    menu: ({ saved }) => saved,
    way: ["more"],
    load: async () => (await loaded(import("../exchange/backup.js"))).backupScreen,
  },
  changes: {
    title: HISTORY,
    menu: LOOK_BACK_AND_UNDO,
    way: ["more"],
    load: async () => (await loaded(import("../collection/changes.js"))).changesScreen,
  },
  trash: {
    title: BIN,
    menu: WHAT_WAS_DELETED_PHOTOS_TOO,
    way: ["more"],
    load: async () => (await loaded(import("../collection/trash.js"))).trashScreen,
  },
  settings: {
    title: SETTINGS,
    menu: LIGHT_LOUPE_HOME_SCREEN,
    way: ["more"],
    undo: false,
    load: async () => (await loaded(import("../settings/settings.js"))).settingsScreen,
  },
};

/** The lines of the menu as things stand: [name, title, about]. */
export function menuLines(standing) {
  return Object.entries(SCREENS)
    .map(([name, { title, menu }]) => [
      name,
      title,
      typeof menu === "function" ? menu(standing) : menu,
    ])
    .filter(([, , about]) => typeof about === "string");
}
