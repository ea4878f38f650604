import { changeSettings } from "../data/settings.js";
import { run } from "../data/queue.js";
import { redraw } from "../parts/navigation.js";

/** Starts with nothing: the offer does not come again. */
export function startEmpty() {
  return run(async () => {
    await started();
    await redraw();
  });
}

/** The choice at the first start is made. */
export function started() {
  return changeSettings({ first: false });
}
