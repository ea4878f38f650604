/** Files of records, made on this device: identify/core/exporting says what is in them. */
import { packsAtHand, readPacks } from "../data/known-ranges.js";
import { dateText, today } from "../parts/days.js";
import { turns } from "../data/turns.js";
import { zipped } from "../parts/zip.js";
import { listRules } from "./list-rules.js";

const TYPES = {
  csv: "text/csv",
  xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  json: "application/json",
};

/** A file of records; `ending`: csv, xlsx or json. Throws NoList. */
export async function recordsFile(records, ending) {
  const rules = await listRules();
  const name = rules.records_file_name(ending, today());
  const made = await contents[ending](rules, records);
  return new File([made], name, { type: TYPES[ending] });
}

const contents = {
  json: (rules, records) => rules.records_json(records, new Date().toISOString()),
  csv: async (rules, records) => rules.records_csv(await tableOf(rules, records)),
  xlsx: async (rules, records) => {
    const parts = rules.records_workbook(await tableOf(rules, records));
    return zipped(parts.map(({ name, text }) => [name, new TextEncoder().encode(text)]));
  },
};

/** The table of records; of many the screen has its turn in between. */
async function tableOf(rules, records) {
  const naming = await namesAtHand(rules);
  const fields = rules.columns_for(records);
  const turn = turns();
  const cells = [];
  for (const record of records) {
    cells.push(rules.cells_of(record, fields, naming));
    // oxlint-disable-next-line no-await-in-loop -- one record after the other
    await turn();
  }
  return rules.table_of(fields, cells);
}

/** What the ranges call what is in the records. */
async function namesAtHand(rules) {
  await readPacks();
  return rules.naming_of([...packsAtHand.values()]);
}

/** A page of wants for a friend; `pictures`: SVG by the id of a want. Throws NoList. */
export async function wantsFile(wants, pictures) {
  const rules = await listRules();
  const drawn = Object.entries(pictures)
    .filter(([, svg]) => svg !== "")
    .map(([id, svg]) => [id, `data:image/svg+xml,${encodeURIComponent(svg)}`]);
  const naming = await namesAtHand(rules);
  const day = dateText(today());
  const page = rules.wants_page(wants, naming, "", day, Object.fromEntries(drawn));
  return new File([page], rules.wants_file_name(today()), { type: "text/html" });
}
