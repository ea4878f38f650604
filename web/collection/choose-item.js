import { making } from "../data/records.js";
import { blank } from "../data/record-shapes.js";
import { button, el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { itemName } from "../parts/say.js";
import { announce } from "../parts/status.js";
import { ranges, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { goTo } from "../parts/navigation.js";
import {
  BETTER_IDENTIFIED,
  FOUND,
  foundCount,
  NEW_RECORD,
  NOT_IN_ANY_RANGE,
  notCalledSo,
  NOTHING_FOUND,
  NUMBER_OR_NAME,
  RANGE,
  WHAT_IS_CHOSEN,
} from "./words.js";

const MOST = 20;

/** Chooses an item by number or name, for a new piece or want. */
export async function chooseScreen(state, { into }) {
  const ids = ranges().map(({ id }) => id);
  let range = ids.includes(state.pack.id) ? state.pack.id : ids[0];
  let text = "";
  const below = el("div", {});
  const draw = async () => {
    const ready = await readyRange(range);
    const matches = text === "" || !ready ? [] : state.engine.find(ready, text, MOST);
    if (text !== "") announce(matches.length === 0 ? NOTHING_FOUND : foundCount(matches.length));
    below.replaceChildren(
      text === "" || matches.length > 0 ? "" : el("p", {}, notCalledSo(text)),
      el(
        "ul",
        { class: "found", "aria-label": FOUND },
        matches.map(({ item }) =>
          el(
            "li",
            {},
            button(
              el("strong", {}, itemName(ready.pack, item)),
              () => made(into, range, ready.pack.items[item].number),
              {
                class: "hit",
              },
            ),
          ),
        ),
      ),
    );
  };
  const control = el("input", {
    id: "choose",
    type: "search",
    autocomplete: "off",
    oninput: () => {
      text = control.value.trim();
      draw();
    },
  });
  await draw();
  return el(
    "section",
    { class: "shelf" },
    heading(1, WHAT_IS_CHOSEN[into]),
    el("p", {}, into === "piece" ? BETTER_IDENTIFIED : ""),
    choice(
      RANGE,
      ranges().map(({ id, name }) => [id, name]),
      range,
      (value) => {
        range = value;
        draw();
      },
    ),
    el("div", { class: "field" }, el("label", { for: "choose" }, NUMBER_OR_NAME), control),
    below,
    button(NOT_IN_ANY_RANGE, () => made(into, "", "", text), { class: "plain wide" }),
  );
}

/** Makes it, of an item of a range, or by what it is called alone. */
function made(into, pack, item, called = "") {
  return run(async () => {
    const record = blank(into, { pack, item, called });
    if (await saveChange(NEW_RECORD[into], [making(record)]))
      goTo(into, { id: record.id }, { instead: true });
  });
}
