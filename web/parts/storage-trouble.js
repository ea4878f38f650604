import { problem } from "../data/store.js";
import { notice } from "./status.js";

let lastSaid = "";

/** Says what is wrong with the storage, once. */
export function tellStored() {
  if (problem() !== lastSaid && problem() !== "") notice(problem());
  lastSaid = problem();
}
