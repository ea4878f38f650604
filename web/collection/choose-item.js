import { making } from "../data/records.js";
import { blank } from "../data/record-shapes.js";
import { button, el, heading } from "../parts/element.js";
import { choice } from "../parts/fields.js";
import { itemName } from "../parts/say.js";
import { announce } from "../parts/status.js";

const MOST = 20;
const WHAT = { piece: "What have you got?", want: "What do you want?" };
const MADE = { piece: "New piece", want: "New want" };

/** Chooses an item by number or name, for a new piece or want. */
export async function chooseScreen(app, keep, { into }) {
  const ids = keep.ranges.map(({ id }) => id);
  let range = ids.includes(app.pack.id) ? app.pack.id : ids[0];
  let text = "";
  const below = el("div", {});
  const draw = async () => {
    const ready = await keep.ready(range);
    const found = text === "" || !ready ? [] : app.engine.find(ready, text, MOST);
    if (text !== "") announce(found.length === 0 ? "Nothing found" : `${found.length} found`);
    below.replaceChildren(
      text === "" || found.length > 0
        ? ""
        : el(
            "p",
            {},
            `Nothing in this range is called “${text}”. Try part of the number or one word of ` +
              "the name.",
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
              () => made(keep, into, range, ready.pack.items[item].number),
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
        ? "If you hold it in your hand, identify it instead: that tells the variant too."
        : "",
    ),
    choice(
      "Range",
      keep.ranges.map(({ id, name }) => [id, name]),
      range,
      (value) => {
        range = value;
        draw();
      },
    ),
    el("div", { class: "field" }, el("label", { for: "choose" }, "Number or name"), control),
    below,
    into === "piece"
      ? button("It is in no reference", () => made(keep, into, range, ""), { class: "plain wide" })
      : null,
  );
}

function made(keep, into, pack, item) {
  return keep.run(async () => {
    const record = blank(into, { pack, item });
    if (await keep.change(MADE[into], [making(record)]))
      keep.open(into, { id: record.id }, { instead: true });
  });
}
