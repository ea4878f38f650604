"""A TOML file of which single values and entries are changed; comments and the rest stay.

tomlkit keeps everything that it does not change. Whole entries, and keys that are new in one, are
put in as lines. What comes out is read again and must say what was meant: else nothing is changed.
"""

import copy
import re
import tomllib
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from identify.reference.editing_csv import EditError
from identify.reference.texts import TomlLines
from identify.reference.types import TomlTable

TOP = ""  # the table of what stands before any header
PLAIN = re.compile(r"[A-Za-z0-9_-]+")
EMPTY = re.compile(r"\s*(#.*)?")
LAST = "states"  # the long one: what is new comes before it


def written(value: Any) -> str:
    """A value as it is put into a file: lists and tables on one line, states on a line each.

    Raises EditError for what is no value.
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        return repr(value)
    if isinstance(value, str):
        return tomlkit.item(value).as_string()
    if isinstance(value, dict):
        inside = ", ".join(f"{_key(name)} = {written(each)}" for name, each in value.items())
        return f"{{ {inside} }}" if inside else "{}"
    if not isinstance(value, list):
        raise EditError("That is not a value for a field of a range.")
    if value and all(isinstance(each, dict) for each in value):
        return "[\n" + "".join(f"  {written(each)},\n" for each in value) + "]"
    return f"[{', '.join(written(each) for each in value)}]"


def _key(name: str) -> str:
    return name if PLAIN.fullmatch(name) else tomlkit.item(name).as_string()


class TomlText:
    """The text of a file, with a key for each entry that stays while others come and go.

    Raises EditError for what is no TOML.
    """

    def __init__(self, text: str, name: str, tables: tuple[str, ...]) -> None:
        self.name = name
        self.windows = "\r\n" in text and not re.search(r"(?<!\r)\n", text)
        self.now = text.replace("\r\n", "\n") if self.windows else text
        try:
            self.data = tomllib.loads(self.now)
        except (ValueError, RecursionError) as error:
            raise EditError(f"{name} is not TOML. Mend it in a text editor first.") from error
        self.keys: dict[str, list[str]] = {TOP: ["range"]}
        for table in tables:
            entries = self.data.get(table, [])
            if not (isinstance(entries, list) and all(isinstance(each, dict) for each in entries)):
                raise EditError(f"{name}: write each of these under [[{table}]] first.")
            self.keys[table] = [f"{table}{place}" for place in range(len(entries))]

    @property
    def text(self) -> str:
        """The file as it is now."""
        return self.now.replace("\n", "\r\n") if self.windows else self.now

    def entry(self, table: str, key: str) -> TomlTable:
        """What an entry says. Raises EditError."""
        place = self._place(table, key)
        if table == TOP:
            return {n: v for n, v in self.data.items() if n not in self.keys}
        entry: TomlTable = self.data[table][place]
        return entry

    def lines(self, table: str) -> dict[str, tuple[int, int]]:
        """The first line of each entry of a table, and the one after its last, by its key."""
        lines = TomlLines(self.now)
        return {key: lines.extent(table, n) for n, key in enumerate(self.keys[table])}

    def set(self, table: str, key: str, field: str, old: Any, value: Any) -> None:
        """Write one field that says `old` now; None: it is not there. Raises EditError."""
        entry = self.entry(table, key)
        if entry.get(field) != old:
            what = f"{field} says something else now than it did. Read the pack again."
            raise EditError(f"{self.name} line {self.lines(table)[key][0] + 1}: {what}")
        if old == value:
            return
        place = self._place(table, key)
        wanted = copy.deepcopy(self.data)
        target = wanted if table == TOP else wanted[table][place]
        if value is None:
            del target[field]
        else:
            target[field] = value
        if old is None:
            self._take(self._with_line(table, place, f"{_key(field)} = {written(value)}\n"), wanted)
            return
        try:
            document = tomlkit.parse(self.now)
            there: Any = document if table == TOP else document[table][place]
            if value is None:
                del there[field]
            elif field == LAST and isinstance(old, list):
                _states(there[field], value)
            else:
                there[field] = tomlkit.value(written(value))
            after = tomlkit.dumps(document)
        except (TOMLKitError, TypeError, KeyError, AttributeError) as error:
            raise self._cannot(field) from error
        self._take(after, wanted)

    def add(self, table: str, key: str, fields: TomlTable) -> None:
        """Add an entry behind the last one of its table. Raises EditError."""
        wanted = copy.deepcopy(self.data)
        wanted.setdefault(table, []).append(fields)
        lines = self.now.splitlines(True)
        at = len(lines)
        if self.keys[table]:
            at = self._end(table, len(self.keys[table]) - 1)
        elif lines and not lines[-1].endswith("\n"):
            lines[-1] += "\n"
        if at and not lines[at - 1].endswith("\n"):
            lines[at - 1] += "\n"
        body = [f"{_key(name)} = {written(value)}\n" for name, value in fields.items()]
        self._take("".join([*lines[:at], "\n", f"[[{table}]]\n", *body, *lines[at:]]), wanted)
        self.keys[table].append(key)

    def remove(self, table: str, key: str) -> None:
        """Take an entry away; comments around it stay. Raises EditError."""
        place = self._place(table, key)
        wanted = copy.deepcopy(self.data)
        del wanted[table][place]
        if not wanted[table]:
            del wanted[table]
        lines = self.now.splitlines(True)
        start, end = TomlLines(self.now).extent(table, place)[0], self._end(table, place)
        if start and not lines[start - 1].strip() and (end == len(lines) or not lines[end].strip()):
            start -= 1
        self._take("".join([*lines[:start], *lines[end:]]), wanted)
        self.keys[table].remove(key)

    def _place(self, table: str, key: str) -> int:
        if key not in self.keys[table]:
            raise EditError(f"{self.name}: that entry is no longer there. Read the pack again.")
        return self.keys[table].index(key)

    def _end(self, table: str, place: int) -> int:
        """The line after the last that says something in an entry."""
        lines = self.now.splitlines()
        start, end = TomlLines(self.now).extent(table, place)
        while end > start and EMPTY.fullmatch(lines[end - 1]):
            end -= 1
        return end

    def _with_line(self, table: str, place: int, line: str) -> str:
        """The text with one more key in an entry: before its states, or behind the last key."""
        lines = self.now.splitlines(True)
        found = TomlLines(self.now)
        start, _ = found.extent(table, place)
        at = found.key(table, place, LAST) - 1
        if at <= start or table == TOP:
            at = self._end(table, place)
        if at and not lines[at - 1].endswith("\n"):
            lines[at - 1] += "\n"
        return "".join([*lines[:at], line, *lines[at:]])

    def _take(self, text: str, wanted: TomlTable) -> None:
        """Take the new text if it says just what was meant. Raises EditError."""
        try:
            data = tomllib.loads(text)
        except ValueError:
            data = {}
        if data != wanted:
            raise self._cannot("this")
        self.now, self.data = text, data

    def _cannot(self, what: str) -> EditError:
        return EditError(
            f"{self.name}: {what} is written in a way that cannot be changed here. Change it in a "
            "text editor."
        )


def _states(array: Any, wanted: list[TomlTable]) -> None:
    """Change a list of states so that those which stay as they are stay as they are written."""
    ids = [each["id"] for each in wanted]
    for place in reversed(range(len(array))):
        if array[place]["id"] not in ids:
            del array[place]
    for place, state in enumerate(wanted):
        there = [each["id"] for each in array]
        if place < len(there) and there[place] == state["id"]:
            if [*array[place]] != [*state]:
                array[place] = tomlkit.value(written(state))
            for name, value in state.items():
                if array[place].get(name) != value:
                    array[place][name] = value
        else:
            if state["id"] in there:
                del array[there.index(state["id"])]
            array.insert(place, tomlkit.value(written(state)))
