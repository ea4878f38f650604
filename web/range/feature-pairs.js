/** Of something to look at: what is taken for one another there, and when it is asked at all. */
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { redraw } from "../parts/navigation.js";
import { saveChange } from "../parts/saving.js";
import { small } from "../parts/say.js";
import { rowsOf } from "./own-range.js";
import {
  ASKED_OF_EVERY_PIECE,
  bothOf,
  CHOOSE,
  EASILY_MISTAKEN,
  IS_MISTAKEN_FOR,
  MISTAKEN_FOR_EACH_OTHER,
  NOT_SO,
  ONLY_IF_ELSE_IS_SEEN,
  ONLY_WHERE_SEEN,
  THIS_ONE,
  TWO_THAT_LOOK_ALIKE,
  WHAT_IS_SEEN_THERE,
  whatChanged,
  WHEN_IT_IS_ASKED,
  WHERE_YOU_LOOK_FIRST,
} from "./row-words.js";

const statesOf = (feature) =>
  rowsOf(feature.range, "range_state").filter((state) => state.feature === feature.id);

/** Changes a list of pairs of a feature. */
function changed(feature, field, what, alter) {
  return run(async () => {
    const edit = { id: feature.id, alter: (now) => ({ ...now, [field]: alter(now[field] ?? []) }) };
    if (await saveChange(whatChanged(what), [edit])) await redraw();
  });
}

const without = (pair) => (pairs) =>
  pairs.filter(([first, second]) => first !== pair[0] || second !== pair[1]);

function list(label, pairs, said, takeAway) {
  return pairs.length === 0
    ? null
    : el(
        "ul",
        { class: "plain-list", "aria-label": label },
        pairs.map((pair) =>
          el(
            "li",
            {},
            `${said(pair)} `,
            button(NOT_SO, () => takeAway(pair), { class: "link" }),
          ),
        ),
      );
}

/** Two choices one after the other, and a button that puts the pair down. */
function pairForm(first, second, label, settle) {
  let [chosen, other] = ["", ""];
  const box = el("div", {});
  const draw = () =>
    box.replaceChildren(
      choice(first.label, [["", CHOOSE], ...first.options], chosen, (value) => {
        chosen = value;
        other = "";
        draw();
        return false;
      }),
      ...(chosen === ""
        ? []
        : [
            choice(second.label, [["", CHOOSE], ...second.options(chosen)], other, (value) => {
              other = value;
              if (value !== "") settle([chosen, value]);
              return false;
            }),
          ]),
    );
  draw();
  return el("details", { class: "filters" }, el("summary", {}, label), box);
}

/** What is mistaken for each other: the app allows for it in a hurried answer. */
export function takenForOneAnother(feature) {
  const states = statesOf(feature);
  const named = states.map(({ id, name }) => [id, name]);
  const what = MISTAKEN_FOR_EACH_OTHER;
  const pairs = feature.mistaken.filter((pair) =>
    pair.every((id) => states.some((s) => s.id === id)),
  );
  const put = (pair) => changed(feature, "mistaken", what, (now) => [...without(pair)(now), pair]);
  const away = (pair) => changed(feature, "mistaken", what, without(pair));
  const said = (pair) => {
    const [first, second] = pair.map((id) => record(id).name);
    return bothOf(first, small(second));
  };
  return [
    heading(2, EASILY_MISTAKEN),
    list(EASILY_MISTAKEN, pairs, said, away),
    states.length < 2
      ? null
      : pairForm(
          { label: THIS_ONE, options: named },
          { label: IS_MISTAKEN_FOR, options: (chosen) => named.filter(([id]) => id !== chosen) },
          TWO_THAT_LOOK_ALIKE,
          put,
        ),
  ];
}

/** When it is asked: only where something else was seen. */
export function conditions(feature) {
  const others = rowsOf(feature.range, "range_feature").filter(({ id }) => id !== feature.id);
  const what = WHEN_IT_IS_ASKED;
  const there = (id) => (record(id)?.trashed ?? "gone") === "";
  const pairs = feature.only_if.filter((pair) => pair.every(there));
  const put = (pair) => changed(feature, "only_if", what, (now) => [...without(pair)(now), pair]);
  const away = (pair) => changed(feature, "only_if", what, without(pair));
  const said = ([of, state]) => `${record(of).name}: ${small(record(state).name)}`;
  return [
    heading(2, ONLY_WHERE_SEEN),
    pairs.length === 0
      ? el("p", { class: "quiet" }, ASKED_OF_EVERY_PIECE)
      : list(ONLY_WHERE_SEEN, pairs, said, away),
    others.length === 0
      ? null
      : pairForm(
          { label: WHERE_YOU_LOOK_FIRST, options: others.map(({ id, name }) => [id, name]) },
          {
            label: WHAT_IS_SEEN_THERE,
            options: (chosen) => statesOf(record(chosen)).map(({ id, name }) => [id, name]),
          },
          ONLY_IF_ELSE_IS_SEEN,
          put,
        ),
  ];
}
