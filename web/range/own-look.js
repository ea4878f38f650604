/** The cards that ask what is seen on a piece for a range of one's own, and what differs on it. */
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { gone } from "../collection/piece.js";
import { pictured } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { goTo, leaveScreen, redraw } from "../parts/navigation.js";
import { sheet } from "../parts/sheet.js";
import { announce } from "../parts/status.js";
import {
  canHave,
  featuresFor,
  isPutDown,
  itemOf,
  kindKey,
  putDown,
  rowsFor,
  seenOn,
  withKind,
} from "./describing.js";
import { itemTitle } from "./item-title.js";
import { keepRows, newFeature, newState, seenField } from "./own-range.js";
import { photoInput } from "./photo-input.js";
import {
  ADD_IT,
  BACK_TO_IT,
  CANT_SEE_IT,
  IN_TWO_OR_THREE_WORDS,
  IN_WORDS,
  isNoted,
  NAME_IT_IN_WORDS,
  notedFor,
  OF_YOUR_OWN_TO_LOOK_AT,
  ONE_THING_LEFT,
  SOMETHING_ELSE,
  SOMETHING_ELSE_IS_DIFFERENT,
  TAP_WHAT_YOU_SEE,
  THAT_IS_ALL,
  THAT_IS_ALL_THERE_IS,
  THAT_WILL_DO,
  THE_LAST_ONE,
  THE_NEXT_PIECE,
  thingsLeft,
  variantOf,
  WHAT_DO_YOU_SEE,
  WHAT_DO_YOU_SEE_THERE,
  WHAT_IS_DIFFERENT,
  WHAT_YOU_SEE,
  WHERE_DO_YOU_LOOK,
} from "./own-words.js";

/**
 * What is seen of one feature of the item or variant `id`: `feature` (a key), else the next that
 * nothing is put down of; `passed`: keys of those that could not be told.
 */
export async function lookingScreen(_, { id, feature: wanted = "", passed = [] }) {
  const row = record(id);
  if (!row || row.trashed !== "") return gone();
  const item = itemOf(row);
  const features = await featuresFor(row.range, kindKey(item));
  const open = features.filter(
    (look) => !isPutDown(row, look) && !passed.includes(look.key) && canHave(row, look, features),
  );
  const feature = features.find(({ key }) => key === wanted) ?? open[0];
  if (!feature) return allLookedAt(item);
  const onward = (more = []) =>
    wanted === ""
      ? goTo("looking", { id, passed: [...passed, ...more] }, { instead: true })
      : leaveScreen();
  return el(
    "section",
    { class: "card" },
    el("p", { class: "quiet" }, `${itemTitle(item)} · ${left(open.length)}`),
    heading(1, feature.title),
    inWords(feature),
    states(row, feature, onward),
    el(
      "div",
      { class: "unsure" },
      button(CANT_SEE_IT, () => onward([feature.key]), { class: "plain" }),
      button(SOMETHING_ELSE, () => other(row, feature, onward), { class: "plain" }),
      button(THAT_WILL_DO, leaveScreen, { class: "main" }),
    ),
  );
}

/** The question in full, for who wants it. */
function inWords({ question, where }) {
  const words = [question, where].filter(Boolean).join(" ");
  return el("details", { class: "in-words" }, el("summary", {}, IN_WORDS), words);
}

function left(count) {
  if (count === 0) return THE_LAST_ONE;
  return count === 1 ? ONE_THING_LEFT : thingsLeft(count);
}

function states(row, feature, onward) {
  const seen = seenOn(row, feature).map(({ key }) => key);
  const settle = (state) =>
    run(async () => {
      if (await putDown(row, feature, [state.key])) onward();
    });
  return el(
    "fieldset",
    { class: "choices" },
    el("legend", {}, TAP_WHAT_YOU_SEE),
    el(
      "div",
      { class: "states columns" },
      feature.states.map((state) =>
        button(
          [pictured(state.drawing), el("span", { class: "name" }, state.caption)],
          () => settle(state),
          {
            class: "state",
            "aria-label": state.name,
            "aria-pressed": seen.length > 0 ? String(seen.includes(state.key)) : null,
          },
        ),
      ),
    ),
  );
}

function allLookedAt(item) {
  return el(
    "section",
    { class: "shelf" },
    heading(1, THAT_IS_ALL_THERE_IS),
    el("p", {}, notedFor(itemTitle(item))),
    button(BACK_TO_IT, leaveScreen, { class: "main wide" }),
    button(THE_NEXT_PIECE, () => goTo("writing", { range: item.range }, { instead: true }), {
      class: "plain wide",
    }),
    button(OF_YOUR_OWN_TO_LOOK_AT, () => ownFeature(item), { class: "plain wide" }),
  );
}

/** What is seen, when no drawing shows it: named, with a photo where one is wanted. */
function other(row, feature, onward) {
  named(WHAT_DO_YOU_SEE, async (name, photo) => {
    const { rows, own } = rowsFor(row.range, feature);
    const state = newState(own, { name, drawing: photo });
    const edit = { id: row.id, alter: (now) => ({ ...now, [seenField(own.id)]: [state.id] }) };
    const edits = [edit, ...withKind(own, itemOf(row).kind)];
    if (await keepRows(isNoted(feature.name), [...rows, state], { edits })) onward();
  });
}

