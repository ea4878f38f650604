/** The sentences about a design number, a patent number or a barcode. No DOM here. */

const NAMES = { design: "Registered design", patent: "Patent", barcode: "Barcode" };

/** What is to be said of a number that `read_number` has read; "" for nothing typed. */
export function numberSaid(
  what,
  { problem, figures, meant, kind, number, first, last, memory, near },
) {
  const name = NAMES[what];
  if (problem === "empty") return "";
  if (problem === "letters") {
    return (
      `“${figures.slice(0, 40)}” is not figures only. Look again for I read for 1, O for 0 ` +
      `and S for 5.${meant === "" ? "" : ` It may be ${meant}.`}`
    );
  }
  if (problem === "long")
    return `${name}: ${figures.length} figures are too many, there are at most 8.`;
  if (problem === "count") {
    return (
      `A barcode has 8, 12 or 13 figures, this has ${figures.length}. Type also the small ` +
      "ones at its ends."
    );
  }
  if (problem === "check") {
    return (
      `Not right: by the other figures the last one should be ${near[0]}. Read it again, ` +
      "figure by figure."
    );
  }
  if (problem === "year") {
    return (
      `British patents were numbered by the year from ${near[0]} to ${near[1]}, not in ` +
      `${first}.`
    );
  }
  if (problem === "unused") {
    return (
      `${name} ${number} was never given: the series ended before ` +
      `${near[0]}${near[1] > 0 ? ` and went on at ${near[1]}` : ""}. Read it again.`
    );
  }
  if (problem === "low" && what === "patent") {
    return (
      `Below ${near[0]} a patent number says no year by itself: before ${near[1]} they ` +
      `began again at 1 each year. Add the year, as in ${number}/09.`
    );
  }
  if (problem === "low") return `${name}s begin at ${near[0]}.`;
  const source = memory ? " From memory." : "";
  if (what === "barcode") {
    return (
      `${kind}: such bars have been printed since ${first}. They say nothing of a later ` +
      `year.${source}`
    );
  }
  const later = `the piece is of ${first} or later.${source}`;
  if (kind === "application") return `Application ${number} of ${first}: ${later}`;
  const done = what === "patent" ? "published" : "registered";
  let when = `in ${first}`;
  if (last === 0) when += " or later";
  else if (last !== first) when = `between ${first} and ${last}`;
  return `${name} ${number}: ${done} ${when}; ${later}`;
}
