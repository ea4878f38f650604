import { all, making, setting, trashing } from "../data/records.js";
import { blank } from "../data/record-shapes.js";
import { button, el, heading } from "../parts/element.js";
import { emptyPicture } from "../parts/empty-picture.js";
import { choice } from "../parts/fields.js";
import { entry, longListFrom } from "../parts/long-list.js";
import { moneyText } from "../parts/money.js";
import { moneyField } from "../parts/money-field.js";
import { title, variantText } from "../parts/piece-names.js";
import { recordPicture } from "../parts/record-picture.js";
import { today } from "../parts/days.js";
import { run } from "../data/queue.js";
import { saveChange } from "../parts/saving.js";
import { goTo } from "../parts/navigation.js";
import {
  byDay,
  clockText,
  dayOf,
  dayTitle,
  isEmpty,
  notes,
  offersText,
  openToday,
} from "./meet-day.js";
import { openSettling } from "./settle-day.js";
import { packsAtHand } from "../data/known-ranges.js";
import {
  aboveBudget,
  ALL_NOTES,
  askedSum,
  atTable,
  backAt,
  BETWEEN_SUMS,
  BOUGHT,
  LEFT,
  leftOfBudget,
  NEW_NOTE,
  NOTEBOOK,
  NOTES,
  notesOf,
  NOTHING_SPENT_TODAY,
  offerSum,
  SETTLE_THE_DAY,
  SHOW,
  spentToday,
  STILL_TO_DECIDE,
  TODAYS_BUDGET,
} from "./words.js";

const DECISIONS = { open: "", bought: "bought", left: "left" };
let shown = "open";

/** The notebook: today's budget, and what was left for later. */
export async function notebookScreen(state, at) {
  const kept = notes();
  const below = el("div", {});
  const draw = async (first) => {
    const some = byDay(kept.filter((note) => shown === "" || note.decision === shown));
    below.replaceChildren(
      el("p", { class: "quiet" }, notesOf(some.length, kept.length)),
      ...(await longListFrom(NOTES, some, (_, place) => withDay(state, some, place), first)),
    );
  };
  await draw(at.drawn);
  return el(
    "section",
    { class: "shelf" },
    heading(1, NOTEBOOK),
    kept.length === 0 ? emptyPicture("notebook") : null,
    budget(state),
    el(
      "div",
      { class: "row" },
      button(NEW_NOTE, () => newNote({}), { class: "main" }),
      openToday().length > 0
        ? button(SETTLE_THE_DAY, () => openSettling(state), { class: "plain" })
        : null,
    ),
    choice(
      SHOW,
      [
        ["open", STILL_TO_DECIDE],
        ["bought", BOUGHT],
        ["left", LEFT],
        ["", ALL_NOTES],
      ],
      shown,
      (value) => {
        shown = value;
        draw();
        return false;
      },
    ),
    below,
  );
}

/** A note; above the first of a day and a hall, which these are. */
function withDay(state, some, place) {
  const [before, note] = [some[place - 1], some[place]];
  const first = !before || dayTitle(before) !== dayTitle(note);
  return [first ? el("p", { class: "day" }, dayTitle(note)) : null, noteRow(state, note)].filter(
    Boolean,
  );
}

/** A note as an entry of a list. */
export function noteRow(state, note) {
  const { engine } = state;
  const place = [note.hall, note.table && atTable(note.table)].filter(Boolean).join(", ");
  const money = [
    note.asked ? askedSum(moneyText(engine, note.asked)) : "",
    note.offer ? offerSum(moneyText(engine, note.offer)) : "",
    note.come_back ? backAt(note.come_back) : "",
    DECISIONS[note.decision],
    clockText(note.made),
  ];
  return entry(
    [
      title(packsAtHand, note),
      [variantText(packsAtHand, note), place].filter(Boolean).join(" · "),
      money.filter(Boolean).join(" · "),
    ],
    () => goTo("note", { id: note.id }),
    recordPicture(note),
  );
}

/**
 * Makes a note that starts with these fields, and opens it unless told otherwise. The hall is the
 * one of the last note today. Gives whether it is kept.
 */
export function newNote(fields, photos = [], open = true) {
  return run(async () => {
    const last = all("note")
      .filter((note) => dayOf(note.made) === dayOf(Date.now()))
      .sort((a, b) => (a.made < b.made ? 1 : -1))[0];
    const note = blank("note", { hall: last?.hall ?? "", ...fields });
    const unused = all("note").filter(isEmpty);
    const edits = [making(note), ...unused.map(({ id }) => trashing(id))];
    const kept = await saveChange(NEW_NOTE, edits, { photos });
    if (kept && open) goTo("note", { id: note.id });
    return kept;
  });
}

/** What was paid today, what is left of today's budget, and what the open offers would take. */
function spentText({ engine }, budgeted, pieces) {
  const paid = pieces
    .filter((piece) => piece.when === today() && piece.paid)
    .map((piece) => piece.paid);
  const sums = engine.totals(paid);
  const spent =
    sums.length === 0
      ? NOTHING_SPENT_TODAY
      : spentToday(sums.map((sum) => moneyText(engine, sum)).join(BETWEEN_SUMS));
  const left = (amounts) => leftText(engine, budgeted, amounts);
  const offers = offersText(engine, (open) => left([...paid, ...open]));
  return [spent, left(paid), offers].filter(Boolean).join(" ");
}

/** What is left of a budget after these amounts, in a sentence; "" where there is no budget. */
function leftText(engine, budgeted, amounts) {
  if (!budgeted) return "";
  const sum = engine.totals(amounts).find(({ currency }) => currency === budgeted.currency);
  const left = {
    ...budgeted,
    minor: budgeted.minor - (sum?.minor ?? 0),
    over: (budgeted.over ?? 0) - (sum?.over ?? 0),
    typed: "",
  };
  const { order } = engine.compare_money(left, { ...left, minor: 0, over: 0 });
  if (order >= 0) return leftOfBudget(moneyText(engine, left));
  const above = { ...left, minor: -left.minor, over: -left.over };
  return aboveBudget(moneyText(engine, above));
}

/**
 * A day has one budget: made on two devices it is one record, and which amount is right is settled.
 */
function budget(state) {
  const day = today();
  const there = all("budget").find((set) => set.day === day);
  const text = (amount) => spentText(state, amount, all("piece"));
  const said = el("p", { class: "spent" }, text(there?.amount));
  const save = async (amount) => {
    let kept = false;
    await run(async () => {
      const now = all("budget").find((set) => set.day === day);
      const edit = now
        ? setting(now.id, "amount", now.amount, amount)
        : making(blank("budget", { id: `r${day.replaceAll("-", "")}`, day, amount }));
      kept = await saveChange(TODAYS_BUDGET, [edit]);
    });
    if (kept) said.textContent = text(amount);
    return kept;
  };
  return [moneyField(state, TODAYS_BUDGET, there?.amount, save), said];
}
