import { all } from "../data/records.js";
import { chance } from "../parts/chance.js";
import { button, el, heading, inFew } from "../parts/element.js";
import { cautions } from "../parts/cautions.js";
import { loaded } from "../parts/loaded-later.js";
import { portrait } from "../parts/portrait.js";
import { anyOf, itemName, madeInFew, madeSpan, small, variantName } from "../parts/say.js";
import { alikes, oddOnes } from "./alikes.js";
import { answerLines } from "./answer-lines.js";
import {
  ADD_TO_COLLECTION,
  ADD_TO_YOUR_OWN_RANGE,
  byItsNumber,
  byNumber,
  COULD_BE_ANYTHING,
  DOES_NOT_FIT,
  EVERYTHING_ELSE,
  HOW_SURE,
  IT_IS,
  KEEP_AS_A_SIGHTING,
  KEEP_ASKING,
  LOOK_NOW,
  lookAgainAt,
  NEXT_PIECE,
  NO_VARIANT_FITS,
  NOBODY_HAS_RECORDED,
  NOT_ENOUGH_WAS_SEEN,
  notLookedAtThem,
  ONE_OF_THESE,
  OPEN_IT_IN_THE_COLLECTION,
  OPEN_YOUR_NOTE,
  PERHAPS_NOT_IN_THE_RANGE,
  SAVE_FOR_LATER,
  SAVE_NEXT_IN_BOX,
  SURE,
  TAKE_CARE,
  THIS_IS_NOT_IN_THE_RANGE,
  UNDO,
  UNUSUAL_TOGETHER,
  WHAT_CAME_CLOSEST,
  WHY_NOT_THE_OTHERS,
  YOUR_ANSWERS,
} from "./first-words.js";

const NEARLY = 0.9; // which one it is, is as good as settled
const SETTLED = 0.95; // which item it is
const RARE = 0.02;
const SHOWN = 3; // candidates on the first screen

/**
 * The answer on one screen: what it is and how sure, the four lines, what to do with it. The rest
 * is folded away beneath.
 */
export function answerScreen(state, step, act) {
  const { view } = state;
  const nearly = view.stop === "verdict" && view.variants[0]?.chance >= NEARLY;
  const alone = nearly || (view.stop === "nothing" && view.alike.length === 1);
  const card =
    view.stop === "sure" || alone
      ? oneVariant
      : { "": nothing, nothing, unrecorded, unseen: nothingSeen, verdict: allAlike }[view.stop];
  const { top, notes = [], which, many = false } = card(state, step, act);
  return el(
    "section",
    { class: "answer" },
    el("div", { class: "is" }, top, notes),
    answerLines(state, step, act),
    el(
      "div",
      { class: "reach" },
      button(UNDO, act.undo, { class: "plain" }),
      many
        ? button(WHY_NOT_THE_OTHERS, act.candidates, { class: "plain" })
        : button(YOUR_ANSWERS, act.answers, { class: "plain" }),
      view.question ? button(KEEP_ASKING, act.further, { class: "plain" }) : null,
    ),
    everything(state, step, act, which),
    care(state),
    finish(state, act),
  );
}

/** What to take care of with a piece of this kind. */
function care({ pack, view }) {
  const [first] = view.items;
  const said = cautions(pack, first ? pack.items[first.item].kind : -1);
  return said && el("details", { class: "care" }, el("summary", {}, TAKE_CARE), said);
}

/** All the rest, made when it is unfolded; `which`: of answer-rest.js. */
function everything(state, step, act, which) {
  const box = el("div", {});
  const unfold = async ({ target }) => {
    box.className = ""; // it holds all its room itself, or it is shut
    if (!target.open || box.hasChildNodes()) return;
    // of what comes late, so that nothing beneath it moves then
    const late = requestAnimationFrame(() => {
      if (!box.hasChildNodes()) box.className = "coming";
    });
    try {
      const { rest } = await loaded(import("./answer-rest.js"));
      box.append(...rest(state, step, act, which));
    } catch (error) {
      cancelAnimationFrame(late);
      box.className = "";
      throw error;
    }
  };
  return el(
    "details",
    { class: "everything", ontoggle: unfold },
    el("summary", {}, EVERYTHING_ELSE),
    box,
  );
}

function finish(state, act) {
  const { id } = state.piece;
  const [owned, noted] = ["piece", "note"].map((type) =>
    all(type).some((record) => id && record.session === id),
  );
  return el(
    "div",
    { class: "finish" },
    button(noted ? OPEN_YOUR_NOTE : SAVE_FOR_LATER, act.note, { class: "plain" }),
    button(owned ? OPEN_IT_IN_THE_COLLECTION : ADD_TO_COLLECTION, act.collect, {
      class: "main",
    }),
    state.piece.box
      ? button(SAVE_NEXT_IN_BOX, act.noteInBox, { class: "plain" })
      : button(NEXT_PIECE, act.restart, { class: "plain" }),
  );
}

