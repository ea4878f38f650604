/**
 * Sightings that followers of a range of one's own send back, each as a proposal: what it would add
 * or change, what that does, and whether it is taken in.
 */
import { emptyPicture } from "../parts/empty-picture.js";
import { fitting } from "../data/record-shapes.js";
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { gone } from "../collection/piece.js";
import { button, el, heading } from "../parts/element.js";
import { dateText, timeText } from "../parts/days.js";
import { choice } from "../parts/fields.js";
import { fileButton } from "../parts/file-button.js";
import { redraw } from "../parts/navigation.js";
import { small } from "../parts/say.js";
import { saveChange } from "../parts/saving.js";
import { notice } from "../parts/status.js";
import { proposed, effectOf } from "./proposal-effect.js";
import { putIn } from "./put-in.js";
import { calledOf } from "./trying.js";
import {
  addWaiting,
  leaveWaiting,
  noteTaken,
  noteWaiting,
  settledOf,
  waitingFor,
} from "./waiting-sightings.js";
import {
  A_SIGHTING_WITHOUT_A_NAME,
  ADD_SIGHTINGS_FROM_A_FILE,
  ALL_KNOWN,
  ALL_SETTLED,
  ALL_WAIT,
  andMade,
  BETWEEN_STATES,
  CORRECTS_ONE,
  fromAsWell,
  isAsBefore,
  isInRangeNow,
  isNowAndWouldBe,
  IT_IS_A_VARIANT_OF,
  IT_WOULD_CHANGE,
  LEAVE_IT,
  LEFT_OUT_AS_IT_IS,
  madeAsWell,
  morePairs,
  moreWait,
  namedAs,
  newVariantOf,
  NO_LONGER_TOLD_APART,
  NO_ROOM,
  NONE,
  NONE_WAIT,
  NOT_KNOWN,
  NOT_SIGHTINGS,
  notedOn,
  NOTHING_IN_RANGE_YET,
  ofAnotherRange,
  ONE_MORE_PAIR,
  ONE_MORE_WAITS,
  otherwiseNamed,
  OWN_NAMED_AS_NOW,
  OWN_NAMED_OTHERWISE,
  ownOtherwiseNamed,
  pairBecomes,
  photoOf,
  PUT_IT_BACK,
  SIGHTING_TAKEN_IN,
  sightingCount,
  sightingsOf,
  sightingsOfAnother,
  SOME_SETTLED,
  SOME_WAITED,
  STAYS_AS_IT_IS,
  TAKE_IT_IN,
  TAKEN_FOR_ONE_IN_NO_RANGE,
  TOLD_APART_FROM_THEN,
  toLookAt,
  TOO_LARGE,
  TRYING_WHAT_THAT_DOES,
  waitAlready,
  WHAT_SIGHTINGS_IN_ARE,
  WHAT_WOULD_CHANGE,
  WHY_NOT_TAKEN,
  WRITE_AS_NEW,
} from "./following-words.js";

const KIND = "identify sightings";
const MOST = 60_000_000; // bytes of a file
const MANY = 200; // sightings that wait at once
const PHOTO = /^data:image\/jpeg;base64,[\w+/=]+$/;
const SHOWN = 3;
const AT_ONCE = 5; // what each would do is worked out

/** What others saw of the range `id`. */
export async function proposedScreen(state, { id }) {
  const range = record(id);
  if (!range || range.trashed !== "") return gone();
  const waiting = await waitingFor(range);
  const proposals = [];
  const more = waiting.length - AT_ONCE;
  for (const sighting of waiting.slice(0, AT_ONCE))
    proposals.push(await shown(state, range, sighting));
  return el(
    "section",
    { class: "shelf" },
    heading(1, sightingsOf(range.name)),
    el("p", {}, WHAT_SIGHTINGS_IN_ARE),
    fileButton(ADD_SIGHTINGS_FROM_A_FILE, (file) => run(() => addFile(state, range, file)), {
      accept: ".json,application/json",
    }),
    proposals.length === 0 ? [emptyPicture("question"), el("p", {}, NONE_WAIT)] : proposals,
    more > 0 ? el("p", { class: "quiet" }, more === 1 ? ONE_MORE_WAITS : moreWait(more)) : null,
  );
}

