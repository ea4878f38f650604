/**
 * Sightings that followers of a range of one's own send back, each as a proposal: what it would add
 * or change, what that does, and whether it is taken in.
 */
import { fitting } from "../data/record-shapes.js";
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { read, write } from "../data/store.js";
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

const KIND = "identify sightings";
const MOST = 60_000_000; // bytes of a file
const MANY = 200; // sightings that wait at once
const PHOTO = /^data:image\/jpeg;base64,[\w+/=]+$/;
const SHOWN = 3;
const AT_ONCE = 5; // what each would do is worked out
const keyOf = (range) => `proposed ${range.key}`; // under which they wait

/** What others saw of the range `id`. */
export async function proposedScreen(state, { id }) {
  const range = record(id);
  if (!range || range.trashed !== "") return gone();
  const waiting = await read("kept", keyOf(range));
  const proposals = [];
  const more = (waiting ?? []).length - AT_ONCE;
  for (const sighting of (waiting ?? []).slice(0, AT_ONCE))
    proposals.push(await shown(state, range, sighting));
  return el(
    "section",
    { class: "shelf" },
    heading(1, `Sightings of ${range.name}`),
    el(
      "p",
      {},
      "Whoever uses your range can send you a file of what they saw: in their app under " +
        "Sightings. Nothing is changed until you take it in.",
    ),
    fileButton("Add sightings from a file", (file) => run(() => addFile(state, range, file)), {
      accept: ".json,application/json",
    }),
    proposals.length === 0 ? el("p", { class: "quiet" }, "None wait.") : proposals,
    more > 0
      ? el(
          "p",
          { class: "quiet" },
          more === 1 ? "1 more waits behind these." : `${more} more wait behind these.`,
        )
      : null,
  );
}

/** Takes a file of sightings in, to be looked at; or says why not. */
async function addFile(state, range, file) {
  const { sightings = [], problem } = await sightingsIn(state, file);
  if (problem) return notice(`${file.name}: ${problem}`);
  const ours = sightings.filter(({ pack }) => pack === range.key);
  const there = (await read("kept", keyOf(range))) ?? [];
  const fresh = ours.filter(({ id }) => !there.some((one) => one.id === id));
  if (ours.length === 0)
    return notice(`${file.name}: these sightings are of another range than ${range.name}.`);
  if (there.length + fresh.length > MANY)
    return notice(`${MANY} sightings wait already. Take them in or leave them first.`);
  if (!(await write("kept", keyOf(range), [...there, ...fresh])))
    return notice("This device has no room for them. Nothing was added.");
  await redraw();
  const others = sightings.length - ours.length;
  const left = others === 0 ? "" : ` ${counted(others)} of another range, left out.`;
  const known = fresh.length === ours.length ? "" : " Some of them waited here already.";
  notice(`${counted(fresh.length)} to look at.${known}${left}`);
}

const counted = (count) => (count === 1 ? "1 sighting" : `${count} sightings`);

/** {sightings}, or {problem: a sentence}. */
async function sightingsIn({ engine }, file) {
  const wrong = { problem: "this is not a file of sightings, or it is damaged. Ask for it again." };
  if (file.size > MOST) return { problem: "this is too large for a file of sightings." };
  let found;
  try {
    found = JSON.parse(await file.text());
  } catch {
    return wrong;
  }
  if (found?.kind !== KIND || found.format !== 1 || !Array.isArray(found.sightings)) return wrong;
  const sound = (one) => one?.type === "sighting" && !engine.record_fault({ ...one, photos: [] });
  if (found.sightings.length === 0 || !found.sightings.every(sound)) return wrong;
  return {
    sightings: found.sightings.map(({ photos, ...one }) => ({
      ...fitting({ ...one, photos: [] }),
      shots: (Array.isArray(photos) ? photos : [])
        .map((shot) => shot?.full)
        .filter((url) => typeof url === "string" && PHOTO.test(url)),
    })),
  };
}

/** One sighting, with what it would change and what that does. */
async function shown(state, range, sighting) {
  const found = await proposed(state, range, sighting);
  const called = sighting.called || "A sighting without a name";
  const effect = el("p", { role: "status" });
  const takeable = found?.after;
  const section = el(
    "section",
    { "aria-label": called },
    heading(2, called),
    el("p", { class: "quiet" }, `Noted on ${timeText(sighting.made)}.`),
    sighting.text === "" ? null : el("p", {}, sighting.text),
    sighting.shots.map((url, place) =>
      el("img", { src: url, class: "photo", alt: `Photo ${place + 1} of ${called}` }),
    ),
    sighting.unrecorded && found ? itemChoice(range, sighting, found.pack) : null,
    found ? changes(found) : el("p", {}, "Nothing is written down in this range yet."),
    takeable ? effect : null,
    el(
      "div",
      { class: "stack" },
      takeable
        ? button("Take it in", () => run(() => takeIn(range, sighting, found.edits)), {
            class: "main wide",
          })
        : null,
      found?.proposal.why === "no item"
        ? button("Write it down as a new number", () => putIn({ ...sighting, pack: found.pack }), {
            class: "main wide",
          })
        : null,
      button("Leave it", () => run(() => leave(range, sighting)), { class: "plain wide" }),
    ),
  );
  if (takeable) tellEffect(state, sighting, found, effect);
  return section;
}

