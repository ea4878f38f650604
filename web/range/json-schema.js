import { THE_WHOLE_FILE } from "./words.js";

/** Does a value fit a JSON Schema? As much of it as the schema of a compiled pack uses. */
const TYPES = {
  object: (value) => typeof value === "object" && value !== null && !Array.isArray(value),
  array: Array.isArray,
  string: (value) => typeof value === "string",
  number: Number.isFinite,
  integer: Number.isInteger,
  boolean: (value) => typeof value === "boolean",
};

/** "" when it fits, else where it does not, such as "items 3, kind". */
export function fits(schema, value) {
  return fit(schema, schema, value, []);
}

function fit(root, schema, value, at) {
  if (schema.$ref)
    return fit(
      root,
      schema.$ref
        .slice(2)
        .split("/")
        .reduce((part, name) => part[name], root),
      value,
      at,
    );
  const plain =
    (!schema.type || TYPES[schema.type](value)) &&
    (!schema.enum || schema.enum.includes(value)) &&
    !(value < schema.minimum || value > schema.maximum || value <= schema.exclusiveMinimum) &&
    !(value.length < schema.minItems || value.length > schema.maxItems);
  if (!plain) return at.join(", ") || THE_WHOLE_FILE;
  if (schema.type === "object") return fitObject(root, schema, value, at);
  if (schema.type === "array") return fitArray(root, schema, value, at);
  return "";
}

function fitObject(
  root,
  { properties = {}, required = [], additionalProperties: others = true },
  value,
  at,
) {
  for (const name of required) if (!Object.hasOwn(value, name)) return [...at, name].join(", ");
  for (const [name, part] of Object.entries(value)) {
    const schema = Object.hasOwn(properties, name) ? properties[name] : others;
    if (schema === false) return [...at, name].join(", ");
    const wrong = schema === true ? "" : fit(root, schema, part, [...at, name]);
    if (wrong !== "") return wrong;
  }
  return "";
}

function fitArray(root, { items = true, prefixItems = [] }, value, at) {
  for (const [place, part] of value.entries()) {
    const schema = prefixItems[place] ?? items;
    const last =
      at.length === 0
        ? [String(place + 1)]
        : [...at.slice(0, -1), `${at[at.length - 1]} ${place + 1}`];
    const wrong = typeof schema === "boolean" ? "" : fit(root, schema, part, last);
    if (wrong !== "") return wrong;
  }
  return "";
}
