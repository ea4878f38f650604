/** From the piece being identified to a note, a piece of the collection or a want. */
import { current } from "../data/piece-at-hand.js";
import { all, making } from "../data/records.js";
import { blank, same } from "../data/record-shapes.js";
import { today } from "../parts/days.js";
import { newNote } from "../notebook/notebook.js";

const LEAST = 0.01;
const MOST = 12;

/** What is known of the piece at hand, in its own pack: {pack, of, answers, ...}. */
async function known(app, keep) {
  await keep.run(() => {}); // an answer just given is still being reasoned about
  const { pack, view, piece } = app;
  const leader = view.variants[0];
  const own = leader ? (pack.items[pack.variants[leader.variant].item].pack ?? pack.id) : pack.id;
  const front = pack.packs ? `${own}_` : "";
  const { session } = current(piece);
  const alone =
    pack.packs && leader ? app.engine.narrowed(await keep.ready(own), session) : session;
  const of = view.variants
    .filter((one) => one.chance >= LEAST)
    .map(({ variant, chance }) => {
      const { id, item } = pack.variants[variant];
      const { number, pack: from = pack.id } = pack.items[item];
      return { item: number, variant: id.slice(front.length), chance, from };
    })
    .filter(({ from }) => from === own)
    .slice(0, MOST)
    .map(({ from, ...one }) => one);
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
export async function noteIt(app, keep) {
  const facts = await known(app, keep);
  const there = all("note").find((one) => facts.session && one.session === facts.session);
  if (!there) return newNote(keep, facts);
  return keep.run(async () => {
    const told = Object.entries(facts).filter(([, value]) => value !== "" && value !== null);
    const alter = (now) => ({ ...now, ...Object.fromEntries(told) });
    const changed = told.some(([name, value]) => !same(there[name], value));
    if (!changed || (await keep.change("Note brought up to date", [{ id: there.id, alter }])))
      keep.open("note", { id: there.id });
  });
}

/** Puts the piece into the collection, or opens it there. */
export async function collectIt(app, keep) {
  const { of, asked, ...facts } = await known(app, keep);
  const there = all("piece").find((one) => facts.session && one.session === facts.session);
  if (there) return keep.open("piece", { id: there.id });
  const note = all("note").find((one) => facts.session && one.session === facts.session);
  const recorded = app.view.unrecorded < (of[0]?.chance ?? 0);
  const piece = blank("piece", {
    ...facts,
    item: recorded ? of[0].item : "",
    of: recorded ? of.map(({ variant, chance }) => ({ variant, chance })) : [],
    missing: current(app.piece).session.missing,
    paid: note?.offer ?? asked,
    where: note ? [note.hall, note.table && `table ${note.table}`].filter(Boolean).join(", ") : "",
    when: asked || note ? today() : "",
    photos: note?.photos ?? [],
    notes: note?.text ?? "",
  });
  const decided = note && {
    id: note.id,
    alter: (now) => ({ ...now, decision: "bought", piece: piece.id }),
  };
  return keep.run(async () => {
    const said = "It is in the collection.";
    const edits = [making(piece), ...(decided ? [decided] : [])];
    if (await keep.change("Into the collection", edits, { said }))
      keep.open("piece", { id: piece.id }, { told: true });
  });
}

/** Puts the leading item among the wants, or opens the want there is. */
export async function wantIt(app, keep) {
  const { pack, of } = await known(app, keep);
  if (of.length === 0) return keep.open("choose", { into: "want" });
  const [{ item }] = of;
  const variant = app.view.stop === "sure" ? of[0].variant : "";
  const there = all("want").find(
    (one) => one.pack === pack && one.item === item && ["", variant].includes(one.variant),
  );
  if (there) return keep.open("want", { id: there.id });
  const want = blank("want", { pack, item, variant });
  return keep.run(async () => {
    if (await keep.change("New want", [making(want)], { said: "It is among your wants." }))
      keep.open("want", { id: want.id }, { told: true });
  });
}

/** Keeps the piece as a sighting for whoever keeps the reference, or opens the one there is. */
export async function sightingIt(app, keep) {
  const { pack, of, answers, session } = await known(app, keep);
  const there = all("sighting").find((one) => session && one.session === session);
  if (there) return keep.open("sighting", { id: there.id });
  await keep.ready(pack);
  const { items, kinds, version } = keep.packs.get(pack);
  const nearest = items.find((item) => item.number === of[0]?.item);
  const unrecorded = app.view.unrecorded >= (app.view.variants[0]?.chance ?? 0);
  const sighting = blank("sighting", {
    pack,
    version,
    kind: current(app.piece).session.scope.kind || (nearest ? kinds[nearest.kind].id : ""),
    item: unrecorded ? "" : (of[0]?.item ?? ""),
    unrecorded,
    of,
    answers,
    session,
  });
  return keep.run(async () => {
    const said = "It is among your sightings.";
    if (await keep.change("New sighting", [making(sighting)], { said }))
      keep.open("sighting", { id: sighting.id }, { told: true });
  });
}
