"""Which items a row of a list may mean, and how sure that is.

For each item the row's number and words give evidence; a logistic choice among all items and "none
of them" turns it into chances. WEIGHTS were fitted to invented rows made by spoiling known ones
(tests/exchange/fitting.py); tests/outside/test_matching.py says how often each level is right.
"""

import math
from dataclasses import dataclass

from rapidfuzz import fuzz
from rapidfuzz.distance import OSA

from identify.core.look_up import canonical, forgiven, plain, words
from identify.exchange.reference import Entry, Reference, in_common, stems, unaccented, unzeroed
from identify.exchange.types import How

# What each piece of evidence adds to an item's logarithm of odds.
WEIGHTS = {
    "exact": 12.99,  # the number as it is
    "zeros": 11.84,  # without zeros in front
    "alike": 10.92,  # with O for 0 and the like
    "slip": 7.1,  # with one slip more
    "begins": 7.08,  # one is the beginning of the other
    "inside": 4.41,  # the number stands in the words
    "carried": 10.05,  # the number is one carried on the piece
    "sorted": 5.44,  # name: the same letters in the words in any order (token_sort_ratio)
    "within": 0.73,  # name: the words of the shorter in the longer (token_set_ratio)
    "cosine": 5.32,  # name: rare words in common
    "share": 5.49,  # how much of the recorded name is said
    "range": 7.2,  # the range is named
    "other": -0.6,  # another range is named
    "none": 5.86,  # that it is none of them: to begin with
    "none_number": 1.01,  # where a number is given
    "none_words": 4.66,  # where words are given
}
SURE = 0.8  # from here on an item is taken without asking
SHOWN = 0.02  # candidates below are not worth offering
NAMED = 3  # candidates given


@dataclass(frozen=True)
class Query:
    """What a row says of which item it is."""

    number: str = ""
    name: str = ""
    description: str = ""
    range: str = ""

    @property
    def said(self) -> str:
        """All words."""
        return f"{self.name} {self.description}".strip()


@dataclass(frozen=True)
class Candidate:
    """An item that a row may mean."""

    entry: Entry
    sure: float
    how: How


def ranges_named(reference: Reference, text: str) -> list[str]:
    """The packs whose name or maker a text names, forgiving a slip."""
    said = words(text)
    named = []
    for pack_id, engine in reference.engines.items():
        about = engine["pack"]["range"]
        names = {*words(about["name"]), pack_id.upper()}
        if any(OSA.distance(one, name) <= min(1, forgiven(one)) for one in said for name in names):
            named.append(pack_id)
    return named


def evidence(reference: Reference, query: Query) -> list[dict[str, float]]:
    """What a row says for each entry: the keys of WEIGHTS that apply, with their size."""
    number, bare, seen = plain(query.number), unzeroed(query.number), canonical(query.number)
    said = stems(query.said)
    spelt = " ".join(words(unaccented(query.name or query.description)))
    spoken = reference.spoken(said)
    runs = _runs(words(query.said))
    named = ranges_named(reference, query.range) if query.range else []
    clues = []
    for entry in reference.entries:
        one: dict[str, float] = {}
        if number:
            word = _number(number, bare, seen, entry)
            if word:
                one[word] = 1.0
        if said:
            if len(entry.plain) > 1 and entry.plain in runs:
                one["inside"] = 1.0
            cosine, share = in_common(spoken, entry)
            one |= {"cosine": cosine, "share": share}
            one["sorted"] = fuzz.token_sort_ratio(spelt, entry.spelt) / 100
            one["within"] = fuzz.token_set_ratio(spelt, entry.spelt) / 100
        if named:
            one["range" if entry.pack in named else "other"] = 1.0
        clues.append(one)
    return clues


def _number(number: str, bare: str, seen: str, entry: Entry) -> str:
    """How a number fits: a key of WEIGHTS, "" where it does not."""
    if number == entry.plain:
        return "exact"
    if bare == entry.unzeroed:
        return "zeros"
    if number in entry.carried:
        return "carried"
    if seen == entry.canonical:
        return "alike"
    if abs(len(seen) - len(entry.canonical)) <= 1 and len(seen) > 1:
        near = OSA.distance(seen, entry.canonical, score_cutoff=1) == 1
        if near and (forgiven(seen) > 0 or len(seen) > 2):
            return "slip"
    shorter, longer = sorted((number, entry.plain), key=len)
    return "begins" if len(shorter) > 1 and longer.startswith(shorter) else ""


def _runs(said: list[str]) -> set[str]:
    """Every one, two and three words that follow one another, written as one."""
    return {
        "".join(said[at : at + count]) for count in (1, 2, 3) for at in range(len(said) - count + 1)
    }


def nothing(query: Query) -> dict[str, float]:
    """What counts for none of the items."""
    one = {"none": 1.0}
    if plain(query.number):
        one["none_number"] = 1.0
    if words(query.said):
        one["none_words"] = 1.0
    return one


def weighed(one: dict[str, float], weights: dict[str, float]) -> float:
    """The logarithm of odds that evidence adds up to."""
    return sum(weights[key] * size for key, size in one.items())


def candidates(reference: Reference, query: Query) -> list[Candidate]:
    """The likeliest items, best first, with the chance of each."""
    if not (plain(query.number) or words(query.said)):
        return []
    clues = evidence(reference, query)
    scores = [weighed(one, WEIGHTS) for one in clues]
    none = weighed(nothing(query), WEIGHTS)
    most = max([*scores, none])
    shares = [math.exp(score - most) for score in scores]
    whole = sum(shares) + math.exp(none - most)
    best = sorted(range(len(scores)), key=lambda place: -scores[place])[:NAMED]
    return [
        Candidate(reference.entries[place], shares[place] / whole, _how(clues[place]))
        for place in best
        if shares[place] / whole >= SHOWN
    ]


def _how(one: dict[str, float]) -> How:
    by_name = one.get("cosine", 0.0) > 0.3
    if {"exact", "zeros", "carried", "inside"} & set(one):
        return "number and name" if by_name else "number"
    if {"alike", "slip", "begins"} & set(one):
        return "misread"
    return "name"