/** Something to look at that is on no shelf: named, with what is seen of it here. */
export function ownFeature(item) {
  const what = el("input", { type: "text", id: "own-feature", autocomplete: "off" });
  named(
    WHAT_DO_YOU_SEE_THERE,
    async (name, photo) => {
      const called = what.value.trim() || SOMETHING_ELSE;
      const feature = newFeature(item.range, { name: called, kinds: [item.kind] });
      const state = newState(feature, { name, drawing: photo });
      const edit = {
        id: item.id,
        alter: (now) => ({ ...now, [seenField(feature.id)]: [state.id] }),
      };
      if (await keepRows(isNoted(called), [feature, state], { edits: [edit] })) await redraw();
    },
    el("div", { class: "field" }, el("label", { for: "own-feature" }, WHERE_DO_YOU_LOOK), what),
  );
}

function named(title, settle, before = null) {
  const name = el("input", { type: "text", id: "own-state", autocomplete: "off" });
  const said = el("p", { class: "quiet" }, IN_TWO_OR_THREE_WORDS);
  const shown = el("div", {});
  let photo = "";
  const camera = photoInput((taken) => {
    photo = taken;
    shown.replaceChildren(pictured(photo));
  });
  const shut = sheet(
    title,
    before,
    el("div", { class: "field" }, el("label", { for: "own-state" }, WHAT_YOU_SEE), name),
    said,
    shown,
    camera,
    button(
      ADD_IT,
      () => {
        if (name.value.trim() === "") {
          said.textContent = NAME_IT_IN_WORDS;
          said.className = "wrong";
          announce(said.textContent);
          name.focus();
          return;
        }
        shut();
        run(() => settle(name.value.trim(), photo));
      },
      { class: "main wide" },
    ),
  );
}

/**
 * What differs on the item or variant `id` from what it was copied of: tap the feature, then what
 * is seen instead.
 */
export async function differingScreen(_, { id, feature: wanted = "" }) {
  const row = record(id);
  if (!row || row.trashed !== "") return gone();
  const item = itemOf(row);
  const features = await featuresFor(row.range, kindKey(item));
  const feature = features.find(({ key }) => key === wanted);
  if (feature) return differently(row, item, feature);
  const put = features.filter((look) => isPutDown(item, look) || isPutDown(row, look));
  const rest = features.filter((look) => !put.includes(look));
  const pick = (look) => goTo("differing", { id, feature: look.key }, { instead: true });
  return el(
    "section",
    { class: "card" },
    el("p", { class: "quiet" }, ofWhat(row, item)),
    heading(1, WHAT_IS_DIFFERENT),
    el(
      "div",
      { class: "states columns dense" },
      put.map((look) => tile(item, row, look, pick)),
    ),
    rest.length === 0
      ? null
      : el(
          "details",
          { class: "filters" },
          el("summary", {}, SOMETHING_ELSE_IS_DIFFERENT),
          el(
            "div",
            { class: "row" },
            rest.map((look) => button(look.name, () => pick(look), { class: "plain" })),
          ),
        ),
    row === item
      ? el(
          "div",
          { class: "unsure" },
          button(THAT_IS_ALL, () => goTo("entry", { id }, { instead: true }), { class: "main" }),
        )
      : null,
  );
}

function ofWhat(row, item) {
  return row === item ? itemTitle(item) : variantOf(itemTitle(item));
}

function tile(item, row, feature, pick) {
  const [state] = [...seenOn(row, feature), ...seenOn(item, feature)];
  return button(
    [
      pictured(state?.drawing ?? ""),
      el("span", { class: "name" }, feature.name),
      el("span", { class: "quiet" }, state?.caption ?? ""),
    ],
    () => pick(feature),
    { class: "state" },
  );
}

/** What is seen instead; a variant is called by it where it has no name yet. */
function differently(row, item, feature) {
  const [usual] = [...seenOn(row, feature), ...seenOn(item, feature)];
  const { id } = row;
  const settle = (state) =>
    run(async () => {
      const called = row === item ? {} : { name: row.name || state.name };
      if (await putDown(row, feature, [state.key], called))
        goTo(row === item ? "differing" : "version", { id, feature: "" }, { instead: true });
    });
  return el(
    "section",
    { class: "card" },
    el("p", { class: "quiet" }, ofWhat(row, item)),
    heading(1, feature.title),
    inWords(feature),
    el(
      "fieldset",
      { class: "choices" },
      el("legend", {}, TAP_WHAT_YOU_SEE),
      el(
        "div",
        { class: "states columns" },
        feature.states
          .filter(({ key }) => key !== usual?.key)
          .map((state) =>
            button(
              [pictured(state.drawing), el("span", { class: "name" }, state.caption)],
              () => settle(state),
              {
                class: "state",
                "aria-label": state.name,
              },
            ),
          ),
      ),
    ),
  );
}
