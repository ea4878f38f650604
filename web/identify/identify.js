import { meanwhile } from "../data/work-ahead.js";
import { deepen, goBack, here } from "../data/back-button.js";
import {
  amended,
  backTo,
  begun,
  current,
  keep,
  keepFormer,
  stepped,
} from "../data/piece-at-hand.js";
import { keepSettings } from "../data/settings.js";
import { askToKeep } from "../data/install.js";
import { button, el } from "../parts/element.js";
import { featureOf } from "../parts/say.js";
import { announce } from "../parts/status.js";
import { layOut } from "../parts/stage.js";
import { progress, strip } from "./strip.js";
import { answerScreen } from "./answer-card.js";
import { openAnswers } from "./answers-so-far.js";
import { openAnything } from "./tell-anything.js";
import { openCandidates } from "./candidates.js";
import { heldClaim, openClaim } from "./claim.js";
import { loaded } from "../parts/loaded-later.js";
import { firstOffer } from "../first-steps/first-offer.js";
import { questionCard } from "./question.js";
import { updateOffer } from "../parts/update-offer.js";
import { startScreen } from "./start.js";
import { openWho } from "./who-says-so.js";
import { openWhy } from "./why.js";

const LIKELY = 0.02; // an answer at least as likely as this is worked out ahead

/**
 * The identifying of one piece: which card is shown, and what each tap does. Every step is on the
 * disk before the screen moves on. `app.run` does one thing after another; `app.show` draws.
 */
