/**
 * Running changes of a range of one's own: what was made otherwise from a year on, on every piece
 * of a kind. Each is a sentence, made by three taps and a year.
 */
import { run } from "../data/queue.js";
import { record, trashing } from "../data/records.js";
import { gone } from "../collection/piece.js";
import { dateField } from "../parts/date-field.js";
import { dateText } from "../parts/days.js";
import { pictured } from "../parts/drawing.js";
import { button, el, heading } from "../parts/element.js";
import { choice, longField, ticks } from "../parts/fields.js";
import { goTo, leaveScreen } from "../parts/navigation.js";
import { small } from "../parts/say.js";
import { saveChange, saver } from "../parts/saving.js";
import { featuresFor, kindIn, rowsFor, withKind } from "./describing.js";
import { kit } from "../data/packs.js";
import { whatItDoes } from "./change-line.js";
import { keepRows, newChange, newSource, rowsOf } from "./own-range.js";
import { faultsHere } from "./faults.js";
import {
  ADD_A_RUNNING_CHANGE,
  allKinds,
  ANOTHER_BOOK,
  ANOTHER_SOURCE,
  AT_SOME_TIME,
  BETWEEN_NUMBERS,
  changeLine,
  EMPTY_IF_IT_STAYED,
  EXAMPLE_OF_FROM,
  FROM,
  fromAsSaid,
  fromDay,
  fromTo,
  FURTHER_SOURCE,
  HOW_DO_YOU_KNOW,
  IT_IS_IN_THE_BIN,
  NEW_RUNNING_CHANGE,
  NOT_SAID,
  NOTES,
  ON,
  ON_WHAT,
  OTHERWISE_SAID,
  RUNNING_CHANGE_DELETED,
  RUNNING_CHANGES,
  SOMETHING,
  TAP_WHAT_CHANGED,
  TAP_WHAT_IS_SEEN,
  UNTIL,
  untilDay,
  WHAT_CHANGED,
  WHAT_CHANGED_ON_ALL_OF_THEM,
  WHAT_RUNNING_CHANGES_ARE,
  WHERE_IT_CHANGED,
  WHO_SAYS_SO,
} from "./row-words.js";

/** The kinds that a change is of, in words: "all coaches and wagons", "everything". */
function onWhat({ kinds }) {
  const named = kinds.map((id) => record(id)).filter(Boolean);
  if (named.length === 0) return "everything";
  return allKinds(named.map(({ plural }) => small(plural)).join(BETWEEN_NUMBERS));
}

/** When a change came and went: "from about 1956", "from 1956 to 1961", "at some time". */
function when({ since, until }) {
  if (since === "" && until === "") return AT_SOME_TIME;
  if (until === "") return fromDay(dateText(since));
  return since === "" ? untilDay(dateText(until)) : fromTo(dateText(since), dateText(until));
}

/** A running change as a sentence: "Bogies: plastic, from about 1956, on all coaches." */
function changeSentence(change) {
  const feature = record(change.feature)?.name ?? SOMETHING;
  const state = record(change.state)?.name ?? "other";
  return changeLine(feature, small(state), when(change), onWhat(change));
}

/** The running changes of a range, each as its sentence, and a way to add one. */
export function runningChanges(range) {
  const changes = rowsOf(range, "range_change").sort(
    (a, b) => a.feature.localeCompare(b.feature) || a.since.localeCompare(b.since),
  );
  return [
    heading(2, RUNNING_CHANGES),
    changes.length === 0
      ? el("p", {}, WHAT_RUNNING_CHANGES_ARE)
      : el(
          "ul",
          { class: "found", "aria-label": RUNNING_CHANGES },
          changes.map((change) =>
            el(
              "li",
              {},
              button(changeSentence(change), () => goTo("running", { id: change.id }), {
                class: "hit",
              }),
            ),
          ),
        ),
    button(ADD_A_RUNNING_CHANGE, () => goTo("newrunning", { range }), { class: "plain wide" }),
  ];
}

/** A new running change of a range: on what kind, what is looked at, what is seen from then on. */
export async function newRunningScreen(_, { range, kind = "", feature: wanted = "" }) {
  const { kinds } = await kit();
  const next = (more) => goTo("newrunning", { range, kind, ...more }, { instead: true });
  if (kind === "")
    return tiles(
      ON_WHAT,
      WHAT_CHANGED_ON_ALL_OF_THEM,
      kinds.map(({ id, plural, name, drawing }) => [
        plural ?? name,
        drawing,
        () => next({ kind: id }),
      ]),
    );
  const features = await featuresFor(range, kind);
  const feature = features.find(({ key }) => key === wanted);
  if (!feature)
    return tiles(
      WHAT_CHANGED,
      TAP_WHAT_CHANGED,
      features.map((row) => [
        row.name,
        row.states[0]?.drawing ?? "",
        () => next({ feature: row.key }),
      ]),
    );
  return tiles(
    feature.title,
    TAP_WHAT_IS_SEEN,
    feature.states.map((state) => [
      state.caption,
      state.drawing,
      () =>
        run(() =>
          added(
            range,
            kinds.find(({ id }) => id === kind),
            feature,
            state,
          ),
        ),
    ]),
  );
}

