/** A range is followed from an address: what lies there is shown first. */
import { run } from "../data/queue.js";
import { button, el, heading } from "../parts/element.js";
import { goTo } from "../parts/navigation.js";
import { announce } from "../parts/status.js";
import { standing } from "./added-range.js";
import { follow } from "./following.js";
import { fromFolder, lookAt, readAddress } from "./from-address.js";
import { aboutLines } from "./one-range.js";
import {
  ADDRESS_OF_THE_RANGE,
  FOLLOW_A_RANGE,
  FOLLOW_IT,
  LOOK_AT_IT,
  LOOKING,
  NOT_TO_BE_PASTED,
  PASTE,
  RANGES_THERE,
  takesThePlaceOf,
  WHAT_FOLLOWING_IS,
  WHICH_ONE,
} from "./following-words.js";

/** The screen where an address is typed or pasted. */
export function followScreen(state) {
  const said = el("p", { class: "quiet", id: "address-said" });
  const field = el("input", {
    id: "address",
    type: "text",
    inputmode: "url",
    autocomplete: "off",
    autocapitalize: "none",
    spellcheck: "false",
    placeholder: "https://",
    "aria-describedby": said.id,
  });
  const below = el("div", { id: "found-there" });
  const shown = { field, said, below };
  return el(
    "section",
    { class: "shelf" },
    heading(1, FOLLOW_A_RANGE),
    el("p", {}, WHAT_FOLLOWING_IS),
    el(
      "form",
      {
        class: "field",
        novalidate: true,
        onsubmit: (event) => {
          event.preventDefault();
          look(state, shown);
        },
      },
      el("label", { for: field.id }, ADDRESS_OF_THE_RANGE),
      field,
      said,
      el(
        "div",
        { class: "row" },
        navigator.clipboard?.readText
          ? button(PASTE, () => paste(shown), { class: "plain" })
          : null,
        el("button", { type: "submit", class: "main" }, LOOK_AT_IT),
      ),
    ),
    below,
  );
}

async function paste({ field, said }) {
  try {
    field.value = (await navigator.clipboard.readText()).trim();
    said.textContent = "";
  } catch {
    said.textContent = NOT_TO_BE_PASTED;
  }
  field.focus();
}

/** Says what is going on below the field. */
function say({ said, field }, text, wrong = true) {
  said.textContent = text;
  said.className = wrong && text !== "" ? "wrong" : "quiet";
  field.toggleAttribute("aria-invalid", wrong && text !== "");
  if (text !== "") announce(text);
}

let latest = 0; // which look is the latest: an earlier one may answer after it

/** Waits beside the queue: no tap waits for an address. Gives null when it is too late. */
async function waited(shown, work) {
  const own = (latest += 1);
  say(shown, LOOKING, false);
  shown.below.replaceChildren();
  const answer = await work();
  if (own !== latest || !shown.below.isConnected) return null;
  say(shown, answer.problem ?? "");
  return answer.problem ? null : answer;
}

async function look(state, shown) {
  const { address, problem } = readAddress(shown.field.value);
  if (problem) {
    shown.below.replaceChildren();
    say(shown, problem);
    return;
  }
  const there = await waited(shown, async () => {
    const seen = await lookAt(address);
    return seen.edition?.problem ? seen.edition : seen;
  });
  if (!there) return;
  if (there.edition) preview(state, shown, there.edition, { address });
  else if (there.ranges.length === 1)
    await previewOf(state, shown, address, there, there.ranges[0]);
  else several(state, shown, address, there);
}

/** One of those in a published folder. */
async function previewOf(state, shown, address, { folder }, { id }) {
  const edition = await waited(shown, () => fromFolder(folder, id));
  if (edition) preview(state, shown, edition, { address, folder });
}

function several(state, shown, address, there) {
  const list = el(
    "ul",
    { class: "found", "aria-label": RANGES_THERE },
    there.ranges.map((line) =>
      el(
        "li",
        {},
        button(
          [el("strong", {}, line.name), el("span", { class: "quiet" }, String(line.maker ?? ""))],
          () => previewOf(state, shown, address, there, line),
          { class: "hit" },
        ),
      ),
    ),
  );
  shown.below.replaceChildren(heading(2, WHICH_ONE), list);
  list.querySelector("button").focus();
}

/** What it is, before it is taken. */
function preview(state, { below }, edition, follows) {
  const { pack } = edition;
  const before = standing(pack.id);
  const { made, dated } = edition;
  const about = { ...pack.range, items: pack.items.length, made, dated };
  const go = async () => {
    if (await follow(state, edition, follows))
      goTo("range", { id: pack.id }, { instead: true, keepNotice: true });
  };
  below.replaceChildren(
    heading(2, pack.range.name),
    ...aboutLines(about),
    before && !before.written ? el("p", { class: "warn" }, takesThePlaceOf(before.name)) : "",
    button(FOLLOW_IT, () => run(go), { class: "main wide" }),
  );
  below.querySelector("button").focus();
}
