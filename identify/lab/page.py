"""The parts that a report is put together from: one self-contained HTML page, without a script."""

from collections.abc import Sequence
from html import escape

STYLE = """
:root { color-scheme: light dark; --paper: #fff; --ink: #16181c; --quiet: #4b5058; --line: #c9ccd1;
  --one: #0b4f9c; --two: #8a3b00; }
@media (prefers-color-scheme: dark) { :root { --paper: #14161a; --ink: #eceef1; --quiet: #b9bec6;
  --line: #444952; --one: #8cc0ff; --two: #ffb27a; } }
body { margin: 0 auto; max-width: 46rem; padding: 1rem; background: var(--paper); color: var(--ink);
  font: 1rem/1.5 system-ui, sans-serif; }
h1, h2, h3 { line-height: 1.25; }
h2 { margin-top: 2.5rem; }
.quiet, figcaption { color: var(--quiet); }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; min-width: 60%; }
caption { text-align: start; font-weight: 600; padding-block: .5rem; }
th, td { border-bottom: 1px solid var(--line); padding: .25rem .75rem .25rem 0; text-align: start;
  vertical-align: top; }
td.number, th.number { text-align: end; font-variant-numeric: tabular-nums; }
figure { margin: 1.5rem 0; }
svg { width: 100%; height: auto; }
svg text { fill: var(--ink); font: 12px system-ui, sans-serif; }
.grid { stroke: var(--line); stroke-width: 1; }
.ideal { stroke: var(--quiet); stroke-width: 1.5; stroke-dasharray: 3 4; }
.spread { stroke: var(--one); stroke-width: 1.5; }
.series0, .series1 { fill: none; stroke: var(--one); stroke-width: 2.5; }
.series1 { stroke: var(--two); stroke-dasharray: 7 4; }
.dot, .bar { fill: var(--one); }
@media print { body { max-width: none; } }
@media (forced-colors: active) { .dot, .bar { fill: CanvasText; } .series0, .series1, .grid, .spread
  { stroke: CanvasText; } }
"""


def page(title: str, body: Sequence[str]) -> str:
    """The whole page."""
    return (
        '<!doctype html>\n<html lang="en-GB">\n<head>\n<meta charset="utf-8">\n'
        f"<title>{escape(title)}</title>\n"
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<style>{STYLE}</style>\n</head>\n<body>\n<main>\n<h1>{escape(title)}</h1>\n"
        + "\n".join(body)
        + "\n</main>\n</body>\n</html>\n"
    )


def heading(text: str) -> str:
    """A heading of the second level."""
    return f"<h2>{escape(text)}</h2>"


def say(text: str, kind: str = "") -> str:
    """A paragraph."""
    return f'<p class="{kind}">{escape(text)}</p>' if kind else f"<p>{escape(text)}</p>"


def figure(picture: str, caption: str) -> str:
    """A plot with what it shows beneath it."""
    return f"<figure>{picture}<figcaption>{escape(caption)}</figcaption></figure>"


def table(caption: str, columns: Sequence[str], rows: Sequence[Sequence[str | float]]) -> str:
    """A table with a caption. Numbers stand at the right; the first column heads its row."""
    numbers = [bool(rows) and not isinstance(rows[0][n], str) for n in range(len(columns))]

    def cell(tag: str, n: int, text: str, scope: str = "") -> str:
        number = ' class="number"' if numbers[n] else ""
        return f"<{tag}{scope}{number}>{escape(text)}</{tag}>"

    head = "".join(cell("th", n, text, ' scope="col"') for n, text in enumerate(columns))
    body = []
    for row in rows:
        cells = [shown(value) for value in row]
        first = cell("th", 0, cells[0], ' scope="row"')
        rest = "".join(cell("td", n, text) for n, text in enumerate(cells) if n > 0)
        body.append(f"<tr>{first}{rest}</tr>")
    label = escape(caption)
    return (
        f'<div class="scroll" role="region" aria-label="{label}" tabindex="0"><table>'
        f"<caption>{label}</caption><thead><tr>{head}</tr></thead>"
        f"<tbody>{''.join(body)}</tbody></table></div>"
    )


def shown(value: str | float) -> str:
    """Whole numbers as they are, others with two decimals."""
    if isinstance(value, str):
        return value
    return str(value) if isinstance(value, int) else f"{value:.2f}"


def percent(share: float) -> str:
    """A share, to a tenth of a hundredth."""
    return f"{100 * share:.1f} %"