function itemChoice(range, sighting, pack) {
  const items = pack.items.filter(
    ({ kind }) => sighting.kind === "" || pack.kinds[kind].id === sighting.kind,
  );
  const options = items.map(({ number, name }) => [number, `${number} ${name}`]);
  const save = async (item) => {
    await run(async () => {
      await settle(range, sighting.id, (now) => ({ ...now, item }));
      await redraw();
    });
    return true;
  };
  return choice("It is a variant of", [["", "Not known"], ...options], sighting.item, save);
}

/** What waits changed: `alter` gives another sighting, null takes it away. */
async function settle(range, id, alter) {
  const there = (await read("kept", keyOf(range))) ?? [];
  const now = there.map((one) => (one.id === id ? alter(one) : one)).filter(Boolean);
  return write("kept", keyOf(range), now);
}

const WHY = {
  "no item":
    "It does not say which number it is a variant of. Choose it, or write it down as a new one.",
  "nothing new": "It says nothing that your range does not say already.",
  unread: "Its years cannot be read. Ask whoever sent it.",
};

/** The rows that it would add or change. */
function changes({ proposal, rows }) {
  if (proposal.why !== "") return el("p", { class: "warn" }, WHY[proposal.why]);
  const lines = [
    ...proposal.variants.flatMap((variant) => variantLines(variant, rows, proposal.beside)),
    ...proposal.other.map((entry) => otherLine(entry, rows)),
  ];
  return [
    el("p", {}, "It would change:"),
    el(
      "ul",
      { class: "plain-list", "aria-label": "It would change" },
      lines.map((text) => el("li", {}, text)),
    ),
  ];
}

function variantLines({ item, name, years, cells }, rows, beside) {
  const { name: of } = rows.items.find(({ number }) => number === item);
  const seen = cells.map(([feature, states]) => {
    const asked = rows.features.find(({ id }) => id === feature);
    const names = states.split("|").map((state) => nameOf(asked, state));
    return `${asked.name}: ${names.map(small).join(" or ")}`;
  });
  const made = years === "" ? "" : `, made ${dateText(years)}`;
  return [`A new variant of ${item} ${of}: ${name}${made}.`, ...seen, ...beside];
}

const nameOf = (feature, state) => feature.states.find(({ id }) => id === state)?.name ?? "None";

function otherLine({ table, row, years }, rows) {
  const when = dateText(years);
  if (table === "changes") {
    const { feature, state } = rows.changes[row];
    const asked = rows.features.find(({ id }) => id === feature);
    return `${asked.name}, ${small(nameOf(asked, state))}: from ${when} as well, by this sighting.`;
  }
  const { number, item = number, name } = rows[table][row];
  return `${item} ${name}: made ${when} as well, by this sighting.`;
}

/** Beside the queue: no tap waits for all that is tried. */
async function tellEffect(state, sighting, change, line) {
  line.textContent = "Trying what that does …";
  await new Promise((done) => {
    setTimeout(done);
  });
  try {
    const found = await effectOf(state, sighting, change, () => line.isConnected);
    if (found) line.textContent = effectText(found, change.after);
  } catch (error) {
    run(() => {
      throw error;
    });
  }
}

function effectText({ apart, alike, tried, otherwise, own, ownOtherwise, was, would }, pack) {
  const told = [
    ...pairsText(alike, pack, "can no longer be told apart by looking"),
    ...pairsText(apart, pack, "can be told apart from then on"),
  ];
  const drawn =
    `Of ${tried} pieces drawn from the range as it would be, ` +
    `${otherwise === 0 ? "none" : otherwise} would be named otherwise than now.`;
  const yours =
    own === 0
      ? ""
      : `Of your own pieces that were answered about (${own}), ` +
        `${ownOtherwise === 0 ? "none" : ownOtherwise} would be named otherwise.`;
  const now = was === "" ? "taken for one in no range" : `named “${variantCalled(pack, was)}”`;
  const then = would === "" ? "taken for one in no range" : `named “${variantCalled(pack, would)}”`;
  const like =
    now === then
      ? `A piece like this one is ${now}, as before.`
      : `A piece like this one is ${now} now, and would be ${then}.`;
  if (told.length === 0) told.push("What can be told apart stays as it is.");
  return [like, ...told, drawn, yours].filter(Boolean).join(" ");
}

/** What a variant is called; null where it is not in the range. */
function variantCalled(pack, id) {
  const place = pack.variants.findIndex((one) => one.id === id);
  return place < 0 ? null : calledOf(pack, place);
}

function pairsText(pairs, pack, what) {
  const named = pairs
    .map((pair) => pair.split(" ").map((id) => variantCalled(pack, id)))
    .filter((both) => both.every((name) => name !== null));
  const told = named.slice(0, SHOWN).map(([first, second]) => `${first} and ${second} ${what}.`);
  const more = named.length - SHOWN;
  return more > 0 ? [...told, `So it is with ${more} more pairs.`] : told;
}

/** Takes it in, as one change. */
async function takeIn(range, sighting, edits) {
  const said = `The sighting is in ${range.name} now.`;
  if (!(await saveChange("Sighting taken in", edits, { said }))) return;
  await settle(range, sighting.id, () => null);
  await redraw();
}

async function leave(range, sighting) {
  const index = (await read("kept", keyOf(range))) ?? [];
  await settle(range, sighting.id, () => null);
  await redraw();
  notice("The sighting is left out. Your range stays as it is.", [
    [
      "Put it back",
      () =>
        run(async () => {
          await write("kept", keyOf(range), index);
          await redraw();
        }),
    ],
  ]);
}
