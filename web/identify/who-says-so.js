/** Who says so: the sources of a year, how far each is to be trusted, and where they differ. */
import { seenYears } from "../data/work-ahead.js";
import { dateText } from "../parts/days.js";
import { button, el, heading } from "../parts/element.js";
import { itemName, small, variantName } from "../parts/say.js";
import { seenWords } from "./claim-words.js";
import { sheet } from "../parts/sheet.js";
import {
  afterDay,
  allVariants,
  beforeDay,
  FIRST_AND_LAST_ARE,
  fromDay,
  HOW_TRUSTED,
  IN_ALL_YEARS,
  NO_RECORDED_VARIANT_HAS_IT,
  NO_VARIANT_FITS,
  noSourceIsGiven,
  onItems,
  seenAs,
  SINCE_THE_RANGE_BEGAN,
  THE_SOURCES_DIFFER,
  upToDay,
  whatYouSaw,
  WHO_SAYS_SO,
  whoSaysSoOf,
} from "./words.js";

/** @import { Pack, SeenYears, Session } from "../data/engine-types.d.ts" */

/** How far a source is to be believed, in words. */
function trustWords(trust) {
  return HOW_TRUSTED.find(([least]) => trust >= least)[1];
}

/** Each source with what it says, as list entries: `said` is [[source, years]]. */
function saidBy(pack, said, before = "") {
  if (said.length === 0) return [el("li", {}, noSourceIsGiven(before))];
  return said.map(([place, years]) => {
    const source = pack.sources[place];
    const when = years === "" ? SINCE_THE_RANGE_BEGAN : dateText(years);
    return el("li", {}, `${before}${source.what} (${trustWords(source.trust)}): ${when}`);
  });
}

function differ(said) {
  return new Set(said.map(([, years]) => years)).size > 1;
}

/** Who says when a variant was made, under its name. */
function whoOfVariant(pack, place) {
  return [heading(3, variantName(pack, place)), saysOfVariant(pack, place)];
}

/**
 * The same without its name.
 * @param {Pack} pack
 * @param {number} place
 */
export function saysOfVariant(pack, place) {
  const variant = pack.variants[place];
  const said = variant.said.length > 0 ? variant.said : pack.items[variant.item].said;
  return [
    differ(said) ? el("p", { class: "differ" }, THE_SOURCES_DIFFER) : null,
    el("ul", { class: "plain-list" }, saidBy(pack, said)),
  ];
}

/** Who says when an item was made. */
function whoOfItem(pack, place) {
  const { said, years } = pack.items[place];
  return [
    heading(3, allVariants(itemName(pack, place))),
    el("p", {}, dateText(years)),
    differ(said) ? el("p", { class: "differ" }, THE_SOURCES_DIFFER) : null,
    said.length === 0 ? null : el("ul", { class: "plain-list" }, saidBy(pack, said)),
  ];
}

/**
 * Who says when the states of a feature were in use: `entry` as in the engine's `seen_years`.
 * @param {Pack} pack
 * @param {Session} session
 * @param {SeenYears} entry
 */
export function whoOfFeature(pack, session, entry) {
  const feature = pack.features[entry.feature];
  const seen = seenAs(seenWords(pack, session, entry));
  if (entry.changes.length === 0) return [el("p", {}, seen), byVariants(pack, entry)];
  return [
    el("p", {}, seen),
    el(
      "ul",
      { class: "plain-list" },
      entry.changes.map((place) => {
        const change = pack.changes[place];
        const name = feature.states[change.state].name;
        return el(
          "li",
          {},
          el("strong", {}, `${name}: ${fitted(pack, change)}. `),
          change.note === "" ? null : `${change.note} `,
          differ(change.said) ? THE_SOURCES_DIFFER : null,
          el(
            "ul",
            { class: "plain-list" },
            change.said.length === 0 && change.said_to?.length > 0 ? [] : saidBy(pack, change.said),
            change.said_to?.length > 0 ? saidBy(pack, change.said_to, "until: ") : [],
          ),
        );
      }),
    ),
  ];
}

function fitted(pack, change) {
  const only =
    change.items.length === 0
      ? ""
      : onItems(change.items.map((place) => pack.items[place].number).join(", "));
  if (change.hard) return bounds(change);
  const from = change.from === "" ? SINCE_THE_RANGE_BEGAN : fromDay(dateText(change.from));
  return change.to === "" ? from + only : upToDay(from, dateText(change.to), only);
}

/** The years of a date mark, as hard as its ends are: "not before 1971, hardly after 1984". */
function bounds({ from, to, hard: [first, last] }) {
  const ends = [
    from === "" ? "" : beforeDay(first ? "not" : "hardly", dateText(from)),
    to === "" ? "" : afterDay(last ? "not" : "hardly", dateText(to)),
  ].filter(Boolean);
  return ends.length > 0 ? ends.join(", ") : IN_ALL_YEARS;
}

/** A feature that no running change speaks of goes by the years of the variants that have it. */
function byVariants(pack, { variants }) {
  const places = [...new Set(variants)];
  if (places.length === 0) return el("p", {}, NO_RECORDED_VARIANT_HAS_IT);
  return [el("p", {}, FIRST_AND_LAST_ARE), places.map((place) => whoOfVariant(pack, place))];
}

/**
 * Opens the sheet with who says so for these variants and for everything that was seen.
 * `back`: [label, act] of the sheet to go back to, or null.
 */
export function openWho(state, { session }, variants, back = null) {
  const { pack } = state;
  const seen = seenYears(state, session);
  const items = [...new Set(variants.map((place) => pack.variants[place].item))];
  sheet(
    WHO_SAYS_SO,
    back ? button(back[0], back[1], { class: "plain" }) : null,
    variants.length === 0
      ? el("p", {}, NO_VARIANT_FITS)
      : [
          variants.map((place) => whoOfVariant(pack, place)),
          items.map((place) => whoOfItem(pack, place)),
        ],
    seen.map((entry) => [
      heading(3, whatYouSaw(small(pack.features[entry.feature].name))),
      whoOfFeature(pack, session, entry),
    ]),
  );
}

/** The link to it. */
export function whoLink(act, of = "") {
  const props = of === "" ? {} : { "aria-label": whoSaysSoOf(of) };
  return button(WHO_SAYS_SO, act, { class: "link", ...props });
}
