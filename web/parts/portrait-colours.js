/** The colours of portraits. No DOM here. */

const COLOURS = {
  green: "#2f6b3c",
  blue: "#2a5ca8",
  black: "#34383c",
  maroon: "#6d1f2c",
  red: "#cc3430",
  brown: "#7a5230",
  grey: "#8b9296",
  cream: "#f0e4c2",
  yellow: "#ecc233",
  silver: "#c9d0d5",
  white: "#f7f7f5",
  orange: "#df7b26",
  gold: "#c9a13b",
  purple: "#6d4b90",
  pink: "#e09bb2",
  turquoise: "#35a0a2",
  bare: "#d6d3ca",
  coloured: "#c2b08e",
};

/** A colour word or #rrggbb as #rrggbb; "" for what is none. */
export function hex(look) {
  return COLOURS[look] ?? (/^#[0-9a-f]{6}$/i.test(look) ? look : "");
}

/** How light a colour is, from 0 to 1 (relative luminance without its gamma, near enough). */
function lightness(colour) {
  const [red, green, blue] = [1, 3, 5].map(
    (at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255,
  );
  return 0.3 * red + 0.59 * green + 0.11 * blue;
}

/** Does dark stand out from it? */
export function isLight(colour) {
  return colour === "" || lightness(colour) > 0.5;
}

/** A colour that stands out from another. */
export function against(colour) {
  return isLight(colour) ? "#1b1d1f" : "#f7edcf";
}

/** What a body is filled with: its colour, or a blend of all that it can be with hard edges. */
export function filling(looks) {
  const colours = looks
    .map(hex)
    .filter((colour) => colour !== "")
    .slice(0, 3);
  if (colours.length < 2) return { fill: colours[0] ?? "none", first: colours[0] ?? "", defs: "" };
  const id = `mix${colours.join("").replaceAll("#", "-")}`;
  const stops = colours
    .flatMap((colour, n) =>
      [n, n + 1].map(
        (edge) => `<stop offset="${(edge / colours.length).toFixed(2)}" stop-color="${colour}"/>`,
      ),
    )
    .join("");
  return {
    fill: `url(#${id})`,
    first: colours[0],
    defs: `<defs><linearGradient id="${id}" x2="1" y2=".3">${stops}</linearGradient></defs>`,
  };
}
