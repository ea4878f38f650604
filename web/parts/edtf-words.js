/** Years as packs write them (EDTF) put into plain words. */
const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

const SEASONS = ["spring", "summer", "autumn", "winter"]; // EDTF: months 21 to 24

/** "1957~/1961" as "about 1957 to 1961"; what is not understood is shown as it stands. */
export function plainYears(text) {
  const parts = text.split("/");
  if (parts.length === 1) return one(text);
  if (parts.length > 2) return text;
  const [from, to] = parts;
  if (from === "" || from === "..") return `up to ${one(to)}`;
  if (to === "" || to === "..") return `from ${one(from)}`;
  return `${one(from)} to ${one(to)}`;
}

function one(text) {
  const found = /^(\d{2}[\dX]{2})(?:-(\d\d))?([~?%]?)$/.exec(text);
  if (!found) return text;
  const [, year, month, doubt] = found;
  const within = MONTHS[month - 1] ?? SEASONS[month - 21] ?? month;
  const plain = `${month ? `${within} ` : ""}${spelled(year)}`;
  if (doubt === "~") return `about ${plain}`;
  if (doubt === "?") return `${plain} (uncertain)`;
  return doubt === "%" ? `about ${plain} (uncertain)` : plain;
}

function spelled(year) {
  if (year.endsWith("XX")) return `the ${year.slice(0, 2)}00s`;
  return year.endsWith("X") ? `the ${year.slice(0, 3)}0s` : year;
}
