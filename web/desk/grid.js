/**
 * A wide table for a mouse and a keyboard: sorted by its column heads, rows selected one, several
 * or
 * from here to there, drawn a slice at a time. One stop for the Tab key: arrows move within.
 */
import { here, remember } from "../data/back-button.js";
import { button, el } from "../parts/element.js";
import { announce } from "../parts/status.js";
import {
  IN_THE_USUAL_ORDER,
  moreCount,
  selectedCount,
  sortedBy,
  THE_HIGHEST_FIRST,
  THE_LOWEST_FIRST,
} from "./words.js";

const SLICE = 60;
const PAGE = 15;
const collator = new Intl.Collator("en", { numeric: true, sensitivity: "base" });

/** What stays of a table when its screen is drawn anew: its order and what is selected. */
export function newState() {
  return { by: "", down: false, selected: new Set(), at: "", from: "" };
}

/**
 * The table. `label`: its name; `columns`: [{id, name, cell(record) -> text or node, key(record) ->
 * a number, a text or "" (last), wide}]; `records` in their own order; `standing`: of newState;
 * `act`: open(record), changed() after the selection did. `drawn`: how many rows to begin with.
 */
export function grid({ label, columns, records, standing, act, drawn = SLICE }) {
  const body = el("tbody", {});
  const sentinel = el("p", { class: "quiet", "aria-hidden": "true" });
  let order = sorted(columns, records, standing);
  let count = 0;
  const place = new Map();
  const heads = columns.map((column) => head(column));
  const table = el(
    "table",
    {
      class: "grid",
      role: "grid",
      "aria-label": label,
      "aria-multiselectable": "true",
      "aria-rowcount": records.length + 1,
      "aria-describedby": "grid-hint",
      onkeydown: keyed,
      onclick: clicked,
      ondblclick: (event) => {
        const row = rowOf(event);
        if (row) open(row.dataset.id);
      },
      onmousedown: (event) => {
        if (event.shiftKey && rowOf(event)) event.preventDefault(); // it would mark the text
      },
    },
    el("thead", {}, el("tr", { "aria-rowindex": 1 }, el("td", { class: "tick-cell" }), heads)),
    body,
  );
  const known = new Set(records.map(({ id }) => id));
  for (const id of standing.selected) if (!known.has(id)) standing.selected.delete(id);
  indexed();
  draw(Math.max(drawn, SLICE));
  refocus();
  new IntersectionObserver(
    (seen) => {
      if (seen.some((mark) => mark.isIntersecting) && sentinel.isConnected) draw(count + SLICE);
    },
    { rootMargin: "900px" },
  ).observe(sentinel);
  return [table, sentinel];

  function head(column) {
    const node = el(
      "th",
      { scope: "col", class: column.wide ? "wide-cell" : null },
      button(column.name, () => sortBy(column), { tabindex: "-1", class: "head" }),
    );
    node.dataset.column = column.id;
    return node;
  }

  function marked() {
    for (const node of heads) {
      if (node.dataset.column !== standing.by) node.removeAttribute("aria-sort");
      else node.setAttribute("aria-sort", standing.down ? "descending" : "ascending");
    }
  }

  function sortBy(column) {
    if (standing.by === column.id && standing.down)
      Object.assign(standing, { by: "", down: false });
    else Object.assign(standing, { by: column.id, down: standing.by === column.id });
    order = sorted(columns, records, standing);
    indexed();
    body.replaceChildren();
    count = 0;
    draw(SLICE);
    const how = standing.down ? THE_HIGHEST_FIRST : THE_LOWEST_FIRST;
    announce(standing.by === "" ? IN_THE_USUAL_ORDER : sortedBy(column.name.toLowerCase(), how));
  }

  function indexed() {
    place.clear();
    order.forEach(({ id }, n) => place.set(id, n));
    if (!place.has(standing.at)) standing.at = order[0]?.id ?? "";
    marked();
  }

  function draw(until) {
    const some = order.slice(count, until);
    body.append(...some.map((record, n) => rowFor(record, count + n)));
    count += some.length;
    table.dataset.drawn = count;
    sentinel.textContent = count < order.length ? moreCount(order.length - count) : "";
    sentinel.hidden = count >= order.length;
  }

  function rowFor(record, n) {
    const row = el(
      "tr",
      {
        tabindex: record.id === standing.at ? "0" : "-1",
        "aria-selected": String(standing.selected.has(record.id)),
        "aria-rowindex": n + 2,
      },
      el("td", { class: "tick-cell" }, el("span", { class: "grid-tick", "aria-hidden": "true" })),
      columns.map(({ cell, wide }) => el("td", { class: wide ? "wide-cell" : null }, cell(record))),
    );
    row.dataset.id = record.id;
    return row;
  }

  function rowNode(id) {
    const n = place.get(id);
    if (n === undefined) return undefined;
    if (n >= count) draw(n + SLICE);
    return body.children[n];
  }

  function open(id) {
    remember({ drawn: count, row: id });
    standing.at = id;
    act.open(order[place.get(id)]);
  }

  function moveTo(id, { extend = false } = {}) {
    const before = body.querySelector('[tabindex="0"]');
    before?.setAttribute("tabindex", "-1");
    standing.at = id;
    const row = rowNode(id);
    row?.setAttribute("tabindex", "0");
    row?.focus();
    row?.scrollIntoView({ block: "nearest" });
    if (extend) select(between(standing.from || id, id));
    else standing.from = id;
  }

  function between(first, last) {
    const [from, to] = [place.get(first) ?? 0, place.get(last) ?? 0].sort((a, b) => a - b);
    return order.slice(from, to + 1).map(({ id }) => id);
  }

  /** Selects these and no others. */
  function select(ids) {
    const now = new Set(ids);
    const touched = [...new Set([...standing.selected, ...now])];
    standing.selected.clear();
    for (const id of now) standing.selected.add(id);
    shown(touched);
  }

  function toggle(id) {
    if (!standing.selected.delete(id)) standing.selected.add(id);
    standing.from = id;
    shown([id]);
  }

  function shown(ids) {
    for (const id of ids) {
      const n = place.get(id);
      if (n < count)
        body.children[n].setAttribute("aria-selected", String(standing.selected.has(id)));
    }
    announce(selectedCount(standing.selected.size));
    act.changed();
  }

  function clicked(event) {
    const row = rowOf(event);
    if (!row) return;
    const { id } = row.dataset;
    if (event.target.closest("button")) {
      open(id);
      return;
    }
    const from = standing.from || id;
    moveTo(id);
    if (event.shiftKey) {
      standing.from = from;
      select(between(from, id));
    } else if (event.ctrlKey || event.metaKey || event.target.closest(".tick-cell")) toggle(id);
    else select([id]);
  }

  function keyed(event) {
    const inHead = event.target.closest("thead");
    if (inHead) headKey(event);
    else if (event.target.matches("tr")) rowKey(event);
  }

  function rowKey(event) {
    const { key, shiftKey, ctrlKey, metaKey, altKey } = event;
    const n = place.get(standing.at) ?? 0;
    const last = order.length - 1;
    const steps = {
      ArrowDown: n + 1,
      ArrowUp: n - 1,
      PageDown: n + PAGE,
      PageUp: n - PAGE,
      Home: 0,
      End: last,
    };
    if (altKey) return;
    // Keys for what is selected mean the row in focus where nothing is; keys.js does the rest.
    const alone = standing.selected.size === 0 && !ctrlKey && !metaKey && singleKeys();
    if (alone && /^(delete|e)$/i.test(key)) select([standing.at]);
    if (key === "ArrowUp" && n === 0 && !shiftKey) heads[0]?.querySelector("button").focus();
    else if (key in steps) {
      const to = Math.min(last, Math.max(0, steps[key]));
      moveTo(order[to].id, { extend: shiftKey });
    } else if (key === " ") toggle(standing.at);
    else if (key === "Enter") open(standing.at);
    else if (key === "Escape" && standing.selected.size > 0) select([]);
    else if (key.toLowerCase() === "a" && (ctrlKey || metaKey)) select(order.map(({ id }) => id));
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  function headKey(event) {
    const buttons = heads.map((node) => node.querySelector("button"));
    const n = buttons.indexOf(event.target);
    if (event.key === "ArrowRight") buttons[Math.min(n + 1, buttons.length - 1)].focus();
    else if (event.key === "ArrowLeft") buttons[Math.max(n - 1, 0)].focus();
    else if (event.key === "ArrowDown" && order.length > 0) moveTo(order[0].id);
    else return;
    event.preventDefault();
  }

  /** Gives the focus back to a row that had it before its screen was drawn anew, or was opened. */
  function refocus() {
    const { row, drawn: before } = here();
    const returned = row && before;
    const lost = document.activeElement?.closest(".grid tbody, .grid-bar") !== null;
    if (!returned && !(lost && document.activeElement !== document.body)) return;
    if (returned) {
      standing.at = place.has(row) ? row : standing.at;
      remember({ row: "" });
    }
    requestAnimationFrame(() => {
      if (!table.isConnected || standing.at === "") return;
      body.querySelector('[tabindex="0"]')?.setAttribute("tabindex", "-1");
      const node = rowNode(standing.at);
      node.setAttribute("tabindex", "0");
      node.focus({ preventScroll: Boolean(returned) });
    });
  }
}

function singleKeys() {
  return document.documentElement.dataset.keys !== "off";
}

function rowOf(event) {
  return event.target.closest("tbody tr");
}

function sorted(columns, records, { by, down }) {
  const column = columns.find(({ id }) => id === by);
  if (!column) return [...records];
  const keyed = records.map((record, n) => ({ record, n, key: column.key(record) }));
  const sign = down ? -1 : 1;
  keyed.sort((a, b) => {
    if ((a.key === "") !== (b.key === "")) return a.key === "" ? 1 : -1;
    const difference = typeof a.key === "number" ? a.key - b.key : collator.compare(a.key, b.key);
    return sign * difference || a.n - b.n;
  });
  return keyed.map(({ record }) => record);
}
