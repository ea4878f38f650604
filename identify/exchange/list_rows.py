"""One row of a collector's list as a record: which item it means, and what its cells say.

Nothing is lost: what has no field of its own, or cannot be read, goes into the notes with the
heading of its column.
"""

from collections.abc import Callable, Sequence
from typing import Any, NamedTuple

from identify.core.look_up import words
from identify.core.types.pack import Pack
from identify.core.types.records import Chance
from identify.exchange.dates import read_date
from identify.exchange.fields import BY_ID, GENERIC
from identify.exchange.junk_rows import is_scrap, is_total
from identify.exchange.matching import SURE, Candidate, Query, candidates, ranges_named
from identify.exchange.own_tables import MONEYS
from identify.exchange.reference import Reference, stems
from identify.exchange.second_import import ITEM, item_of
from identify.exchange.shapes import blank
from identify.exchange.table import CellError, quoted
from identify.exchange.types import AskedColumn, Fields, KeyedRow, Offer, Outcome, RowProblem
from identify.exchange.values import (
    read_box,
    read_condition,
    read_count,
    read_price,
    read_urgency,
)
from identify.exchange.wording import Wording

NOTES = {"piece": "notes", "want": "notes", "note": "text"}
TELLING = ("condition", "least", "boxed", "box", "when")  # what only a piece has, besides money
SAYING = ("number", "name", "description", "variant", "range")  # what a row says it is


class About(NamedTuple):
    """What is the same for all rows: the packs, the currency meant where none is written, the
    columns [{name, field, order}], and what texts can say about the variants of a pack.
    """

    reference: Reference
    currency: str
    columns: Sequence[AskedColumn]
    wording: Callable[[str], Wording]


