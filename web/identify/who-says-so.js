/** Who says so: the sources of a year, how far each is to be trusted, and where they differ. */
import { seenYears } from "../data/work-ahead.js";
import { dateText } from "../parts/days.js";
import { button, el, heading } from "../parts/element.js";
import { itemName, small, variantName } from "../parts/say.js";
import { seenWords } from "./claim-words.js";
import { sheet } from "../parts/sheet.js";

/** @import { Pack, SeenYears, Session } from "../data/engine-types.d.ts" */

const TRUST = [
  [0.8, "well trusted"],
  [0.6, "fairly trusted"],
  [0.4, "not fully trusted"],
  [0, "doubtful"],
];

/** How far a source is to be believed, in words. */
function trustWords(trust) {
  return TRUST.find(([least]) => trust >= least)[1];
}

/** Each source with what it says, as list entries: `said` is [[source, years]]. */
function saidBy(pack, said, before = "") {
  if (said.length === 0) return [el("li", {}, `${before}no source is given.`)];
  return said.map(([place, years]) => {
    const source = pack.sources[place];
    const when = years === "" ? "since the range began" : dateText(years);
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
    differ(said) ? el("p", { class: "differ" }, "The sources differ:") : null,
    el("ul", { class: "plain-list" }, saidBy(pack, said)),
  ];
}

/** Who says when an item was made. */
function whoOfItem(pack, place) {
  const { said, years } = pack.items[place];
  return [
    heading(3, `${itemName(pack, place)}, all variants`),
    el("p", {}, dateText(years)),
    differ(said) ? el("p", { class: "differ" }, "The sources differ:") : null,
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
  const seen = `Seen: ${seenWords(pack, session, entry)}.`;
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
          differ(change.said) ? "The sources differ:" : null,
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
      : ` (on ${change.items.map((place) => pack.items[place].number).join(", ")})`;
  if (change.hard) return bounds(change);
  const from = change.from === "" ? "since the range began" : `from ${dateText(change.from)}`;
  return change.to === "" ? from + only : `${from}, up to ${dateText(change.to)}${only}`;
}

/** The years of a date mark, as hard as its ends are: "not before 1971, hardly after 1984". */
function bounds({ from, to, hard: [first, last] }) {
  const ends = [
    from === "" ? "" : `${first ? "not" : "hardly"} before ${dateText(from)}`,
    to === "" ? "" : `${last ? "not" : "hardly"} after ${dateText(to)}`,
  ].filter(Boolean);
  return ends.length > 0 ? ends.join(", ") : "in all years";
}

/** A feature that no running change speaks of goes by the years of the variants that have it. */
function byVariants(pack, { variants }) {
  const places = [...new Set(variants)];
  if (places.length === 0) return el("p", {}, "No recorded variant has it.");
  return [
    el("p", {}, "From the years of the variants that have it. The first and last are:"),
    places.map((place) => whoOfVariant(pack, place)),
  ];
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
    "Who says so?",
    back ? button(back[0], back[1], { class: "plain" }) : null,
    variants.length === 0
      ? el("p", {}, "No recorded variant fits what you saw.")
      : [
          variants.map((place) => whoOfVariant(pack, place)),
          items.map((place) => whoOfItem(pack, place)),
        ],
    seen.map((entry) => [
      heading(3, `What you saw: ${small(pack.features[entry.feature].name)}`),
      whoOfFeature(pack, session, entry),
    ]),
  );
}

/** The link to it. */
export function whoLink(act, of = "") {
  const props = of === "" ? {} : { "aria-label": `Who says so? ${of}` };
  return button("Who says so?", act, { class: "link", ...props });
}