function tiles(title, hint, choices) {
  return el(
    "section",
    { class: "card" },
    heading(1, title),
    el(
      "fieldset",
      { class: "choices" },
      el("legend", {}, hint),
      el(
        "div",
        { class: "states columns" },
        choices.map(([name, drawing, act]) =>
          button([pictured(drawing), el("span", { class: "name" }, name)], act, { class: "state" }),
        ),
      ),
    ),
  );
}

async function added(range, shelf, feature, state) {
  const { kind, rows } = kindIn(range, shelf);
  const needed = rowsFor(range, feature, rows);
  const change = newChange(range, {
    feature: needed.own.id,
    state: needed.stateIds.get(state.key),
    kinds: [kind.id],
  });
  const edits = withKind(needed.own, kind.id);
  const kept = await keepRows(NEW_RUNNING_CHANGE, [...rows, ...needed.rows, change], { edits });
  if (kept) goTo("running", { id: change.id }, { instead: true });
}

/** The running change `id`: its sentence, since when, and on what. */
export async function runningScreen(_, { id }) {
  const change = record(id);
  if (!change || change.trashed !== "") return gone();
  const title = heading(1, changeSentence(change));
  const save = (field, what) => {
    const keep = saver(id, field, what);
    return async (value) => {
      const kept = await keep(value);
      title.textContent = changeSentence(record(id));
      await again();
      return kept;
    };
  };
  const kinds = rowsOf(change.range, "range_kind").map((kind) => [kind.id, kind.plural]);
  const sources = el("div", { class: "fields" });
  const does = el("div", { "aria-live": "polite" });
  const shown = async () => does.replaceChildren(...(await whatItDoes(record(id), shown)));
  const again = async () => {
    sources.replaceChildren(...saidBy(record(id), again, shown));
    await shown();
  };
  await again();
  return el(
    "section",
    { class: "shelf" },
    title,
    ...(await faultsHere(change)),
    dateField(FROM, change.since, save("since", FROM), {
      hint: EXAMPLE_OF_FROM,
    }),
    dateField(UNTIL, change.until, save("until", UNTIL), {
      hint: EMPTY_IF_IT_STAYED,
    }),
    ticks(ON, kinds, change.kinds, save("kinds", WHERE_IT_CHANGED)),
    sources,
    does,
    longField(NOTES, change.note, saver(id, "note", NOTES)),
    button(
      "Delete",
      () =>
        run(async () => {
          const said = IT_IS_IN_THE_BIN;
          if (await saveChange(RUNNING_CHANGE_DELETED, [trashing(id)], { said })) leaveScreen();
        }),
      { class: "plain" },
    ),
  );
}

/** Who says since when, and what another source says of it. */
function saidBy(change, again, shown) {
  const { id, range } = change;
  const there = rowsOf(range, "range_source").map((source) => [source.id, source.what]);
  const others = (change.other_from ?? []).map(([source, since], place) =>
    dateField(fromAsSaid(small(record(source)?.what ?? ANOTHER_SOURCE)), since, (text) => {
      const next = record(id).other_from.map((pair, n) => (n === place ? [source, text] : pair));
      return savedAndShown(saver(id, "other_from", FURTHER_SOURCE)(next), shown);
    }),
  );
  return [
    there.length > 0
      ? choice(HOW_DO_YOU_KNOW, [["", NOT_SAID], ...there], change.source, (value) =>
          savedAndShown(saver(id, "source", WHO_SAYS_SO)(value), shown),
        )
      : null,
    ...others,
    change.since === ""
      ? null
      : button(OTHERWISE_SAID, () => run(() => otherwise(change, again)), {
          class: "link",
        }),
  ].filter(Boolean);
}

async function savedAndShown(saving, shown) {
  const kept = await saving;
  if (kept === true) await shown();
  return kept;
}

async function otherwise({ id, range }, again) {
  const source = newSource(range, { what: ANOTHER_BOOK, trust: 0.8 });
  const edit = {
    id,
    alter: (now) => ({ ...now, other_from: [...(now.other_from ?? []), [source.id, ""]] }),
  };
  if (await keepRows(FURTHER_SOURCE, [source], { edits: [edit] })) await again();
}
