/** What each sort of record holds when it is new: `identify/core/shapes.py` says it. */
import { loadedEngine } from "./engine.js";

const DEEPEST = 100;
const shapes = new Map();

/** The fields of a new record of a type, as a map; none of a type that is not known. */
function shapeOf(type) {
  if (!shapes.has(type)) shapes.set(type, loadedEngine().new_fields(type));
  return shapes.get(type);
}

function fresh(type) {
  return structuredClone(Object.fromEntries(shapeOf(type)));
}

/** A new record of a type with these fields. */
export function blank(type, fields) {
  return { id: newId("r"), type, trashed: "", ...fresh(type), ...fields };
}

/** A letter and sixteen random letters and digits. */
export function newId(letter) {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return letter + Array.from(bytes, (byte) => (byte % 36).toString(36)).join("");
}

/**
 * The record so that the app can work with it: a field that is missing, or holds another sort of
 * value than it should, is as in a new one; a field that was taken away is not there.
 */
export function fitting(record) {
  const wrong = loadedEngine().misfits(record.type, record);
  const fits = ([name, value]) => value !== null && !wrong.includes(name);
  return { ...fresh(record.type), ...Object.fromEntries(Object.entries(record).filter(fits)) };
}

/** A value without halves of characters: they are no Unicode text, and no server takes them. */
export function unhalved(value, deep = 0) {
  if (typeof value === "string") return value.replace(/\p{Surrogate}/gu, "\ufffd");
  if (!value || typeof value !== "object") return value ?? null;
  const next = (inner) => unhalved(inner, deep + 1);
  if (deep > DEEPEST) return value;
  if (Array.isArray(value)) return value.map(next);
  if (Object.getPrototypeOf(value) !== Object.prototype) return value;
  return Object.fromEntries(Object.entries(value).map((pair) => pair.map(next)));
}

/** A record that fits, with all the fields that its type has. */
export function whole(record) {
  const has = ([name, usual]) =>
    (record[name] ?? null) !== null || (usual === null && name in record);
  const trashed = record.trashed ?? "";
  if (trashed === record.trashed && (record.gone || shapeOf(record.type).every(has))) return record;
  return { ...(record.gone ? record : fitting(record)), trashed };
}

/** Are two values of a record the same, whatever the order of their keys? */
export function same(a, b) {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || !a || !b) return false;
  const keys = Object.keys(a);
  return (
    Array.isArray(a) === Array.isArray(b) &&
    keys.length === Object.keys(b).length &&
    keys.every((key) => key in b && same(a[key], b[key]))
  );
}
