/** What opens behind the lines of the answer: its parts, own or want, the price. */
import { seenYears } from "../data/work-ahead.js";
import { chance } from "../parts/chance.js";
import { button, el } from "../parts/element.js";
import { record } from "../data/records.js";
import { variantPlace } from "../parts/piece-names.js";
import { portraitsReady } from "../parts/portrait.js";
import { differencePictures } from "../parts/ringed-portrait.js";
import { sheet } from "../parts/sheet.js";
import { handFields, paid, ways } from "./for-you.js";
import { marksApart, partsBelong } from "./parts-belong.js";
import { leading, verdictReasons, verdictTitle } from "./verdict-words.js";
import { SURE, YOURS_OR_WANTED } from "./first-words.js";
import {
  AT_HOME,
  DO_ITS_PARTS_BELONG_TOGETHER,
  IN_YOUR_HAND,
  NO_PARTS_LOOKED_AT,
  NOTHING_TO_COMPARE,
  POINT_SOMETHING_OUT,
  PRICE_CONDITION_AND_BOX,
} from "./words.js";

/** Whether its parts belong together, part by part. */
export function openParts(state, step, act) {
  sheet(
    DO_ITS_PARTS_BELONG_TOGETHER,
    partsBelong(state, step.session) ?? el("p", {}, NO_PARTS_LOOKED_AT),
    marksApart(state, step.session, seenYears(state, step.session)),
    button(POINT_SOMETHING_OUT, act.anything, { class: "plain" }),
  );
}

/** What the piece means for the collection. */
export function openOwn(state, step, act) {
  const { verdict } = state.view;
  const beside = el("div", {});
  besideYours(state, step).then((made) => made && beside.append(made));
  sheet(
    verdict ? verdictTitle(verdict) : YOURS_OR_WANTED,
    verdict
      ? el(
          "div",
          { class: "said" },
          chance(leading(verdict).chance, SURE),
          verdictReasons(state, verdict).map((text) => el("p", {}, text)),
          paid(state, verdict),
        )
      : el("p", {}, NOTHING_TO_COMPARE),
    ways(state, act),
    beside,
  );
}

/** The piece in hand and the one at home, where they differ; null where that is not known. */
async function besideYours({ pack, view }, { session }) {
  const [owned] = view.verdict?.owned ?? [];
  const home = owned && record(owned.piece);
  const place = home?.of?.length > 0 ? variantPlace(pack, home.of[0].variant) : -1;
  if (place < 0 || view.variants.length === 0) return null;
  await portraitsReady().catch(() => {}); // then it is told in words
  const inHand = {
    name: IN_YOUR_HAND,
    variants: [view.variants[0].variant],
    answers: session.answers,
  };
  return differencePictures(pack, inHand, { name: AT_HOME, variants: [place] });
}

/** Its price, condition and box, and what follows from them for the verdict. */
export function openPrice(state, act, draw) {
  const said = el("div", { class: "said", role: "status" });
  const tell = () => {
    const { verdict } = state.view;
    said.replaceChildren(
      ...(verdict
        ? [
            el("p", { class: "verdict-title" }, verdictTitle(verdict)),
            ...verdictReasons(state, verdict).map((text) => el("p", {}, text)),
            ...paid(state, verdict),
          ]
        : []),
    );
    draw();
  };
  tell();
  sheet(PRICE_CONDITION_AND_BOX, handFields(state, act, tell), said);
}