class ListRow:
    """A row {row, cells, key} while it is read as a piece, a want or a note."""

    def __init__(self, about: About, sort: str, row: KeyedRow) -> None:
        self.about, self.sort, self.row = about, sort, row
        self.reference = about.reference
        self.problems: list[RowProblem] = []
        self.lines: list[str] = []  # of the notes
        self.cells: dict[str, str] = {}
        self.values: Fields = {}
        self.heads: dict[str, str] = {}  # field of the record -> name of its column
        self.said: dict[str, list[str]] = {}
        self.texts: list[tuple[str, str, str, str]] = []  # field, name, cell, order of each column
        for place, column in enumerate(about.columns):
            cell = row["cells"][place].strip() if place < len(row["cells"]) else ""
            one = column["field"]
            one = GENERIC.get(one, "") if one.startswith("=") else one
            if one:
                self.texts.append((one, column["name"], cell, column.get("order", "")))

    def outcome(self) -> Outcome:
        """What becomes of the row."""
        record = blank(self.sort)
        for one, name, cell, order in self.texts:
            if one in SAYING:
                if cell:
                    self.said.setdefault(one, []).append(cell)
            elif one == "row_id":
                pass
            elif one == "quantity":
                self._quantity(name, cell)
            else:
                self._field(one, name, cell, order)
        nameless = self._nameless()
        candidates = [] if nameless else self._candidates()
        offered = [self._offered(one) for one in candidates]
        for offer in offered:
            offer["sets"] = self._sets(offer)
        chosen = 0 if candidates and candidates[0].sure >= SURE else -1
        failed = nameless or self._failed(candidates, chosen)
        record |= self._what(offered[chosen] if chosen >= 0 else None)
        self._keep_words(record, chosen >= 0)
        self.cells[ITEM] = " | ".join(cell for one, _, cell, _ in self.texts if one in SAYING)
        self.values[ITEM] = item_of(record)
        notes = NOTES[self.sort]
        self.cells[notes] = self.values[notes] = "\n".join(self.lines)
        record |= {f: value for f, value in self.values.items() if f != ITEM}
        record["came"] = {"key": self.row["key"], "cells": self.cells, "values": self.values}
        return {
            "row": self.row["row"],
            "key": self.row["key"],
            "failed": failed,
            "record": None if failed else record,
            "if_chosen": record if failed and offered else None,
            "candidates": offered,
            "none": self._sets(None),
            "chosen": chosen,
            "sure": offered[chosen]["sure"] if chosen >= 0 else 0.0,
            "problems": [] if failed and not offered else self.problems,
            "same": None,
        }

    # ---- single cells ----------------------------------------------------------------------------

    def _wrong(self, name: str, sentence: str) -> None:
        text = f'Row {self.row["row"]}, "{name}": {sentence}'
        self.problems.append({"column": name, "sentence": text})

    def _note(self, name: str, cell: str) -> None:
        if cell:
            self.lines.append(f"{name}: {cell}")

    def _quantity(self, name: str, cell: str) -> None:
        try:
            count = read_count(cell)
        except CellError as error:
            self._wrong(name, f"{error} One record is made.")
            count = 2
        if count > 1:
            self._note(name, cell)
            if cell.strip("x ").isdecimal():
                self._wrong(
                    name, f"there are {count} of these. One record is made, and a note of it."
                )

    def _field(self, one: str, name: str, cell: str, order: str) -> None:
        """A column that is a field of the record, or goes into the notes."""
        target = BY_ID[one].goes_to(self.sort)
        if one == "notes":
            plain = not any(words(name)) or name.lower().split()[0] in BY_ID["notes"].headings
            self.lines += [cell] if cell and plain else []
            if not plain:
                self._note(name, cell)
            return
        if not target:
            self._note(name, cell)
            return
        self.heads[target] = name
        self.cells[target] = cell
        try:
            value = self._value(target, name, cell, order)
            if target == "box_condition" and not value:  # the column of the box may have told it
                self.values.setdefault(target, value)
            else:
                self.values[target] = value
        except CellError as error:
            self._wrong(name, f"{error} It is kept in the notes.")
            self._note(name, cell)

    def _value(self, target: str, name: str, cell: str, order: str) -> Any:
        """What a cell says. Raises CellError."""
        if target in MONEYS:
            return read_price(cell, self.about.currency)
        if target in ("condition", "least", "box_condition"):
            word, more = read_condition(cell)
            if more:
                self._note(name, more)
                if word not in more.lower():
                    self._wrong(name, f'{quoted(more)} was taken as "{word}".')
            return word
        if target in ("boxed", "box"):
            return self._box(target, name, cell)
        if target == "when":
            return read_date(cell, "day" if order == "day" else "month" if order == "month" else "")
        return read_urgency(cell) if target == "urgency" else cell

    def _box(self, target: str, name: str, cell: str) -> str:
        """A box: yes or no, and in what condition it is. Raises CellError."""
        has, word, more = read_box(cell)
        self._note(name, more)
        if target == "box":
            return has if has == "yes" else ""
        if word and not self.values.get("box_condition"):
            self.values["box_condition"] = word
        return has

    # ---- which item ------------------------------------------------------------------------------

    def _cell(self, *fields: str) -> str:
        return ", ".join(cell for one in fields for cell in self.said.get(one, []))

    def _words(self) -> list[str]:
        """The cells that say what it is, the range aside."""
        return [cell for one in SAYING[:4] for cell in self.said.get(one, [])]

    def _tells(self, fields: tuple[str, ...]) -> bool:
        """Whether one of these fields could be read and holds something."""
        return any(self.values.get(one) for one in fields)

    def _known(self, said: list[str]) -> bool:
        """Whether a word of these stands in the reference, or names a range."""
        text = " ".join(said)
        known = any(self.reference.like(word) for word in stems(text))
        return known or bool(ranges_named(self.reference, text))

    def _candidates(self) -> list[Candidate]:
        query = Query(
            self._cell("number"),
            self._cell("name"),
            self._cell("description", "variant"),
            self._cell("range"),
        )
        return candidates(self.reference, query)

    def _offered(self, one: Candidate) -> Offer:
        """A candidate with the variants that the words may mean."""
        entry = one.entry
        text = self._cell("variant", "description", "name")
        of = self.about.wording(entry.pack).variants(entry.place, text) if text else []
        known = of[0]["variant"] if len(of) == 1 else ""
        pack = self.reference.pack(entry.pack)
        names = {variant["id"]: variant["name"] for variant in pack["variants"]}
        if self.sort == "note":
            of = [
                {"item": entry.number, "variant": each["variant"], "chance": each["chance"]}
                for each in of or _by_prior(pack, entry.place)
            ]
        return {
            "pack": entry.pack,
            "item": entry.number,
            "name": entry.name,
            "sure": round(one.sure, 4),
            "how": one.how,
            "of": of,
            "variant": known,
            "which": names.get(known, ""),
            "sets": {},
        }

    def _nameless(self) -> str:
        """Why the row can name no piece, "" where it may."""
        number = self.row["row"]
        said = self._words()
        if not any(letter.isalnum() for cell in said for letter in cell):
            return f"Row {number}: nothing says which piece this is: no number, no name, no words."
        if is_total(said) and not self._tells(TELLING):
            return f"Row {number}: this is a total, not a piece."
        return ""

    def _failed(self, candidates: list[Candidate], chosen: int) -> str:
        """Why no record can be made of a row that has words, "" where one can."""
        number = self.row["row"]
        said = self._words()
        scrap = not candidates and is_scrap(said) and not self._known(said)
        if scrap and not self._tells((*MONEYS, *TELLING)):
            return (
                f"Row {number}: {quoted(' '.join(said))} names no piece, and nothing else in the "
                "row tells of one. If it is one, write its number or a longer name."
            )
        if chosen < 0 and self.sort == "want":
            return (
                f"Row {number}: it is not certain which number is meant, and a want needs one. "
                "Choose one of those offered, or write its number."
            )
        return ""

    def _what(self, offer: Offer | None) -> Fields:
        """The fields that say what it is."""
        called = " ".join(part for part in (self._cell("number"), self._cell("name")) if part)
        called = called or self._cell("description", "variant")
        if offer is None:
            return {"called": called} if self.sort == "piece" else {}
        if self.sort == "want":
            return {"pack": offer["pack"], "item": offer["item"], "variant": offer["variant"]}
        if self.sort == "note":
            return {"pack": offer["pack"], "of": offer["of"]}
        return {"pack": offer["pack"], "item": offer["item"], "of": offer["of"]}

    def _sets(self, offer: Offer | None) -> Fields:
        """All fields that say what it is, as they are once this one, or none, was chosen."""
        empty = blank(self.sort)
        names = {"piece": ("pack", "item", "of", "called"), "note": ("pack", "of")}
        chosen = names.get(self.sort, ("pack", "item", "variant"))
        return {name: empty[name] for name in chosen} | self._what(offer)

    def _keep_words(self, record: Fields, matched: bool) -> None:
        """Into the notes goes what was said of the item and is not kept in a field."""
        several = len(record.get("of", [])) != 1 if self.sort != "want" else not record["variant"]
        first = []
        for one, name, cell, _ in self.texts:
            if not cell or one not in SAYING:
                continue
            if (
                one == "description"
                or (one == "variant" and (several or not matched))
                or (one == "range" and not matched and not ranges_named(self.reference, cell))
                or (one in ("number", "name") and not matched and self.sort == "note")
            ):
                first.append(f"{name}: {cell}")
        self.lines = [*first, *self.lines]


def _by_prior(pack: Pack, item: int) -> list[Chance]:
    """The variants of an item with the chance of each before anything is known."""
    chances: dict[str, float] = {}
    for at, prior in zip(pack["rows"]["variant"], pack["rows"]["prior"], strict=True):
        if pack["variants"][at]["item"] == item:
            one = pack["variants"][at]["id"]
            chances[one] = chances.get(one, 0.0) + prior
    whole = sum(chances.values())
    return [
        {"variant": one, "chance": round(chance / whole, 3)}
        for one, chance in sorted(chances.items(), key=lambda pair: -pair[1])
    ]
