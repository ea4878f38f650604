const sort_of_value = (value) => {
  if (value === null || value === undefined) return "nothing";
  const sort = typeof value;
  if (sort === "string") return "text";
  if (sort === "boolean") return "flag";
  if (sort === "number") return Number.isFinite(value) ? "number" : "else";
  if (Array.isArray(value)) return "list";
  if (sort !== "object") return "else";
  const kind = Object.getPrototypeOf(value);
  return kind === null || kind === Object.prototype ? "group" : "else";
};
const names_of = (group) => Object.keys(group);
const value_at = (group, name) => (Object.hasOwn(group, name) ? group[name] : null);
const weight_of = (text) => {
  let weight = 0;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code < 0x80) weight += 1;
    else if (code < 0x800) weight += 2;
    else if (code < 0xd800 || code > 0xdfff) weight += 3;
    else {
      const next = text.charCodeAt(at + 1);
      if (code > 0xdbff || !(next >= 0xdc00 && next <= 0xdfff)) return -1;
      weight += 4;
      at += 1;
    }
  }
  return weight;
};
const is_whole = (number) => Number.isSafeInteger(number);
const is_true = (value) => value === true;
const number_in = (text) => (/^[0-9]{1,15}(\.[0-9]{1,20})?$/.test(text) ? Number(text) : null);
const json_text = (value) =>
  JSON.stringify(value ?? null, (_, one) =>
    one && typeof one === "object" && !Array.isArray(one)
      ? Object.fromEntries(Object.entries(one).sort(([a], [b]) => (a < b ? -1 : 1)))
      : one,
  );
const json_without = (group, names) =>
  json_text(Object.fromEntries(Object.entries(group).filter(([name]) => !names.includes(name))));
const in_plain_signs = (text) =>
  text.replace(/[^ -~]/g, (half) => `\\u${half.charCodeAt(0).toString(16).padStart(4, "0")}`);
const first_halves = (text, count) => text.slice(0, count).replace(/\p{Cs}/gu, "");
const power_of_e = (x) => Math.exp(x);
const root_of = (x) => Math.sqrt(x);
const unaccented = (text) =>
  text
    .replaceAll("ß", "ss")
    .normalize("NFKD")
    .replace(/\p{Mn}/gu, "");
const value_in_json = (text) => {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
};
const in_order = (values, key) => {
  const keys = values.map((value) => key(value));
  const places = values.map((_, place) => place);
  places.sort((a, b) => (keys[a] < keys[b] ? -1 : keys[a] > keys[b] ? 1 : 0));
  return places.map((place) => values[place]);
};
