/** What is said of a range of one's own as a whole, and its deletion. */
import { run } from "../data/queue.js";
import { all, trashing } from "../data/records.js";
import { dateField } from "../parts/date-field.js";
import { button, el } from "../parts/element.js";
import { choice, longField, textField } from "../parts/fields.js";
import { goTo } from "../parts/navigation.js";
import { saveChange, saver } from "../parts/saving.js";
import { sheet } from "../parts/sheet.js";
import { handOnFolder } from "./folder-file.js";
import { POINTING } from "./own-range.js";
import {
  ABOUT_IT,
  ABOUT_THE_RANGE,
  belongToIt,
  CAN_BE_PUT_BACK,
  COUNTRY,
  DELETE_IT,
  DELETE_THIS_RANGE,
  EXAMPLE_OF_A_MATERIAL,
  EXAMPLE_OF_YEARS,
  GAUGE,
  MADE,
  MAKER,
  MATERIAL,
  NAME,
  NAME_OF_THE_RANGE,
  NOT_SAID,
  NOTHING_OF_YOURS,
  RANGE_DELETED,
  rangeIsInTheBin,
  recordCount,
  SCALE,
  SHARE_AS_A_FOLDER,
  TRACK_NOT_SAVED,
  WHAT_THE_BODIES_ARE_MADE_OF,
  WHAT_THE_COUNTRY_DOES,
  WHAT_THE_FOLDER_IS,
  whetherToDelete,
  WHO_MADE_IT,
  WHO_WROTE_IT_DOWN,
  WHOSE_NAME,
  WIDTH_OF_THE_TRACK_IN_MM,
  YEARS,
} from "./words.js";

// those with date marks of their own in fixtures/marks
const COUNTRIES = [
  "AT",
  "AU",
  "BE",
  "CA",
  "CH",
  "CN",
  "CZ",
  "DE",
  "DK",
  "ES",
  "FI",
  "FR",
  "GB",
  "HK",
  "HR",
  "HU",
  "IE",
  "IT",
  "JP",
  "KR",
  "LU",
  "MO",
  "NL",
  "NO",
  "NZ",
  "PL",
  "PT",
  "RS",
  "RU",
  "SE",
  "SI",
  "SK",
  "TW",
  "US",
];

/** The fields of the range itself. */
export function aboutIt(range) {
  const save = (field, what) => saver(range.id, field, what);
  return el(
    "details",
    { class: "filters" },
    el("summary", {}, ABOUT_THE_RANGE),
    textField(NAME_OF_THE_RANGE, range.name, save("name", NAME)),
    textField(WHO_MADE_IT, range.maker, save("maker", MAKER)),
    textField(WHO_WROTE_IT_DOWN, range.by, save("by", WHO_WROTE_IT_DOWN), {
      hint: WHOSE_NAME,
    }),
    textField(SCALE, range.scale, save("scale", SCALE)),
    gaugeField(range, save("gauge", GAUGE)),
    textField(WHAT_THE_BODIES_ARE_MADE_OF, range.material, save("material", MATERIAL), {
      hint: EXAMPLE_OF_A_MATERIAL,
    }),
    choice(
      COUNTRY,
      countries(range.country),
      range.country,
      save("country", COUNTRY),
      WHAT_THE_COUNTRY_DOES,
    ),
    longField(ABOUT_IT, range.about, save("about", ABOUT_IT)),
    dateField(MADE, range.years, save("years", YEARS), {
      hint: EXAMPLE_OF_YEARS,
    }),
    button(SHARE_AS_A_FOLDER, () => run(() => handOnFolder(range)), {
      class: "plain wide",
    }),
    el("p", { class: "quiet" }, WHAT_THE_FOLDER_IS),
    button(DELETE_THIS_RANGE, () => away(range), { class: "plain wide" }),
  );
}

/** The width of the track in millimetres. */
function gaugeField(range, keep) {
  const shown = range.gauge === null ? "" : String(range.gauge);
  const check = (text) => {
    const number = Number(text.replace(",", ".").replace(/\s*mm$/, ""));
    if (!(number > 0 && number <= 1000) && text !== "") return TRACK_NOT_SAVED;
    return keep(text === "" ? null : number);
  };
  return textField(WIDTH_OF_THE_TRACK_IN_MM, shown, check, { inputmode: "decimal" });
}

/** The countries by their names, the one that is said first if the browser knows no name of it. */
function countries(now) {
  const names = new Intl.DisplayNames(["en-GB"], { type: "region" });
  const known = COUNTRIES.includes(now) || now === "" ? COUNTRIES : [...COUNTRIES, now];
  const named = known.map((code) => [code, names.of(code)]);
  return [["", NOT_SAID], ...named.sort(([, a], [, b]) => (a < b ? -1 : 1))];
}

/** Deletes the range, once it is told what stays. */
function away(range) {
  const count = POINTING.flatMap(all).filter(({ pack }) => pack === range.key).length;
  const held = count === 1 ? "1 record" : recordCount(count);
  const done = async () => {
    const kept = await saveChange(RANGE_DELETED, [trashing(range.id)], {
      said: rangeIsInTheBin(range.name),
    });
    if (kept) goTo("ranges", {}, { instead: true, keepNotice: true });
  };
  const shut = sheet(
    whetherToDelete(range.name),
    el(
      "p",
      {},
      count === 0 ? NOTHING_OF_YOURS : belongToIt(held, count === 1 ? "belongs" : "belong"),
    ),
    el("p", {}, CAN_BE_PUT_BACK),
    button(
      DELETE_IT,
      () => {
        shut();
        run(done);
      },
      { class: "main wide" },
    ),
  );
}
