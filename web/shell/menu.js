import { lastBackup } from "../data/last-backup.js";
import { changedAfter } from "../data/journal.js";
import { everything } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { unsettled } from "../parts/unsettled.js";
import { waitingText } from "../exchange/backup-waiting.js";
import { demoAway, demoOffer } from "../first-steps/demo-offer.js";
import { loaded } from "../parts/loaded-later.js";

/** Everything that has no place of its own in the bar. */
export async function moreScreen(app, keep) {
  const { seq, time } = await lastBackup();
  const waiting = await changedAfter(seq);
  const saved = waitingText(waiting, time, app.settings.paired);
  const clashes = (await unsettled()).length;
  return el(
    "section",
    { class: "shelf" },
    heading(1, "More"),
    el(
      "ul",
      { class: "found" },
      keep
        .menuLines({ saved, clashes })
        .map(([screen, name, about]) => link(name, about, () => keep.open(screen))),
      link("Read a mark", "Words, numbers, prices: the years", () => readMark(app)),
    ),
    everything().length === 0 ? demoOffer(app, keep) : demoAway(keep),
  );
}

function link(name, about, act) {
  return el(
    "li",
    {},
    button([el("strong", {}, name), el("span", { class: "quiet" }, about)], act, { class: "hit" }),
  );
}

async function readMark(app) {
  (await loaded(import("../identify/read-mark.js"))).openReadMark(app);
}
