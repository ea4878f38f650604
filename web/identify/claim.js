import { seenYears } from "../data/work-ahead.js";
import { button, el, heading } from "../parts/element.js";
import { chance } from "../parts/chance.js";
import { small } from "../parts/say.js";
import {
  VERDICTS,
  claimBoth,
  claimProblem,
  fromTo,
  quickClaims,
  sayAloud,
  seenWords,
  speaks,
  strongest,
  verdictNote,
} from "./claim-words.js";
import { heldClaim } from "./held-claim.js";
import { sheet } from "../parts/sheet.js";
import { timeline } from "./timeline.js";
import { openWho, whoLink, whoOfFeature } from "./who-says-so.js";
import {
  ASK_WHAT_SETTLES,
  BACK_TO_THE_SELLERS_DATE,
  CHANCE,
  CHANCE_IT_WAS_MADE_THEN,
  CHANGE_THIS_DATE,
  CHECK_IT,
  counts,
  FIRST_AND_LAST,
  FORGET_THIS_DATE,
  inUseAndCounts,
  NOTHING_WOULD_SETTLE,
  OR_TAP_WHAT_WAS_SAID,
  readAs,
  SAY_IT_ANOTHER_WAY,
  SAY_TO_THE_SELLER,
  sellerSays,
  settlesItBest,
  THE_SELLERS_DATE,
  WHAT_COUNTS_MOST_AGAINST_IT,
  WHAT_COUNTS_MOST_FOR_IT,
  WHAT_DOES_THE_SELLER_SAY,
  WHICH_YEARS,
  WHO_SAYS_SO,
  whoSaysSoOf,
  YEARS,
  yearsFromTo,
} from "./words.js";
import { CHECK_THE_DATE } from "./first-words.js";

/**
 * Opens the sheet: what the seller says, or what is to be said of it. `act`: claim(text),
 * change(feature).
 */
export function openClaim(state, step, act) {
  const held = heldClaim(state, step);
  if (held === null || held.judged === null) openForm(state, step, act);
  else openVerdict(state, step, held, act);
}

/** Where a claim is typed or tapped. */
function openForm(state, step, act) {
  const { engine, ready, pack } = state;
  const reading = el("p", { id: "claim-read", role: "status" });
  const field = el("input", {
    id: "claim-text",
    type: "text",
    autocomplete: "off",
    spellcheck: "false",
    enterkeyhint: "done",
    value: step.claim ?? "",
    "aria-describedby": "claim-read",
    oninput: () => showReading(),
    onkeydown: (event) => {
      if (event.key === "Enter") check();
    },
  });

  function showReading() {
    const text = field.value.trim();
    reading.textContent = text === "" ? "" : readBack(pack, engine.read_claim(ready, text));
  }

  function put(text) {
    field.value = text;
    showReading();
  }

  function check() {
    const text = field.value.trim();
    const { problem } = engine.read_claim(ready, text);
    if (problem === "") act.claim(text);
    else {
      reading.textContent = claimProblem(pack, problem);
      field.focus();
    }
  }

  showReading();
  sheet(
    CHECK_THE_DATE,
    el("p", {}, WHICH_YEARS),
    yearKeys(pack, step.claim ?? "", act),
    el(
      "details",
      { open: Boolean(step.claim) },
      el("summary", {}, SAY_IT_ANOTHER_WAY),
      el("label", { for: "claim-text" }, WHAT_DOES_THE_SELLER_SAY),
      field,
      reading,
      button(CHECK_IT, check, { class: "main wide" }),
      quickTaps(pack, put),
    ),
    step.claim ? button(FORGET_THIS_DATE, () => act.claim(""), { class: "plain" }) : null,
  );
}

/** Decades, and the years of the one that was tapped: each is judged at once. */
function yearKeys({ range }, claim, act) {
  const { first, last } = range;
  const begin = (year) => year - (year % 10);
  const year = Number.parseInt(claim, 10);
  const chosen = /^\d{4}s?$/.test(claim) ? begin(year) : 0;
  const key = (text) =>
    button(text, () => act.claim(text), { class: "plain", "aria-pressed": String(text === claim) });
  const decades = [];
  for (let start = begin(first); start <= last; start += 10) decades.push(key(`${start}s`));
  const years = chosen === 0 ? [] : Array.from({ length: 10 }, (_, place) => chosen + place);
  const within = years.filter((own) => own >= first && own <= last).map((own) => key(String(own)));
  return el(
    "div",
    { class: "quick", role: "group", "aria-label": YEARS },
    el("div", { class: "year-taps" }, decades),
    within.length > 0 ? el("div", { class: "year-taps" }, within) : null,
  );
}

