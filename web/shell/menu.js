import { countAside } from "../data/aside.js";
import { lastBackup } from "../data/last-backup.js";
import { changedAfter } from "../data/journal.js";
import { everything } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { unsettled } from "../parts/unsettled.js";
import { waitingText } from "../exchange/backup-waiting.js";
import { demoAway, demoOffer } from "../first-steps/demo-offer.js";
import { loaded } from "../parts/loaded-later.js";
import { goTo } from "../parts/navigation.js";
import { MORE, READ_A_MARK, WHAT_A_MARK_IS } from "./words.js";

/** Everything that has no place of its own in the bar. */
export async function moreScreen(state, _entry, _listOf, menuLines) {
  const { seq, time } = await lastBackup();
  const waiting = await changedAfter(seq);
  const saved = waitingText(waiting, time, state.settings.paired);
  const clashes = (await unsettled()).length;
  const aside = await countAside();
  return el(
    "section",
    { class: "shelf" },
    heading(1, MORE),
    el(
      "ul",
      { class: "found" },
      menuLines({ saved, clashes, aside }).map(([screen, name, about]) =>
        link(name, about, () => goTo(screen)),
      ),
      link(READ_A_MARK, WHAT_A_MARK_IS, readMark),
    ),
    everything().length === 0 ? demoOffer(state) : demoAway(),
  );
}

function link(name, about, act) {
  return el(
    "li",
    {},
    button([el("strong", {}, name), el("span", { class: "quiet" }, about)], act, { class: "hit" }),
  );
}

async function readMark() {
  (await loaded(import("../identify/read-mark.js"))).openReadMark();
}