/** What it looks like, as far as that is settled. */
function picture({ pack }, step, variants) {
  return el(
    "div",
    { class: "picture-of" },
    portrait(pack, variants, { size: 200, answers: step.session.answers }),
  );
}

/** One variant: it holds nearly all of the chance, or nothing left to look at could say more. */
function oneVariant(state, step, act) {
  const { pack, view } = state;
  const [best] = view.variants;
  const variant = pack.variants[best.variant];
  return {
    top: [
      picture(state, step, best.variant),
      el(
        "p",
        { class: "kicker" },
        kicker(view, step.session.scope),
        chance(best.chance, heard(SURE)),
      ),
      heading(1, itemName(pack, variant.item)),
      el("p", { class: "variant" }, variant.name),
      made(view),
    ],
    which: "single",
    notes: [fitNote(state, step, act), notLookedAt(pack, view, act)],
  };
}

const heard = (text) => el("span", { class: "unseen" }, text);

const made = ({ years }) => el("p", { class: "made" }, inFew(madeInFew(years), madeSpan(years)));

function kicker({ how_sure }, { items }) {
  const words = HOW_SURE[how_sure];
  const said = items.length > 0 ? inFew(byNumber(small(words)), byItsNumber(small(words))) : words;
  const rest = ["it is", "could be"].includes(how_sure) ? " " : IT_IS;
  return el("span", {}, said, heard(rest));
}

/** What does not fit the one that is named, with a way to look at it again. */
function fitNote({ pack, view }, { session }, act) {
  if (!view.fit || view.fit.passed) return null;
  const odd = oddOnes(pack, view, session);
  if (odd.length === 0) return el("p", {}, UNUSUAL_TOGETHER);
  return el(
    "p",
    { class: "odd" },
    DOES_NOT_FIT,
    odd.map(({ id, name }) =>
      button(name, () => act.change(id), {
        class: "plain",
        "aria-label": lookAgainAt(small(name)),
      }),
    ),
  );
}

/** What would have shown that it is another one, where the check was skipped. */
function notLookedAt(pack, { unseen }, act) {
  if (unseen.length === 0) return null;
  const names = unseen.slice(0, 4).map((place) => small(pack.features[place].name));
  return el(
    "p",
    { class: "odd" },
    el("span", { class: "unseen" }, notLookedAtThem(anyOf(names, "and"))),
    NOBODY_HAS_RECORDED,
    button(LOOK_NOW, act.check, { class: "plain" }),
  );
}

/** "Can't see it" to everything: nothing was seen, so nothing is said. */
function nothingSeen() {
  return {
    which: "unseen",
    top: [heading(1, NOT_ENOUGH_WAS_SEEN), el("p", {}, COULD_BE_ANYTHING)],
  };
}

function nothing(state, step) {
  return several(state, step, "nothing");
}

/** Whichever it is, it means the same for the collector. */
function allAlike(state, step) {
  return several(state, step, "verdict");
}

/** More than one is left: the item they share, or the likeliest of them first. */
function several(state, step, which) {
  const { pack, view } = state;
  const every = view.variants.filter(
    (candidate) => view.alike.length === 0 || view.alike.includes(candidate.variant),
  );
  const [item] = view.items; // settled, although its variant is not
  const left =
    item.chance >= SETTLED
      ? every.filter((row) => pack.variants[row.variant].item === item.item)
      : every;
  const places = left.map(({ variant }) => pack.variants[variant].item);
  const alone = places.every((place) => place === places[0]);
  return {
    top: [
      picture(
        state,
        step,
        left.map(({ variant }) => variant),
      ),
      heading(1, alone ? itemName(pack, places[0]) : ONE_OF_THESE),
      made(view),
      alikes(
        left
          .filter(({ chance: likely }, place) => place === 0 || likely >= RARE)
          .slice(0, SHOWN)
          .map(({ variant, chance: likely }) => ({
            name: alone ? pack.variants[variant].name : variantName(pack, variant),
            chance: likely,
          })),
      ),
    ],
    many: true,
    which,
  };
}

function unrecorded(state, step, act) {
  const { pack, view } = state;
  const closest = view.variants.slice(0, 2);
  return {
    which: "unrecorded",
    top: [
      heading(1, view.unrecorded >= 0.95 ? THIS_IS_NOT_IN_THE_RANGE : PERHAPS_NOT_IN_THE_RANGE),
      el("p", { class: "kicker" }, chance(view.unrecorded, SURE)),
      el("p", {}, NO_VARIANT_FITS),
      el(
        "div",
        { class: "ways" },
        button(ADD_TO_YOUR_OWN_RANGE, act.putIn, { class: "main" }),
        button(KEEP_AS_A_SIGHTING, act.sighting, { class: "plain" }),
      ),
      closest.length === 0
        ? null
        : [
            el("p", { class: "quiet" }, WHAT_CAME_CLOSEST),
            alikes(
              closest.map((candidate) => ({
                name: variantName(pack, candidate.variant),
                chance: candidate.chance,
              })),
            ),
          ],
    ],
  };
}
