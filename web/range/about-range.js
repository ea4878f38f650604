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
const MARKS = "What is printed on pieces for this country then helps to date them.";

/** The fields of the range itself. */
export function aboutIt(range) {
  const save = (field, what) => saver(range.id, field, what);
  return el(
    "details",
    { class: "filters" },
    el("summary", {}, "About the range"),
    textField("Name of the range", range.name, save("name", "Name")),
    textField("Who made it", range.maker, save("maker", "Maker")),
    textField("Who wrote it down", range.by, save("by", "Who wrote it down"), {
      hint: "Your name, for those whom you share it with.",
    }),
    textField("Scale", range.scale, save("scale", "Scale")),
    gaugeField(range, save("gauge", "Gauge")),
    textField("What the bodies are made of", range.material, save("material", "Material"), {
      hint: "For example: tinplate. Leave it empty where it differs.",
    }),
    choice("Country", countries(range.country), range.country, save("country", "Country"), MARKS),
    longField("About it", range.about, save("about", "About it")),
    dateField("Made", range.years, save("years", "Years"), {
      hint: "For example: 1950 to 1965. Leave it empty where you do not know.",
    }),
    button("Share it as a folder of files", () => run(() => handOnFolder(range)), {
      class: "plain wide",
    }),
    el(
      "p",
      { class: "quiet" },
      "A zip with tables and drawings that other programs can read. It can be imported again " +
        "under Ranges.",
    ),
    el(
      "p",
      { class: "quiet" },
      "To let others follow it: share it as a file under Ranges, put that where anybody can " +
        "fetch it over https, and give them the address. Put each newer edition in its place.",
    ),
    button("Delete this range", () => away(range), { class: "plain wide" }),
  );
}

/** The width of the track in millimetres. */
function gaugeField(range, keep) {
  const shown = range.gauge === null ? "" : String(range.gauge);
  const check = (text) => {
    const number = Number(text.replace(",", ".").replace(/\s*mm$/, ""));
    if (!(number > 0 && number <= 1000) && text !== "")
      return "Not saved. Write the width of the track in millimetres, for example: 16.5.";
    return keep(text === "" ? null : number);
  };
  return textField("Width of the track in mm", shown, check, { inputmode: "decimal" });
}

/** The countries by their names, the one that is said first if the browser knows no name of it. */
function countries(now) {
  const names = new Intl.DisplayNames(["en-GB"], { type: "region" });
  const known = COUNTRIES.includes(now) || now === "" ? COUNTRIES : [...COUNTRIES, now];
  const named = known.map((code) => [code, names.of(code)]);
  return [["", "Not said"], ...named.sort(([, one], [, other]) => (one < other ? -1 : 1))];
}

/** Deletes the range, once it is told what stays. */
function away(range) {
  const count = POINTING.flatMap(all).filter(({ pack }) => pack === range.key).length;
  const held = count === 1 ? "1 record" : `${count} records`;
  const done = async () => {
    const kept = await saveChange("Range deleted", [trashing(range.id)], {
      said: `${range.name} is in the bin, with all that is written down in it.`,
    });
    if (kept) goTo("ranges", {}, { instead: true, told: true });
  };
  const shut = sheet(
    `Delete ${range.name}?`,
    el(
      "p",
      {},
      count === 0
        ? "Nothing in your collection belongs to it."
        : `${held} of your collection, wants and notebook ` +
            `${count === 1 ? "belongs" : "belong"} to it. ` +
            "They stay, with their numbers, but the app can no longer say what they are.",
    ),
    el("p", {}, "It goes to the bin, and can be put back from there."),
    button(
      "Delete it",
      () => {
        shut();
        run(done);
      },
      { class: "main wide" },
    ),
  );
}
