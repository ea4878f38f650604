"""Tables in text files: which encoding, which delimiter, and the cells.

The delimiter is the one that gives most rows the same number of cells, the same as the heading has:
decimal commas and commas in sentences do not come up that evenly.
"""

import csv
import io
from collections import Counter
from collections.abc import Iterator

from charset_normalizer import from_bytes

from identify.exchange.table import MOST_COLUMNS, FileError, Row, Table, listed

# A row separated by a delimiter that is not its own is one long cell. For the whole process, packs
# too: csv knows no other way, and while one thread reads, another must not find it put back.
csv.field_size_limit(1_000_000)

BOMS = (
    (b"\xef\xbb\xbf", "utf-8-sig", "UTF-8"),
    (b"\xff\xfe\x00\x00", "utf-32", "UTF-32"),
    (b"\x00\x00\xfe\xff", "utf-32", "UTF-32"),
    (b"\xff\xfe", "utf-16", "UTF-16"),
    (b"\xfe\xff", "utf-16", "UTF-16"),
)
OLDER = ["cp1252", "mac_roman", "cp850", "iso8859_15", "cp1250"]  # tried where it is not Unicode
NAMES = {
    "cp1252": "Windows-1252",
    "mac_roman": "Mac Roman",
    "cp850": "code page 850 (DOS)",
    "iso8859_15": "ISO 8859-15",
    "cp1250": "Windows-1250",
}
USUAL = set("£€½¼¾°–—‘’“”…×·ßÄÖÜäöüéèêëàâáçñôóòûúùîïíìÉÈÀÇåÅæÆøØ")  # noqa: RUF001
DELIMITERS = ["\t", ";", "|", ",", "^", "~", ":"]  # of equals, the first
TRIED = 300  # rows looked at for the delimiter
BEGINNING = 400_000  # characters that these are looked for in


def decoded(data: bytes) -> tuple[str, list[str]]:
    """The text of a file, and what to say about its encoding. Raises FileError."""
    for mark, codec, name in BOMS:
        if data.startswith(mark):
            return _marked(data, codec, name)
    for codec, zeros in (("utf-16-le", data[1::2]), ("utf-16-be", data[::2])):
        if len(data) > 8 and zeros.count(0) > 0.4 * len(zeros):
            return _marked(data, codec, "UTF-16")
    try:
        return data.decode("utf-8"), []
    except UnicodeDecodeError as error:
        if error.start >= len(data) - 3 and error.reason == "unexpected end of data":
            return data[: error.start].decode("utf-8"), [
                "The file ends inside a character: it was cut short. Look at its last row."
            ]
    lenient = data.decode("utf-8", "replace")
    spoilt = lenient.count("\ufffd")
    if sum(c > "\x7f" for c in lenient) - spoilt > 3 * spoilt:
        rows = [n for n, line in enumerate(lenient.splitlines(), 1) if "\ufffd" in line]
        return lenient, [
            f"The file is in UTF-8, but some characters in line {rows[0]} "
            f"{f'and {len(rows) - 1} more ' if len(rows) > 1 else ''}are not: "
            'they are shown as "\ufffd". Look at those rows.'
        ]
    return _older(data)


def _marked(data: bytes, codec: str, name: str) -> tuple[str, list[str]]:
    try:
        return data.decode(codec), [f"The file was read as {name}."] if name != "UTF-8" else []
    except UnicodeDecodeError:
        text = data.decode(codec, "replace")
        return text, [
            f"The file says that it is {name}, but not all of it is: it was cut short, or changed "
            'by a program that wrote another encoding. What could not be read is shown as "\ufffd".'
        ]


def _older(data: bytes) -> tuple[str, list[str]]:
    """A text in an older encoding: of those in which every byte is a character, the one with the
    most letters and marks that such lists have; of equals, what charset-normalizer finds likeliest.
    """
    texts = {}
    for codec in OLDER:
        try:
            texts[codec] = data.decode(codec)
        except UnicodeDecodeError:
            continue
    odd = {codec: _oddness(text) for codec, text in texts.items()}
    least = [codec for codec in texts if odd[codec] == min(odd.values())]
    codec = least[0]
    if len(least) > 1 and codec != "cp1252":
        found = from_bytes(data[:100_000], cp_isolation=least).best()
        codec = found.encoding if found is not None and found.encoding in least else codec
    return texts[codec], [
        f"The file is not in Unicode; it was read as {NAMES[codec]}. "
        "If £ or accents look wrong, save it again as CSV UTF-8."
    ]


