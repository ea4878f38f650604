"""The text of a pack's file, and which line of a TOML file something stands on."""

import re
import tomllib
from pathlib import Path

from identify.reference.mistakes import Mistake
from identify.reference.types import TomlTable

HEAD = re.compile(r"\s*\[\[?\s*([A-Za-z0-9_.-]+)\s*\]\]?\s*(#.*)?")
CONTROL = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]")
AT_LINE = re.compile(r"^(.*) \(at line (\d+), column (\d+)\)$", re.S)


def read_text(path: Path, name: str, mistakes: list[Mistake]) -> str | None:
    """The file's text without a byte order mark, or None with a mistake."""
    try:
        data = path.read_bytes()
    except FileNotFoundError:
        near = sorted(each.name for each in path.parent.glob(f"*{path.suffix}") if path.suffix)
        there = f" There is {', '.join(near)}." if near else ""
        mistakes.append(Mistake(name, 0, "", f"this file is missing.{there}"))
        return None
    except OSError as error:
        reason = (error.strerror or "no reason given").lower()
        mistakes.append(Mistake(name, 0, "", f"this file cannot be read: {reason}."))
        return None
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        before = data[data.rfind(b"\n", 0, error.start) + 1 : error.start]
        place = f"character {len(before.decode('utf-8-sig', 'replace')) + 1}"
        mistakes.append(Mistake(name, line, place, "this is not UTF-8. Save the file as UTF-8."))
        return None
    control = CONTROL.search(text)
    if control:
        line = text.count("\n", 0, control.start()) + 1
        what = f"there is a control character (code {ord(control[0])}). Remove it."
        mistakes.append(Mistake(name, line, "", what))
        return None
    if not text.strip():
        mistakes.append(Mistake(name, 0, "", "this file is empty."))
        return None
    return text


def read_toml(
    path: Path, name: str, mistakes: list[Mistake]
) -> tuple[TomlTable, "TomlLines"] | None:
    """The file as a dict with where things stand in it, or None with a mistake."""
    text = read_text(path, name, mistakes)
    if text is None:
        return None
    try:
        return tomllib.loads(text), TomlLines(text)
    except RecursionError:
        mistakes.append(Mistake(name, 0, "", "lists are nested too deep within one another."))
    except ValueError as error:
        place = AT_LINE.match(str(error))
        line = int(place[2]) if place else text.count("\n") + 1
        said = place[1] if place else str(error)
        where = f" at character {place[3]}" if place else ""
        mistakes.append(Mistake(name, line, "", f"this is not TOML: {said.lower()}{where}."))
    return None


class TomlLines:
    """Finds lines: the TOML library says what stands in a file, but not where."""

    def __init__(self, text: str) -> None:
        self.lines = text.splitlines()
        headings = [(n, HEAD.fullmatch(line)) for n, line in enumerate(self.lines)]
        self.heads = [(n, head[1]) for n, head in headings if head]

    def line(self, table: str, place: int, pattern: str, nth: int = 0) -> int:
        """Line (from 1) of the nth match in the place-th table of that name, else its header."""
        start, end = self.extent(table, place)
        search = re.compile(pattern).search
        places = [n for n in range(start, end) if pattern and search(self.lines[n])]
        return (places[nth] if nth < len(places) else start) + 1

    def extent(self, table: str, place: int) -> tuple[int, int]:
        """The lines of the place-th table of that name, of what stands before any for ""."""
        starts = [n for n, name in self.heads if name == table]
        if not table:
            return 0, self.heads[0][0] if self.heads else len(self.lines)
        if place >= len(starts):
            return 0, len(self.lines)
        start = starts[place]
        ends = [n for n, name in self.heads if n > start and not name.startswith(table + ".")]
        return start, min(ends, default=len(self.lines))

    def key(self, table: str, place: int, key: str) -> int:
        """Line of a key in the place-th table of that name."""
        return self.line(table, place, rf"^\s*(\[{table}\.)?[\"']?{re.escape(key)}[\"']?\s*[=.\]]")

    def state(self, place: int, state: str, nth: int) -> int:
        """Line of a state of the place-th feature, the nth of that id."""
        return self.line("feature", place, rf"\bid\s*=\s*[\"']{re.escape(state)}[\"']", nth)
