/**
 * The sightings of others that wait to be looked at, kept on this device for each range. One that
 * was taken in stays a while beside them: where that is undone, it waits again.
 */
import { look, read, together } from "../data/store.js";

const TAKEN = 20; // so many of the last that were taken in can come back
const keyOf = (range) => `proposed ${range.key}`;
const doneKey = (range) => `settled ${range.key}`; // those that are done with: id, and of when
const markOf = ({ id, changed }) => `${id} ${changed}`;

/** Those that wait. */
export async function waitingFor(range) {
  const there = (await read("kept", keyOf(range))) ?? [];
  const waits = await Promise.all(there.map(({ taken }) => !taken || isUndone(taken.group)));
  return there.filter((_, place) => waits[place]);
}

/**
 * Those that were taken in or left, so that they do not wait a second time: by id, when what was
 * settled was last changed by its writer. What was changed since is a correction.
 */
export async function settledOf(range) {
  const waiting = await waitingFor(range);
  const there = (await read("kept", keyOf(range))) ?? [];
  const done = (await read("kept", doneKey(range))) ?? [];
  const taken = there.filter(({ id }) => !waiting.some((sighting) => sighting.id === id));
  const marks = [...done, ...taken.map(markOf)].sort();
  return new Map(
    marks.map((mark) => {
      const [id, when = "~"] = mark.split(" "); // an older version kept ids alone: never later
      return [id, when];
    }),
  );
}

/** Was a change undone, and is that not undone in its turn? */
function isUndone(group) {
  return look(["journal"], async (there) => {
    const written = await there.where("journal", "group", group);
    const entries = [];
    for (const id of new Set(written.map(({ record }) => record)))
      entries.push(...(await there.where("journal", "record", id)));
    const undoing = new Set();
    let undone = false;
    for (const entry of entries.sort((a, b) => a.seq - b.seq)) {
      if (entry.undoes === group) undoing.add(entry.group);
      if (entry.undoes === group || undoing.has(entry.undoes)) undone = entry.undoes === group;
    }
    return undone;
  });
}

/** `act` gets those that are kept and the ids of those done with, and gives both anew. */
async function altered(range, act) {
  const kept = await together(["kept"], async (there) => {
    const list = (await there.get("kept", keyOf(range))) ?? [];
    const done = (await there.get("kept", doneKey(range))) ?? [];
    const [now, settled] = act(list, done);
    await there.put("kept", now, keyOf(range));
    await there.put("kept", settled, doneKey(range));
  });
  return kept !== "";
}

/**
 * Adds some to those that wait, each in place of what waits or was taken in under its id. False
 * where that could not be kept.
 */
export function addWaiting(range, sightings) {
  const again = ({ id }) => sightings.some((sighting) => sighting.id === id);
  return altered(range, (list, done) => [
    [...list.filter((sighting) => !again(sighting)), ...sightings],
    [...done, ...list.filter((sighting) => sighting.taken && again(sighting)).map(markOf)],
  ]);
}

/** Notes something in the one of this id. */
export function noteWaiting(range, id, changes) {
  const noted = (sighting) => (sighting.id === id ? { ...sighting, ...changes } : sighting);
  return altered(range, (list, done) => [list.map(noted), done]);
}

/**
 * Notes that it was taken in by the latest change of the record `written`; the oldest such are done
 * with for good.
 */
export async function noteTaken(range, id, written) {
  const history = await look(
    ["journal"],
    async (there) => await there.where("journal", "record", written),
  );
  const { group, time } = history.at(-1);
  const taken = { group, time };
  await noteWaiting(range, id, { taken });
  const waiting = await waitingFor(range);
  await altered(range, (list, done) => {
    const old = list
      .filter((sighting) => sighting.taken && !waiting.some((other) => other.id === sighting.id))
      .sort((a, b) => (a.taken.time < b.taken.time ? 1 : -1))
      .slice(TAKEN);
    return [list.filter((sighting) => !old.includes(sighting)), [...done, ...old.map(markOf)]];
  });
}

/** Takes one away from those that wait, for good; gives what puts that one back. */
export async function leaveWaiting(range, sighting) {
  let place = 0;
  const { id } = sighting;
  await altered(range, (list, done) => {
    place = list.findIndex((kept) => kept.id === id);
    return [list.filter((kept) => kept.id !== id), [...done, markOf(sighting)]];
  });
  return () =>
    altered(range, (list, done) => {
      const others = list.filter((kept) => kept.id !== id);
      const again = [...others.slice(0, place), sighting, ...others.slice(place)];
      return [again, done.filter((mark) => mark !== markOf(sighting))];
    });
}
