"""The items of some ranges as a row of a list is held against them: numbers, and words by how rare
they are.
"""

from collections.abc import Sequence
from math import log

from ..lists import empty_lists, filled
from ..look_up import canonical, plain, slips, words
from ..native.values import root_of, unaccented
from ..runs import sort_of
from ..types.engine import Engine
from ..types.importing import Entry, Reference, Spoken, WordMeant

UNKNOWN = 0.5  # what a word that is in no name weighs, squared
NEAR = 0.74  # least likeness (1 - slips / letters) of two spellings of a word
LEAST_LETTERS = 3  # of a word that may be misspelt


def unzeroed(text: str) -> str:
    """A plain number without zeros in front: "P 021" is P21."""
    out = ""
    within = False
    for n in range(len(text)):
        c = text[n]
        figure = sort_of(c) == "figure"
        more = n + 1 < len(text) and sort_of(text[n + 1]) == "figure"
        leading = c == "0" and more and not within
        if not leading:
            out = out + c
            within = figure
    return plain(out)


def stem(word: str) -> str:
    """A word without the s of the plural."""
    last = len(word) - 1
    plural = len(word) > 3 and word[last] == "S" and word[last - 1] != "S"
    return word[0:last] if plural else word


def stems(text: str) -> list[str]:
    """The words of a text, each without the s of the plural."""
    return [stem(word) for word in words(unaccented(text))]


def each_once(texts: Sequence[str]) -> list[str]:
    """These texts, each once, in order."""
    out: list[str] = []
    for text in texts:
        if text not in out:
            out.append(text)
    return out


def likeness(first: str, second: str) -> float:
    """How alike two spellings are: 1 less the share of letters that slipped; 0 below NEAR."""
    longest = max(len(first), len(second))
    most = int((1.0 - NEAR) * longest)
    apart = slips(first, second, most)
    return 1.0 - apart / longest if apart <= most else 0.0


def place_of_word(reference: Reference, word: str) -> int:
    """Where a word stands among those of the reference, -1 for nowhere."""
    return reference["places"].get("w" + word, -1)


def taken_word(reference: Reference, word: str) -> int:
    """The same of a word that is taken in where it is not there."""
    place = place_of_word(reference, word)
    if place < 0:
        place = len(reference["words"])
        reference["places"]["w" + word] = place
        reference["words"].append(word)
        reference["rarity"].append(0.0)
    return place


def entry_of(reference: Reference, engine: Engine, place: int) -> Entry:
    """An item with what is compared, before the words are weighed."""
    pack = engine["pack"]
    item = pack["items"][place]
    kind = pack["kinds"][item["kind"]]["name"]
    spelt = stems(item["name"])
    own = spelt[:]
    if len(words(kind)) == 1:
        for word in stems(kind):
            own.append(word)
    letters = 0
    for word in spelt:
        letters = letters + len(word)
    return {
        "pack": pack["id"],
        "place": place,
        "number": item["number"],
        "name": item["name"],
        "plain": plain(item["number"]),
        "unzeroed": unzeroed(item["number"]),
        "canonical": canonical(item["number"]),
        "carried": [plain(text) for text in item["carried"]],
        "words": [taken_word(reference, stem) for stem in each_once(own)],
        "spelt": [taken_word(reference, stem) for stem in spelt],
        "letters": letters,
        "size": 0.0,
        "sum": 0.0,
    }


def new_reference(engines: list[Engine]) -> Reference:
    """All items of these ranges; the rarer a word is among them, the more it says."""
    out: Reference = {
        "engines": engines, "entries": [], "ranges": [], "words": [], "places": {}, "rarity": [],
        "holders": [], "near_at": {}, "near": [], "wordings": [], "read_at": {}, "read": [],
    }  # fmt: skip
    for engine in engines:
        pack = engine["pack"]
        named = words(pack["range"]["name"])
        named.append(pack["id"].upper())
        out["ranges"].append(named)
        out["wordings"].append([])
        for place in range(len(pack["items"])):
            out["entries"].append(entry_of(out, engine, place))
    count = len(out["entries"])
    out["holders"] = empty_lists(len(out["words"]))
    for n in range(count):
        for word in out["entries"][n]["words"]:
            out["holders"][word].append(n)
    for word in range(len(out["words"])):
        out["rarity"][word] = log(1.0 + count / max(1, len(out["holders"][word])))
    for entry in out["entries"]:
        squares = 0.0
        for word in entry["words"]:
            weight = out["rarity"][word]
            squares = squares + weight * weight
            entry["sum"] = entry["sum"] + weight
        entry["size"] = root_of(squares)
    return out


def engine_of(reference: Reference, pack: str) -> int:
    """The place of the engine of a range."""
    for n in range(len(reference["engines"])):
        if reference["engines"][n]["pack"]["id"] == pack:
            return n
    return 0


def near_words(reference: Reference, word: str) -> list[WordMeant]:
    """The known words that a word may be a spelling of, with how alike they are (0 to 1)."""
    known = reference["near_at"].get("w" + word, -1)
    if known >= 0:
        return reference["near"][known]
    near: list[WordMeant] = []
    place = place_of_word(reference, word)
    if place >= 0:
        near.append({"word": place, "like": 1.0})
    elif len(word) >= LEAST_LETTERS:
        for n in range(len(reference["words"])):
            like = likeness(word, reference["words"][n])
            if like >= NEAR:
                near.append({"word": n, "like": like})
    reference["near_at"]["w" + word] = len(reference["near"])
    reference["near"].append(near)
    return near


def spoken(reference: Reference, said: Sequence[str]) -> Spoken:
    """The known words that these words mean, each with how alike it is, and the size of it all."""
    meant_words: list[int] = []
    likes = filled(len(reference["words"]), 0.0)
    size = 0.0
    for word in said:
        weight = UNKNOWN
        near = near_words(reference, word)
        if len(near) > 0:
            weight = 0.0
        for meant in near:
            own = reference["rarity"][meant["word"]] * meant["like"]
            weight = max(weight, own * own)
            if likes[meant["word"]] == 0.0:
                meant_words.append(meant["word"])
            likes[meant["word"]] = max(likes[meant["word"]], meant["like"])
        size = size + weight
    return {"words": meant_words, "likes": likes, "size": root_of(size)}
