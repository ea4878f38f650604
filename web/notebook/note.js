import { making, record } from "../data/records.js";
import { blank } from "../data/record-shapes.js";
import { chance } from "../parts/chance.js";
import { button, el, heading } from "../parts/element.js";
import { longField, textField } from "../parts/fields.js";
import { moneyField } from "../parts/money.js";
import { itemPlace, title, variantPlace } from "../parts/piece-names.js";
import { photoBox } from "../parts/photobox.js";
import { portrait } from "../parts/portrait.js";
import { priceBox } from "../parts/price-limit.js";
import { recordFigure } from "../parts/record-picture.js";
import { variantName } from "../parts/say.js";
import { unsettledLine } from "../parts/unsettled.js";
import { today } from "../parts/days.js";
import { conditionFields, discard, gone } from "../collection/piece.js";
import { packsAtHand, readyRange } from "../data/known-ranges.js";
import { saveChange, saver } from "../parts/saving.js";
import { run } from "../data/queue.js";
import { goTo, redraw } from "../parts/navigation.js";

/** One note: what was seen at a stall, what it costs, and what becomes of it. */
export async function noteScreen(state, { id }) {
  const note = record(id);
  if (!note || note.trashed !== "") return gone();
  await readyRange(note.pack);
  const save = (field, what) => saver(id, field, what);
  return el(
    "section",
    { class: "shelf" },
    el(
      "p",
      { class: "kicker" },
      { open: "Note", bought: "Bought", left: "Left" }[note.decision] ?? "Note",
    ),
    heading(1, title(packsAtHand, note)),
    recordFigure(note),
    await unsettledLine(id),
    candidates(note),
    photoBox(id),
    moneyField(state, "Price asked", note.asked, save("asked", "Price asked")),
    moneyField(state, "My offer", note.offer, save("offer", "Offer")),
    textField("Hall", note.hall, save("hall", "Hall")),
    textField("Table", note.table, save("table", "Table")),
    textField("Come back at", note.come_back, save("come_back", "Come back at"), {
      hint: "As you like: 14:30, or after lunch.",
    }),
    longField("Note", note.text, save("text", "Note")),
    conditionFields(state, note, save),
    await priceBox(state, note),
    decide(note),
    el(
      "div",
      { class: "stack" },
      button("What was changed", () => goTo("changes", { id }), { class: "plain wide" }),
      button("Move to the trash", () => discard(id, "The note"), { class: "plain wide" }),
    ),
  );
}

function candidates(note) {
  const pack = packsAtHand.get(note.pack);
  const known = note.of.filter((one) => variantPlace(pack, one.variant) >= 0).slice(0, 4);
  if (known.length === 0) return null;
  return el(
    "ul",
    { class: "alike" },
    known.map((one) =>
      el(
        "li",
        {},
        portrait(pack, variantPlace(pack, one.variant), { size: 80 }),
        el("span", {}, variantName(pack, variantPlace(pack, one.variant))),
        chance(one.chance),
      ),
    ),
  );
}

function decide(note) {
  const to = (decision, said) =>
    run(async () => {
      const edit = { id: note.id, alter: (now) => ({ ...now, decision }) };
      if (await saveChange("Decision", [edit], { said })) await redraw();
    });
  if (note.decision === "bought" && record(note.piece)?.trashed === "")
    return button("Open it in the collection", () => goTo("piece", { id: note.piece }), {
      class: "main wide",
    });
  return el(
    "div",
    { class: "stack" },
    button("Bought: into the collection", () => bought(note.id), { class: "main wide" }),
    note.decision === "open"
      ? button("Left it: cross it off", () => to("left", "Crossed off."), { class: "plain wide" })
      : button("Still to decide", () => to("open", "Back among those to decide."), {
          class: "plain wide",
        }),
  );
}

/** Makes a piece of the collection of a note, in one change with the note's decision. */
function bought(id) {
  return run(async () => {
    const note = record(id);
    const piece = blank("piece", pieceOf(note, packsAtHand.get(note.pack)));
    const decided = { id, alter: (now) => ({ ...now, decision: "bought", piece: piece.id }) };
    const said = "It is in the collection.";
    if (await saveChange("Bought", [making(piece), decided], { said }))
      goTo("piece", { id: piece.id }, { told: true });
  });
}

function pieceOf(note, pack) {
  const item = note.of[0]?.item ?? "";
  const of = note.of.filter((one) => one.item === item);
  const whole = of.reduce((sum, one) => sum + one.chance, 0);
  return {
    pack: note.pack,
    item,
    called: itemPlace(pack, item) < 0 ? note.text.split("\n")[0].slice(0, 80) : "",
    of: of.map(({ variant, chance: value }) => ({ variant, chance: value / whole })),
    answers: note.answers,
    condition: note.condition ?? "",
    boxed: note.boxed ?? "",
    paid: note.offer ?? note.asked,
    where: [note.hall, note.table && `table ${note.table}`].filter(Boolean).join(", "),
    when: today(),
    photos: note.photos,
    notes: note.text,
    session: note.session ?? "",
  };
}
