"""Finding an item by a number or a name, forgiving characters that are easily misread.

A number stamped on a worn box is compared three ways: as it is; with each look-alike character
(O/0, I/1, S/5, B/8, Z/2, G/6) replaced by one of its pair; and with one slip more (edit distance,
optimal string alignment: Damerau 1964 for adjacent swaps, Levenshtein 1966 for the rest).
"""

from typing import Any

from .lists import filled, largest

LOOK_ALIKES = [
    ["O", "0"], ["Q", "0"], ["D", "0"], ["I", "1"], ["L", "1"], ["S", "5"],
    ["B", "8"], ["Z", "2"], ["G", "6"],
]  # fmt: skip
CARRIED = 0.98  # a catalogue number comes before an equal number carried on the piece


def plain(text: str) -> str:
    """Capitals and digits only: "p 21/b" is P21B."""
    out = ""
    for c in text.upper():
        if "A" <= c <= "Z" or "0" <= c <= "9":
            out = out + c
    return out


def canonical(text: str) -> str:
    """Plain text with every look-alike written as its digit: "IO8" and "1OB" are both 108."""
    out = ""
    for c in plain(text):
        d = c
        for pair in LOOK_ALIKES:
            if c == pair[0]:
                d = pair[1]
        out = out + d
    return out


def words(text: str) -> list[str]:
    """The plain words of a text."""
    out: list[str] = []
    word = ""
    for c in text.upper() + " ":
        if "A" <= c <= "Z" or "0" <= c <= "9":
            word = word + c
        elif c != "'" and len(word) > 0:
            out.append(word)
            word = ""
    return out


def slips(one: str, other: str) -> int:
    """Optimal string alignment distance: fewest insertions, deletions, substitutions and swaps of
    neighbours (no substring edited twice).
    """
    before: list[float] = []
    last: list[float] = []
    for k in range(len(other) + 1):
        last.append(k)
    for i in range(1, len(one) + 1):
        row = filled(len(other) + 1, i)
        for k in range(1, len(other) + 1):
            cost = 0 if one[i - 1] == other[k - 1] else 1
            best = min(last[k] + 1, row[k - 1] + 1, last[k - 1] + cost)
            if i > 1 and k > 1 and one[i - 1] == other[k - 2] and one[i - 2] == other[k - 1]:
                best = min(best, before[k - 2] + 1)
            row[k] = best
        before = last
        last = row
    return int(last[len(other)])


def forgiven(text: str) -> int:
    """How many slips are forgiven in a text of this length."""
    if len(text) >= 7:
        return 2
    return 1 if len(text) >= 4 else 0


def number_fit(asked: str, number: str, how: str) -> dict[str, Any]:
    """How well a number that was read fits a recorded one, both as written: {score from 0 to 1,
    how: the given word, or "misread" where look-alikes or a slip had to be forgiven}.
    """
    one = plain(asked)
    other = plain(number)
    seen = canonical(one)
    there = canonical(other)
    score = 0.0
    misread = True
    part = len(one) / max(1, len(other))
    longer = len(one) > 0 and len(one) < len(other)
    if len(one) > 0 and one == other:
        score = 1.0
        misread = False
    elif len(seen) > 0 and seen == there:
        score = 0.95
    elif longer and other[0 : len(one)] == one:
        score = 0.75 + 0.15 * part
        misread = False
    elif longer and there[0 : len(seen)] == seen:
        score = 0.6 + 0.15 * part
    elif abs(len(one) - len(other)) <= 1 and forgiven(one) > 0 and slips(seen, there) == 1:
        score = 0.6
    return {"score": score, "how": "misread" if misread else how}


def word_score(asked: str, word: str) -> float:
    """How well one word fits another, 0 to 1; both plain."""
    if asked == word:
        return 1.0
    if len(asked) < len(word) and word[0 : len(asked)] == asked:
        return 0.8 + 0.1 * len(asked) / len(word)
    allowed = forgiven(asked)
    if allowed > 0 and abs(len(asked) - len(word)) <= allowed:
        apart = slips(asked, word)
        if apart <= allowed:
            return 0.8 - 0.15 * apart
    return 0.0


def name_score(asked: list[str], words_there: list[str]) -> float:
    """How well the words asked for fit: the mean of their best fits, 0 if one fits nothing."""
    if len(asked) == 0:
        return 0.0
    out = 0.0
    for word in asked:
        best = 0.0
        for there in words_there:
            best = max(best, word_score(word, there))
        if best == 0.0:
            return 0.0
        out = out + best
    return 0.9 * out / len(asked)


def fit(pack: dict[str, Any], place: int, text: str) -> dict[str, Any]:
    """How well a text fits one item: {item, score, how, matched}; score 0 for not at all."""
    item = pack["items"][place]
    hits = [number_fit(text, item["number"], "number")]
    matched = [item["number"]]
    there = words(item["name"] + " " + pack["kinds"][item["kind"]]["name"])
    there.append(plain(item["number"]))
    for carried in item["carried"]:
        hit = number_fit(text, carried, "carried")
        hit["score"] = CARRIED * hit["score"]
        hits.append(hit)
        matched.append(carried)
        for word in words(carried):
            there.append(word)
    hits.append({"score": name_score(words(text), there), "how": "name"})
    matched.append(item["name"])
    best = largest([h["score"] for h in hits])
    return {
        "item": place,
        "score": hits[best]["score"],
        "how": hits[best]["how"],
        "matched": matched[best],
    }


def find(engine: dict[str, Any], text: str, limit: int) -> list[dict[str, Any]]:
    """The items that a number or a name could mean, best first, at most `limit`.

    Each is {item, score from 0 to 1, how: "number", "misread", "carried" or "name", matched: the
    recorded text}. Empty for a text that fits nothing.
    """
    pack = engine["pack"]
    hits: list[dict[str, Any]] = []
    for place in range(len(pack["items"])):
        hit = fit(pack, place, text)
        if hit["score"] > 0.0:
            hits.append(hit)
    return sorted(hits, key=lambda hit: -hit["score"])[0:limit]
