/** What this phone and other devices changed at the same time, and what leads to its screen. */
import { look } from "../data/store.js";
import { button } from "./element.js";
import { goTo } from "./navigation.js";
import { CHANGED_ON_TWO_DEVICES } from "./words.js";

/** Of each record about which there is something to settle: {record, clashes, brought_back}. */
export async function unsettled() {
  return look(["clashes"], async (there) => await there.all("clashes"));
}

/** A quiet line at a record about which there is something to settle, else null. */
export async function unsettledLine(id) {
  const clashes = await unsettled();
  if (!clashes.some(({ record }) => record === id)) return null;
  const open = () => goTo("settle", { id });
  return button(CHANGED_ON_TWO_DEVICES, open, { class: "plain wide" });
}
