import { drawing } from "../parts/drawing.js";
import { all, anything } from "../data/records.js";
import { button, el, heading, svg } from "../parts/element.js";
import { numberKeys, withKeypad } from "../parts/keypad.js";
import { moneyText } from "../parts/money.js";
import { fileButton } from "../parts/file-button.js";
import { variantsOf } from "../parts/piece-names.js";
import { goTo } from "../parts/navigation.js";
import { portrait } from "../parts/portrait.js";
import { trayText } from "./left-aside.js";
import { caption } from "./question.js";
import { rangeChoice } from "./range-choice.js";
import { dateText } from "../parts/days.js";
import { itemName } from "../parts/say.js";
import { announce } from "../parts/status.js";
import {
  FOUND,
  foundCount,
  hasOnIt,
  IF_ONE_CHARACTER_WAS_MISREAD,
  IN_NO_RANGE,
  IN_YOUR_COLLECTION,
  IS_IT_MINE,
  IT_IS_ON_YOUR_LIST,
  likeIt,
  NEXT_FROM_THE_SAME_BOX,
  NOT_SURE,
  NOT_SURE_ASK_ME,
  notCalledSo,
  NOT_YOURS,
  NOTHING_FOUND,
  NUMBER_OR_NAME,
  ON_IT_OR_ITS_BOX,
  ON_YOUR_LIST,
  onYourListUpTo,
  PHOTO_FOR_LATER,
  READ_A_MARK,
  SELLERS_DATE,
  STARTED_AGAIN_BEFORE,
  UNDO_THAT,
  WHAT_HAVE_YOU_GOT,
  WHAT_KIND_OF_PIECE_IS_IT,
  yours,
} from "./first-words.js";

const MOST = 12;

/**
 * The start: which kind is it, or what number or name stands on it? `act` holds what can be done;
 * `offer`: what is offered at the first start.
 */
export function startScreen(state, act, offer = null) {
  const { pack } = state;
  const below = el("div", { class: "start-choices" }, kinds(pack, act));
  const title = heading(1, WHAT_HAVE_YOU_GOT, { class: "unseen" }); // the tiles ask it
  const show = (list) => {
    below.classList.toggle("results", list !== null);
    below.replaceChildren(list ?? kinds(pack, act));
  };
  return el(
    "section",
    { class: "start" },
    state.former ? undoRestart(act) : null,
    title,
    searchField(state, act, show),
    ways(act),
    atHand(state, act),
    below,
    offer,
    rangeChoice(state, act.range),
  );
}

/** The other pieces at hand, and the next one from where the last came from. */
function atHand({ tray, former }, act) {
  const count = tray.length + (former ? 1 : 0);
  if (count === 0) return null;
  return el(
    "div",
    { class: "reach" },
    tray.length > 0 ? button(trayText(tray.length), act.tray, { class: "plain" }) : null,
    button(NEXT_FROM_THE_SAME_BOX, act.sameBox, { class: "plain" }),
  );
}

const CAMERA = "M3 8h4l2-3h6l2 3h4v11H3zM8.5 13a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0-7 0";
const SHELF = "M2 19h20M4 12h6v7H4zM14 19v-7h6v7M14 9a3 3 0 1 1 4 2.5q-1 .5-1 2M17 16v.1";
const SAID = "M3 4h18v12h-9l-5 4v-4H3zM8 8v4M12 8v4M16 8v4";
const MARK = "M10 3a7 7 0 1 0 .1 0M15 15l6 6M7 10h6M10 7v6";

/** What else one comes for, each a tap away. The camera first: it can be identified later. */
function ways(act) {
  const way = (path, label, go) => button([drawn(path), label], go, { class: "way" });
  return el(
    "div",
    { class: "ways-in" },
    fileButton([drawn(CAMERA), PHOTO_FOR_LATER], act.photograph, {
      accept: "image/*",
      capture: "environment",
    }),
    way(SHELF, IS_IT_MINE, () => document.getElementById("search").focus()),
    way(SAID, SELLERS_DATE, act.sellerFirst),
    way(MARK, READ_A_MARK, act.mark),
  );
}

function drawn(path) {
  return svg(
    "svg",
    { class: "drawn", viewBox: "0 0 24 24", "aria-hidden": "true", focusable: "false" },
    svg("path", { d: path }),
  );
}

function undoRestart(act) {
  return el(
    "p",
    { class: "toast" },
    STARTED_AGAIN_BEFORE,
    button(UNDO_THAT, act.undoRestart, { class: "plain" }),
  );
}

function kinds(pack, act) {
  const [sort] = pack.features;
  const choices = sort.states.map((state) =>
    button(
      [drawing(pack, state.drawing), ...caption(state)],
      () => startWith(pack, act, sort, state.id),
      { class: "state" },
    ),
  );
  const any = button(
    [
      el("span", { "aria-hidden": "true" }, NOT_SURE),
      el("span", { class: "unseen" }, NOT_SURE_ASK_ME),
    ],
    () => act.start({ kind: "", items: [] }),
    { class: "plain any" },
  );
  return el(
    "fieldset",
    {},
    el("legend", { class: "unseen" }, WHAT_KIND_OF_PIECE_IS_IT),
    el("div", { class: "states columns" }, choices, any),
  );
}

