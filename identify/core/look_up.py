"""Finding an item by a number or a name, forgiving characters that are easily misread.

A number stamped on a worn box is compared three ways: as it is; with each look-alike character
(O/0, I/1, S/5, B/8, Z/2, G/6) replaced by one of its pair; and with one slip more (edit distance,
optimal string alignment: Damerau 1964 for adjacent swaps, Levenshtein 1966 for the rest).
"""

from .lists import best_from, filled
from .runs import runs_of
from .types.engine import Engine
from .types.matches import Fitting, HowFound, Index, Listed, Match, Spelt
from .types.pack import Pack

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
    """The plain words of a text; a tick parts none: "O'Neill" is ONEILL."""
    out: list[str] = []
    word = ""
    for run in runs_of(text):
        if run["sort"] in ["letter", "figure"]:
            word = word + run["text"]
        elif run["text"] != "'" and word != "":
            out.append(word)
            word = ""
    if word != "":
        out.append(word)
    return out


def slips(first: str, second: str, most: int) -> int:
    """Optimal string alignment distance: fewest insertions, deletions, substitutions and swaps of
    neighbours (no substring edited twice). Only up to `most`: what is more is just more than that.
    """
    return slips_between(first, 0, len(first), second, 0, len(second), most)


# Lists instead of numbers would cost more than the work itself.
def slips_between(  # noqa: PLR0917
    first: str, i: int, ends: int, second: str, k: int, ends_there: int, most: int
) -> int:
    """The same of the pieces from `i` to `ends`, and from `k` to `ends_there`.

    What is alike at both ends is never edited; so one of the edits is at the first letter left.
    """
    while i < ends and k < ends_there and first[i] == second[k]:
        i = i + 1
        k = k + 1
    while i < ends and k < ends_there and first[ends - 1] == second[ends_there - 1]:
        ends = ends - 1
        ends_there = ends_there - 1
    longer = max(ends - i, ends_there - k)
    if i == ends or k == ends_there:
        return longer
    if most == 0 or abs(ends - i - ends_there + k) > most:
        return most + 1
    if longer == 1:
        return 1
    best = slips_between(first, i + 1, ends, second, k + 1, ends_there, most - 1)
    best = min(best, slips_between(first, i + 1, ends, second, k, ends_there, most - 1))
    best = min(best, slips_between(first, i, ends, second, k + 1, ends_there, most - 1))
    if (
        i + 1 < ends
        and k + 1 < ends_there
        and first[i] == second[k + 1]
        and first[i + 1] == second[k]
    ):
        best = min(best, slips_between(first, i + 2, ends, second, k + 2, ends_there, most - 1))
    return best + 1


def one_end_alike(first: str, second: str) -> bool:
    """Whether two texts begin alike or end alike: long ones that are one slip apart always do."""
    return first[0] == second[0] or first[len(first) - 1] == second[len(second) - 1]


def forgiven(text: str) -> int:
    """How many slips are forgiven in a text of this length."""
    if len(text) >= 7:
        return 2
    return 1 if len(text) >= 4 else 0


def number_fit(asked: Spelt, number: Listed) -> float:
    """How well a number that was read fits a recorded one: from 0 to 1, or below 0, the same score,
    where look-alikes or a slip had to be forgiven.
    """
    typed = asked["plain"]
    recorded = number["plain"]
    seen = asked["canonical"]
    there = number["canonical"]
    if len(typed) == 0:
        return 0.0
    if typed == recorded:
        return 1.0
    if seen == there:
        return -0.95
    if len(typed) < len(recorded):
        part = len(typed) / len(recorded)
        if recorded[0 : len(typed)] == typed:
            return 0.75 + 0.15 * part
        if there[0 : len(seen)] == seen:
            return -0.6 - 0.15 * part
    near = abs(len(typed) - len(recorded)) <= 1 and len(recorded) > 0 and forgiven(typed) > 0
    if near and one_end_alike(seen, there) and slips(seen, there, 1) == 1:
        return -0.6
    return 0.0


def count_figures(text: str) -> int:
    """How many figures a plain text has: one slip makes at most one more or less."""
    count = 0
    for c in text:
        if c <= "9":
            count = count + 1
    return count


