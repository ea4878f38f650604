/** Of something to look at: what is taken for one another there, and when it is asked at all. */
import { run } from "../data/queue.js";
import { record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { redraw } from "../parts/navigation.js";
import { saveChange } from "../parts/saving.js";
import { small } from "../parts/say.js";
import { rowsOf } from "./own-range.js";

const statesOf = (feature) =>
  rowsOf(feature.range, "range_state").filter((one) => one.feature === feature.id);

/** Changes a list of pairs of a feature. */
function changed(feature, field, what, alter) {
  return run(async () => {
    const edit = { id: feature.id, alter: (now) => ({ ...now, [field]: alter(now[field] ?? []) }) };
    if (await saveChange(`${what} changed`, [edit])) await redraw();
  });
}

const without = (pair) => (pairs) =>
  pairs.filter(([one, other]) => one !== pair[0] || other !== pair[1]);

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
            button("Not so", () => takeAway(pair), { class: "link" }),
          ),
        ),
      );
}

/** Two choices one after the other, and a button that puts the pair down. */
function pairForm(first, second, label, settle) {
  let [one, other] = ["", ""];
  const box = el("div", {});
  const draw = () =>
    box.replaceChildren(
      choice(first.label, [["", "Choose"], ...first.options], one, (value) => {
        one = value;
        other = "";
        draw();
        return false;
      }),
      ...(one === ""
        ? []
        : [
            choice(second.label, [["", "Choose"], ...second.options(one)], other, (value) => {
              other = value;
              if (value !== "") settle([one, value]);
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
  const what = "What is mistaken for each other";
  const pairs = feature.mistaken.filter((pair) =>
    pair.every((id) => states.some((s) => s.id === id)),
  );
  const put = (pair) => changed(feature, "mistaken", what, (now) => [...without(pair)(now), pair]);
  const away = (pair) => changed(feature, "mistaken", what, without(pair));
  const said = (pair) => {
    const [one, other] = pair.map((id) => record(id).name);
    return `${one} and ${small(other)}`;
  };
  return [
    heading(2, "Easily mistaken for each other"),
    list("Easily mistaken for each other", pairs, said, away),
    states.length < 2
      ? null
      : pairForm(
          { label: "This one", options: named },
          { label: "is mistaken for", options: (one) => named.filter(([id]) => id !== one) },
          "Two that look alike",
          put,
        ),
  ];
}

/** When it is asked: only where something else was seen. */
export function conditions(feature) {
  const others = rowsOf(feature.range, "range_feature").filter(({ id }) => id !== feature.id);
  const what = "When it is asked";
  const there = (id) => (record(id)?.trashed ?? "gone") === "";
  const pairs = feature.only_if.filter((pair) => pair.every(there));
  const put = (pair) => changed(feature, "only_if", what, (now) => [...without(pair)(now), pair]);
  const away = (pair) => changed(feature, "only_if", what, without(pair));
  const said = ([of, state]) => `${record(of).name}: ${small(record(state).name)}`;
  return [
    heading(2, "Asked only where this is seen"),
    pairs.length === 0
      ? el("p", { class: "quiet" }, "It is asked of every piece that can have it.")
      : list("Asked only where this is seen", pairs, said, away),
    others.length === 0
      ? null
      : pairForm(
          { label: "Where you look first", options: others.map(({ id, name }) => [id, name]) },
          {
            label: "What is seen there",
            options: (one) => statesOf(record(one)).map(({ id, name }) => [id, name]),
          },
          "Ask it only where something else is seen",
          put,
        ),
  ];
}
