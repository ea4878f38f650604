/**
 * The four first steps: what is held in the hand, and what to do at each step. `line` gets where
 * the person is (see `standing` in guide.js) and gives {text, done}.
 */

const CAR = "Locomotive or power car";

/** Whatever is asked: what the piece has, to be tapped. */
function look({ asked, state, missing }, { name }) {
  if (!asked) return "Look at the question, and tap what you see.";
  if (missing) return `Yours has no ${missing}. Tap “It has no ${missing}”.`;
  if (state) return `On your ${name}: ${state}. Tap that.`;
  return `That cannot be seen on your ${name}. Tap “Can’t tell”.`;
}

/** A screen that is not on the way. */
function elsewhere({ screen }) {
  return screen === "identify" ? "" : "Look round as you like. To go on, tap Identify in the bar.";
}

const BEGIN = ({ kind }) => `Tap what sort of piece it is: ${kind}.`;

/** A sheet that is not on the way: read it, and close it. */
const SHEET = "Read this as long as you like. To go on, tap Close.";

function walked(now, use, { begin = BEGIN, asking = () => null, answer, sheet = () => null }) {
  if (now.sheet !== "") return sheet(now) ?? { text: SHEET };
  const off = elsewhere(now);
  if (off !== "") return { text: off };
  if (now.stage === "start") return { text: begin(use) };
  if (now.stage === "asking") return asking(now) ?? { text: look(now, use) };
  return answer(now);
}

export const USES = [
  {
    id: "stall",
    title: "Identify an item at a stall",
    about: "A green engine, and a minute to find out which.",
    story:
      "You hold a green diesel engine with flat ends: two bogies, thin metal horns on the roof, its number at both ends. There is no box.",
    name: "engine",
    kind: CAR,
    kindId: "locomotive",
    seen: {
      form: "box_diesel", wheel_arrangement: "two_and_two", main_colour: "green", lining: "plain",
      emblem: "roundel", number_ends: "both_ends", head: "discs", printing: "foil",
      rivets: "raised", horns: "metal", glazing: "flat", coupling: "claw", wheels: "cast",
      buffers: "moulded",
    },
    missing: ["box"],
    demo: false,
    line(now) {
      return walked(now, this, {
        answer: () => ({
          text: "That is what you hold: its name, when it was made, and below what else it could be and why not. That was all.",
          done: true,
        }),
      });
    },
  },
  {
    id: "owned",
    title: "Check whether you own it already",
    about: "A small diesel with its number on it, and the demo collection at home.",
    story:
      "You hold a small green diesel shunter, as new, and P 24 stands under it. For this try the demo collection is yours.",
    name: "shunter",
    kind: CAR,
    kindId: "locomotive",
    number: "P 24",
    seen: {
      form: "shunter", wheel_arrangement: "three", main_colour: "green", lining: "plain",
      emblem: "roundel", number_ends: "one_end", printing: "foil", rivets: "raised",
      head: "lamps", horns: "plastic", glazing: "flush", coupling: "claw", wheels: "cast",
    },
    missing: ["box"],
    demo: true,
    line(now) {
      return walked(now, this, {
        begin: () => "Type P24 into the field at the top, then tap the one that is found.",
        answer({ hand }) {
          if (!hand.condition)
            return {
              text: "You own it, and it says which one. Is this one better? Open “Its condition, box and price” and choose: as new.",
            };
          return { text: "So you know whether it is better than yours. That was all.", done: true };
        },
      });
    },
  },
  {
    id: "seller",
    title: "Confirm the date a seller claims",
    about: "A brown goods van, and a seller who says 1952.",
    story:
      "You hold a brown goods van with doors that slide. There are large letters on its side, stamped and shiny. The seller says: “That is a 1952 one.”",
    name: "van",
    kind: "Wagon",
    kindId: "wagon",
    seen: {
      wagon_type: "van", fitting: "moving", main_colour: "brown", emblem: "initials",
      printing: "foil", rivets: "raised", coupling: "loop", wheels: "black", buffers: "moulded",
      axle_boxes: "moulded", chassis: "plastic",
    },
    missing: ["box"],
    demo: false,
    line(now) {
      const check = "Now the seller’s date: tap “Check the seller’s date”.";
      const over = {
        text: "There is the verdict, and a sentence to say aloud. That was all.",
        done: true,
      };
      return walked(now, this, {
        asking({ answers, claim }) {
          if (claim) return over;
          return answers >= 6 ? { text: check } : null;
        },
        answer: ({ claim }) => (claim ? over : { text: check }),
        sheet({ sheet, claim }) {
          if (sheet === "The seller’s date") return over;
          if (sheet === "Check the seller’s date" && !claim)
            return { text: "Type 1952, then tap “Check it”." };
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
      "You hold a long maroon dining car with thin lines and seats inside, in good condition. It is at table 9, for £22. For this try the demo collection and its wants are yours.",
    name: "coach",
    kind: "Coach",
    kindId: "coach",
    seen: {
      coach_type: "dining", coach_length: "long", main_colour: "maroon", lining: "line",
      emblem: "roundel", number_ends: "both_ends", printing: "foil", roof: "grey",
      rivets: "raised", glazing: "flat", interior: "seats", coupling: "claw", wheels: "black",
    },
    missing: ["box"],
    demo: true,
    line(now) {
      const { note, screen } = now;
      if (now.sheet === "" && screen === "note" && note) {
        if (!note.asked)
          return { text: "Type the price under “Price asked”: 22. Leave the field: it is kept." };
        if (note.table === "") return { text: "Under “Table” type 9, so that you find it again." };
        return { text: "It is kept. Tap Notebook in the bar: there it waits for you." };
      }
      if (now.sheet === "" && screen === "notebook" && note?.asked)
        return { text: "There it is, with its table and its price. That was all.", done: true };
      const go = note
        ? "Your note is begun: tap “Note it” once more."
        : "Time is short. Tap “Note it”.";
      return walked(now, this, {
        asking: ({ answers }) => (answers >= 2 || note ? { text: go } : null),
        answer: () => ({ text: go }),
      });
    },
  },
];

/** One of the four, or undefined. */
export function useOf(id) {
  return USES.find((one) => one.id === id);
}