def _oddness(text: str) -> int:
    """How many characters beyond ASCII are none that a list of this kind often has."""
    return sum(c > "\x7f" and c not in USUAL for c in text)


def _bare(cell: str) -> str:
    """A cell without the quotation marks round it."""
    return cell.removeprefix('"').removesuffix('"')


def _from(lines: list[str], at: int) -> Iterator[str]:
    return (lines[place] for place in range(at, len(lines)))


def _parsed(text: str, delimiter: str, most: int = 0) -> tuple[list[list[str]], list[int]]:
    """The rows, empty ones too, and those in which quotation marks do not match: there, the line
    is taken as it stands.
    """
    lines = io.StringIO(text, newline="").readlines()
    rows: list[list[str]] = []
    loose: list[int] = []
    at = 0
    while at < len(lines) and not (most and len(rows) >= most):
        reader = csv.reader(_from(lines, at), delimiter=delimiter, strict=True)
        begun = at
        try:
            for row in reader:
                rows.append(row)
                begun = at + reader.line_num
                if len(rows) == most:
                    break
            at = len(lines)
        except csv.Error:
            rows.append(_as_it_stands(lines[begun], delimiter, len(rows) + 1))
            loose.append(len(rows))
            at = begun + 1
    return rows, loose


def _as_it_stands(line: str, delimiter: str, row: int) -> list[str]:
    """One line whose quotation marks mean nothing. Raises FileError."""
    try:
        return [
            _bare(c) for c in next(csv.reader([line], delimiter=delimiter, quoting=csv.QUOTE_NONE))
        ]
    except csv.Error as error:
        raise FileError(
            f"Row {row} cannot be read: {error}. Save the table again as CSV."
        ) from error


def delimiter_of(text: str) -> str:
    """What parts the cells of a text; "," where nothing does."""
    best, chosen = 0.0, ","
    start = text[:BEGINNING]
    for delimiter in DELIMITERS:
        rows = [row for row in _parsed(start, delimiter, TRIED)[0] if any(row)]
        widths = Counter(len(row) for row in rows if len(row) > 1)
        if not widths:
            continue
        width, count = max(widths.items(), key=lambda pair: (pair[1], pair[0]))
        even = count / len(rows)
        first = next(len(row) for row in rows)
        score = even + (0.25 if first == width else 0.0) + 0.02 * min(width, 10)
        score -= 0.5 if delimiter in "^~:" else 0.0  # these come up inside cells
        if score > best:
            best, chosen = score, delimiter
    return chosen


def read_text(data: bytes) -> Table:
    """The table in a text file. Raises FileError."""
    text, notes = decoded(data)
    odd = sum(c < " " and c not in "\t\r\n\f\x1a" for c in text[:20_000])
    if odd > 5 + len(text[:20_000]) // 100:
        raise FileError(
            "This is not a table in plain text. Save it as CSV or XLSX, and choose that file."
        )
    text = text.rstrip("\x1a")
    first, _, rest = text.partition("\n")
    declared = first.strip().lower().startswith("sep=") and len(first.strip()) == 5
    delimiter = first.strip()[4] if declared else delimiter_of(text)
    rows, loose = _parsed(rest if declared else text, delimiter)
    if declared:
        rows, loose = [[], *rows], [row + 1 for row in loose]
    if loose:
        notes.append(
            f"Quotation marks do not match in {listed(loose)}: taken as part of the text. The file "
            "may be cut short."
        )
    kept = [Row(n, row) for n, row in enumerate(rows, 1) if any(cell.strip() for cell in row)]
    widths = Counter(len(row.cells) for row in kept)
    usual = widths.most_common(1)[0][0] if widths else 0
    if len(kept) > 2 and len(kept[-1].cells) < usual and not text.endswith(("\n", "\r")):
        notes.append(
            f"The last row, {kept[-1].row}, has {len(kept[-1].cells)} cells and no line end, where "
            f"others have {usual}: the file may be cut short."
        )
    wide = [row for row in kept if len(row.cells) > usual and any(row.cells[usual:])]
    if 0 < len(wide) <= len(kept) // 2 and usual <= MOST_COLUMNS:
        notes.append(
            f"Row {wide[0].row} {f'and {len(wide) - 1} more ' if len(wide) > 1 else ''}"
            f"{'have' if len(wide) > 1 else 'has'} more cells than the {usual} of the others: "
            "text with a comma in it may want quotation marks. The rest is in columns of its own."
        )
    return Table(kept, notes)
