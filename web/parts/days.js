/** Days as people write them and as records keep them (EDTF). No DOM here. */
import { plainYears } from "./edtf-words.js";

const MONTHS = "jan feb mar apr may jun jul aug sep oct nov dec".split(" ");

/** Today as YYYY-MM-DD, by the phone's own clock. */
export function today() {
  const now = new Date();
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function two(number) {
  return String(number).padStart(2, "0");
}

/**
 * A typed day as EDTF: "3 May 1998", "3/5/1998", "May 1998", "1998", "about 1998"; "" for nothing,
 * null for what cannot be read.
 */
export function readDay(text) {
  const plain = text.trim().toLowerCase().replace(/[,.]/g, " ").replace(/\s+/g, " ");
  if (plain === "") return "";
  const about = /^(?:about|around|c|ca|circa) |~$/.test(plain);
  const rest = plain.replace(/^(?:about|around|c|ca|circa) |~$/g, "");
  const found = parts(rest);
  if (!found) return null;
  const [year, month, day] = found.map(Number);
  const real = new Date(Date.UTC(year, (month || 1) - 1, day || 1));
  if (real.getUTCMonth() !== (month || 1) - 1 || real.getUTCDate() !== (day || 1)) return null;
  return `${year}${month ? `-${two(month)}` : ""}${day ? `-${two(day)}` : ""}${about ? "~" : ""}`;
}

function parts(text) {
  const iso = /^(\d{4})(?:-(\d{1,2}))?(?:-(\d{1,2}))?$/.exec(text);
  if (iso) return iso.slice(1).map((one) => one ?? 0);
  const figures = /^(?:(\d{1,2})[/ ])?(\d{1,2})[/ ](\d{4})$/.exec(text);
  if (figures) return [figures[3], figures[2], figures[1] ?? 0];
  const named = /^(?:(\d{1,2})(?:st|nd|rd|th)? )?([a-z]{3,9}) (\d{4})$/.exec(text);
  if (!named) return null;
  const month = MONTHS.indexOf(named[2].slice(0, 3)) + 1;
  return month > 0 ? [named[3], month, named[1] ?? 0] : null;
}

/** An EDTF day for the screen; seasons, spans and the like, which lists bring in, too. */
export function dayText(text) {
  const found = /^(\d{4})(?:-(0\d|1[0-2])(?:-(\d\d))?)?(~?)$/.exec(text);
  if (!found) return plainYears(text);
  const [, year, month, day, about] = found;
  const name = month ? MONTHS[Number(month) - 1] : "";
  const words = [
    day ? String(Number(day)) : "",
    name && name[0].toUpperCase() + name.slice(1),
    year,
  ];
  return `${about ? "about " : ""}${words.filter(Boolean).join(" ")}`;
}

/** A time of the journal for the screen. */
export function timeText(text) {
  return new Date(text).toLocaleString("en-GB", { dateStyle: "medium", timeStyle: "short" });
}
