"""What is kept and is in no range: pieces and wants that are known by what they are called alone.

They are found, counted as duplicates of one another, and told of once a range has come to know
them. The number is a word with a figure in it, as collectors write it: "304 brake coach".
"""

from .condition import standard
from .lists import best_first
from .look_up import find, plain, words
from .runs import FIGURES
from .types.engine import Engine
from .types.holdings import Duplicate
from .types.records import Piece, Want

CLOSE = 0.9  # a name goes this well with an item's before that is offered for it


def is_outside(record: Piece | Want) -> bool:
    """Whether a piece or want is in no range, and is called something."""
    return record["item"] == "" and plain(record["called"]) != ""


def outside_alike(pieces: list[Piece]) -> list[Duplicate]:
    """What is called the same twice or more, as `duplicates` gives it; `item`, `variant`: -1.

    Spares, donors and what is kept on purpose are left out, as in `duplicates`; capitals, spaces
    and signs make no difference.
    """
    names: list[str] = []
    copies: list[list[Piece]] = []
    for piece in pieces:
        if is_outside(piece) and piece["purpose"] == "" and piece["kept"] not in [True]:
            name = plain(piece["called"])
            place = -1
            for n in range(len(names)):
                if names[n] == name:
                    place = n
            if place < 0:
                names.append(name)
                copies.append([piece])
            else:
                copies[place].append(piece)
    out: list[Duplicate] = []
    for alike in copies:
        if len(alike) > 1:
            best = best_first([standard(copy) for copy in alike])
            part_with: list[str] = []
            for n in range(1, len(best)):
                part_with.append(alike[best[len(best) - n]]["id"])
            out.append(
                {"item": -1, "variant": -1, "keep": alike[best[0]]["id"], "part_with": part_with}
            )
    return out


def outside_named(records: list[Piece | Want], text: str) -> list[str]:
    """The ids of what is in no range and could be meant by a typed number or name.

    Its name begins as the text does, or has a word beginning like each word of the text.
    """
    asked = words(text)
    start = plain(text)
    out: list[str] = []
    for record in records:
        if is_outside(record) and start != "":
            called = words(record["called"])
            fitting = 0
            for word in asked:
                if len([w for w in called if w[: len(word)] == word]) > 0:
                    fitting = fitting + 1
            begins = plain(record["called"])[: len(start)] == start
            if begins or (len(asked) > 0 and fitting == len(asked)):
                out.append(record["id"])
    return out


def numbers_in(called: str) -> list[str]:
    """What may be the number in a name: up to three words together with a figure, longest first."""
    said = words(called)
    out: list[str] = []
    for count in [3, 2, 1]:
        for start in range(len(said) - count + 1):
            number = ""
            for word in said[start : start + count]:
                number = number + word
            if len([c for c in number if c in FIGURES]) > 0:
                out.append(number)
    return out


def known_now(engine: Engine, record: Piece | Want) -> list[int]:
    """The items of a range that something in none may be: by its number, else by its name."""
    if not is_outside(record):
        return []
    items = engine["pack"]["items"]
    for number in numbers_in(record["called"]):
        exact: list[int] = []
        for hit in find(engine, number, 5):
            if plain(items[hit["item"]]["number"]) == number:
                exact.append(hit["item"])
        if len(exact) > 0:
            return exact
    named: list[int] = []
    for hit in find(engine, record["called"], 3):
        if hit["how"] == "name" and hit["score"] >= CLOSE:
            named.append(hit["item"])
    return named
