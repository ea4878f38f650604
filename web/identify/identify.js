/**
 * The identifying of one piece: which card is shown, and what each tap does. Every step is on the
 * disk before the screen moves on.
 */
import { backToPiece, deepen, goBack, here } from "../data/back-button.js";
import { askToKeep } from "../data/install.js";
import {
  amended,
  backTo,
  begun,
  current,
  keep,
  keepFormer,
  stepped,
} from "../data/piece-at-hand.js";
import { run, tap } from "../data/queue.js";
import { layAside } from "../data/tray.js";
import { all } from "../data/records.js";
import { changeSettings } from "../data/settings.js";
import { put, state } from "../data/state.js";
import { meanwhile } from "../data/work-ahead.js";
import { firstOffer } from "../first-steps/first-offer.js";
import { button, el } from "../parts/element.js";
import { endTyping } from "../parts/end-typing.js";
import { loaded } from "../parts/loaded-later.js";
import { collectionOpen, leaveNotice, show } from "../parts/navigation.js";
import { featureOf } from "../parts/say.js";
import { layOut } from "../parts/stage.js";
import { announce } from "../parts/status.js";
import { tellStored } from "../parts/storage-trouble.js";
import { updateOffer } from "../parts/update-offer.js";
import { answerScreen } from "./answer-card.js";
import { heldClaim } from "./held-claim.js";
import { comparing, looksLikeThis, toChoose, toCompare } from "./looks-like-this.js";
import { questionCard } from "./question.js";
import { adopt, chooseRange, narrowed, openFor, openRange } from "./range-at-hand.js";
import { assess } from "./reasoning.js";
import { startScreen } from "./start.js";
import { left } from "./left-aside.js";
import { progress, strip } from "./strip.js";
import {
  DATE_IS_FORGOTTEN,
  SHOW_THE_ANSWER,
  STALLSIDE,
  STARTED_AGAIN,
  TAKEN_BACK,
} from "./first-words.js";

const LIKELY = 0.02; // an answer at least as likely as this is worked out ahead

let beside = null;
let swiping = false;

const session = () => current(state.piece).session;
const step = (change) => tap(() => settle(stepped(state.piece, change)));

async function settle(next) {
  const piece = await openFor(next);
  const storing = keep(piece);
  if (piece) deepen(piece.steps.length);
  let view = null;
  try {
    if (piece) view = await assess(piece);
    if (view) await comparing(view);
  } catch (error) {
    await storing;
    await keep(state.piece);
    throw error;
  }
  if (piece?.id !== state.piece?.id) leaveNotice();
  put({ piece, view });
  const drawn = here().screen === "identify" ? screen() : null; // while the disk is at work
  await storing;
  tellStored();
  show(true, drawn);
  meanwhile(ahead());
}

/** Works out what each likely tap on this screen will show, and draws it out of sight. */
export function ahead() {
  const { pack, thread } = state;
  if (thread === undefined) return [];
  return likely().flatMap((next) => [
    () => assess(next()),
    async () => {
      const piece = next();
      const view = await assess(piece);
      if (state.pack === pack) layOut(pieceScreen({ ...state, piece, view }));
    },
  ]);
}

/** The piece after each likely tap, the likeliest first: functions that make it. */
function likely() {
  if (!state.piece) {
    const kinds = state.pack.packs ? [] : state.pack.kinds.map((kind) => kind.id);
    const fresh = { ...state.engine.new_session(state.ready), able: state.settings.able };
    return ["", ...kinds].map((kind) => () => begun({ ...fresh, scope: { kind, items: [] } }));
  }
  const { question } = state.view;
  if (!question) return [];
  const { id, states } = state.pack.features[question.feature];
  const after = (how, seen) => () => {
    const answer = { feature: id, how, states: seen };
    return stepped(state.piece, { session: state.engine.answered(session(), answer) });
  };
  return [
    ...states
      .map((seen, place) => ({ seen, chance: question.expected[place] }))
      .filter(({ chance }) => chance >= LIKELY)
      .sort((a, b) => b.chance - a.chance)
      .map(({ seen }) => after("sure", [seen.id])),
    after("cannot", []),
  ];
}

