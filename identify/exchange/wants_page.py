"""A list of wants as one HTML file to send to a friend: no script, nothing fetched, for reading on
a screen, light or dark, and for printing.
"""

import base64
from collections.abc import Mapping
from datetime import UTC, datetime
from html import escape
from typing import Any

from identify.core.importing.own_rows import shown_text
from identify.core.types.importing import Fields
from identify.core.types.pack import Pack
from identify.core.wants import want_words

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


def wants_page(
    records: list[Fields],
    packs: dict[str, Pack],
    title: str = "",
    pictures: Mapping[str, str] | None = None,
) -> str:
    """The page for the wants among some records, those in the bin left out; packs: compiled, by
    id; pictures: SVG, by the id of the want. Notes are left out: they are for oneself.
    """
    wants = [r for r in records if r.get("type") == "want" and not r.get("trashed")]
    heading = title.strip() or "Wanted"
    day = datetime.now(UTC).strftime("%-d %B %Y")
    count = f"{len(wants)} {'thing' if len(wants) == 1 else 'things'} looked for"
    wish = " A price is a wish, not an offer." if any(want.get("most") for want in wants) else ""
    parts = [
        "<!doctype html>",
        '<html lang="en"><head><meta charset="utf-8">',
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">',
        '<meta name="referrer" content="no-referrer">',
        f"<title>{escape(heading)}</title><style>{STYLE}</style></head>",
        f"<body><main><h1>{escape(heading)}</h1>",
        f'<p class="more">{count}, as of {day}.{wish}</p>',
    ]
    for name, some in _by_range(wants, packs):
        parts.append(f"<h2>{escape(name)}</h2><ul>")
        for want in some:
            picture = (pictures or {}).get(_text(want.get("id")), "")
            parts.append(_line(want, packs.get(_text(want.get("pack"))), picture))
        parts.append("</ul>")
    if not wants:
        parts.append("<p>Nothing at the moment.</p>")
    parts.append("</main></body></html>\n")
    return "\n".join(parts)


def _text(value: Any) -> str:
    return value if isinstance(value, str) else ""


def _by_range(wants: list[Fields], packs: dict[str, Pack]) -> list[tuple[str, list[Fields]]]:
    """The wants of each range under its name, the urgent ones first."""
    groups: dict[str, list[Fields]] = {}
    for want in wants:
        pack = _text(want.get("pack"))
        name = packs[pack]["range"]["name"] if pack in packs else pack or "Other"
        groups.setdefault(name, []).append(want)
    for some in groups.values():
        some.sort(key=lambda want: (-_urgency(want), _text(want.get("item"))))
    return sorted(groups.items())


def _urgency(want: Fields) -> int:
    value = want.get("urgency")
    return value if isinstance(value, int) else 2


def _line(want: Fields, pack: Pack | None, picture: str) -> str:
    """One want."""
    number = _text(want.get("item"))
    names = {item["number"]: item["name"] for item in pack["items"]} if pack else {}
    variants = {one["id"]: one["name"] for one in pack["variants"]} if pack else {}
    wish = _text(want.get("variant"))
    name = names.get(number, "")
    which = variants.get(wish, wish)
    what = ", ".join(part for part in (name, which) if part)
    most = shown_text("most", want["most"]) if want.get("most") else ""
    more = want_words(
        {
            "least": _text(want.get("least")),
            "box": _text(want.get("box")),
            "urgency": _urgency(want),
        },
        most,
    )
    drawn = base64.b64encode(picture.encode()).decode()
    shows = f'<img alt="" src="data:image/svg+xml;base64,{drawn}">' if picture else ""
    lines = [f'<li>{shows}<p><span class="number">{escape(number)}</span> {escape(what)}</p>']
    if more:
        lines.append(f'<p class="more">{escape("; ".join(more))}</p>')
    return "".join(lines) + "</li>"
