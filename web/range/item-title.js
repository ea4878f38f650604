import { record } from "../data/records.js";
import { PIECE, withoutANumber } from "./own-words.js";

/** What an item is called, before it has a number or a name too. */
export function itemTitle({ number, name, kind }) {
  const called = [number, name].filter(Boolean).join(" ");
  return called || withoutANumber(record(kind)?.name ?? PIECE);
}
