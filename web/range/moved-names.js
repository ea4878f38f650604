/** What a new version of a range calls by another name, or has no more: the records follow. */
import { all, change, record } from "../data/records.js";
import { changeSettings } from "../data/settings.js";
import { problem, read, write } from "../data/store.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { itemName, small, variantName } from "../parts/say.js";
import { title, variantText, variantsOf } from "../parts/piece-names.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";
import { packsAtHand, ranges, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { goTo, redraw } from "../parts/navigation.js";
import { POINTING } from "./own-range.js";
import {
  CHANGED_NUMBERS,
  changedNumbersIn,
  CHOOSE_AGAIN,
  chooseAgain,
  CHOSEN_AGAIN,
  EVERYTHING_POINTS_RIGHT,
  FOUND,
  HAS_ITS,
  hasChanged,
  HAVE_THEIR,
  haveNewNumber,
  IT_POINTS_TO_THIS_NOW,
  LOOK_AT_THEM,
  MOVED,
  NO_LONGER_IN_THE_RANGE,
  NUMBER_OR_NAME,
  ONE_RECORD_OF_YOURS,
  POINT_TO_NOTHING,
  pointToNothing,
  recordsOfYours,
  SOME_VARIANT_OF_IT,
  WERE_GIVEN_NEW_NUMBERS,
} from "./words.js";

const KEPT = "moved"; // {pack id: [ids of the records that were changed]}
const MOST = 12;

/** The records that point into a pack. */
function pointing(id) {
  return POINTING.flatMap(all).filter((kept) => kept.pack === id);
}

/** A record as a move (of the engine) says it is now. */
function renamed(now, { item, variant, of }) {
  const changed = { item, variant, of };
  const there = Object.keys(changed).filter((name) => name in now);
  return { ...now, ...Object.fromEntries(there.map((name) => [name, changed[name]])) };
}

/**
 * Goes through the ranges that are another version than before; true when something was told, after
 * what is `said` first.
 */
export async function lookAtMoved(state, said = "") {
  const seen = { ...state.settings.seen };
  const other = ranges().filter(
    ({ id, version }) => seen[id] !== version && pointing(id).length > 0,
  );
  const changes = [];
  for (const { id, name, version } of other) {
    const ready = await readyRange(id);
    if (!ready) continue;
    const moves = state.engine.moved(ready, pointing(id));
    const changed = moves.filter((move) => move.changed > 0).map((move) => move.id);
    const gone = moves.filter((move) => move.gone > 0);
    if (changed.length > 0 && !(await follow(state, ready, name, changed))) {
      notice(problem());
      return true;
    }
    if (changed.length > 0)
      await write("kept", KEPT, { ...(await read("kept", KEPT)), [id]: changed });
    if (changed.length + gone.length > 0) changes.push([name, changed.length, gone.length]);
    seen[id] = version;
  }
  if (other.length > 0) await changeSettings({ seen });
  if (changes.length > 0)
    notice([said, ...changes.map(sentence)].filter(Boolean).join(" "), [
      [LOOK_AT_THEM, () => goTo("moved")],
    ]);
  return changes.length > 0;
}

async function follow(state, ready, name, ids) {
  const edits = ids.map((id) => ({
    id,
    alter(now) {
      const [move] = now && !now.gone ? state.engine.moved(ready, [now]) : [];
      return move ? renamed(now, move) : now;
    },
  }));
  return (await change(changedNumbersIn(name), edits)).kept !== "";
}

function sentence([name, changed, gone]) {
  const parts = [
    changed > 0 ? haveNewNumber(entries(changed), changed === 1 ? HAS_ITS : HAVE_THEIR) : "",
    gone > 0
      ? pointToNothing(entries(gone), gone === 1 ? "points" : "point", gone === 1 ? "is" : "are")
      : "",
  ];
  return hasChanged(name, parts.filter(Boolean).join("; "));
}

function entries(count) {
  return count === 1 ? ONE_RECORD_OF_YOURS : recordsOfYours(count);
}

/** The lists of what moved, and of what points to nothing any more. */
export async function movedScreen(state) {
  const followed = (await read("kept", KEPT)) ?? {};
  const parts = [];
  for (const { id, name } of ranges()) {
    const ready = await readyRange(id);
    const moves = ready ? state.engine.moved(ready, pointing(id)) : [];
    const gone = moves.filter((move) => move.gone > 0).map((move) => record(move.id));
    const changed = (followed[id] ?? []).map(record).filter((kept) => kept && kept.trashed === "");
    if (gone.length + changed.length > 0)
      parts.push(ofRange(state, { name, ready, gone, changed }));
  }
  return el(
    "section",
    { class: "shelf" },
    heading(1, CHANGED_NUMBERS),
    parts.length === 0 ? [emptyPicture("number"), el("p", {}, EVERYTHING_POINTS_RIGHT)] : parts,
  );
}

function ofRange(state, { name, ready, gone, changed }) {
  const link = (piece) =>
    button(
      [
        el("strong", {}, title(packsAtHand, piece)),
        el("span", { class: "quiet" }, variantText(packsAtHand, piece) ?? ""),
      ],
      () => goTo(piece.type, { id: piece.id }),
      { class: "hit" },
    );
  return el(
    "section",
    {},
    heading(2, changedNumbersIn(name)),
    gone.length === 0
      ? null
      : [
          el("p", {}, POINT_TO_NOTHING),
          el(
            "ul",
            { class: "found", "aria-label": NO_LONGER_IN_THE_RANGE },
            gone.map((piece) =>
              el(
                "li",
                {},
                link(piece),
                button(CHOOSE_AGAIN, () => chooseAnew(state, ready, piece), {
                  class: "plain wide",
                  "aria-label": chooseAgain(title(packsAtHand, piece)),
                }),
              ),
            ),
          ),
        ],
    changed.length === 0
      ? null
      : [
          el("p", {}, WERE_GIVEN_NEW_NUMBERS),
          el(
            "ul",
            { class: "found", "aria-label": MOVED },
            changed.map((piece) => el("li", {}, link(piece))),
          ),
        ],
  );
}

/** Looks for an item, then takes a variant of it. */
function chooseAnew(state, ready, lost) {
  const below = el("ul", { class: "found", "aria-label": FOUND });
  const entry = (label, act) =>
    el("li", {}, button(el("strong", {}, label), act, { class: "hit" }));
  const control = el("input", {
    id: "anew",
    type: "search",
    autocomplete: "off",
    oninput: () => {
      const text = control.value.trim();
      const hits = text === "" ? [] : state.engine.find(ready, text, MOST);
      below.replaceChildren(
        ...hits.map(({ item }) => entry(itemName(ready.pack, item), () => variants(item))),
      );
    },
  });
  const variants = (item) => {
    const take = (places) => () => {
      shut();
      run(() => taken(ready.pack, lost, item, places));
    };
    const of = variantsOf(ready.pack, item);
    below.replaceChildren(
      entry(SOME_VARIANT_OF_IT, take(of)),
      ...of.map((place) => entry(small(variantName(ready.pack, place)), take([place]))),
    );
    below.querySelector("button").focus();
  };
  const shut = sheet(
    CHOOSE_AGAIN,
    el("div", { class: "field" }, el("label", { for: "anew" }, NUMBER_OR_NAME), control),
    below,
  );
}

async function taken(pack, { id, type }, place, places) {
  const item = pack.items[place].number;
  const single = places.length === 1 ? pack.variants[places[0]].id : "";
  const of = places.map((variant) => ({
    variant: pack.variants[variant].id,
    chance: 1 / places.length,
    ...(type === "piece" ? {} : { item }),
  }));
  const now = { item, variant: single, of: type === "piece" && single === "" ? [] : of };
  const alter = (before) => before && renamed(before, now);
  if (await saveChange(CHOSEN_AGAIN, [{ id, alter }], { said: IT_POINTS_TO_THIS_NOW }))
    await redraw();
}
