/** The day of a meet: notes by day and hall, what to come back to and when, what is still open. */
import { all } from "../data/records.js";
import { moneyText } from "../parts/money.js";
import { BETWEEN_SUMS, ifAllTaken, openOffers, TODAY } from "./words.js";

/** @import { EngineModule } from "../data/engine-types.d.ts" */

/** The day of a time of the records, by the phone's own clock: YYYY-MM-DD. */
export function dayOf(time) {
  const at = new Date(time);
  const two = (number) => String(number).padStart(2, "0");
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** "14:05". */
export function clockText(time) {
  return new Date(time).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
}

/** Minutes after midnight of "14:30", "2.30 pm" or "at 9"; null where no time is named. */
export function minutesOf(text) {
  const parts = /(\d{1,2})(?:[:.h](\d{2}))?\s*(am|pm)?/i.exec(text);
  if (!parts || (!parts[2] && !parts[3] && !/^\s*(?:at\s+)?\d{1,2}\s*$/i.test(text))) return null;
  const [hour, minute] = [Number(parts[1]), Number(parts[2] ?? 0)];
  if (hour > 23 || minute > 59) return null;
  const half = parts[3]?.toLowerCase();
  const whole = half === "pm" && hour < 12 ? hour + 12 : half === "am" && hour === 12 ? 0 : hour;
  return whole * 60 + minute;
}

/** Nothing was put into it: made, and left again. */
export function isEmpty(note) {
  return (
    note.decision === "open" &&
    note.photos.length + note.of.length + note.answers.length === 0 &&
    !note.asked &&
    !note.offer &&
    note.text + note.table + note.come_back === ""
  );
}

/** The notes that say something. */
export function notes() {
  return all("note").filter((note) => !isEmpty(note));
}

/** The latest day first; in it hall by hall, what to come back to by its time, then the latest. */
export function byDay(some) {
  const key = (note) => [
    dayOf(note.made),
    note.hall,
    note.decision === "open" && note.come_back !== "" ? (minutesOf(note.come_back) ?? 1440) : 1441,
  ];
  return some
    .map((note) => ({ note, key: key(note) }))
    .sort((a, b) => {
      if (a.key[0] !== b.key[0]) return a.key[0] < b.key[0] ? 1 : -1;
      if (a.key[1] !== b.key[1]) return a.key[1] < b.key[1] ? -1 : 1;
      if (a.key[2] !== b.key[2]) return Number(a.key[2]) - Number(b.key[2]);
      return a.note.made < b.note.made ? 1 : -1;
    })
    .map(({ note }) => note);
}

/** "Today, Corn Exchange". */
export function dayTitle(note) {
  const day = dayOf(note.made);
  const today = dayOf(Date.now());
  const named =
    day === today ? TODAY : new Date(note.made).toLocaleDateString("en-GB", { dateStyle: "full" });
  return note.hall === "" ? named : `${named}, ${note.hall}`;
}

/** Notes of today that are still to be decided. */
export function openToday() {
  const today = dayOf(Date.now());
  return byDay(notes().filter((note) => note.decision === "open" && dayOf(note.made) === today));
}

/**
 * What the offers that are open would take, and what would be left then; "" for none.
 * @param {EngineModule} engine
 * @param {(amounts: any[]) => string} leftAfter
 */
export function offersText(engine, leftAfter) {
  const offers = openToday()
    .map((note) => note.offer)
    .filter(Boolean);
  if (offers.length === 0) return "";
  const sums = engine.totals(offers);
  const open = openOffers(sums.map((sum) => moneyText(engine, sum)).join(BETWEEN_SUMS));
  const left = leftAfter(offers);
  return left === "" ? open : ifAllTaken(open, left);
}