/** What can be done with the piece: what a tap on its screens does. */
export const act = {
  start: (scope, answers = [], range = state.pack.id) =>
    tap(() => startWith(scope, answers, range)),
  sameBox: () => hands(({ nextOfBox }) => nextOfBox(state, moves)),
  takeOut: (id) => hands(({ takeOut }) => takeOut(state, moves, id)),
  resume: (note) => hands(({ resume }) => resume(state, moves, note)),
  tray: async () => (await loaded(import("./tray-sheet.js"))).openTray(state, act),
  range: (id) => tap(() => chooseRange(id)),
  answer: (answer) => act.answerAll([answer]),
  answerAll: (answers) =>
    tap(async () => {
      const next = answers.reduce((so, answer) => state.engine.answered(so, answer), session());
      await settle(stepped(state.piece, { session: await narrowed(next) }));
      announce(progress(state.pack, state.view));
      if (state.view.stop === "sure") askToKeep();
    }),
  missing: (part, feature) =>
    step({
      session: state.engine.answered(
        { ...session(), missing: [...session().missing, part.id] },
        { feature: feature.id, how: "cannot", states: [] },
      ),
    }),
  present: (part) => step({ session: withPart(part) }),
  change: (feature) => step({ asked: feature }),
  inWords: (feature, unlike) => step({ asked: feature, unlike }),
  takeBack: (feature) => step({ session: state.engine.without(session(), feature) }),
  suggested: () => step({ asked: "" }),
  further: () => step({ further: true }),
  check: () => step({ session: { ...session(), unchecked: false } }),
  skipCheck: () => step({ session: { ...session(), unchecked: true } }),
  enough: () => step({ further: false }),
  widen: () => step({ session: { ...session(), scope: { kind: "", items: [] } } }),
  able: (need) => step({ session: { ...session(), able: [...session().able, need] } }),
  undo: () => tap(() => takeBack(1)),
  restart: () => tap(() => takeBack(state.piece.steps.length)),
  undoRestart: () =>
    tap(async () => {
      await adopt(state.former);
      await settle(state.piece);
      run(dropFormer); // the next tap need not wait for it
    }),
  why: async () => (await loaded(import("./why.js"))).openWhy(state, session(), act.change),
  answers: async () =>
    (await loaded(import("./answers-so-far.js"))).openAnswers(state, current(state.piece), act),
  candidates: async () =>
    (await loaded(import("./candidates.js"))).openCandidates(state, current(state.piece)),
  anything: async () =>
    (await loaded(import("./tell-anything.js"))).openAnything(state, session(), act.change),
  parts: async () =>
    (await loaded(import("./line-sheets.js"))).openParts(state, current(state.piece), act),
  own: async () =>
    (await loaded(import("./line-sheets.js"))).openOwn(state, current(state.piece), act),
  price: async (draw) => (await loaded(import("./line-sheets.js"))).openPrice(state, act, draw),
  sellerFirst: async () => {
    await act.start({ kind: "", items: [] });
    await act.seller();
  },
  seller: async () =>
    (await loaded(import("./claim.js"))).openClaim(state, current(state.piece), act),
  claim: (text) =>
    tap(async () => {
      await settle(stepped(state.piece, { claim: text, asked: current(state.piece).asked }));
      if (text === "") announce(DATE_IS_FORGOTTEN);
      else act.seller();
    }),
  hand: (facts) => run(() => hold(facts)),
  note: () => takeUp(({ noteIt }) => noteIt(state)),
  noteInBox: () => takeUp(({ noteInBox }) => noteInBox(state, act.sameBox)),
  photograph: (file) => takeUp(({ photographIt }) => photographIt(file)),
  collect: () => takeUp(({ collectIt }) => collectIt(state)),
  want: () => takeUp(({ wantIt }) => wantIt(state)),
  sighting: () => takeUp(({ sightingIt }) => sightingIt(state)),
  putIn: () => takeUp(({ putItIn }) => putItIn(state)),
  asVariant: () => takeUp(({ variantOfIt }) => variantOfIt(state)),
  mark: async () => (await loaded(import("./read-mark.js"))).openReadMark(state.pack, act.answer),
  who: async (variants) =>
    (await loaded(import("./who-says-so.js"))).openWho(state, current(state.piece), variants),
};

const moves = { settle, takeBack, forget, startWith };

async function startWith(scope, answers, range, more = {}) {
  await forget();
  await openRange(range);
  const fresh = state.engine.new_session(state.ready);
  const narrow = await narrowed({ ...fresh, scope, answers, able: state.settings.able });
  await settle({ ...begun(narrow), ...more });
}

/** Goes from one piece to another, from whatever screen; `how`: one of pieces-at-hand.js. */
async function hands(how) {
  const there = await loaded(import("./pieces-at-hand.js"));
  endTyping();
  leaveNotice();
  await run(backToPiece);
  await run(() => how(there)); // going back in the history is heard of first
}

/** Takes the piece up into what the collector keeps; `how`: one of the ways in take-up.js. */
async function takeUp(how) {
  await collectionOpen();
  await how(await loaded(import("./take-up.js")));
}

/** Keeps what was said of the piece in hand; gives whether it is kept. */
async function hold(facts) {
  const piece = { ...state.piece, hand: { ...state.piece.hand, ...facts } };
  const kept = await keep(piece);
  tellStored();
  put({ piece, view: await assess(piece) });
  return kept;
}

