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

const MOST = 20;
const WHAT = { piece: "What have you got?", want: "What do you want?" };
const MADE = { piece: "New piece", want: "New want" };

/** Chooses an item by number or name, for a new piece or want. */
export async function chooseScreen(state, { into }) {
  const ids = ranges().map(({ id }) => id);
  let range = ids.includes(state.pack.id) ? state.pack.id : ids[0];
  let text = "";
  const below = el("div", {});
  const draw = async () => {
    const ready = await readyRange(range);
    const found = text === "" || !ready ? [] : state.engine.find(ready, text, MOST);
    if (text !== "") announce(found.length === 0 ? "Nothing found" : `${found.length} found`);
    below.replaceChildren(
      text === "" || found.length > 0
        ? ""
        : el(
            "p",
            {},
            `Nothing in this range is called “${text}”. Try part of the number or one word of ` +
              "the name. If no range has it, it is kept as you typed it.",
          ),
      el(
        "ul",
        { class: "found", "aria-label": "Found" },
        found.map(({ item }) =>
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
    heading(1, WHAT[into]),
    el(
      "p",
      {},
      into === "piece"
        ? "If it is in your hand, identify it instead: that finds the variant too."
        : "",
    ),
    choice(
      "Range",
      ranges().map(({ id, name }) => [id, name]),
      range,
      (value) => {
        range = value;
        draw();
      },
    ),
    el("div", { class: "field" }, el("label", { for: "choose" }, "Number or name"), control),
    below,
    button("Not in any range", () => made(into, "", "", text), { class: "plain wide" }),
  );
}

/** Makes it, of an item of a range, or by what it is called alone. */
function made(into, pack, item, called = "") {
  return run(async () => {
    const record = blank(into, { pack, item, called });
    if (await saveChange(MADE[into], [making(record)]))
      goTo(into, { id: record.id }, { instead: true });
  });
}
