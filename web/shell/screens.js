/**
 * Every screen. What stands here makes its line under More and its walks by the tests.
 *
 *   title  its name
 *   menu   what it says of itself under More, or a function of `standing` that gives it (null: no
 *          line now); left out: it is reached in another way
 *   way    the screen that leads to it ("bar": the bar at the bottom), and what is tapped there: a
 *          button called like the title, or the first entry of a list ("list Pieces")
 *   undo   false: nothing of it can be undone
 *   still  it is not drawn anew by itself: what is tapped there could be another thing then
 *   load   gives its function of what is shown: the state of the app, the entry of the history, in
 *          a wide window what draws its list as a table, the lines of the menu; `identify` is there
 *          from the start
 */
import { loaded } from "../parts/loaded-later.js";

export const SCREENS = {
  identify: { title: "Identify", way: ["bar"], still: true },
  collection: {
    title: "Collection",
    way: ["bar"],
    load: async () => (await loaded(import("../collection/collection.js"))).collectionScreen,
  },
  piece: {
    title: "A piece",
    way: ["collection", "list Pieces"],
    load: async () => (await loaded(import("../collection/piece.js"))).pieceScreen,
  },
  choose: {
    title: "Add a piece",
    way: ["collection"],
    load: async () => (await loaded(import("../collection/choose-item.js"))).chooseScreen,
  },
  wants: {
    title: "Wants",
    way: ["bar"],
    load: async () => (await loaded(import("../wants/wants.js"))).wantsScreen,
  },
  want: {
    title: "A want",
    way: ["wants", "list Wants"],
    load: async () => (await loaded(import("../wants/wants.js"))).wantScreen,
  },
  notebook: {
    title: "Notebook",
    way: ["bar"],
    load: async () => (await loaded(import("../notebook/notebook.js"))).notebookScreen,
  },
  note: {
    title: "A note",
    way: ["notebook", "list Notes"],
    load: async () => (await loaded(import("../notebook/note.js"))).noteScreen,
  },
  more: {
    title: "More",
    way: ["bar"],
    load: async () => (await loaded(import("../shell/menu.js"))).moreScreen,
  },
  aside: {
    title: "Set aside",
    menu: ({ aside }) => (aside > 0 ? "What cannot be read or sent" : null),
    way: ["more"],
    load: async () => (await loaded(import("../exchange/set-aside.js"))).setAsideScreen,
  },
  settle: {
    title: "To settle",
    menu: ({ clashes }) => (clashes > 0 ? "Changed on two devices" : null),
    way: ["more"],
    still: true,
    load: async () => (await loaded(import("../sync/settle.js"))).settleScreen,
  },
  steps: {
    title: "First steps",
    menu: "Four things to try with a made-up piece",
    way: ["more"],
    load: async () => (await loaded(import("../first-steps/steps.js"))).stepsScreen,
  },
  find: {
    title: "Search everything",
    menu: "Pieces, wants and notes",
    way: ["more"],
    load: async () => (await loaded(import("../collection/search-everything.js"))).findScreen,
  },
  duplicates: {
    title: "Duplicates",
    menu: "What you have twice, and what to ask for it",
    way: ["more"],
    load: async () => (await loaded(import("../collection/duplicates.js"))).duplicatesScreen,
  },
  formations: {
    title: "Sets and trains",
    menu: "What yours still lack",
    way: ["more"],
    load: async () => (await loaded(import("../collection/formations.js"))).formationsScreen,
  },
  ranges: {
    title: "Ranges",
    menu: "What you identify from; add your own",
    way: ["more"],
    load: async () => (await loaded(import("../range/ranges.js"))).rangesScreen,
  },
  newrange: {
    title: "A range of your own",
    way: ["ranges"],
    still: true,
    load: async () => (await loaded(import("../range/own.js"))).newRangeScreen,
  },
  own: {
    title: "One of your own",
    way: ["ranges", "list Your own"],
    load: async () => (await loaded(import("../range/own.js"))).ownScreen,
  },
  writing: {
    title: "Write down a piece",
    way: ["own"],
    still: true,
    load: async () => (await loaded(import("../range/own.js"))).writingScreen,
  },
  entry: {
    title: "A piece written down",
    way: ["own", "list Written down"],
    load: async () => (await loaded(import("../range/own-item.js"))).entryScreen,
  },
  version: {
    title: "A variant written down",
    way: ["entry", "list Variants"],
    load: async () => (await loaded(import("../range/own-item.js"))).versionScreen,
  },
  looking: {
    title: "Answer what you see",
    way: ["entry"],
    still: true,
    load: async () => (await loaded(import("../range/own-look.js"))).lookingScreen,
  },
  differing: {
    title: "Another variant of it",
    way: ["entry"],
    still: true,
    load: async () => (await loaded(import("../range/own-look.js"))).differingScreen,
  },
  trying: {
    title: "Try it",
    way: ["own"],
    load: async () => (await loaded(import("../range/trying.js"))).tryingScreen,
  },
  learned: {
    title: "What your pieces show",
    way: ["own"],
    load: async () => (await loaded(import("../range/learned.js"))).learnedScreen,
  },
  running: {
    title: "A running change",
    way: ["own", "list Running changes"],
    load: async () => (await loaded(import("../range/running.js"))).runningScreen,
  },
  newrunning: {
    title: "Add a running change",
    way: ["own"],
    still: true,
    load: async () => (await loaded(import("../range/running.js"))).newRunningScreen,
  },
  moved: {
    title: "Changed numbers",
    way: ["ranges"],
    load: async () => (await loaded(import("../range/moved-names.js"))).movedScreen,
  },
  rows: {
    title: "What it is made of",
    way: ["own", "list What it is made of"],
    load: async () => (await loaded(import("../range/own-rows.js"))).rowsScreen,
  },
  row: {
    title: "One of them",
    way: ["rows", "list Kinds of piece"],
    load: async () => (await loaded(import("../range/own-rows.js"))).rowScreen,
  },
  listin: {
    title: "From a list",
    way: ["own"],
    still: true,
    load: async () => (await loaded(import("../range/list-in.js"))).listInScreen,
  },
  table: {
    title: "Items as a table",
    way: ["own"],
    load: async () => (await loaded(import("../range/row-table.js"))).tableScreen,
  },
  pad: {
    title: "A drawing",
    way: ["row", "Change the drawing"],
    load: async () => (await loaded(import("../range/drawing-pad.js"))).padScreen,
  },
  sightings: {
    title: "Sightings",
    menu: "What the range does not know yet",
    way: ["more"],
    load: async () => (await loaded(import("../range/sightings.js"))).sightingsScreen,
  },
  sighting: {
    title: "A sighting",
    way: ["sightings", "list Sightings"],
    load: async () => (await loaded(import("../range/sightings.js"))).sightingScreen,
  },
  devices: {
    title: "Devices and sync",
    menu: "Several phones and computers, one collection",
    way: ["more"],
    still: true,
    load: async () => (await loaded(import("../sync/devices.js"))).devicesScreen,
  },
  import: {
    title: "Import a list",
    menu: "Your own list, as CSV or XLSX",
    way: ["more"],
    load: async () => (await loaded(import("../exchange/import.js"))).importScreen,
  },
  came: {
    title: "Look at them",
    way: ["import"],
    load: async () => (await loaded(import("../exchange/brought-in.js"))).cameScreen,
  },
  export: {
    title: "Print or save",
    menu: "Spreadsheets, lists on paper, wants for a friend",
    way: ["more"],
    load: async () => (await loaded(import("../exchange/export.js"))).exportScreen,
  },
  print: {
    title: "Print",
    way: ["wants"],
    load: async () => (await loaded(import("../exchange/print.js"))).printScreen,
  },
  backup: {
    title: "Backup",
    menu: ({ saved }) => saved,
    way: ["more"],
    load: async () => (await loaded(import("../exchange/backup.js"))).backupScreen,
  },
  changes: {
    title: "History",
    menu: "Look back, and undo",
    way: ["more"],
    load: async () => (await loaded(import("../collection/changes.js"))).changesScreen,
  },
  trash: {
    title: "Bin",
    menu: "What was deleted, photos too",
    way: ["more"],
    load: async () => (await loaded(import("../collection/trash.js"))).trashScreen,
  },
  settings: {
    title: "Settings",
    menu: "Light, loupe, home screen",
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
