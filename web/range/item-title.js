import { record } from "../data/records.js";

/** What an item is called, before it has a number or a name too. */
export function itemTitle({ number, name, kind }) {
  const called = [number, name].filter(Boolean).join(" ");
  return called || `${record(kind)?.name ?? "Piece"} without a number yet`;
}
