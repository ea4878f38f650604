/** The rows of a range of one's own that a list makes (`meaning` in list-meant.js). */
import { record } from "../data/records.js";
import { kindIn, rowsFor, variantsIn } from "./describing.js";
import { OF_ITS_OWN } from "./list-meant.js";
import { newFeature, newItem, newSource, newState, newVariant, rowsOf } from "./own-range.js";

const TRUST = 0.8; // of a source that only a list names: a guess, no source

/** The item of the range that has this number. */
export function itemThere(range, { number }) {
  return rowsOf(range, "range_item").find((item) => number !== "" && item.number === number);
}

/** Whether a variant of the list is written down already. */
export function isThere(there, variant, of) {
  if (!there) return false;
  const mine = variantsIn(there);
  const name = variant.name.toLowerCase();
  return of.variants.length === 1 && name === ""
    ? mine.length > 0
    : mine.some((row) => row.name.toLowerCase() === name);
}

/**
 * {rows, edits}: what is new, and what changes. `columns` and `headings` say what features of their
 * own are called; `kind`: the key of the kind of those of which nothing is said.
 */
export function rowsOfList(range, { items, held, headings, kind }) {
  const made = [];
  const edits = [];
  const put = (rows) => made.push(...rows);
  const kinds = kindsFor(range, held, put);
  const sources = sourcesFor(range, put);
  const looks = looksFor(range, { held, headings, made, edits, put });
  for (const item of items) {
    const there = itemThere(range, item);
    const of = (there && record(there.kind)) || kinds(item.kind || kind);
    const seen = (pairs) => Object.fromEntries(pairs.map((pair) => looks(pair, of)));
    const source = sources(item.source);
    const own =
      there ??
      newItem(range, {
        number: item.number,
        name: item.name,
        kind: of.id,
        years: item.years,
        source,
        note: item.note,
        carried: item.carried,
        seen: seen(item.seen),
      });
    if (!there) put([own]);
    for (const variant of item.variants) {
      if (isThere(there, variant, item)) continue;
      const all = there ? [...item.seen, ...variant.seen] : variant.seen;
      // what all rows of a number say stands at the item: of one that is there, at its variant
      const said = (field) =>
        variant[field] || (there && there[field] !== item[field] ? item[field] : "");
      const years = said("years");
      put([
        newVariant(own, {
          name: variant.name,
          years,
          note: said("note"),
          source: years ? source : "",
          seen: seen(all),
        }),
      ]);
    }
  }
  return { rows: made, edits };
}

/** The kind of a key, made where the range has none of it. */
function kindsFor(range, held, put) {
  const known = new Map();
  return (key) => {
    if (known.has(key)) return known.get(key);
    const shelf = held.kinds.find(({ id }) => id === key) ?? held.kinds[0];
    const { kind, rows } = kindIn(range, shelf);
    put(rows);
    known.set(key, kind);
    return kind;
  };
}

/** The id of the source of this name, made where it is new; "" for none. */
function sourcesFor(range, put) {
  const known = new Map(
    rowsOf(range, "range_source").map(({ what, id }) => [what.toLowerCase(), id]),
  );
  return (what) => {
    const name = what.toLowerCase();
    if (what === "") return "";
    if (!known.has(name)) {
      const source = newSource(range, { what, trust: TRUST });
      put([source]);
      known.set(name, source.id);
    }
    return known.get(name);
  };
}

/** [field, ids of states] of what is seen, with the rows that it needs. */
function looksFor(range, { held, headings, made, edits, put }) {
  const known = new Map(); // by the key of the feature: {own, stateIds}
  const feature = (key) => {
    if (known.has(key)) return known.get(key);
    let look;
    if (key.startsWith(OF_ITS_OWN)) {
      const own = newFeature(range, { name: headings[Number(key.slice(OF_ITS_OWN.length))] });
      put([own]);
      look = { own, stateIds: new Map() };
    } else {
      const asked = held.features.find((each) => each.key === key);
      const { rows, own, stateIds } = rowsFor(range, asked, made);
      put(rows);
      look = { own, stateIds };
    }
    known.set(key, look);
    return look;
  };
  const state = ({ own, stateIds }, id) => {
    if (id === "?") return id;
    if (!stateIds.has(id)) {
      const fresh = newState(own, { name: id.replace(/^new /, "") });
      put([fresh]);
      stateIds.set(id, fresh.id);
    }
    return stateIds.get(id);
  };
  return ([key, ids], kind) => {
    const look = feature(key);
    const { own } = look;
    if (!record(own.id)) {
      const all = own.kinds.length === 0 && own.kit;
      if (!all && !own.kinds.includes(kind.id)) own.kinds.push(kind.id);
    } else if (own.kinds.length > 0 && !own.kinds.includes(kind.id)) {
      const alter = (now) => ({ ...now, kinds: [...new Set([...now.kinds, kind.id])] });
      edits.push({ id: own.id, alter });
    }
    return [own.id, ids.map((id) => state(look, id))];
  };
}
