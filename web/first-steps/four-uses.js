/**
 * The four first steps: what is held in the hand, and what to do at each step. `line` gets where
 * the person is (see `standing` in guide.js) and gives {text, done, at, tap}. What the text names
 * in
 * quotation marks is marked on the screen, or what the selector `at` finds, or the answer called
 * `tap`.
 * `shape`: the feature whose drawing shows what it is.
 */
import { small } from "../parts/say.js";
import {
  ABOUT_HAVING_IT,
  ABOUT_THE_BARGAIN,
  ABOUT_THE_DATE,
  ABOUT_THE_STALL,
  ALL_OF_HAVING_IT,
  ALL_OF_THE_BARGAIN,
  ALL_OF_THE_DATE,
  ALL_OF_THE_STALL,
  cannotBeSeenOnYours,
  CHOOSE_A_PICTURE,
  CHOOSE_AS_NEW,
  COACH,
  CONFIRM_THE_DATE,
  ELSEWHERE,
  goTapMore,
  HAVE_IT_ALREADY,
  IDENTIFY_A_PIECE_AT_A_STALL,
  IS_THIS_BETTER,
  IT_WAITS_FOR_YOU,
  justLikeYours,
  LOCOMOTIVE_OR_CAR,
  LOOK_AT_THE_QUESTION,
  NOTE_A_BARGAIN_FOR_LATER,
  NOTE_IS_BEGUN,
  notQuiteLikeYours,
  NOW_TAP_1951,
  NOW_TAP_CLOSE,
  NOW_TAP_SELLERS_DATE,
  NOW_THE_DATE,
  onYours,
  SHEET,
  TAP_1950S,
  TAP_CHECK_THE_DATE,
  TAP_SAVE_FOR_LATER,
  tapTheKind,
  THE_BLUE_ENGINE,
  THE_BLUE_SHUNTER,
  THE_DINING_CAR,
  THE_GREY_VAN,
  TIME_IS_SHORT,
  TYPE_P24,
  TYPE_THE_PRICE,
  TYPE_THE_TABLE,
  WAGON,
  yoursHasNo,
} from "./words.js";
import { THE_SELLERS_DATE } from "../identify/words.js";
import { CHECK_THE_DATE, PRICE } from "../identify/first-words.js";

/** Whatever is asked: what the piece has, to be tapped. */
function look({ asked, state, missing, like }, { name }) {
  if (like === "fits") return { text: justLikeYours(name) };
  if (like === "several") return { text: CHOOSE_A_PICTURE };
  if (like === "differs") return { text: notQuiteLikeYours(name) };
  if (!asked) return { text: LOOK_AT_THE_QUESTION };
  if (missing) return { text: yoursHasNo(missing) };
  if (state) return { text: onYours(name, small(state)), tap: state };
  return { text: cannotBeSeenOnYours(name) };
}

const BEGIN = ({ kind }) => ({ text: tapTheKind(kind), tap: kind });

const nothing = () => null;

/** What is said at each stage of a walk. */
function walked(now, use, lines) {
  const { begin = BEGIN, asking = nothing, answer, sheet = nothing } = lines;
  if (now.sheet !== "") return sheet(now) ?? SHEET;
  if (now.screen !== "identify") return ELSEWHERE;
  if (now.stage === "start") return begin(use);
  if (now.stage === "asking") return asking(now) ?? look(now, use);
  return answer(now);
}