/** With a kind of the range; over all ranges a kind is an answer like any other. */
function startWith(pack, act, sort, kind) {
  if (!pack.packs) return act.start({ kind, items: [] });
  const answer = { feature: sort.id, how: "sure", states: [kind] };
  return act.start({ kind: "", items: [] }, [answer]);
}

/** The search field; `show` gets the results, or null when nothing is typed. */
function searchField(state, act, show) {
  const field = el("input", {
    id: "search",
    type: "search",
    autocomplete: "off",
    autocapitalize: "characters",
    spellcheck: "false",
    enterkeyhint: "search",
    oninput: () => {
      const text = field.value.trim();
      show(text === "" ? null : results(state, act, text));
    },
    onkeydown: (event) => {
      if (event.key === "Enter") field.blur();
    },
  });
  withKeypad(field, () => numberKeys(state.pack));
  return el(
    "div",
    { class: "search" },
    el(
      "label",
      { for: "search" },
      NUMBER_OR_NAME,
      el("span", { class: "unseen" }, ON_IT_OR_ITS_BOX),
    ),
    field,
  );
}

function results(state, act, text) {
  const { ready, engine } = state;
  const hits = engine.find(ready, text, MOST);
  const exact = hits.filter(({ score }) => score >= 1).length;
  const kept = [...all("piece"), ...all("want")];
  const outside = kept.filter(({ item }) => item === "");
  const named = engine.outside_named(outside, text);
  const count = hits.length + named.length;
  announce(count === 0 ? NOTHING_FOUND : foundCount(count));
  if (count === 0) {
    return el("p", { class: "none-found" }, notCalledSo(text));
  }
  const only = exact === 1; // then there is nothing that its years would tell it from
  const shown = { only, typed: text };
  const entries = hits.map((hit) => el("li", {}, hitButton(state, act, hit, shown)));
  const list = el(
    "ul",
    { class: "found", "aria-label": FOUND },
    outside
      .filter(({ id }) => named.includes(id))
      .map((record) => el("li", {}, outsideButton(record))),
    entries,
  );
  if (exact > 0 && exact < hits.length) list.append(others(entries.slice(exact)));
  return list;
}

/** What is only like the number that was typed stays behind a button. */
function others(entries) {
  for (const entry of entries) entry.hidden = true;
  const show = () => {
    for (const entry of entries) entry.hidden = false;
    entries[0].querySelector("button").focus();
    opener.remove();
  };
  const opener = el("li", {}, button(likeIt(entries.length), show, { class: "plain wide" }));
  return opener;
}

/** What is owned or wanted and is in no range. */
function outsideButton({ id, type, called }) {
  const held = type === "piece" ? IN_YOUR_COLLECTION : ON_YOUR_LIST;
  return button(
    el(
      "span",
      { class: "lines" },
      el("strong", {}, called),
      el("span", { class: "quiet" }, IN_NO_RANGE),
      el("span", { class: "held" }, held),
    ),
    () => goTo(type, { id }),
    { class: "hit" },
  );
}

/** What was found; `typed`: a number that stands above it already is heard only. */
function hitButton(state, act, hit, { only, typed }) {
  const { pack } = state;
  const item = pack.items[hit.item];
  const years = item.years === "" || (only && hit.score >= 1) ? "" : dateText(item.years);
  const said = [years, how(hit)].filter(Boolean);
  const held = holding(state, item);
  return button(
    [
      portrait(pack, variantsOf(pack, hit.item), { size: 80 }),
      el(
        "span",
        { class: "lines" },
        el(
          "strong",
          {},
          sameNumber(typed, item.number) ? nameAlone(item) : itemName(pack, hit.item),
        ),
        el("span", { class: "unseen" }, pack.kinds[item.kind].name),
        said.length === 0 ? null : el("span", { class: "quiet" }, said.join(", ")),
        held === "" ? null : el("span", { class: "held" }, held),
      ),
    ],
    () => act.start({ kind: "", items: [item.number] }, [], item.pack),
    { class: "hit" },
  );
}

const plain = (text) => text.replace(/\s/g, "").toUpperCase();

const sameNumber = (typed, number) => plain(typed) === plain(number);

function nameAlone({ number, name }) {
  return [el("span", { class: "unseen" }, `${number} `), name];
}

/** How many of an item are owned, whether it is wanted, and up to which price. */
function holding({ engine, pack }, item) {
  const from = item.pack ?? pack.id;
  const same = (record) => record.pack === from && record.item === item.number;
  const owned = all("piece").filter(same).length;
  const wants = all("want").filter(same);
  const most = wants.map((want) => want.most).find(Boolean);
  const wanted = most ? onYourListUpTo(moneyText(engine, most)) : IT_IS_ON_YOUR_LIST;
  if (owned === 0 && wants.length === 0) return anything() ? NOT_YOURS : "";
  const own = owned === 0 ? NOT_YOURS : yours(owned);
  return wants.length === 0 ? own : `${own}, ${wanted}`;
}

function how(hit) {
  if (hit.how === "misread") return IF_ONE_CHARACTER_WAS_MISREAD;
  return hit.how === "carried" ? hasOnIt(hit.matched) : "";
}
