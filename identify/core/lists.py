"""Sorting, totals and look-up, written so that Python and JavaScript agree."""

from collections.abc import Sequence
from typing import Any

from .types.values import Named, Value


def filled(length: int, value: Value) -> list[Value]:
    """A list of `length` times `value`."""
    out: list[Value] = []
    for _ in range(length):
        out.append(value)
    return out


def empty_lists(length: int) -> list[list[Any]]:
    """A list of `length` empty lists."""
    out: list[list[Any]] = []
    for _ in range(length):
        out.append([])
    return out


def blanks(length: int) -> list[Any]:
    """A list of `length` times one and the same empty list, to be replaced and not added to."""
    nothing: list[Any] = []
    out: list[Any] = []
    for _ in range(length):
        out.append(nothing)
    return out


def total(numbers: Sequence[float]) -> float:
    """The sum, added from the left (so that both engines round alike)."""
    out = 0.0
    for x in numbers:
        out = out + x
    return out


def place_of(records: Sequence[Named], ident: str) -> int:
    """Where in `records` the one with this id stands, or -1."""
    for i in range(len(records)):
        if records[i]["id"] == ident:
            return i
    return -1


def best_first(numbers: Sequence[float]) -> list[int]:
    """Places of `numbers`, largest number first; equal ones stay in order."""
    places: list[int] = []
    for i in range(len(numbers)):
        places.append(i)
    return sorted(places, key=lambda i: -numbers[i])


def best_from(numbers: Sequence[float], least: float) -> list[int]:
    """Places of the numbers that are at least `least`, best first as in best_first()."""
    places = [i for i in range(len(numbers)) if numbers[i] >= least]
    return sorted(places, key=lambda i: -numbers[i])


def largest(numbers: Sequence[float]) -> int:
    """Place of the largest number, the first of equals; -1 for an empty list."""
    best = -1
    for i in range(len(numbers)):
        if best < 0 or numbers[i] > numbers[best]:
            best = i
    return best


def add_to(places: list[int], sums: list[float], place: int, amount: float) -> None:
    """Adds an amount to the sum of its place; a place that is not there yet comes last."""
    at = -1
    for k in range(len(places)):
        if places[k] == place:
            at = k
    if at < 0:
        places.append(place)
        sums.append(amount)
    else:
        sums[at] = sums[at] + amount


def plus(xs: list[Value], x: Value) -> list[Value]:
    """A new list: `xs` and then `x`."""
    out = xs[:]
    out.append(x)
    return out