function readBack(pack, claim) {
  if (claim.problem !== "") return claimProblem(pack, claim.problem);
  return readAs(claimBoth(claim));
}

function quickTaps(pack, put) {
  return el(
    "div",
    { class: "quick", role: "group", "aria-label": OR_TAP_WHAT_WAS_SAID },
    quickClaims(pack).map((line) =>
      el(
        "div",
        { class: "quick-line" },
        line.map(([label, text]) =>
          button(label, () => put(text), {
            class: "plain",
            "aria-label": label.toLowerCase() === text ? null : text,
          }),
        ),
      ),
    ),
    exactYears(pack, put),
  );
}

/** Every year of the range; a second tap makes it a span. */
function exactYears({ range }, put) {
  let begun = 0;
  const buttons = [];
  for (let year = range.first; year <= range.last; year += 1) {
    buttons.push(
      button(
        String(year),
        () => {
          const span = begun > 0 && begun !== year;
          put(span ? yearsFromTo(Math.min(begun, year), Math.max(begun, year)) : String(year));
          begun = span ? 0 : year;
        },
        { class: "plain" },
      ),
    );
  }
  return el(
    "details",
    {},
    el("summary", {}, FIRST_AND_LAST),
    el("div", { class: "year-taps" }, buttons),
  );
}

/** What is to be said of the claim. */
function openVerdict(state, step, { claim, judged }, act) {
  const { pack, view } = state;
  const { session } = step;
  const again = () => openVerdict(state, step, { claim, judged }, act);
  const aloud = sayAloud(pack, session, claim, judged, view);
  const shown = claim.about === "years" ? judged.chance : judged.could;
  sheet(
    THE_SELLERS_DATE,
    el("p", {}, sellerSays(claimBoth(claim))),
    el("p", { class: "verdict" }, `${VERDICTS[judged.word]}.`),
    yearKeys(pack, step.claim, act),
    note(verdictNote(claim, judged, session.answers.length)),
    judged.word === "unknown"
      ? null
      : [
          el("p", { class: "quiet" }, claim.about === "years" ? CHANCE_IT_WAS_MADE_THEN : CHANCE),
          chance(shown),
        ],
    aloud === ""
      ? null
      : [heading(3, SAY_TO_THE_SELLER), el("p", { class: "aloud" }, `“${aloud}”`)],
    side(pack, session, judged, -1, WHAT_COUNTS_MOST_AGAINST_IT),
    side(pack, session, judged, 1, WHAT_COUNTS_MOST_FOR_IT),
    settle(pack, judged, act),
    timeline(pack, session, view, seenYears(state, session), claim),
    el(
      "div",
      { class: "row" },
      whoLink(() =>
        openWho(
          state,
          step,
          view.variants.slice(0, 3).map((candidate) => candidate.variant),
          [BACK_TO_THE_SELLERS_DATE, again],
        ),
      ),
      button(CHANGE_THIS_DATE, () => openForm(state, step, act), { class: "plain" }),
      button(FORGET_THIS_DATE, () => act.claim(""), { class: "plain" }),
    ),
  );
}

function note(text) {
  return text === "" ? null : el("p", {}, text);
}

function side(pack, session, judged, sign, title) {
  const entries = strongest(judged, sign);
  if (entries.length === 0) return null;
  return [
    heading(3, title),
    el(
      "ul",
      { class: "plain-list" },
      entries.map((entry) => el("li", {}, evidence(pack, session, entry))),
    ),
  ];
}

function evidence(pack, session, entry) {
  const { name } = pack.features[entry.feature];
  if (entry.earliest === 0) return counts(name, speaks(entry.bits));
  return [
    el("strong", {}, `${name}: ${seenWords(pack, session, entry)}`),
    inUseAndCounts(fromTo(pack, entry), speaks(entry.bits)),
    el(
      "details",
      {},
      el("summary", { "aria-label": whoSaysSoOf(name) }, WHO_SAYS_SO),
      whoOfFeature(pack, session, entry),
    ),
  ];
}

function settle(pack, { question }, act) {
  if (question === null) {
    return el("p", { class: "quiet" }, NOTHING_WOULD_SETTLE);
  }
  const feature = pack.features[question.feature];
  return [
    el("p", {}, settlesItBest(small(feature.name))),
    button(ASK_WHAT_SETTLES, () => act.change(feature.id), {
      class: "main wide",
    }),
  ];
}
