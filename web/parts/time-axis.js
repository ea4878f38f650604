/** An axis of years, and what stands on it. */
import { svg } from "./element.js";

/** Where a year begins on the axis, in percent of its width; ends are kept within the range. */
export function at({ first, last }, year) {
  const share = (Math.min(Math.max(year, first), last + 1) - first) / (last + 1 - first);
  return Math.round(share * 10000) / 100;
}

/** A line across a row of the axis, at so many percent of its width. */
export function rule(x, name) {
  return svg("line", { x1: `${x}%`, x2: `${x}%`, y1: "0", y2: "100%", class: name });
}

/** The decades within a span of years. */
export function decades({ first, last }) {
  const years = [];
  for (let year = Math.ceil(first / 10) * 10; year <= last; year += 10) years.push(year);
  return years;
}

/** The years at the top; the ends are said, the decades between them where there is room. */
export function axis(range) {
  return svg(
    "svg",
    { class: "time-axis", "aria-hidden": "true", focusable: "false" },
    decades(range).map((year) => {
      const x = at(range, year);
      return [
        rule(x, "time-decade"),
        svg(
          "text",
          {
            x: `${x}%`,
            dx: x > 85 ? "-0.2em" : "0.2em",
            y: "1.05em",
            "text-anchor": x > 85 ? "end" : "start",
          },
          String(year),
        ),
      ];
    }),
  );
}
