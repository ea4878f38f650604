/**
 * Sightings: pieces that are in no reference, or that stretch its years, for the keeper of the
 * pack.
 */
import { all, record } from "../data/records.js";
import { sightingsFile } from "../data/sightings-file.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { whatWasSeen } from "../parts/facts.js";
import { choice, longField, textField } from "../parts/fields.js";
import { entry, longList } from "../parts/long-list.js";
import { title } from "../parts/piece-names.js";
import { recordPicture } from "../parts/record-picture.js";
import { photoBox } from "../parts/photobox.js";
import { answerText, itemName, small, span } from "../parts/say.js";
import { claimProblem, seenWords } from "../identify/claim-words.js";
import { unsettledLine } from "../parts/unsettled.js";
import { dateText, timeText } from "../parts/days.js";
import { discard, gone } from "../collection/piece.js";
import { download } from "../exchange/hand-out.js";
import { packsAtHand, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { proposalLines, proposeButton } from "./proposing.js";
import { saver } from "../parts/saving.js";
import { goTo } from "../parts/navigation.js";
import {
  ALL_SIGHTINGS,
  BEYOND_THE_SOURCES,
  EXAMPLE_OF_A_SIGHTING,
  HOW_DO_YOU_KNOW,
  IT_IS_A_VARIANT_OF,
  ITEM,
  knownFrom,
  MOVE_TO_THE_BIN,
  NAME,
  NO_SIGHTINGS_YET,
  NOT_IN_THE_RANGE,
  NOT_KNOWN,
  NOTE,
  ONLY_IF_YOU_KNOW,
  SAVE_ALL_AS_A_FILE,
  SAVE_IT_AS_A_FILE,
  SEND_THE_FILE,
  SIGHTING,
  SIGHTINGS,
  THE_SIGHTING,
  TYPE_YEARS_HERE,
  WHAT_TO_CALL_IT,
  WHAT_WAS_SEEN,
  WHEN_WAS_IT_MADE,
  YEARS,
} from "./words.js";

/** All sightings, and the file of them. */
export function sightingsScreen() {
  const list = all("sighting").sort((a, b) => (a.made < b.made ? 1 : -1));
  return el(
    "section",
    { class: "shelf" },
    heading(1, SIGHTINGS),
    list.length === 0 ? emptyPicture("question") : null,
    el("p", {}, list.length === 0 ? NO_SIGHTINGS_YET : SEND_THE_FILE),
    ...longList(SIGHTINGS, list, (sighting) => row(sighting)),
    list.length === 0
      ? null
      : button(SAVE_ALL_AS_A_FILE, () => run(() => handOver(list)), { class: "main wide" }),
    list.length === 0 ? null : proposalLines(),
  );
}

function row(sighting) {
  const about = [
    sighting.years === "" ? "" : dateText(sighting.years),
    sighting.text.split("\n")[0],
  ];
  const open = () => goTo("sighting", { id: sighting.id });
  return entry([named(sighting), ...about, timeText(sighting.made)], open, recordPicture(sighting));
}

function named(sighting) {
  return sighting.called === "" ? title(packsAtHand, sighting) : sighting.called;
}

async function handOver(sightings) {
  const { blob, name } = await sightingsFile(sightings);
  download(new File([blob], name, { type: blob.type }));
}

/** One sighting: what was seen, and what the person knows of it. */
export async function sightingScreen(state, { id }) {
  const sighting = record(id);
  if (!sighting || sighting.trashed !== "") return gone();
  const ready = await readyRange(sighting.pack);
  const pack = packsAtHand.get(sighting.pack);
  const save = (field, what) => saver(id, field, what);
  return el(
    "section",
    { class: "shelf" },
    el("p", { class: "kicker" }, sighting.unrecorded ? NOT_IN_THE_RANGE : SIGHTING),
    heading(1, named(sighting)),
    await unsettledLine(id),
    textField(WHAT_TO_CALL_IT, sighting.called, save("called", NAME), {
      hint: EXAMPLE_OF_A_SIGHTING,
    }),
    pack ? itemChoice(pack, sighting, save("item", ITEM)) : null,
    ready ? yearsField(state, ready, sighting, save("years", YEARS)) : null,
    longField(HOW_DO_YOU_KNOW, sighting.text, save("text", NOTE)),
    ready ? stretched(state, ready, sighting) : null,
    photoBox(id),
    pack ? seen(pack, sighting) : null,
    el(
      "div",
      { class: "stack" },
      proposeButton(sighting),
      button(SAVE_IT_AS_A_FILE, () => run(() => handOver([record(id)])), {
        class: "main wide",
      }),
      button(ALL_SIGHTINGS, () => goTo("sightings"), { class: "plain wide" }),
      button(MOVE_TO_THE_BIN, () => discard(id, THE_SIGHTING), { class: "plain wide" }),
    ),
  );
}

function itemChoice(pack, { item, of, kind }, save) {
  const near = of.map((candidate) => candidate.item);
  const rank = ({ number }) => (near.includes(number) ? near.indexOf(number) : near.length);
  const items = pack.items
    .map((fields, place) => ({ ...fields, place }))
    .filter(({ kind: own }) => kind === "" || pack.kinds[own].id === kind)
    .sort((a, b) => rank(a) - rank(b) || a.place - b.place);
  const options = items.map(({ number, place }) => [number, itemName(pack, place)]);
  return choice(IT_IS_A_VARIANT_OF, [["", NOT_KNOWN], ...options], item, save);
}

function yearsField(state, ready, sighting, save) {
  const hint = ONLY_IF_YOU_KNOW;
  const read = async (text) => {
    if (text === "") return save("");
    const claim = state.engine.read_claim(ready, text);
    if (claim.problem !== "") return claimProblem(ready.pack, claim.problem);
    return claim.about === "years" ? save(claim.edtf) : TYPE_YEARS_HERE;
  };
  return textField(WHEN_WAS_IT_MADE, sighting.years, read, { hint });
}

function session({ pack, kind, item, answers }) {
  const items = item === "" ? [] : [item];
  return { pack, version: "", scope: { kind, items }, able: [], missing: [], answers };
}

/** What was seen outside the years that its sources give. */
function stretched({ engine }, ready, sighting) {
  const known = years(engine, ready, sighting);
  if (known === null) return null;
  const mended = engine.mend(ready, session(sighting)).session;
  const odd = engine
    .seen_years(ready, mended)
    .filter(({ earliest, latest }) => earliest > 0 && (earliest > known[1] || latest < known[0]));
  if (odd.length === 0) return null;
  return el(
    "div",
    { class: "warn" },
    el("p", {}, BEYOND_THE_SOURCES),
    el(
      "ul",
      { class: "plain-list" },
      odd.map((evidence) =>
        el(
          "li",
          {},
          knownFrom(
            ready.pack.features[evidence.feature].name,
            seenWords(ready.pack, mended, evidence),
            span(evidence.earliest, evidence.latest),
          ),
        ),
      ),
    ),
  );
}

function years(engine, ready, sighting) {
  if (sighting.years === "") return null;
  const claim = engine.read_claim(ready, sighting.years);
  return claim.problem === "" ? [claim.first, claim.last] : null;
}

function seen(pack, { answers }) {
  const say = (answer) => small(answerText(pack, answer));
  return [heading(2, WHAT_WAS_SEEN), whatWasSeen(pack, answers, say)];
}