/** The session with a part that was said to be missing: its features are asked again. */
function withPart(part) {
  const place = state.pack.parts.findIndex((row) => row.id === part);
  const on = (answer) => state.pack.features[featureOf(state.pack, answer.feature)].part === place;
  return {
    ...session(),
    missing: session().missing.filter((id) => id !== part),
    answers: session().answers.filter((answer) => answer.how !== "cannot" || !on(answer)),
  };
}

/** Back to the state after `count` steps. A piece with answers that is left can be had again. */
async function retreat(count) {
  if (count === 0 && session().answers.length > 0) {
    const former = left(state);
    put({ former });
    await keepFormer(former);
  }
  await settle(backTo(state.piece, count));
  announce(count === 0 ? STARTED_AGAIN : TAKEN_BACK);
}

/**
 * Takes steps back by a button. The browser's history is brought along first: once the screen has
 * changed, the next tap is taken.
 */
async function takeBack(count) {
  await goBack(Math.min(count, here().step));
  await retreat(state.piece.steps.length - count);
}

/** What was left goes to the other pieces at hand, once another is begun. */
async function forget() {
  if (!state.former) return;
  await layAside(state.former);
  await dropFormer();
}

async function dropFormer() {
  if (!state.former) return;
  put({ former: null });
  await keepFormer(null);
}

/** Back or Forward was used: undo down to where the browser stands; Forward redoes nothing. */
export async function stepsMoved(entry) {
  const count = state.piece ? state.piece.steps.length : 0;
  if (entry.step > count) await goBack(entry.step - count);
  else if (entry.step < count) await retreat(entry.step);
}

/** Takes up what the person can do today, for this piece and the next ones. */
export function setAble(needs) {
  return run(async () => {
    await changeSettings({ able: needs });
    tellStored();
    if (!state.piece) return;
    const piece = amended(state.piece, { ...session(), able: needs });
    put({ piece, view: await assess(piece) });
    await keep(piece);
  });
}

/** What stands in the head of the screen: while something is asked, what it is so far. */
export function tools() {
  const at = state.piece && current(state.piece);
  if (at && askedPlace(state, at) >= 0)
    return [strip(state.pack, state.view, act.candidates, heldClaim(state, at))];
  return [el("strong", { class: "name-of-app" }, STALLSIDE)];
}

/** In a wide window, `draw` gives what stands beside the piece. */
export function drawBeside(draw) {
  beside = draw;
}

/** Once there are other pieces at hand, a swipe brings up the one that was left longest ago. */
function hearSwipes() {
  if (swiping || state.tray.length === 0) return;
  swiping = true;
  const next = () => {
    if (here().screen === "identify" && state.tray.length > 0) act.takeOut(state.tray.at(-1).id);
  };
  loaded(import("./swipe.js")).then(
    ({ swipes }) => swipes(document.getElementById("screen"), next),
    () => (swiping = false), // heard once it can be loaded
  );
}

/** The start, or the piece at hand: the nodes of its screen. */
export function screen() {
  hearSwipes();
  if (state.piece) return pieceScreen(state);
  return [startScreen(state, act, firstOffer(state)), updateOffer()].filter(Boolean);
}

/** The place of the feature that is asked about, or -1 where the answer is shown. */
function askedPlace({ pack, view }, { asked, further }) {
  const own = asked === "" ? -1 : featureOf(pack, asked);
  if (own >= 0) return own;
  return view.stop !== "" && !further ? -1 : (view.question?.feature ?? -1);
}

/** Where the piece stands, as a function of what is shown. */
function pieceScreen(shown) {
  const { pack, view, piece } = shown;
  const at = current(piece);
  const { question, stop } = view;
  const place = askedPlace(shown, at);
  if (place < 0)
    return [answerScreen(shown, at, act), updateOffer(), beside?.(shown)].filter(Boolean);
  const chosen = at.asked !== "" && featureOf(pack, at.asked) === place;
  const expected = question?.feature === place ? question.expected : null;
  const about = chosen ? "" : question.about;
  const photo = all("note").find((note) => note.session === piece.id)?.photos[0];
  const card = { pack, feature: place, session: at.session, chosen, expected, about, photo };
  const more = async (feature) =>
    (await loaded(import("./question-more.js"))).openQuestionMore(shown, feature, card, act);
  const choice = toChoose(shown, at, { ...act, more });
  if (choice) return [choice, beside?.(shown)].filter(Boolean);
  const compared = at.asked === "" && stop === "" ? toCompare(shown, at.session) : null;
  if (compared)
    return [looksLikeThis(shown, at.session, compared, act), beside?.(shown)].filter(Boolean);
  return [
    el(
      "section",
      { class: "card" },
      at.further && stop !== "" ? button(SHOW_THE_ANSWER, act.enough, { class: "link" }) : null,
      questionCard(card, { ...act, more }),
    ),
    beside?.(shown),
  ].filter(Boolean);
}
