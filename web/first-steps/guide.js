/** The line that leads through the first steps: it follows whatever is on the screen. */
import { here } from "../data/back-button.js";
import { NoBackup, readBackup, restore } from "../data/backup-file.js";
import { all } from "../data/records.js";
import { current } from "../data/piece-at-hand.js";
import { read, write } from "../data/store.js";
import { drawing } from "../parts/drawing.js";
import { button, el } from "../parts/element.js";
import { toCompare } from "../identify/looks-like-this.js";
import { featureOf, small } from "../parts/say.js";
import { closeSheet, sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { started } from "./first-choice.js";
import { withLook } from "../parts/later-styles.js";
import { point } from "./pointing.js";
import { BEGUN, beginSteps, leaveSteps } from "./practice.js";
import { USES, useOf } from "./four-uses.js";
import { ranges, readyRange } from "../data/known-ranges.js";
import { run, stepUnderway } from "../data/queue.js";
import { chooseRange } from "../identify/range-at-hand.js";
import { collectionOpen, show } from "../parts/navigation.js";
import {
  BEGIN,
  DEMO_COLLECTION,
  DEMO_COLLECTION_NOT_LOADED,
  GO_ON,
  LEAVE,
  LEAVE_THE_FIRST_STEPS,
  MADE_UP_AND_NOTHING_KEPT,
  REMIND_ME,
  TRY_ANOTHER,
  WHAT_YOU_HOLD,
} from "./words.js";
import { FIRST_STEPS } from "./first-words.js";

const PACK = "pellmarsh"; // the range that the pieces are of

/** Puts the guide over the app that was opened for one of the first steps. */
export async function openGuide(state, id) {
  const use = useOf(id);
  const [visit] = /** @type {PerformanceNavigationTiming[]} */ (
    performance.getEntriesByType("navigation")
  );
  const begun = await read("kept", BEGUN);
  if (
    !use ||
    !state.list.some((range) => range.id === PACK) ||
    (!begun && visit?.type === "back_forward")
  )
    return leaveSteps();
  // Back, after they were left, may bring this page again as it was.
  addEventListener("pageshow", ({ persisted }) => persisted && leaveSteps());
  await withLook();
  await run(() => prepared(state, use, begun));
  follow(state, use);
}

/** What the try needs: the range of its piece, and the demo collection where it speaks of one. */
async function prepared(state, use, begun) {
  if (begun) return;
  await collectionOpen();
  try {
    if (use.demo) {
      const response = await fetch(new URL("../packs/demo.json", import.meta.url));
      await restore(await readBackup(await response.blob()), DEMO_COLLECTION);
      for (const { id } of ranges()) await readyRange(id);
    }
  } catch (error) {
    if (!(error instanceof NoBackup) && !(error instanceof TypeError)) throw error;
    notice(DEMO_COLLECTION_NOT_LOADED);
    return;
  }
  await started();
  await chooseRange(PACK);
  await write("kept", BEGUN, use.id);
  await show();
}

function follow(state, use) {
  const text = el("p", { class: "guide-text", role: "status" });
  const foot = el("div", { class: "row" });
  const leave = leaver("link");
  const box = el(
    "aside",
    { id: "guide", "aria-label": FIRST_STEPS },
    el(
      "div",
      { class: "guide-line" },
      text,
      button(REMIND_ME, () => tell(state, use, text.textContent), { class: "link" }),
      leave,
    ),
    foot,
  );
  document.getElementById("screen").before(box);
  let shown = "";
  let waiting = false;

  function draw() {
    if (stepUnderway()) {
      requestAnimationFrame(draw); // the line is about what is on the screen
      return;
    }
    waiting = false;
    const now = standing(state, use);
    const said = use.line(now);
    const { text: line, done = false } = said;
    inSheet(now.sheet, line, done);
    const stands = JSON.stringify([line, done]);
    if (stands !== shown) {
      shown = stands;
      text.textContent = line;
      foot.replaceChildren(...(done ? endings(use) : []));
      leave.hidden = done;
    }
    point(said);
  }

  const soon = () => {
    if (!waiting) requestAnimationFrame(draw);
    waiting = true;
  };
  const watch = new MutationObserver(soon);
  watch.observe(document.getElementById("screen"), {
    childList: true,
    subtree: true,
    characterData: true,
    attributeFilter: ["open"],
  });
  watch.observe(document.body, { childList: true });
  draw();
  tell(state, use);
}

/** A sheet lies over the guide, so the line is said in it too. */
function inSheet(title, line, done) {
  const top = document.querySelector("dialog.sheet .sheet-body > h2");
  if (!top || title === "") return;
  const there = top.parentElement.querySelector(".guide-said");
  if (there?.textContent === line) return;
  there?.remove();
  top.after(el("p", { class: "guide-said", role: done ? "status" : null }, line));
}

function leaver(look) {
  return button(LEAVE, leaveSteps, { class: look, "aria-label": LEAVE_THE_FIRST_STEPS });
}

function endings(use) {
  return [button(TRY_ANOTHER, () => another(use), { class: "plain" }), leaver("main")];
}

function another(use) {
  sheet(
    FIRST_STEPS,
    el(
      "div",
      { class: "found" },
      USES.filter((other) => other !== use).map((other) =>
        button(
          [el("strong", {}, other.title), el("span", { class: "quiet" }, other.about)],
          () => beginSteps(other.id),
          {
            class: "hit",
          },
        ),
      ),
    ),
    leaver("main wide"),
  );
}

/** What the try is about; `line`: what to do now, once it is begun. */
function tell({ pack }, use, line = "") {
  const form = pack.features[featureOf(pack, use.shape)];
  const seen = form.states.find(({ id }) => id === use.seen[use.shape]);
  sheet(
    WHAT_YOU_HOLD,
    el("div", { class: "guide-line" }, drawing(pack, seen.drawing), el("p", {}, use.story)),
    line === "" ? null : el("p", { class: "guide-said" }, line),
    el("p", { class: "quiet" }, MADE_UP_AND_NOTHING_KEPT),
  );
  const on = button(line === "" ? BEGIN : GO_ON, closeSheet, { class: "main" });
  document.querySelector(".sheet-foot").replaceChildren(on); // one way on, in place of Close
}

/**
 * Where the person is: {screen, sheet (its title, ""), stage (start, asking, answer), asked (id of
 * the feature, ""), more (whether what stands behind More is open), state (what
 * the piece has there, by its name, ""), missing (name of the part
 * that the piece has not, ""), answers (how many), claim, hand, note}.
 */
function standing(state, use) {
  const top = document.querySelector("dialog.sheet h2")?.textContent ?? "";
  const step = state.piece ? current(state.piece) : null;
  const asked = step ? askedOf(state, step) : "";
  const like = step ? likeIt(state, step, use) : "";
  const feature = asked === "" ? null : state.pack.features[featureOf(state.pack, asked)];
  const seen = feature?.states.find(({ id }) => id === use.seen[asked]);
  const part = feature && feature.part >= 0 ? state.pack.parts[feature.part] : null;
  return {
    screen: here().screen,
    sheet: top === WHAT_YOU_HOLD ? "" : top,
    stage: !step ? "start" : asked === "" && like === "" ? "answer" : "asking",
    asked,
    like,
    more: feature !== null && top === feature.question,
    state: seen?.name ?? "",
    missing: part && use.missing.includes(part.id) ? small(part.name) : "",
    answers: step ? step.session.answers.length : 0,
    claim: step?.claim ?? "",
    hand: state.piece?.hand ?? {},
    note: all("note").find((entry) => state.piece && entry.session === state.piece.id),
  };
}

/**
 * Where a picture asks whether it looks like this: "fits" or "differs"; where several ask which it
 * is: "several"; "" where none does.
 */
function likeIt(state, step, use) {
  const card = document.querySelector("#screen .looks-like-this");
  if (!card) return "";
  if (card.classList.contains("which")) return "several";
  if (card.classList.contains("again")) return "differs"; // what was seen is asked once more
  const { rings } = toCompare(state, step.session) ?? { rings: [] };
  const fits = ({ feature, state: place }) => {
    const { id, states } = state.pack.features[feature];
    return use.seen[id] === states[place].id;
  };
  return rings.every(fits) ? "fits" : "differs";
}

/** The id of the feature that is asked on the screen; "" where the answer is shown. */
function askedOf({ pack, view }, { asked, further }) {
  if (asked !== "") return asked;
  if (!view.question || (view.stop !== "" && !further)) return "";
  return pack.features[view.question.feature].id;
}
