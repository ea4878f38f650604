/**
 * What each sort of record holds when it is new; identify/core/types/records.py says what each
 * field means.
 */
const SHAPES = {
  piece: {
    pack: "",
    item: "",
    called: "",
    of: [],
    answers: [],
    condition: "",
    boxed: "",
    box_condition: "",
    missing: [],
    replaced: [],
    paid: null,
    where: "",
    when: "",
    photos: [],
    notes: "",
    kept: false,
    purpose: "",
    asking: null,
  },
  want: {
    pack: "",
    item: "",
    variant: "",
    least: "",
    box: "",
    most: null,
    urgency: 2,
    notes: "",
  },
  note: {
    pack: "",
    of: [],
    answers: [],
    condition: "",
    boxed: "",
    hall: "",
    table: "",
    asked: null,
    offer: null,
    come_back: "",
    decision: "open",
    photos: [],
    text: "",
    piece: "",
  },
  sighting: {
    pack: "",
    version: "",
    kind: "",
    item: "",
    called: "",
    unrecorded: false,
    of: [],
    answers: [],
    years: "",
    text: "",
    photos: [],
  },
  budget: { day: "", amount: null },
};

/** A new record of a type with these fields. */
export function blank(type, fields) {
  return { id: newId("r"), type, trashed: "", ...structuredClone(SHAPES[type]), ...fields };
}

/** A letter and sixteen random letters and digits. */
export function newId(letter) {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return letter + Array.from(bytes, (byte) => (byte % 36).toString(36)).join("");
}

function shapeOf(type) {
  return Object.hasOwn(SHAPES, type) ? SHAPES[type] : undefined;
}

/**
 * The record so that the app can work with it: a field that is missing, or holds another sort of
 * value than it should, is as in a new one; a field that was taken away is not there.
 */
export function fitting(record) {
  const shape = shapeOf(record.type) ?? {};
  const fits = ([name, value]) =>
    Object.hasOwn(shape, name)
      ? alike(value, shape[name]) && (value !== null || shape[name] === null)
      : value !== null;
  const found = Object.fromEntries(Object.entries(record).filter(fits));
  return { ...structuredClone(shape), ...found };
}

/** Can the app work with this record? Fields that it does not know are welcome. */
export function sound(record) {
  const shape = shapeOf(record?.type);
  return (
    shape !== undefined &&
    /^r\w+$/.test(record.id) &&
    isTime(record.made) &&
    isTime(record.changed) &&
    (record.trashed === "" || isTime(record.trashed)) &&
    Object.entries(shape).every(([name, usual]) => alike(record[name], usual))
  );
}

function alike(value, usual) {
  if (value === undefined) return true;
  if (usual === null) return value === null || isMoney(value);
  if (Array.isArray(usual)) return Array.isArray(value) && value.every(isEntry);
  return typeof value === typeof usual;
}

function isEntry(entry) {
  if (typeof entry === "string") return true;
  if (typeof entry?.variant === "string") return Number.isFinite(entry.chance);
  return typeof entry?.feature === "string" && Array.isArray(entry.states);
}

function isMoney(value) {
  return Number.isInteger(value.minor) && /^[A-Z]{3}$/.test(value.currency);
}

export function isTime(text) {
  return typeof text === "string" && !Number.isNaN(Date.parse(text));
}

/** Are two values of a record the same, whatever the order of their keys? */
export function same(one, other) {
  if (one === other) return true;
  if (typeof one !== "object" || typeof other !== "object" || !one || !other) return false;
  const keys = Object.keys(one);
  return (
    Array.isArray(one) === Array.isArray(other) &&
    keys.length === Object.keys(other).length &&
    keys.every((key) => key in other && same(one[key], other[key]))
  );
}
