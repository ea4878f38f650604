/** Says when it is time to come back to a table, as long as the app is open. */
import { packsAtHand } from "../data/known-ranges.js";
import { goTo } from "../parts/navigation.js";
import { title } from "../parts/piece-names.js";
import { notice } from "../parts/status.js";
import { minutesOf, openToday } from "./meet-day.js";
import { atPlace, atTable, comeBackTo, OPEN_THE_NOTE } from "./words.js";

const EVERY = 20_000;
const LATE = 60; // minutes after which it is no use to say it
const reminded = new Set();

/** Begins to look at the clock. */
export function startReminders() {
  setInterval(remind, EVERY);
  remind();
}

function remind() {
  const now = new Date();
  const minutes = now.getHours() * 60 + now.getMinutes();
  const due = openToday().find((note) => {
    const at = note.come_back === "" ? null : minutesOf(note.come_back);
    return at !== null && at <= minutes && minutes - at <= LATE && !reminded.has(key(note));
  });
  if (!due) return;
  reminded.add(key(due));
  const place = [due.hall, due.table && atTable(due.table)].filter(Boolean).join(", ");
  const where = place === "" ? "" : atPlace(place);
  notice(comeBackTo(due.come_back, title(packsAtHand, due), where), [
    [OPEN_THE_NOTE, () => goTo("note", { id: due.id })],
  ]);
}

const key = ({ id, come_back: time }) => `${id} ${time}`;
