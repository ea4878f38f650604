/** What this phone and other devices changed at the same time, and what leads to its screen. */
import { look } from "../data/store.js";
import { button } from "./element.js";
import { goTo } from "./navigation.js";

/** Of each record about which there is something to settle: {record, clashes, brought_back}. */
export async function unsettled() {
  return look(["clashes"], async (there) => await there.all("clashes"));
}

/** A quiet line at a record about which there is something to settle, else null. */
export async function unsettledLine(id) {
  const found = await unsettled();
  if (!found.some(({ record }) => record === id)) return null;
  const open = () => goTo("settle", { id });
  return button("Changed on two devices: choose what is right", open, { class: "plain wide" });
}