/** Takes a file of sightings in, to be looked at; or says why not. */
async function addFile(state, range, file) {
  const { sightings = [], problem } = await sightingsIn(state, file);
  if (problem) return notice(`${file.name}: ${problem}`);
  const ours = sightings.filter(({ pack }) => pack === range.key);
  if (ours.length === 0) return notice(sightingsOfAnother(file.name, range.name));
  const there = await waitingFor(range);
  const settled = await settledOf(range);
  const byTime = ours.sort((a, b) => (a.changed < b.changed ? -1 : 1));
  // each once, the latest
  const came = [...new Map(byTime.map((sighting) => [sighting.id, sighting])).values()];
  const waits = came.filter((sighting) =>
    there.some((it) => it.id === sighting.id && !isLater(sighting, it)),
  );
  const fresh = came
    .filter(
      (sighting) =>
        !waits.includes(sighting) && isLater(sighting, { changed: settled.get(sighting.id) }),
    )
    .map((sighting) => ({ ...sighting, corrects: settled.has(sighting.id) }));
  const others = there.filter(({ id }) => !fresh.some((sighting) => sighting.id === id));
  if (others.length + fresh.length > MANY) return notice(waitAlready(MANY));
  if (!(await addWaiting(range, fresh))) return notice(NO_ROOM);
  await redraw();
  const foreign = sightings.length - ours.length;
  const left = foreign === 0 ? "" : ofAnotherRange(counted(foreign));
  notice(cameText(fresh.length, waits.length, came.length - fresh.length - waits.length) + left);
}

const isLater = (sighting, { changed = "" }) => sighting.changed > changed;

/** How many came that are new, that wait here already, that were settled before. */
function cameText(fresh, waits, settled) {
  if (fresh > 0)
    return toLookAt(counted(fresh), waits > 0 ? SOME_WAITED : "", settled > 0 ? SOME_SETTLED : "");
  if (settled === 0) return ALL_WAIT;
  return waits === 0 ? ALL_SETTLED : ALL_KNOWN;
}

const counted = (count) => (count === 1 ? "1 sighting" : sightingCount(count));

/** {sightings}, or {problem: a sentence}. */
async function sightingsIn({ engine }, file) {
  const wrong = { problem: NOT_SIGHTINGS };
  if (file.size > MOST) return { problem: TOO_LARGE };
  let content;
  try {
    content = JSON.parse(await file.text());
  } catch {
    return wrong;
  }
  if (content?.kind !== KIND || content.format !== 1 || !Array.isArray(content.sightings))
    return wrong;
  const sound = (sighting) =>
    sighting?.type === "sighting" && !engine.record_fault({ ...sighting, photos: [] });
  if (content.sightings.length === 0 || !content.sightings.every(sound)) return wrong;
  return {
    sightings: content.sightings.map(({ photos, ...sighting }) => ({
      ...fitting({ ...sighting, photos: [] }),
      shots: (Array.isArray(photos) ? photos : [])
        .map((shot) => shot?.full)
        .filter((url) => typeof url === "string" && PHOTO.test(url)),
    })),
  };
}

/** One sighting, with what it would change and what that does. */
async function shown(state, range, sighting) {
  const proposal = await proposed(state, range, sighting);
  const called = sighting.called || A_SIGHTING_WITHOUT_A_NAME;
  const effect = el("p", { role: "status" });
  const takeable = proposal?.after;
  const section = el(
    "section",
    { "aria-label": called },
    heading(2, called),
    el("p", { class: "quiet" }, notedOn(timeText(sighting.made))),
    sighting.corrects ? el("p", {}, CORRECTS_ONE) : null,
    sighting.text === "" ? null : el("p", {}, sighting.text),
    sighting.shots.map((url, place) =>
      el("img", { src: url, class: "photo", alt: photoOf(place + 1, called) }),
    ),
    sighting.unrecorded && proposal ? itemChoice(range, sighting, proposal.pack) : null,
    proposal ? changes(proposal) : el("p", {}, NOTHING_IN_RANGE_YET),
    takeable ? effect : null,
    el(
      "div",
      { class: "stack" },
      takeable
        ? button(TAKE_IT_IN, () => run(() => takeIn(state, range.id, sighting.id)), {
            class: "main wide",
          })
        : null,
      proposal?.proposal.why === "no item"
        ? button(
            WRITE_AS_NEW,
            () => putIn({ ...sighting, answers: proposal.answers, pack: proposal.pack }),
            {
              class: "main wide",
            },
          )
        : null,
      button(LEAVE_IT, () => run(() => leave(range, sighting)), { class: "plain wide" }),
    ),
  );
  if (takeable) tellEffect(state, sighting, proposal, effect);
  return section;
}

function itemChoice(range, sighting, pack) {
  const items = pack.items.filter(
    ({ kind }) => sighting.kind === "" || pack.kinds[kind].id === sighting.kind,
  );
  const options = items.map(({ number, name }) => [number, `${number} ${name}`]);
  const save = async (item) => {
    await run(async () => {
      await noteWaiting(range, sighting.id, { item });
      await redraw();
    });
    return true;
  };
  return choice(IT_IS_A_VARIANT_OF, [["", NOT_KNOWN], ...options], sighting.item, save);
}

