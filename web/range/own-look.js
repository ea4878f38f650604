/** The cards that ask what is seen on a piece for a range of one's own, and what differs on it. */
import { NoPhoto } from "../data/photos.js";
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { gone } from "../collection/piece.js";
import { pictured } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { goTo, leaveScreen, redraw } from "../parts/navigation.js";
import { sheet } from "../parts/sheet.js";
import { announce, notice } from "../parts/status.js";
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
import { smallPhoto } from "./small-photo.js";

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
    (one) => !isPutDown(row, one) && !passed.includes(one.key) && canHave(row, one, features),
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
      button("Can’t see it", () => onward([feature.key]), { class: "plain" }),
      button("Something else", () => other(row, feature, onward), { class: "plain" }),
      button("That will do", leaveScreen, { class: "main" }),
    ),
  );
}

/** The question in full, for who wants it. */
function inWords({ question, where }) {
  const words = [question, where].filter(Boolean).join(" ");
  return el("details", { class: "in-words" }, el("summary", {}, "In words"), words);
}

function left(count) {
  if (count === 0) return "the last one";
  return count === 1 ? "1 thing left" : `${count} things left`;
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
    el("legend", {}, "Tap what you see."),
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
    heading(1, "That is all there is to look at"),
    el("p", {}, `What you saw is noted for ${itemTitle(item)}.`),
    button("Back to it", leaveScreen, { class: "main wide" }),
    button("The next piece", () => goTo("writing", { range: item.range }, { instead: true }), {
      class: "plain wide",
    }),
    button("Something of your own to look at", () => ownFeature(item), { class: "plain wide" }),
  );
}

/** What is seen, when no drawing shows it: named, with a photo where one is wanted. */
function other(row, feature, onward) {
  named("What do you see?", async (name, photo) => {
    const { rows, own } = rowsFor(row.range, feature);
    const state = newState(own, { name, drawing: photo });
    const edit = { id: row.id, alter: (now) => ({ ...now, [seenField(own.id)]: [state.id] }) };
    const edits = [edit, ...withKind(own, itemOf(row).kind)];
    if (await keepRows(`${feature.name} noted`, [...rows, state], { edits })) onward();
  });
}

/** Something to look at that is on no shelf: named, with what is seen of it here. */
export function ownFeature(item) {
  const what = el("input", { type: "text", id: "own-feature", autocomplete: "off" });
  named(
    "What do you see there?",
    async (name, photo) => {
      const called = what.value.trim() || "Something else";
      const feature = newFeature(item.range, { name: called, kinds: [item.kind] });
      const state = newState(feature, { name, drawing: photo });
      const edit = {
        id: item.id,
        alter: (now) => ({ ...now, [seenField(feature.id)]: [state.id] }),
      };
      if (await keepRows(`${called} noted`, [feature, state], { edits: [edit] })) await redraw();
    },
    el(
      "div",
      { class: "field" },
      el("label", { for: "own-feature" }, "Where do you look? For example: lamp brackets"),
      what,
    ),
  );
}

function named(title, settle, before = null) {
  const name = el("input", { type: "text", id: "own-state", autocomplete: "off" });
  const said = el("p", { class: "quiet" }, "In two or three words.");
  const shown = el("div", {});
  let photo = "";
  const camera = el("input", {
    type: "file",
    accept: "image/*",
    class: "unseen",
    onchange: () =>
      run(async () => {
        try {
          photo = await smallPhoto(camera.files[0]);
          shown.replaceChildren(pictured(photo));
        } catch (error) {
          if (!(error instanceof NoPhoto)) throw error;
          notice(error.message);
        }
      }),
  });
  const shut = sheet(
    title,
    before,
    el("div", { class: "field" }, el("label", { for: "own-state" }, "What you see"), name),
    said,
    shown,
    el("label", { class: "plain file" }, "Photograph it", camera),
    button(
      "Add it",
      () => {
        if (name.value.trim() === "") {
          said.textContent = "Name what you see first, in two or three words.";
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
  const put = features.filter((one) => isPutDown(item, one) || isPutDown(row, one));
  const rest = features.filter((one) => !put.includes(one));
  const pick = (one) => goTo("differing", { id, feature: one.key }, { instead: true });
  return el(
    "section",
    { class: "card" },
    el("p", { class: "quiet" }, ofWhat(row, item)),
    heading(1, "What is different?"),
    el(
      "div",
      { class: "states columns dense" },
      put.map((one) => tile(item, row, one, pick)),
    ),
    rest.length === 0
      ? null
      : el(
          "details",
          { class: "filters" },
          el("summary", {}, "Something else is different"),
          el(
            "div",
            { class: "row" },
            rest.map((one) => button(one.name, () => pick(one), { class: "plain" })),
          ),
        ),
    row === item
      ? el(
          "div",
          { class: "unsure" },
          button("That is all", () => goTo("entry", { id }, { instead: true }), { class: "main" }),
        )
      : null,
  );
}

function ofWhat(row, item) {
  return row === item ? itemTitle(item) : `A variant of ${itemTitle(item)}`;
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
      el("legend", {}, "Tap what you see."),
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
