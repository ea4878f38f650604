import { CannotGoOn, numberTables } from "../data/packs.js";
import { el } from "../parts/element.js";
import { numberSaid } from "./number-words.js";
import { sheet } from "../parts/sheet.js";
import { notice } from "../parts/status.js";

const SORTS = [
  ["design", "British registered design", "After Rd., Regd. or Design, such as 821265."],
  ["patent", "British patent", "After Pat. or Patent, such as 654321 or 1234/09."],
  ["barcode", "Barcode", "All the figures under the bars."],
];

/** The sheet where a number on the piece gives its year at once. */
export function openDatedNumber(app, what = "design") {
  return app.run(async () => {
    try {
      openForm(app.engine, await numberTables(), what);
    } catch (error) {
      if (!(error instanceof CannotGoOn)) throw error;
      notice(error.message);
    }
  });
}

function openForm(engine, tables, what) {
  const hint = el("p", { id: "number-hint", class: "quiet" });
  const said = el("p", { role: "status" });
  const field = el("input", {
    id: "number",
    type: "text",
    autocomplete: "off",
    spellcheck: "false",
    enterkeyhint: "done",
    "aria-describedby": "number-hint",
    oninput: () => told(),
  });
  let sort;

  function told() {
    said.textContent = numberSaid(sort, engine.read_number(tables, sort, field.value));
  }

  function take(id) {
    sort = id;
    hint.textContent = SORTS.find(([one]) => one === id)[2];
    field.inputMode = id === "patent" ? "text" : "numeric";
    told();
  }

  take(what);
  sheet(
    "Date a number or barcode",
    el(
      "fieldset",
      { class: "tick-list" },
      el("legend", {}, "What is it?"),
      SORTS.map(([id, name]) =>
        el(
          "label",
          {},
          el("input", {
            type: "radio",
            name: "sort",
            checked: id === what,
            onchange: () => take(id),
          }),
          name,
        ),
      ),
    ),
    el("label", { for: "number" }, "Figures"),
    hint,
    field,
    said,
  );
}
