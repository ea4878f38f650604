/** From the piece being identified to a note, a piece of the collection or a want. */
import { current } from "../data/piece-at-hand.js";
import { all, making } from "../data/records.js";
import { NoPhoto, photoFrom } from "../data/photos.js";
import { blank, same } from "../data/record-shapes.js";
import { today } from "../parts/days.js";
import { newNote } from "../notebook/notebook.js";
import { packsAtHand, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { putIn, putInVariant } from "../range/put-in.js";
import { saveChange } from "../parts/saving.js";
import { notice } from "../parts/status.js";
import { goTo } from "../parts/navigation.js";
import {
  ADDED_TO_COLLECTION,
  atTable,
  IT_IS_IN_YOUR_COLLECTION,
  IT_IS_KEPT_UNDER_SIGHTINGS,
  IT_IS_ON_YOUR_LIST,
  NEW_SIGHTING,
  NEW_WANT,
  NOTE_UPDATED,
  nothingWasSaved,
} from "./words.js";

const LEAST = 0.01;
const MOST = 12;

/** What is known of the piece at hand, in its own pack: {pack, of, answers, ...}. */
async function known(state) {
  await run(() => {}); // an answer just given is still being reasoned about
  const { pack, view, piece } = state;
  const leader = view.variants[0];
  const own = leader ? (pack.items[pack.variants[leader.variant].item].pack ?? pack.id) : pack.id;
  const front = pack.packs ? `${own}_` : "";
  const { session } = current(piece);
  const alone =
    pack.packs && leader ? state.engine.narrowed(await readyRange(own), session) : session;
  const of = view.variants
    .filter((candidate) => candidate.chance >= LEAST)
    .map(({ variant, chance }) => {
      const { id, item } = pack.variants[variant];
      const { number, pack: from = pack.id } = pack.items[item];
      return { item: number, variant: id.slice(front.length), chance, from };
    })
    .filter(({ from }) => from === own)
    .slice(0, MOST)
    .map(({ from, ...candidate }) => candidate);
  const { condition = "", boxed = "", asked = null } = piece.hand ?? {};
  return {
    pack: own,
    of,
    answers: alone.answers,
    session: piece.id ?? "",
    condition,
    boxed,
    asked,
  };
}

/** Opens the note about this piece: a new one, or the one there is with what is known now. */
export async function noteIt(state) {
  const facts = await known(state);
  const there = noteAbout(facts);
  if (!there) return newNote({ ...facts, ...placeOfBox(state) });
  return run(async () => {
    if (await updated(there, facts)) goTo("note", { id: there.id });
  });
}

const noteAbout = ({ session }) => all("note").find((note) => session && note.session === session);

/** Writes what is known now into the note there is; whether it is stored. */
async function updated(there, facts) {
  const noticed = Object.entries(facts).filter(([, value]) => value !== "" && value !== null);
  const alter = (now) => ({ ...now, ...Object.fromEntries(noticed) });
  const changed = noticed.some(([name, value]) => !same(there[name], value));
  return !changed || saveChange(NOTE_UPDATED, [{ id: there.id, alter }]);
}

/** Keeps a note about this piece, and goes on with the next one of its box. */
export async function noteInBox(state, next) {
  const facts = await known(state);
  const there = noteAbout(facts);
  const kept = there
    ? await run(() => updated(there, facts))
    : await newNote({ ...facts, ...placeOfBox(state) }, [], false);
  if (kept) await next();
}

/** Hall and table of the last note about a piece from the same box. */
function placeOfBox({ tray, piece }) {
  if (!piece.box) return {};
  const fellows = tray.filter(({ box, id }) => box === piece.box || id === piece.box);
  const noted = all("note").filter((note) => fellows.some(({ id }) => id === note.session));
  const [last] = noted.sort((a, b) => (a.made < b.made ? 1 : -1));
  return last ? { hall: last.hall, table: last.table } : {};
}

/** A note with a photo, for what is to be identified later. */
export async function photographIt(file) {
  try {
    const made = await photoFrom(file);
    await newNote({ photos: [made.id] }, [made]);
    run(() => {
      /** @type {HTMLElement} */
      const price = document.querySelector(".side-by-side input");
      price?.focus();
    });
  } catch (error) {
    if (!(error instanceof NoPhoto)) throw error;
    notice(nothingWasSaved(error.message));
  }
}

/** Puts the piece into the collection, or opens it there. */
export async function collectIt(state) {
  const { of, asked, ...facts } = await known(state);
  const there = all("piece").find((record) => facts.session && record.session === facts.session);
  if (there) return goTo("piece", { id: there.id });
  const note = all("note").find((other) => facts.session && other.session === facts.session);
  const recorded = state.view.unrecorded < (of[0]?.chance ?? 0);
  const piece = blank("piece", {
    ...facts,
    item: recorded ? of[0].item : "",
    of: recorded ? of.map(({ variant, chance }) => ({ variant, chance })) : [],
    missing: current(state.piece).session.missing,
    paid: note?.offer ?? asked,
    where: note ? [note.hall, note.table && atTable(note.table)].filter(Boolean).join(", ") : "",
    when: asked || note ? today() : "",
    photos: note?.photos ?? [],
    notes: note?.text ?? "",
  });
  const decided = note && {
    id: note.id,
    alter: (now) => ({ ...now, decision: "bought", piece: piece.id }),
  };
  return run(async () => {
    const said = IT_IS_IN_YOUR_COLLECTION;
    const edits = [making(piece), ...(decided ? [decided] : [])];
    if (await saveChange(ADDED_TO_COLLECTION, edits, { said }))
      goTo("piece", { id: piece.id }, { keepNotice: true });
  });
}

/** Puts the leading item among the wants, or opens the want there is. */
export async function wantIt(state) {
  const { pack, of } = await known(state);
  if (of.length === 0) return goTo("choose", { into: "want" });
  const [{ item }] = of;
  const variant = state.view.stop === "sure" ? of[0].variant : "";
  const there = all("want").find(
    (record) =>
      record.pack === pack && record.item === item && ["", variant].includes(record.variant),
  );
  if (there) return goTo("want", { id: there.id });
  const want = blank("want", { pack, item, variant });
  return run(async () => {
    if (await saveChange(NEW_WANT, [making(want)], { said: IT_IS_ON_YOUR_LIST }))
      goTo("want", { id: want.id }, { keepNotice: true });
  });
}

/** Puts the piece into a range of one's own, with what was answered. */
export async function putItIn(state) {
  const { pack: id, of, answers } = await known(state);
  await readyRange(id);
  const pack = packsAtHand.get(id);
  return putIn({ pack, answers, kind: kindOf(state, pack, of) });
}

/** Puts it into its range of one's own as a variant of what it is most like. */
export async function variantOfIt(state) {
  const { pack, of } = await known(state);
  await readyRange(pack);
  const { answers } = current(state.piece).session;
  const odd = state.view.fit.odd.map((place) => answers[place]);
  return putInVariant({ pack: packsAtHand.get(pack), variant: of[0].variant, answers: odd });
}

/** The id of the kind that the piece was said to be of, else of what came closest; "" not known. */
function kindOf(state, { items, kinds }, of) {
  const nearest = items.find((item) => item.number === of[0]?.item);
  return current(state.piece).session.scope.kind || (nearest ? kinds[nearest.kind].id : "");
}

/** Keeps the piece as a sighting for whoever keeps the reference, or opens the one there is. */
export async function sightingIt(state) {
  const { pack, of, answers, session } = await known(state);
  const there = all("sighting").find((record) => session && record.session === session);
  if (there) return goTo("sighting", { id: there.id });
  await readyRange(pack);
  const range = packsAtHand.get(pack);
  const unrecorded = state.view.unrecorded >= (state.view.variants[0]?.chance ?? 0);
  const sighting = blank("sighting", {
    pack,
    version: range.version,
    kind: kindOf(state, range, of),
    item: unrecorded ? "" : (of[0]?.item ?? ""),
    unrecorded,
    of,
    answers,
    session,
  });
  return run(async () => {
    const said = IT_IS_KEPT_UNDER_SIGHTINGS;
    if (await saveChange(NEW_SIGHTING, [making(sighting)], { said }))
      goTo("sighting", { id: sighting.id }, { keepNotice: true });
  });
}
