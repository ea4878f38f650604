/** What was bought: from a note into the collection, with what was paid in the end. */
import { packsAtHand, readyRange } from "../data/known-ranges.js";
import { run } from "../data/queue.js";
import { making, record } from "../data/records.js";
import { blank } from "../data/record-shapes.js";
import { today } from "../parts/days.js";
import { button, el } from "../parts/element.js";
import { moneyProblem } from "../parts/money.js";
import { moneyInput } from "../parts/money-field.js";
import { goTo } from "../parts/navigation.js";
import { itemPlace } from "../parts/piece-names.js";
import { saveChange } from "../parts/saving.js";
import { sheet } from "../parts/sheet.js";
import {
  ADD_TO_COLLECTION,
  atTable,
  BOUGHT,
  IT_IS_IN_YOUR_COLLECTION,
  PRICE_PAID,
  WHAT_DID_YOU_PAY,
} from "./words.js";

/** Asks what was paid, and puts the piece into the collection; `then`: in place of opening it. */
export function askPaid(state, id, then = open) {
  const note = record(id);
  const field = moneyInput(state, note.offer ?? note.asked);
  field.id = "paid";
  const wrong = el("p", { class: "wrong", role: "status" });
  const shut = sheet(
    WHAT_DID_YOU_PAY,
    el("label", { for: "paid" }, PRICE_PAID),
    field,
    wrong,
    button(
      ADD_TO_COLLECTION,
      () => {
        const { money, problem } = state.engine.read_money(field.value, state.settings.currency);
        if (problem !== "" && problem !== "empty") {
          wrong.textContent = moneyProblem(problem);
          return;
        }
        shut();
        bought(id, problem === "" ? money : null, then);
      },
      { class: "main wide" },
    ),
  );
}

function open(piece) {
  goTo("piece", { id: piece.id }, { keepNotice: true });
}

/** Makes a piece of the collection of a note, in one change with the note's decision. */
function bought(id, paid, then) {
  return run(async () => {
    const note = record(id);
    await readyRange(note.pack);
    const piece = blank("piece", { ...pieceOf(note, packsAtHand.get(note.pack)), paid });
    const decided = { id, alter: (now) => ({ ...now, decision: "bought", piece: piece.id }) };
    const said = IT_IS_IN_YOUR_COLLECTION;
    if (await saveChange(BOUGHT, [making(piece), decided], { said })) await then(piece);
  });
}

function pieceOf(note, pack) {
  const item = note.of[0]?.item ?? "";
  const of = note.of.filter((chance) => chance.item === item);
  const whole = of.reduce((sum, chance) => sum + chance.chance, 0);
  return {
    pack: note.pack,
    item,
    called: itemPlace(pack, item) < 0 ? note.text.split("\n")[0].slice(0, 80) : "",
    of: of.map(({ variant, chance: value }) => ({ variant, chance: value / whole })),
    answers: note.answers,
    condition: note.condition ?? "",
    boxed: note.boxed ?? "",
    where: [note.hall, note.table && atTable(note.table)].filter(Boolean).join(", "),
    when: today(),
    photos: note.photos,
    notes: note.text,
    session: note.session ?? "",
  };
}