def word_score(asked: str, word: str, figures: int, there: int) -> float:
    """How well one word fits another, 0 to 1; both plain, with how many figures each has."""
    if asked == word:
        return 1.0
    if len(asked) < len(word) and word[0] == asked[0] and word[0 : len(asked)] == asked:
        return 0.8 + 0.1 * len(asked) / len(word)
    allowed = forgiven(asked)
    near = allowed > 0 and abs(len(asked) - len(word)) <= allowed
    if near and abs(figures - there) <= allowed and (allowed > 1 or one_end_alike(asked, word)):
        apart = slips(asked, word, allowed)
        if apart <= allowed:
            return 0.8 - 0.15 * apart
    return 0.0


def index_of(pack: Pack) -> Index:
    """What is looked through."""
    numbers: list[Listed] = []
    listed: list[str] = []
    places: dict[str, int] = {}
    figures: list[int] = []
    items: list[list[int]] = []
    for i in range(len(pack["items"])):
        item = pack["items"][i]
        texts = [item["number"]]
        there = words(item["name"] + " " + pack["kinds"][item["kind"]]["name"])
        there.append(plain(item["number"]))
        for carried in item["carried"]:
            texts.append(carried)
            for word in words(carried):
                there.append(word)
        for n in range(len(texts)):
            numbers.append(
                {
                    "item": i,
                    "plain": plain(texts[n]),
                    "canonical": canonical(texts[n]),
                    "text": texts[n],
                    "carried": 1 if n > 0 else 0,
                }
            )
        for word in there:
            place = places.get(word, -1)
            if place < 0:
                place = len(listed)
                places[word] = place
                listed.append(word)
                figures.append(count_figures(word))
                items.append([])
            items[place].append(i)
    return {
        "numbers": numbers,
        "words": listed,
        "figures": figures,
        "items": items,
        "count": len(pack["items"]),
    }


def fitting(index: Index, asked: list[str]) -> list[Fitting]:
    """The items that every word fits; the score is 0.9 of the mean of its best fits."""
    sums = filled(index["count"], 0.0)
    best = filled(index["count"], 0.0)
    fitted = filled(index["count"], 0)  # so many of the words, from the first on
    items: list[int] = []
    for n in range(len(asked)):
        items = []
        figures = count_figures(asked[n])
        for place in range(len(index["words"])):
            score = word_score(asked[n], index["words"][place], figures, index["figures"][place])
            if score > 0.0:
                for i in index["items"][place]:
                    if fitted[i] == n:
                        fitted[i] = n + 1
                        best[i] = score
                        items.append(i)
                    elif fitted[i] == n + 1:
                        best[i] = max(best[i], score)
        for i in items:
            sums[i] = sums[i] + best[i]
    return [{"item": item, "score": 0.9 * sums[item] / len(asked)} for item in items]


def find(engine: Engine, text: str, limit: int) -> list[Match]:
    """The items that a number or a name could mean, best first, at most `limit`.

    Empty for a text that fits nothing. The first call takes longer than the next.
    """
    pack = engine["pack"]
    if len(engine["index"]) == 0:
        engine["index"] = [index_of(pack)]
    index = engine["index"][0]
    asked: Spelt = {"plain": plain(text), "canonical": canonical(text)}
    scores = filled(len(pack["items"]), 0.0)
    fits = filled(len(pack["items"]), -1)  # the number that fits best; -1: the name does
    for n in range(len(index["numbers"])):
        number = index["numbers"][n]
        score = abs(number_fit(asked, number))
        if number["carried"] > 0:
            score = CARRIED * score
        if score > scores[number["item"]]:
            scores[number["item"]] = score
            fits[number["item"]] = n
    for hit in fitting(index, words(text)):
        if hit["score"] > scores[hit["item"]]:
            scores[hit["item"]] = hit["score"]
            fits[hit["item"]] = -1
    out: list[Match] = []
    for i in best_from(scores, 1e-9)[0:limit]:
        how: HowFound = "name"
        matched = pack["items"][i]["name"]
        if fits[i] >= 0:
            number = index["numbers"][fits[i]]
            how = "carried" if number["carried"] > 0 else "number"
            if number_fit(asked, number) < 0.0:
                how = "misread"
            matched = number["text"]
        out.append({"item": i, "score": scores[i], "how": how, "matched": matched})
    return out