/** The rows that it would add or change. */
function changes({ proposal, rows }) {
  if (proposal.why !== "") return el("p", { class: "warn" }, WHY_NOT_TAKEN[proposal.why]);
  const lines = [
    ...proposal.variants.flatMap((variant) => variantLines(variant, rows, proposal.beside)),
    ...proposal.other.map((entry) => otherLine(entry, rows)),
  ];
  return [
    el("p", {}, IT_WOULD_CHANGE),
    el(
      "ul",
      { class: "plain-list", "aria-label": WHAT_WOULD_CHANGE },
      lines.map((text) => el("li", {}, text)),
    ),
  ];
}

function variantLines({ item, name, years, cells }, rows, beside) {
  const { name: of } = rows.items.find(({ number }) => number === item);
  const seen = cells.map(([feature, states]) => {
    const asked = rows.features.find(({ id }) => id === feature);
    const names = states.split("|").map((state) => nameOf(asked, state));
    return `${asked.name}: ${names.map(small).join(BETWEEN_STATES)}`;
  });
  const made = years === "" ? "" : andMade(dateText(years));
  return [newVariantOf(item, of, name, made), ...seen, ...beside];
}

const nameOf = (feature, state) => feature.states.find(({ id }) => id === state)?.name ?? NONE;

function otherLine({ table, row, years }, rows) {
  const when = dateText(years);
  if (table === "changes") {
    const { feature, state } = rows.changes[row];
    const asked = rows.features.find(({ id }) => id === feature);
    return fromAsWell(asked.name, small(nameOf(asked, state)), when);
  }
  const { number, item = number, name } = rows[table][row];
  return madeAsWell(item, name, when);
}

/** Beside the queue: no tap waits for all that is tried. */
async function tellEffect(state, sighting, change, line) {
  line.textContent = TRYING_WHAT_THAT_DOES;
  await new Promise((done) => {
    setTimeout(done);
  });
  try {
    const effect = await effectOf(state, sighting, change, () => line.isConnected);
    if (effect) line.textContent = effectText(effect, change.after);
  } catch (error) {
    run(() => {
      throw error;
    });
  }
}

function effectText({ apart, alike, tried, otherwise, own, ownOtherwise, was, would }, pack) {
  const effects = [
    ...pairsText(alike, pack, NO_LONGER_TOLD_APART),
    ...pairsText(apart, pack, TOLD_APART_FROM_THEN),
  ];
  const drawn = otherwiseNamed(tried, otherwise === 0 ? "none" : otherwise);
  const yours = own === 0 ? "" : ownText(own, ownOtherwise);
  const now = was === "" ? TAKEN_FOR_ONE_IN_NO_RANGE : namedAs(variantCalled(pack, was));
  const then = would === "" ? TAKEN_FOR_ONE_IN_NO_RANGE : namedAs(variantCalled(pack, would));
  const like = now === then ? isAsBefore(now) : isNowAndWouldBe(now, then);
  if (effects.length === 0) effects.push(STAYS_AS_IT_IS);
  return [like, ...effects, drawn, yours].filter(Boolean).join(" ");
}

function ownText(own, otherwise) {
  if (own === 1) return otherwise === 1 ? OWN_NAMED_OTHERWISE : OWN_NAMED_AS_NOW;
  return ownOtherwiseNamed(own, otherwise === 0 ? "none" : otherwise);
}

/** What a variant is called; null where it is not in the range. */
function variantCalled(pack, id) {
  const place = pack.variants.findIndex((variant) => variant.id === id);
  return place < 0 ? null : calledOf(pack, place);
}

function pairsText(pairs, pack, what) {
  const named = pairs
    .map((pair) => pair.split(" ").map((id) => variantCalled(pack, id)))
    .filter((both) => both.every((name) => name !== null));
  const lines = named.slice(0, SHOWN).map(([first, second]) => pairBecomes(first, second, what));
  const more = named.length - SHOWN;
  if (more > 0) lines.push(more === 1 ? ONE_MORE_PAIR : morePairs(more));
  return lines;
}

/**
 * Takes it in, as one change: of the range as it is now, which may have changed since it was
 * shown, as when another was taken in just before.
 */
async function takeIn(state, rangeId, id) {
  const range = record(rangeId);
  const sighting = (await waitingFor(range)).find((row) => row.id === id);
  const proposal = sighting && (await proposed(state, range, sighting));
  const said = isInRangeNow(range.name);
  if (proposal?.after && (await saveChange(SIGHTING_TAKEN_IN, proposal.edits, { said })))
    await noteTaken(range, id, proposal.edits[0].id);
  await redraw();
}

async function leave(range, sighting) {
  const putBack = await leaveWaiting(range, sighting);
  await redraw();
  notice(LEFT_OUT_AS_IT_IS, [
    [
      PUT_IT_BACK,
      () =>
        run(async () => {
          await putBack();
          await redraw();
        }),
    ],
  ]);
}
