import { all, record } from "../data/records.js";
import { button, el, heading } from "../parts/element.js";
import { moneyText, totalText } from "../parts/money.js";
import { itemPlace, stateText, title, variantText } from "../parts/naming.js";
import { dayText, today } from "../parts/when.js";
import { duplicateGroups } from "../screens/duplicates.js";
import { sortedWants } from "../screens/wants.js";

const SHEETS = {
  wants: { name: "Wants", make: wantsSheet },
  duplicates: { name: "Duplicates", make: duplicatesSheet },
  insurance: { name: "List for the insurer", make: insuranceSheet },
};

/** A list as it goes on paper; what is a control here is not printed. */
export async function printScreen(app, keep, { what }) {
  const { name, make } = SHEETS[what];
  const { head, rows, foot } = await make(app, keep);
  return el(
    "section",
    { class: "shelf sheet-of-paper" },
    heading(1, name),
    el("p", { class: "quiet" }, `${dayText(today())}. ${foot}`),
    el("div", { class: "row" }, button("Print", () => window.print(), { class: "main" })),
    el(
      "table",
      { class: "paper", role: "table", "aria-label": name },
      el("thead", {}, el("tr", {}, head.map((text) => el("th", { scope: "col" }, text)))),
      el(
        "tbody",
        { role: "rowgroup" },
        rows.map((cells) => el("tr", { role: "row" }, cells.map((text, place) => cell(head[place], text)))),
      ),
    ),
  );
}

/** A cell; on a narrow screen, where the cells stand below one another, it says what it is. */
function cell(name, text) {
  return el("td", { role: "cell", "data-name": name }, text);
}

function wantsSheet(app, keep) {
  const wants = sortedWants(keep);
  const urgent = wants.filter(({ urgency }) => urgency === 3).length;
  return {
    head: ["Item", "Variant", "Least", "Box", "Most", "Urgent"],
    rows: wants.map((want) => [
      title(keep.packs, want),
      variantText(keep.packs, want),
      want.least,
      want.box,
      moneyText(app.engine, want.most),
      { 3: "yes", 1: "no hurry" }[want.urgency] ?? "",
    ]),
    foot: `${wants.length} wants${urgent > 0 ? `, ${urgent} urgent` : ""}.`,
  };
}

async function duplicatesSheet(app, keep) {
  const groups = await duplicateGroups(app, keep);
  const pieces = groups.flatMap(({ part_with: ids }) => ids.map(record));
  const asking = pieces.map((piece) => piece.asking).filter(Boolean);
  return {
    head: ["Item", "Variant", "Condition and box", "Asking"],
    rows: pieces.map((piece) => [
      title(keep.packs, piece),
      variantText(keep.packs, piece),
      stateText(piece),
      moneyText(app.engine, piece.asking),
    ]),
    foot: `${pieces.length} pieces.${asking.length > 0 ? ` Together ${totalText(app.engine, asking)}.` : ""}`,
  };
}

function insuranceSheet(app, keep) {
  const place = (piece) => itemPlace(keep.packs.get(piece.pack), piece.item);
  const pieces = all("piece").sort(
    (a, b) => (a.pack < b.pack ? -1 : a.pack > b.pack ? 1 : 0) || place(a) - place(b),
  );
  const paid = pieces.map((piece) => piece.paid).filter(Boolean);
  return {
    head: ["Item", "Variant", "Condition and box", "Bought", "Paid"],
    rows: pieces.map((piece) => [
      title(keep.packs, piece),
      variantText(keep.packs, piece),
      stateText(piece),
      [dayText(piece.when), piece.where].filter(Boolean).join(", "),
      moneyText(app.engine, piece.paid),
    ]),
    foot: `${pieces.length} pieces. Paid ${totalText(app.engine, paid) || "nothing noted"} for ${paid.length} of them. What was paid is not what they are worth today.`,
  };
}
