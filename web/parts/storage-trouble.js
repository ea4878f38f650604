import { problem } from "../data/store.js";
import { notice } from "./status.js";

let told = "";

/** Says what is wrong with the storage, once. */
export function tellStored() {
  if (problem() !== told && problem() !== "") notice(problem());
  told = problem();
}
