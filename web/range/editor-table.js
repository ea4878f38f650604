/** A table of a pack in a wide window: a cell for each field, arrow keys between the rows. */
import { button, el } from "../parts/element.js";
import { control, entryName } from "./editor-fields.js";

const SLICE = 40;
const PLAIN = ["text", "id", "years", "number"];

/** {nodes, told: shows what is wrong in the cells}; `open` goes to the form of an entry. */
export function wideTable(draft, table, entries, open) {
  const fields = draft.model.fields[table];
  const body = el("tbody", {});
  const more = button("Show more", () => slice(), { class: "plain wide" });
  const cells = new Map(); // "key field" -> the control and where its mistakes are shown
  let shown = 0;
  function slice() {
    body.append(...entries.slice(shown, shown + SLICE).map(row));
    shown = Math.min(shown + SLICE, entries.length);
    more.hidden = shown >= entries.length;
    told();
  }
  function told() {
    for (const { made, box } of cells.values()) {
      box.replaceChildren();
      made.removeAttribute("aria-invalid");
    }
    for (const one of draft.mistakes.filter((mistake) => mistake.table === table)) {
      const found = cells.get(`${one.key} ${one.column}`);
      found?.box.append(el("p", { class: "wrong" }, one.text));
      found?.made.setAttribute("aria-invalid", "true");
    }
  }
  function row(entry) {
    const [name] = entryName(draft, table, entry);
    return el(
      "tr",
      {},
      el(
        "td",
        {},
        button("Open", () => open(entry.key), { class: "plain", "aria-label": `Open ${name}` }),
      ),
      fields.map((field) => el("td", {}, ...cell(entry, field, name))),
    );
  }
  function cell(entry, field, name) {
    const [key, label, sort] = field;
    const kind = PLAIN.includes(sort)
      ? "text"
      : sort === "long" || sort.startsWith("cell")
        ? "text"
        : sort;
    const fixed = sort === "id" && table === "sources" && !entry.added;
    const box = el("div", { id: `cell-${entry.key}-${key}` });
    const save = (value) => draft.set(table, entry.key, key, value, true);
    const props = {
      "aria-label": `${label}: ${name}`,
      "aria-describedby": box.id,
      readonly: fixed,
    };
    const made = control(draft, entry, [key, label, kind], save, props, save);
    cells.set(`${entry.key} ${key}`, { made, box });
    return [made, box];
  }
  body.addEventListener("keydown", (event) => {
    const step = { ArrowUp: -1, ArrowDown: 1, Enter: event.shiftKey ? -1 : 1 }[event.key];
    const from = event.target.closest("td");
    if (
      !step ||
      !from ||
      event.target.matches("button") ||
      (event.target.matches("select") && event.key !== "Enter")
    )
      return;
    event.preventDefault();
    const at = [...from.parentElement.children].indexOf(from);
    const to =
      step < 0 ? from.parentElement.previousElementSibling : from.parentElement.nextElementSibling;
    if (!to && step > 0 && !more.hidden) slice();
    const next = to ?? (step > 0 ? from.parentElement.nextElementSibling : null);
    next?.children[at].firstElementChild.focus();
  });
  slice();
  const nodes = [
    el(
      "p",
      { class: "quiet" },
      "Arrow up and down, or Enter, go from row to row; Tab goes from cell to cell.",
    ),
    el(
      "div",
      { class: "editor-scroll", role: "region", "aria-label": "Table", tabindex: "0" },
      el(
        "table",
        {},
        el(
          "thead",
          {},
          el(
            "tr",
            {},
            el("td", {}),
            fields.map(([, label]) => el("th", { scope: "col" }, label)),
          ),
        ),
        body,
      ),
    ),
    more,
  ];
  return { nodes, told };
}
