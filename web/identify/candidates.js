import { chance } from "../parts/chance.js";
import { portrait, portraitsReady } from "../parts/portrait.js";
import { differencePictures } from "../parts/ringed-portrait.js";
import { button, el, heading } from "../parts/element.js";
import { against, itemName, percent, small, span, weight } from "../parts/say.js";
import { sheet } from "../parts/sheet.js";
import { saidReplaced } from "./replaced.js";
import { swapReason } from "./strip.js";
import { saysOfVariant } from "./who-says-so.js";
import { yearsFigure } from "./years-figure.js";
import {
  IN_YOUR_HAND,
  notInTheRange,
  RARER_THAN_THE_FIRST,
  showMore,
  thisCounts,
  WHAT_IT_COULD_BE,
  WHO_SAYS_SO,
  whoSaysSoOf,
  WHY_NOT,
  whyNotName,
} from "./words.js";
import { YEARS_NOT_RECORDED } from "./first-words.js";

const LEAST = 0.1; // bits: an answer that speaks less against a variant is not named
const FIRST = 8;

/** Opens the sheet with every variant it could be, the years, and parts that do not belong. */
export function openCandidates(state, step) {
  sheet(WHAT_IT_COULD_BE, ...candidateNodes(state, step));
}

/** What that sheet shows. */
export function candidateNodes(state, step) {
  const { pack, view } = state;
  const swapped = view.parts.filter(saidReplaced);
  const list = el("ol", { class: "candidates" });
  const rows = view.variants.map((row, place) => candidate(state, step.session, row, place));
  list.append(...rows.slice(0, FIRST));
  const rest = rows.slice(FIRST);
  const more = button(
    showMore(rest.length),
    () => {
      list.append(...rest);
      more.remove();
      rest[0].querySelector("h3").focus();
    },
    { class: "plain wide" },
  );
  return [
    yearsFigure(view.years),
    swapped.map((part) => el("p", { class: "warn" }, swapReason(pack, part))),
    list,
    rest.length > 0 ? more : null,
    el("p", { class: "quiet" }, notInTheRange(percent(view.unrecorded))),
  ];
}

function candidate(state, session, { variant, chance: value, first, last }, place) {
  const { pack } = state;
  const { name, item, note } = pack.variants[variant];
  const years = first > 0 ? span(first, last) : YEARS_NOT_RECORDED;
  return el(
    "li",
    {},
    el(
      "div",
      { class: "beside-portrait" },
      el(
        "div",
        { class: "lines" },
        heading(3, itemName(pack, item)),
        name === "" ? null : el("p", {}, name),
        el("p", { class: "quiet" }, note === "" ? years : `${years}. ${note}`),
      ),
      portrait(pack, variant, { size: 80, answers: session.answers }),
    ),
    chance(value),
    first > 0 ? who(pack, variant) : null,
    place === 0 ? null : whyNot(state, session, variant),
  );
}

function who(pack, variant) {
  const { name, item } = pack.variants[variant];
  return el(
    "details",
    {},
    el("summary", { "aria-label": whoSaysSoOf(small(name) || itemName(pack, item)) }, WHO_SAYS_SO),
    saysOfVariant(pack, variant),
  );
}

/** What speaks against it, and where it differs from the piece in hand, as far as that is known. */
function whyNot({ engine, ready, pack, view }, session, variant) {
  const reasons = el("div", { class: "reasons", hidden: true });
  const [{ variant: leader }] = view.variants;
  const pictures = async () => {
    await portraitsReady().catch(() => {}); // then it is told in words
    const inHand = { name: IN_YOUR_HAND, variants: [leader], answers: session.answers };
    const other = { name: named(pack, variant), variants: [variant] };
    return differencePictures(pack, inHand, other) ?? "";
  };
  const opener = button(
    WHY_NOT,
    () => {
      const open = reasons.hidden;
      if (open && reasons.childElementCount === 0) {
        reasons.append(spoken(pack, session, engine.why_not(ready, session, variant)));
        pictures().then((made) => reasons.append(made));
      }
      reasons.hidden = !open;
      opener.setAttribute("aria-expanded", String(open));
    },
    {
      class: "link",
      "aria-expanded": "false",
      "aria-label": whyNotName(named(pack, variant)),
    },
  );
  return [opener, reasons];
}

function named(pack, variant) {
  const { name, item } = pack.variants[variant];
  return small(name) || itemName(pack, item);
}

function spoken(pack, session, entries) {
  const speaking = entries.filter((entry) => entry.bits > LEAST);
  if (speaking.length === 0) {
    return el("p", {}, RARER_THAN_THE_FIRST);
  }
  return el(
    "ul",
    {},
    speaking.map((entry) =>
      el(
        "li",
        {},
        against(pack, session, entry),
        " ",
        el("span", { class: "quiet" }, thisCounts(weight(entry.bits))),
      ),
    ),
  );
}