export function identify(app) {
  const session = () => current(app.piece).session;
  const step = (change) => app.tap(() => settle(stepped(app.piece, change)));

  async function settle(next) {
    const piece = await app.openFor(next);
    const storing = keep(piece);
    if (piece) deepen(piece.steps.length);
    let view = null;
    try {
      if (piece) view = await app.assess(piece);
    } catch (error) {
      await storing;
      await keep(app.piece);
      throw error;
    }
    app.piece = piece;
    app.view = view;
    const drawn = here().screen === "identify" ? screen() : null; // while the disk is at work
    await storing;
    app.tellStored();
    app.show(true, drawn);
    meanwhile(ahead());
  }

  /** Works out what each likely tap on this screen will show, and draws it out of sight. */
  function ahead() {
    const { pack, thread } = app;
    if (thread === undefined) return [];
    return likely().flatMap((next) => [
      () => app.assess(next()),
      async () => {
        const piece = next();
        const view = await app.assess(piece);
        if (app.pack === pack) rehearse(piece, view);
      },
    ]);
  }

  /** The piece after each likely tap, the likeliest first: functions that make it. */
  function likely() {
    if (!app.piece) {
      const kinds = app.pack.packs ? [] : app.pack.kinds.map((kind) => kind.id);
      const fresh = { ...app.engine.new_session(app.ready), able: app.settings.able };
      return ["", ...kinds].map((kind) => () => begun({ ...fresh, scope: { kind, items: [] } }));
    }
    const { question } = app.view;
    if (!question) return [];
    const { id, states } = app.pack.features[question.feature];
    const told = (how, seen) => () => {
      const answer = { feature: id, how, states: seen };
      return stepped(app.piece, { session: app.engine.answered(session(), answer) });
    };
    return [
      ...states
        .map((state, place) => ({ state, chance: question.expected[place] }))
        .filter(({ chance }) => chance >= LIKELY)
        .sort((one, other) => other.chance - one.chance)
        .map(({ state }) => told("sure", [state.id])),
      told("cannot", []),
    ];
  }

  /** Draws the screen of a piece where nobody sees it: fonts, styles and scripts are warm then. */
  function rehearse(piece, view) {
    const now = { piece: app.piece, view: app.view };
    Object.assign(app, { piece, view });
    try {
      layOut(pieceScreen());
    } finally {
      Object.assign(app, now);
    }
  }

  const act = {
    start: (scope, answers = [], range = app.pack.id) =>
      app.tap(async () => {
        await forget();
        await app.openRange(range);
        const fresh = app.engine.new_session(app.ready);
        await settle(begun({ ...fresh, scope, answers, able: app.settings.able }));
      }),
    range: (id) => app.tap(() => app.chooseRange(id)),
    answer: (answer) =>
      app.tap(async () => {
        const told = await app.narrowed(app.engine.answered(session(), answer));
        await settle(stepped(app.piece, { session: told }));
        announce(progress(app.pack, app.view));
        if (app.view.stop === "sure") askToKeep();
      }),
    missing: (part, feature) =>
      step({
        session: app.engine.answered(
          { ...session(), missing: [...session().missing, part.id] },
          { feature: feature.id, how: "cannot", states: [] },
        ),
      }),
    present: (part) => step({ session: withPart(part) }),
    change: (feature) => step({ asked: feature }),
    takeBack: (feature) => step({ session: app.engine.without(session(), feature) }),
    suggested: () => step({ asked: "" }),
    further: () => step({ further: true }),
    enough: () => step({ further: false }),
    widen: () => step({ session: { ...session(), scope: { kind: "", items: [] } } }),
    able: (need) => step({ session: { ...session(), able: [...session().able, need] } }),
    undo: () => app.tap(() => takeBack(1)),
    restart: () => app.tap(() => takeBack(app.piece.steps.length)),
    undoRestart: () =>
      app.tap(async () => {
        await app.adopt(app.former);
        await settle(app.piece);
        await forget();
      }),
    why: () => openWhy(app, session(), act.change),
    answers: () => openAnswers(app, current(app.piece), act),
    candidates: () => openCandidates(app, current(app.piece)),
    anything: () => openAnything(app, session(), act.change),
    seller: () => openClaim(app, current(app.piece), act),
    claim: (text) =>
      app.tap(async () => {
        await settle(stepped(app.piece, { claim: text, asked: current(app.piece).asked }));
        if (text === "") announce("The claim is dropped.");
        else act.seller();
      }),
    hand: (told) => app.run(() => hold(told)),
    note: () => app.shelf().then(({ takeUp }) => takeUp.note()),
    collect: () => app.shelf().then(({ takeUp }) => takeUp.piece()),
    want: () => app.shelf().then(({ takeUp }) => takeUp.want()),
    sighting: () => app.shelf().then(({ takeUp }) => takeUp.sighting()),
    mark: async () =>
      (await loaded(import("./read-mark.js"))).openReadMark(app, app.pack, act.answer),
    who: (variants) => openWho(app, current(app.piece), variants),
  };

  /** Keeps what was said of the piece in hand; gives whether it is kept. */
  async function hold(told) {
    const piece = { ...app.piece, hand: { ...app.piece.hand, ...told } };
    const kept = await keep(piece);
    app.tellStored();
    app.piece = piece;
    app.view = await app.assess(piece);
    return kept;
  }

  /** The session with a part that was said to be missing: its features are asked again. */
  function withPart(part) {
    const place = app.pack.parts.findIndex((one) => one.id === part);
    const on = (answer) => app.pack.features[featureOf(app.pack, answer.feature)].part === place;
    return {
      ...session(),
      missing: session().missing.filter((id) => id !== part),
      answers: session().answers.filter((answer) => answer.how !== "cannot" || !on(answer)),
    };
  }

  /** Back to the state after `count` steps. A piece with answers that is left can be had again. */
  async function retreat(count) {
    if (count === 0 && session().answers.length > 0) {
      app.former = app.piece;
      await keepFormer(app.piece);
    }
    await settle(backTo(app.piece, count));
    announce(count === 0 ? "Started again." : "Taken back.");
  }

  /** Takes steps back by a button, and brings the browser's history along. */
  async function takeBack(count) {
    const back = Math.min(count, here().step);
    await retreat(app.piece.steps.length - count);
    await goBack(back);
  }

  async function forget() {
    if (!app.former) return;
    app.former = null;
    await keepFormer(null);
  }

  return {
    /** Back or Forward was used: undo down to where the browser stands; Forward redoes nothing. */
    async moved(entry) {
      const count = app.piece ? app.piece.steps.length : 0;
      if (entry.step > count) await goBack(entry.step - count);
      else if (entry.step < count) await retreat(entry.step);
    },
    /** What the person can do today, for this piece and the next ones. */
    able: (needs) =>
      app.run(async () => {
        app.settings = { ...app.settings, able: needs };
        await keepSettings(app.settings);
        app.tellStored();
        if (!app.piece) return;
        app.piece = amended(app.piece, { ...session(), able: needs });
        app.view = await app.assess(app.piece);
        await keep(app.piece);
      }),
    tools: () =>
      app.piece
        ? [
            button("Undo", act.undo, { class: "plain" }),
            button("Start again", act.restart, { class: "plain" }),
          ]
        : [el("strong", { class: "name-of-app" }, app.entry.name)],
    restart: act.restart,
    ahead,
    screen,
  };

  function screen() {
    if (app.piece) return pieceScreen();
    return [firstOffer(app), startScreen(app, act), updateOffer()].filter(Boolean);
  }

  function pieceScreen() {
    const { asked, further } = current(app.piece);
    const { question, stop } = app.view;
    const own = asked === "" ? -1 : featureOf(app.pack, asked);
    const place = own >= 0 ? own : (question?.feature ?? -1);
    if (own < 0 && (place < 0 || (stop !== "" && !further))) {
      return [answerScreen(app, current(app.piece), act), updateOffer(), app.beside?.()].filter(
        Boolean,
      );
    }
    const expected = question?.feature === place ? question.expected : null;
    const card = { pack: app.pack, feature: place, session: session(), chosen: own >= 0, expected };
    return [
      strip(app.pack, app.view, act.candidates, heldClaim(app, current(app.piece))),
      el(
        "section",
        { class: "card" },
        further && stop !== "" ? button("Show the answer", act.enough, { class: "link" }) : null,
        questionCard(card, act),
      ),
      app.beside?.(),
    ].filter(Boolean);
  }
}
