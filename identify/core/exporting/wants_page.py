"""A list of wants as one HTML file to send to a friend: no script, nothing fetched, for reading on
a screen, light or dark, and for printing.
"""

from collections.abc import Sequence

from ..edtf import padded
from ..holdings import shelfmark
from ..importing.brought_before import text_at
from ..importing.own_tables import shown_text
from ..importing.text_parts import joined_by, without_blanks
from ..native.values import sort_of_value, value_at
from ..types.exporting import Naming
from ..types.importing import Fields
from ..wants import want_words
from .naming import item_in_words, variant_in_words
from .workbook_parts import marked_up

STYLE = """
:root { color-scheme: light dark; --ink: #1a1a1a; --page: #fff; --line: #767676; --soft: #3d3d3d; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #f4f4f4; --page: #101010; --line: #8a8a8a; --soft: #d6d6d6; }
}
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1rem; max-width: 44rem; color: var(--ink); background: var(--page);
  font: 1.0625rem/1.5 system-ui, sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.5rem; line-height: 1.25; margin: 0 0 .5rem; }
h2 { font-size: 1.125rem; margin: 1.5rem 0 .25rem; }
p { margin: .25rem 0; }
ul { list-style: none; margin: 0; padding: 0; }
li { border-top: 1px solid var(--line); padding: .75rem 0; break-inside: avoid; }
img { float: inline-end; width: 7.5rem; margin-inline-start: .75rem; }
li::after { content: ""; display: block; clear: both; }
.number { font-weight: 700; }
.more { color: var(--soft); }
@media print {
  :root { --ink: #000; --page: #fff; --line: #000; --soft: #000; }
  body { max-width: none; padding: 0; font-size: 11pt; }
  li { padding: .3rem 0; }
}
"""
# An SVG in an <img> runs no script and fetches nothing, whatever it holds
POLICY = (
    "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; "
    "form-action 'none'"
)
NO_RANGE = "Other"
USUAL_URGENCY = 2


def wants_file_name(day: str) -> str:
    """What the page is called: it tells nothing of the house."""
    return "wanted-" + day + ".html"


def wants_page(
    records: Sequence[Fields],
    naming: Naming,
    title: str,
    day: str,
    pictures: dict[str, str],
) -> str:
    """The page for the wants among some records, those in the bin left out. Notes are left out
    too: they are for oneself.

    title: "" for the usual one; day: in words; pictures: addresses of pictures by the id of the
    want, "" for none.
    """
    wants = [
        entry for entry in records
        if text_at(entry, "type") == "want" and text_at(entry, "trashed") == ""
    ]  # fmt: skip
    heading = without_blanks(title)
    heading = marked_up("Wanted" if heading == "" else heading)
    count = padded(len(wants), 1) + (" piece" if len(wants) == 1 else " pieces") + " wanted"
    priced = len([sought for sought in wants if limit_of(sought) != ""]) > 0
    wish = " A price is a wish, not an offer." if priced else ""
    parts = [
        "<!doctype html>",
        '<html lang="en"><head><meta charset="utf-8">',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        '<meta http-equiv="Content-Security-Policy" content="' + POLICY + '">',
        '<meta name="referrer" content="no-referrer">',
        "<title>" + heading + "</title><style>" + STYLE + "</style></head>",
        "<body><main><h1>" + heading + "</h1>",
        '<p class="more">' + count + ", as of " + marked_up(day) + "." + wish + "</p>",
    ]
    in_order = urgent_first(wants)
    for name in names_of_ranges(wants, naming):
        parts.append("<h2>" + marked_up(name) + "</h2><ul>")
        for want in in_order:
            if range_of(want, naming) == name:
                parts.append(want_line(want, naming, pictures.get(text_at(want, "id"), "")))
        parts.append("</ul>")
    if len(wants) == 0:
        parts.append("<p>No wants at the moment.</p>")
    parts.append("</main></body></html>\n")
    return joined_by(parts, "\n")


def range_of(want: Fields, naming: Naming) -> str:
    """The name of the range that a want is from."""
    return naming["ranges"].get(shelfmark("", text_at(want, "pack")), NO_RANGE)


def names_of_ranges(wants: Sequence[Fields], naming: Naming) -> list[str]:
    """The ranges that some wants are from, in the order of their names."""
    out: list[str] = []
    for want in wants:
        name = range_of(want, naming)
        if name not in out:
            out.append(name)
    return sorted(out, key=lambda name: name)


def urgency_of(want: Fields) -> int:
    """How urgent a want is."""
    value = value_at(want, "urgency")
    return value if sort_of_value(value) == "number" else USUAL_URGENCY


def urgent_first(wants: Sequence[Fields]) -> list[Fields]:
    """Wants by their urgency, equal ones by their numbers."""
    by_number = sorted(wants, key=lambda want: text_at(want, "item"))
    return sorted(by_number, key=lambda want: -urgency_of(want))


def limit_of(want: Fields) -> str:
    """The most that is paid, as text, "" for nothing said."""
    return shown_text("most", value_at(want, "most"))


def want_line(want: Fields, naming: Naming, picture: str) -> str:
    """One want. What is in no range at hand has the name that its collector gave it."""
    name = item_in_words(naming, want)
    name = text_at(want, "called") if name == "" else name
    named = [part for part in [name, variant_in_words(naming, want)] if part != ""]
    more = want_words(
        {"least": text_at(want, "least"), "box": text_at(want, "box"), "urgency": urgency_of(want)},
        limit_of(want),
    )
    shows = '<img alt="" src="' + marked_up(picture) + '">' if picture != "" else ""
    number = '<span class="number">' + marked_up(text_at(want, "item")) + "</span> "
    out = "<li>" + shows + "<p>" + number + marked_up(joined_by(named, ", ")) + "</p>"
    if len(more) > 0:
        out = out + '\n<p class="more">' + marked_up(joined_by(more, "; ")) + "</p>"
    return out + "</li>"
