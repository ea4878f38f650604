/**
 * The four first steps: what is held in the hand, and what to do at each step. `line` gets where
 * the person is (see `standing` in guide.js) and gives {text, done, at, tap}. What the text names
 * in
 * quotation marks is marked on the screen, or what the selector `at` finds, or the answer called
 * `tap`.
 * `shape`: the feature whose drawing shows what it is.
 */
import { small } from "../parts/say.js";

const CAR = "Locomotive or power car";

/** Whatever is asked: what the piece has, to be tapped. */
function look({ asked, state, missing, like }, { name }) {
  if (like === "fits") return { text: `It is just like your ${name}. Tap “All fits”.` };
  if (like === "differs")
    return { text: `Your ${name} is not quite like that. Tap “Ask in words”.` };
  if (!asked) return { text: "Look at the question, and tap what you see." };
  if (missing) return { text: `Yours has no ${missing}. Tap “No ${missing}”.` };
  if (state) return { text: `On your ${name}: ${small(state)}. Tap that.`, tap: state };
  return { text: `That cannot be seen on your ${name}. Tap “Can’t see it”.` };
}

/** A screen that is not on the way. */
const ELSEWHERE = {
  text: "Look round as you like. To go on, tap Identify in the bar.",
  at: "#places [data-screen=identify]",
};

const BEGIN = ({ kind }) => ({ text: `Tap what sort of piece it is: ${kind}.`, tap: kind });

/** A sheet that is not on the way: read it, and close it. */
const SHEET = {
  text: "Take your time over this. To go on, tap Close.",
  at: ".sheet-foot button",
};

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
    title: "Identify a piece at a stall",
    about: "A blue engine, and a minute to find out which.",
    story:
      "You hold a blue electric engine with flat ends: two bogies, plastic horns on the roof, " +
      "its number at one end. There is no box.",
    name: "engine",
    kind: CAR,
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
          text: "That is what you hold, and when it was made. That was all.",
          done: true,
          at: ".answer h1",
        }),
      });
    },
  },
  {
    id: "owned",
    title: "Check whether you have it already",
    about: "A small diesel with its number on it, and the demo collection at home.",
    story:
      "You hold a small blue diesel shunter, as new, and P 24 stands under it. For this try the " +
      "demo collection is yours.",
    name: "shunter",
    kind: CAR,
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
          text: "Type P24 into the field at the top, then tap the one that is found.",
          at: ".start:not(:has(.found)) #search, .start .found .hit",
        }),
        answer({ hand }) {
          if (!hand.condition)
            return {
              text: "You have one. Is this better? Tap “Price”.",
              at: ".line:nth-child(4)",
            };
          return {
            text: "So you know whether it is better than yours. That was all.",
            done: true,
            at: ".pill",
          };
        },
        sheet({ sheet, hand }) {
          if (!sheet.startsWith("Price")) return null;
          return hand.condition
            ? { text: "Now tap “Close”." }
            : { text: "Under “Condition” choose: as new.", at: ".sheet .pick" };
        },
      });
    },
  },
  {
    id: "seller",
    title: "Confirm the date a seller claims",
    about: "A grey goods van, and a seller who says 1951.",
    story:
      "You hold a grey goods van with doors that slide. There are large letters on its side, " +
      "printed and flat. The seller says: “That is a 1951 one.”",
    name: "van",
    kind: "Wagon",
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
      const check = "Tap “Check the seller’s date”.";
      const over = {
        text: "There is the verdict, and a sentence to say aloud. That was all.",
        done: true,
        at: ".verdict, .strip",
      };
      return walked(now, this, {
        asking({ answers, claim }) {
          if (claim) return over;
          return answers >= 6 ? { text: "Now the seller’s date: tap “More”." } : null;
        },
        answer: ({ claim }) =>
          claim ? over : { text: "Now tap “Seller’s date”.", at: ".line:nth-child(2)" },
        sheet({ sheet, claim, more }) {
          if (more) return { text: check };
          if (sheet === "The seller’s date")
            return claim === "1951" ? over : { text: "Now tap “1951”." };
          if (sheet === "Check the seller’s date" && !claim) return { text: "Tap “1950s”." };
          return null;
        },
      });
    },
  },
  {
    id: "bargain",
    title: "Note a bargain for later",
    about: "A dining car that you want, and a queue at the till.",
    story:
      "You hold a long brown dining car with thin lines and seats inside, in good condition. It " +
      "is at table 9, for £22. For this try the demo collection and its wants are yours.",
    name: "coach",
    kind: "Coach",
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
        if (!note.asked)
          return { text: "Type the price under “Price asked”: 22. Leave the field: it is kept." };
        if (note.table === "") return { text: "Under “Table” type 9, so that you find it again." };
        return {
          text: "It is kept. Tap Notebook in the bar: there it waits for you.",
          at: "#places [data-screen=notebook]",
        };
      }
      if (now.sheet === "" && screen === "notebook" && note?.asked)
        return {
          text: "There it is, with its table and its price. That was all.",
          done: true,
          at: "main .hit",
        };
      const go = note ? "Your note is begun: open it again." : "Time is short.";
      const save = { text: "Tap “Save for later”." };
      return walked(now, this, {
        asking: ({ answers }) => (answers >= 2 || note ? { text: `${go} Tap “More”.` } : null),
        answer: () => save,
        sheet: ({ more }) => (more ? save : null),
      });
    },
  },
];

/** One of the four, or undefined. */
export function useOf(id) {
  return USES.find((one) => one.id === id);
}
