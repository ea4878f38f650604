/** Text of SVG: the few shapes that portraits are drawn with. No DOM here. */

// What XML has no place for
// oxlint-disable-next-line no-control-regex
const UNWRITABLE = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

const tidy = (number) => String(Math.round(number * 10) / 10);

/** An outlined path. */
export function path(d, fill, rest = "") {
  return `<path d="${d}" fill="${fill}"${rest}/>`;
}

/** An outlined rectangle. */
export function rect(x, y, width, height, fill, round = 0, rest = "") {
  const corner = round > 0 ? ` rx="${tidy(round)}"` : "";
  return (
    `<rect x="${tidy(x)}" y="${tidy(y)}" width="${tidy(width)}" ` +
    `height="${tidy(height)}"${corner} fill="${fill}"${rest}/>`
  );
}

/** An outlined circle. */
export function circle(x, y, radius, fill, rest = "") {
  return `<circle cx="${tidy(x)}" cy="${tidy(y)}" r="${tidy(radius)}" fill="${fill}"${rest}/>`;
}

/** A line. */
export function line(x1, y1, x2, y2, width = 0.7, colour = "", rest = "") {
  const stroke = colour === "" ? "" : ` stroke="${colour}"`;
  return (
    `<path d="M${tidy(x1)} ${tidy(y1)}L${tidy(x2)} ${tidy(y2)}"` +
    ` fill="none" stroke-width="${width}"${stroke}${rest}/>`
  );
}

/** Letters, in the middle of x, at most `most` wide. */
export function letters(text, x, y, size, most, colour, rest = "") {
  const wide = text.length * size * 0.6;
  const fit = wide > most ? ` textLength="${tidy(most)}" lengthAdjust="spacingAndGlyphs"` : "";
  const plain = text.toWellFormed().replace(UNWRITABLE, "");
  const safe = plain.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
  return (
    `<text x="${tidy(x)}" y="${tidy(y)}"` +
    ` font-size="${size}"${fit} fill="${colour}" stroke="none"` +
    ` text-anchor="middle" font-family="sans-serif"` +
    ` font-weight="700"${rest}>${safe}</text>`
  );
}

/** Without an outline. */
export const BARE = ' stroke="none"';
