/** The four lines of the answer: its parts, the seller's date, own or want, the price. */
import { seenYears } from "../data/work-ahead.js";
import { button, el } from "../parts/element.js";
import { moneyText } from "../parts/money.js";
import { small } from "../parts/say.js";
import { heldClaim } from "./held-claim.js";
import { claimShort } from "./claim-words.js";
import { done, saidReplaced } from "./replaced.js";
import { leading, verdictShort, verdictTitle } from "./verdict-words.js";
import {
  ABOVE_YOUR_LIMIT,
  ADD_TO_WANTS,
  ITS_MARKS_DISAGREE,
  ITS_PARTS,
  lookAtName,
  nameReplaced,
  PARTS_FIT,
  PRICE,
  SELLERS_DATE,
  WHAT_IS_ASKED,
  WHAT_YEAR,
  WITHIN_YOUR_LIMIT,
  YOURS_OR_WANTED,
  yoursOrWantedIs,
} from "./first-words.js";

/** The lines as buttons, each with what it says and a sheet behind it. */
export function answerLines(state, step, act) {
  const box = el("div", { class: "lines-of-answer" });
  const draw = () => box.replaceChildren(...lines(state, step, act, draw));
  draw();
  return box;
}

const TELLING = [ITS_PARTS];
const CLAIMS = { fits: "good", possible: "good", unlikely: "care", "ruled out": "bad" };

function lines(state, step, act, draw) {
  const { view } = state;
  const held = heldClaim(state, step);
  return [
    ownLine(view.verdict, act.own),
    line(ITS_PARTS, ...partsText(state, step), "", act.parts),
    line(
      SELLERS_DATE,
      held?.judged ? claimShort(held.claim, held.judged) : "",
      CLAIMS[held?.judged?.word] ?? "",
      WHAT_YEAR,
      act.seller,
    ),
    line(PRICE, ...priceText(state), WHAT_IS_ASKED, () => act.price(draw)),
  ];
}

/**
 * A line: its label, and what there is to say; where that is nothing, what to hear instead.
 * `standing`: good, care or bad, which has a shape as well as a colour; "" for neither.
 */
function line(label, value, standing, otherwise, open) {
  const silent = value === "";
  const plain = TELLING.includes(label) && !silent; // it needs no label to be understood
  const said = silent ? null : el("strong", { class: standing }, value);
  return button([el("span", { class: plain ? "unseen" : "line-label" }, label), said], open, {
    class: silent ? "line silent" : "line",
    "aria-label": `${label}: ${value || otherwise}`,
    "aria-haspopup": "dialog",
  });
}

/** What the piece means for the collector, beside what it is. */
function ownLine(verdict, open) {
  const silent = !verdict || leading(verdict).word === "unrecorded"; // the top says that
  return button(el("strong", {}, silent ? YOURS_OR_WANTED : verdictShort(verdict)), open, {
    class: silent ? "line silent pill" : "line pill",
    "aria-label": yoursOrWantedIs(verdict ? verdictTitle(verdict) : ADD_TO_WANTS),
    "aria-haspopup": "dialog",
  });
}

/**
 * Whether its parts belong together, in a few words, and how that stands; "" where none was looked
 * at.
 */
function partsText(state, step) {
  const { pack, view } = state;
  const { parts } = view;
  if (state.engine.marks_apart(pack, seenYears(state, step.session)).length > 0)
    return [ITS_MARKS_DISAGREE, "bad"];
  if (parts.length === 0) return ["", ""];
  const worst = parts.reduce((top, part) => (part.swapped > top.swapped ? part : top));
  if (worst.how === "") return [PARTS_FIT, "good"];
  const name = pack.parts[worst.part].name;
  const odd = saidReplaced(worst);
  return [odd ? nameReplaced(name, done(pack, worst.part)) : lookAtName(small(name)), "care"];
}

function priceText({ engine, piece, view }) {
  const asked = piece.hand?.asked ?? null;
  if (!asked) return ["", ""];
  const limit = { above: ABOVE_YOUR_LIMIT, within: WITHIN_YOUR_LIMIT };
  const met = (view.verdict?.wants ?? []).map(({ price }) => limit[price]).find(Boolean) ?? "";
  const standing = { [limit.above]: "bad", [limit.within]: "good" }[met] ?? "";
  return [`${moneyText(engine, asked)}${met}`, standing];
}
