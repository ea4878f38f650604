"""Which items a row of a list may mean, and how sure that is.

For each item the row's number and words give evidence; a logistic choice among all items and "none
of them" turns it into chances. WEIGHTS were fitted to invented rows made by spoiling known ones
(tests/exchange/fitting.py); tests/outside/test_matching.py says how often each level is right.
"""

from collections.abc import Sequence

from ..lists import best_first, empty_lists, filled
from ..look_up import canonical, forgiven, plain, slips, words
from ..native.values import power_of_e
from ..types.importing import Clue, Entry, Found, ItemMeant, Query, Reference
from .item_words import spoken, stems, unzeroed

# What each piece of evidence adds to an item's logarithm of odds: exact (the number as it is),
# zeros (without zeros in front), carried (it is one carried on the piece), alike (with O for 0 and
# the like), slip (with one slip more), begins (one is the beginning of the other), inside (the
# number stands in the words); of the name: letters (how many of both are in words in common), most
# (the same of the shorter one), cosine (rare words in common), share (how much of it is said);
# range (its range is named), other (another one is); none (that it is none of them: to begin with),
# none_number (where a number is given), none_words (where words are).
WEIGHTS: dict[str, float] = {
    "exact": 13.14, "zeros": 11.88, "carried": 10.5, "alike": 10.82, "slip": 6.92, "begins": 5.91,
    "inside": 4.51, "letters": 6.35, "most": 2.42, "cosine": 4.65, "share": 2.46, "range": 7.0,
    "other": -0.75, "none": 5.6, "none_number": 1.17, "none_words": 3.67,
}  # fmt: skip
SURE = 0.8  # from here on an item is taken without asking
WORTH_OFFERING = 0.02  # candidates below are not worth offering
CANDIDATES = 3
BY_NUMBER = ["exact", "zeros", "carried", "inside"]
BY_MISREADING = ["alike", "slip", "begins"]


def ranges_named(reference: Reference, text: str) -> list[int]:
    """The places of the ranges whose name or key a text names, forgiving a slip."""
    said = words(text)
    out: list[int] = []
    for n in range(len(reference["ranges"])):
        named = False
        for name in reference["ranges"][n]:
            for word in said:
                most = min(1, forgiven(word))
                named = named or slips(word, name, most) <= most
        if named:
            out.append(n)
    return out


def number_clue(number: str, bare: str, seen: str, entry: Entry) -> str:
    """How a number fits: a word of WEIGHTS, "" where it does not."""
    if number == entry["plain"]:
        return "exact"
    if bare == entry["unzeroed"]:
        return "zeros"
    if number in entry["carried"]:
        return "carried"
    there = entry["canonical"]
    if seen == there:
        return "alike"
    if abs(len(seen) - len(there)) <= 1 and len(seen) > 2 and slips(seen, there, 1) == 1:
        return "slip"
    own = entry["plain"]
    if len(number) > 1 and own[0 : len(number)] == number:
        return "begins"
    if len(own) > 1 and number[0 : len(own)] == own:
        return "begins"
    return ""


def runs_of_words(said: Sequence[str]) -> list[str]:
    """Every one, two and three words that follow one another, written as one."""
    out: list[str] = []
    for at in range(len(said)):
        run = ""
        for word in said[at : at + 3]:
            run = run + word
            out.append(run)
    return out


def all_words(query: Query) -> str:
    """All words that a row says what it is with."""
    return query["name"] + " " + query["description"]


