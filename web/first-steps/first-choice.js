import { keepSettings } from "../data/settings.js";

/** Starts with nothing: the offer does not come again. */
export function startEmpty(app, keep) {
  return keep.run(async () => {
    await started(app);
    await keep.redraw();
  });
}

/** The choice at the first start is made. */
export async function started(app) {
  app.settings = { ...app.settings, first: false };
  await keepSettings(app.settings);
}
