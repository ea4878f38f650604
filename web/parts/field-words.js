/** Fields of records and what they hold, in words. */
import { moneyText } from "./money.js";
import { variantLabel, variantPlace } from "./piece-names.js";
import { dateText } from "./days.js";

const WORDS = {
  of: "Variant",
  paid: "Price paid",
  most: "Most to pay",
  asked: "Price asked",
  asking: "What to ask for it",
  least: "Condition wanted",
  when: "When it was bought",
  where: "Where it was bought",
  kept: "Keep both",
  come_back: "Come back",
  item: "Number",
};

/** A field's name in words. */
export function fieldName(name) {
  const words = Object.hasOwn(WORDS, name) ? WORDS[name] : name.replace(/_/g, " ");
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

/** A value in words. `pack`: of the record, where it is known; photos are given as how many. */
export function valueText(state, value, pack) {
  if (value === undefined || value === null || value === "") return "nothing";
  if (value === true || value === false) return value ? "yes" : "no";
  if (value.currency) return moneyText(state.engine, value);
  if (Array.isArray(value)) {
    if (value.length === 0) return "none";
    return value.map((entry) => entryText(entry, pack)).join(", ");
  }
  if (typeof value === "object") return JSON.stringify(value);
  return /^\d{4}(-\d\d){0,2}~?$/.test(value) ? dateText(value) : String(value);
}

function entryText(entry, pack) {
  const place = pack && entry?.variant ? variantPlace(pack, entry.variant) : -1;
  return place < 0 ? (entry?.variant ?? entry?.feature ?? entry) : variantLabel(pack, place);
}