def name_clues(reference: Reference, query: Query, clues: list[list[Clue]]) -> None:
    """Adds what the words say for the entries that have some of them in their name."""
    said = spoken(reference, stems(all_words(query)))
    named_by = stems(query["name"] if query["name"] != "" else query["description"])
    named = spoken(reference, named_by)
    letters = 0
    for word in named_by:
        letters = letters + len(word)
    met = filled(len(clues), 0.0)
    whole = filled(len(clues), 0.0)
    touched: list[int] = []
    for place in said["words"]:
        weight = reference["rarity"][place]
        for n in reference["holders"][place]:
            if whole[n] == 0.0:
                touched.append(n)
            met[n] = met[n] + weight * weight * said["likes"][place]
            whole[n] = whole[n] + weight * said["likes"][place]
    for n in touched:
        entry = reference["entries"][n]
        alike = 0.0
        for place in entry["spelt"]:
            alike = alike + len(reference["words"][place]) * named["likes"][place]
        cosine = min(1.0, met[n] / (said["size"] * entry["size"]))
        clues[n].append({"word": "cosine", "size": cosine})
        clues[n].append({"word": "share", "size": whole[n] / entry["sum"]})
        both = max(1, entry["letters"] + letters)
        less = max(1, min(entry["letters"], letters))
        clues[n].append({"word": "letters", "size": min(1.0, 2.0 * alike / both)})
        clues[n].append({"word": "most", "size": min(1.0, alike / less)})


def evidence(reference: Reference, query: Query) -> list[list[Clue]]:
    """What a row says for each entry."""
    entries = reference["entries"]
    clues: list[list[Clue]] = empty_lists(len(entries))
    number = plain(query["number"])
    bare = unzeroed(query["number"])
    seen = canonical(query["number"])
    runs = runs_of_words(words(all_words(query)))
    named = ranges_named(reference, query["range"])
    packs = [reference["engines"][at]["pack"]["id"] for at in named]
    for n in range(len(entries)):
        entry = entries[n]
        word = number_clue(number, bare, seen, entry) if number != "" else ""
        if word != "":
            clues[n].append({"word": word, "size": 1.0})
        if len(entry["plain"]) > 1 and entry["plain"] in runs:
            clues[n].append({"word": "inside", "size": 1.0})
        if len(packs) > 0:
            clues[n].append({"word": "range" if entry["pack"] in packs else "other", "size": 1.0})
    name_clues(reference, query, clues)
    return clues


def against_all(query: Query) -> list[Clue]:
    """What counts for none of the items."""
    out: list[Clue] = [{"word": "none", "size": 1.0}]
    if plain(query["number"]) != "":
        out.append({"word": "none_number", "size": 1.0})
    if len(words(all_words(query))) > 0:
        out.append({"word": "none_words", "size": 1.0})
    return out


def weight_of_clues(clues: Sequence[Clue]) -> float:
    """The logarithm of odds that evidence adds up to."""
    out = 0.0
    for clue in clues:
        out = out + WEIGHTS[clue["word"]] * clue["size"]
    return out


def found_by(clues: Sequence[Clue]) -> Found:
    """What an item was known by."""
    by_number = False
    misread = False
    by_name = False
    for clue in clues:
        by_number = by_number or clue["word"] in BY_NUMBER
        misread = misread or clue["word"] in BY_MISREADING
        by_name = by_name or (clue["word"] == "cosine" and clue["size"] > 0.3)
    if by_number:
        return "number and name" if by_name else "number"
    return "misread" if misread else "name"


def items_meant(reference: Reference, query: Query) -> list[ItemMeant]:
    """The likeliest items, best first, with the chance of each."""
    out: list[ItemMeant] = []
    if plain(query["number"]) == "" and len(words(all_words(query))) == 0:
        return out
    clues = evidence(reference, query)
    scores = [weight_of_clues(clue) for clue in clues]
    none = weight_of_clues(against_all(query))
    most = none
    for score in scores:
        most = max(most, score)
    whole = power_of_e(none - most)
    for score in scores:
        whole = whole + power_of_e(score - most)
    for n in best_first(scores)[0:CANDIDATES]:
        sure = power_of_e(scores[n] - most) / whole
        if sure >= WORTH_OFFERING:
            out.append({"entry": n, "sure": sure, "how": found_by(clues[n])})
    return out
