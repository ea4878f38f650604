/** Days as people write them and as records keep them (EDTF), and times. No DOM here. */
import { loadedEngine } from "../data/engine.js";
import { dateNotRead } from "./first-words.js";

const DAY_FIRST = "day"; // 3/5/1998 is 3 May, as the British write it; what was understood is said
const ANY_YEAR = { first: 0, last: 0 };

/** Today as YYYY-MM-DD, by the phone's own clock. */
export function today() {
  const now = new Date();
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function two(number) {
  return String(number).padStart(2, "0");
}

/** A typed date: {day (EDTF, "" for nothing), wrong (a sentence, "" for nothing)}. */
export function readDay(text) {
  const { says_not_known } = loadedEngine();
  const said = text.trim();
  if (said === "" || says_not_known(said.replace(/\.$/, ""))) return { day: "", wrong: "" };
  const { edtf, problem, why } = loadedEngine().read_date(text, DAY_FIRST, ANY_YEAR);
  return { day: edtf, wrong: problem === "" ? "" : dateNotRead(why) };
}

/** EDTF in words: "3 May 1998", "about 1957 to 1961"; what is not understood stays as it is. */
export function dateText(edtf) {
  return loadedEngine().date_in_words(edtf);
}

/** A time of the journal for the screen. */
export function timeText(text) {
  return new Date(text).toLocaleString("en-GB", { dateStyle: "medium", timeStyle: "short" });
}
