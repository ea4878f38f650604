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
import { download } from "../exchange/server-files.js";
import { packsAtHand, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { proposalLines, proposeButton } from "./proposing.js";
import { saver } from "../parts/saving.js";
import { goTo } from "../parts/navigation.js";

/** All sightings, and the file of them. */
export function sightingsScreen() {
  const found = all("sighting").sort((a, b) => (a.made < b.made ? 1 : -1));
  return el(
    "section",
    { class: "shelf" },
    heading(1, "Sightings"),
    found.length === 0 ? emptyPicture("question") : null,
    el(
      "p",
      {},
      found.length === 0
        ? "None yet. When a piece is not in the range, or shows something new, the answer " +
            "offers to keep it as a sighting."
        : "Send the file to whoever keeps the range: it has what was seen, when it was " +
            "made, and the photos.",
    ),
    ...longList("Sightings", found, (one) => row(one)),
    found.length === 0
      ? null
      : button("Save all as a file", () => run(() => handOver(found)), { class: "main wide" }),
    found.length === 0 ? null : proposalLines(),
  );
}

function row(one) {
  const about = [one.years === "" ? "" : dateText(one.years), one.text.split("\n")[0]];
  const open = () => goTo("sighting", { id: one.id });
  return entry([named(one), ...about, timeText(one.made)], open, recordPicture(one));
}

function named(one) {
  return one.called === "" ? title(packsAtHand, one) : one.called;
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
    el("p", { class: "kicker" }, sighting.unrecorded ? "Not in the range" : "Sighting"),
    heading(1, named(sighting)),
    await unsettledLine(id),
    textField("What to call it", sighting.called, save("called", "Name"), {
      hint: "In a few words: blue, with a silver roof.",
    }),
    pack ? itemChoice(pack, sighting, save("item", "Item")) : null,
    ready ? yearsField(state, ready, sighting, save("years", "Years")) : null,
    longField("How do you know?", sighting.text, save("text", "Note")),
    ready ? stretched(state, ready, sighting) : null,
    photoBox(id),
    pack ? seen(pack, sighting) : null,
    el(
      "div",
      { class: "stack" },
      proposeButton(sighting),
      button("Save it as a file", () => run(() => handOver([record(id)])), {
        class: "main wide",
      }),
      button("All sightings", () => goTo("sightings"), { class: "plain wide" }),
      button("Move to the bin", () => discard(id, "The sighting"), { class: "plain wide" }),
    ),
  );
}

function itemChoice(pack, { item, of, kind }, save) {
  const near = of.map((one) => one.item);
  const rank = ({ number }) => (near.includes(number) ? near.indexOf(number) : near.length);
  const items = pack.items
    .map((one, place) => ({ ...one, place }))
    .filter((one) => kind === "" || pack.kinds[one.kind].id === kind)
    .sort((a, b) => rank(a) - rank(b) || a.place - b.place);
  const options = items.map((one) => [one.number, itemName(pack, one.place)]);
  return choice("It is a variant of", [["", "Not known"], ...options], item, save);
}

function yearsField(state, ready, sighting, save) {
  const hint = "Only if you know it: a dated box, a receipt, a gift.";
  const read = async (text) => {
    if (text === "") return save("");
    const claim = state.engine.read_claim(ready, text);
    if (claim.problem !== "") return claimProblem(ready.pack, claim.problem);
    return claim.about === "years"
      ? save(claim.edtf)
      : "Type years here, such as 1957 or late fifties.";
  };
  return textField("When was it made?", sighting.years, read, { hint });
}

function session({ pack, kind, item, answers }) {
  const items = item === "" ? [] : [item];
  return { pack, version: "", scope: { kind, items }, able: [], missing: [], answers };
}

/** What was seen outside the years that its sources give. */
function stretched({ engine }, ready, sighting) {
  const known = years(engine, ready, sighting);
  if (known === null) return null;
  const told = engine.mend(ready, session(sighting)).session;
  const odd = engine
    .seen_years(ready, told)
    .filter(({ earliest, latest }) => earliest > 0 && (earliest > known[1] || latest < known[0]));
  if (odd.length === 0) return null;
  return el(
    "div",
    { class: "warn" },
    el("p", {}, "This goes beyond what the sources say:"),
    el(
      "ul",
      { class: "plain-list" },
      odd.map((one) =>
        el(
          "li",
          {},
          `${ready.pack.features[one.feature].name}, ${seenWords(ready.pack, told, one)}: known ` +
            `from ${span(one.earliest, one.latest)}.`,
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
  return [heading(2, "What was seen"), whatWasSeen(pack, answers, say)];
}