export const USES = [
  {
    id: "stall",
    title: IDENTIFY_A_PIECE_AT_A_STALL,
    about: ABOUT_THE_STALL,
    story: THE_BLUE_ENGINE,
    name: "engine",
    kind: LOCOMOTIVE_OR_CAR,
    shape: "form",
    seen: {
      form: "electric",
      wheel_arrangement: "two_and_two",
      main_colour: "blue",
      lining: "plain",
      emblem: "crest",
      number_ends: "one_end",
      head: "discs",
      printing: "ink",
      rivets: "smooth",
      horns: "plastic",
      glazing: "flat",
      coupling: "claw",
      wheels: "cast",
      buffers: "moulded",
    },
    missing: ["box"],
    demo: false,
    line(now) {
      return walked(now, this, {
        answer: () => ({
          text: ALL_OF_THE_STALL,
          done: true,
          at: ".answer h1",
        }),
      });
    },
  },
  {
    id: "owned",
    title: HAVE_IT_ALREADY,
    about: ABOUT_HAVING_IT,
    story: THE_BLUE_SHUNTER,
    name: "shunter",
    kind: LOCOMOTIVE_OR_CAR,
    number: "P 24",
    shape: "form",
    seen: {
      form: "shunter",
      wheel_arrangement: "three",
      main_colour: "blue",
      lining: "plain",
      emblem: "crest",
      number_ends: "both_ends",
      printing: "ink",
      rivets: "smooth",
      head: "lamps",
      horns: "metal",
      glazing: "flush",
      coupling: "claw",
      wheels: "cast",
    },
    missing: ["box"],
    demo: true,
    line(now) {
      return walked(now, this, {
        begin: () => ({
          text: TYPE_P24,
          at: ".start:not(:has(.found)) #search, .start .found .hit",
        }),
        answer({ hand }) {
          if (!hand.condition)
            return {
              text: IS_THIS_BETTER,
              at: ".line:nth-child(4)",
            };
          return {
            text: ALL_OF_HAVING_IT,
            done: true,
            at: ".pill",
          };
        },
        sheet({ sheet, hand }) {
          if (!sheet.startsWith(PRICE)) return null;
          return hand.condition
            ? { text: NOW_TAP_CLOSE }
            : { text: CHOOSE_AS_NEW, at: ".sheet .pick" };
        },
      });
    },
  },
  {
    id: "seller",
    title: CONFIRM_THE_DATE,
    about: ABOUT_THE_DATE,
    story: THE_GREY_VAN,
    name: "van",
    kind: WAGON,
    shape: "wagon_type",
    seen: {
      wagon_type: "van",
      fitting: "moving",
      main_colour: "grey",
      emblem: "initials",
      printing: "ink",
      rivets: "smooth",
      coupling: "loop",
      wheels: "black",
      buffers: "moulded",
      axle_boxes: "moulded",
      chassis: "plastic",
    },
    missing: ["box"],
    demo: false,
    line(now) {
      const check = TAP_CHECK_THE_DATE;
      const over = {
        text: ALL_OF_THE_DATE,
        done: true,
        at: ".verdict, .strip",
      };
      return walked(now, this, {
        asking({ answers, claim }) {
          if (claim) return over;
          return answers >= 6 ? { text: NOW_THE_DATE } : null;
        },
        answer: ({ claim }) =>
          claim ? over : { text: NOW_TAP_SELLERS_DATE, at: ".line:nth-child(2)" },
        sheet({ sheet, claim, more }) {
          if (more) return { text: check };
          if (sheet === THE_SELLERS_DATE) return claim === "1951" ? over : { text: NOW_TAP_1951 };
          if (sheet === CHECK_THE_DATE && !claim) return { text: TAP_1950S };
          return null;
        },
      });
    },
  },
  {
    id: "bargain",
    title: NOTE_A_BARGAIN_FOR_LATER,
    about: ABOUT_THE_BARGAIN,
    story: THE_DINING_CAR,
    name: "coach",
    kind: COACH,
    shape: "coach_type",
    seen: {
      coach_type: "dining",
      coach_length: "long",
      main_colour: "brown",
      lining: "line",
      emblem: "crest",
      number_ends: "one_end",
      printing: "ink",
      roof: "grey",
      rivets: "smooth",
      glazing: "flat",
      interior: "seats",
      coupling: "claw",
      wheels: "black",
    },
    missing: ["box"],
    demo: true,
    line(now) {
      const { note, screen } = now;
      if (now.sheet === "" && screen === "note" && note) {
        if (!note.asked) return { text: TYPE_THE_PRICE };
        if (note.table === "") return { text: TYPE_THE_TABLE };
        return {
          text: IT_WAITS_FOR_YOU,
          at: "#places [data-screen=notebook]",
        };
      }
      if (now.sheet === "" && screen === "notebook" && note?.asked)
        return {
          text: ALL_OF_THE_BARGAIN,
          done: true,
          at: "main .hit",
        };
      const go = note ? NOTE_IS_BEGUN : TIME_IS_SHORT;
      const save = { text: TAP_SAVE_FOR_LATER };
      return walked(now, this, {
        asking: ({ answers }) => (answers >= 2 || note ? { text: goTapMore(go) } : null),
        answer: () => save,
        sheet: ({ more }) => (more ? save : null),
      });
    },
  },
];

/** One of the four, or undefined. */
export function useOf(id) {
  return USES.find((use) => use.id === id);
}
