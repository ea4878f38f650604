"""The items of the packs as a row of a list is held against them."""

import math
import re
import unicodedata
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field

from rapidfuzz.distance import OSA

from identify.core.look_up import canonical, plain, words
from identify.core.types.engine import Engine
from identify.core.types.pack import Pack

ZEROS = re.compile(r"(?<!\d)0+(?=\d)")
UNKNOWN = 0.5  # what a word that is in no name weighs, squared
NEAR = 0.74  # least likeness (1 - slips / letters) of two spellings of a word


def unzeroed(text: str) -> str:
    """A plain number without zeros in front: "P 021" is P21."""
    return plain(ZEROS.sub("", text))


def unaccented(text: str) -> str:
    """A text without the accents of its letters: the core's words have none."""
    apart = unicodedata.normalize("NFKD", text.replace("ß", "ss"))
    return "".join(c for c in apart if not unicodedata.combining(c))


def stem(word: str) -> str:
    """A word without the s of the plural."""
    return word[:-1] if len(word) > 3 and word.endswith("S") and not word.endswith("SS") else word


def stems(text: str) -> list[str]:
    """The words of a text, each without the s of the plural."""
    return [stem(word) for word in words(unaccented(text))]


@dataclass(frozen=True)
class Entry:
    """One item: its pack and place there, and what is compared."""

    pack: str
    place: int
    number: str
    name: str
    plain: str
    unzeroed: str
    canonical: str
    carried: frozenset[str]
    spelt: str
    weights: dict[str, float]
    size: float
    sum: float


@dataclass(repr=False)
class Reference:
    """All items of some packs, with the weight of each word: the rarer, the more it says."""

    engines: dict[str, Engine]
    entries: list[Entry] = field(default_factory=list)
    rarity: dict[str, float] = field(default_factory=dict)
    near: dict[str, list[tuple[str, float]]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        named = []
        for pack_id, engine in self.engines.items():
            pack = engine["pack"]
            for place, item in enumerate(pack["items"]):
                kind = pack["kinds"][item["kind"]]["name"]
                extra = set(stems(kind)) if len(words(kind)) == 1 else set()
                named.append((pack_id, place, item, set(stems(item["name"])) | extra))
        counts = Counter(word for *_, there in named for word in there)
        self.rarity = {w: math.log(1 + len(named) / count) for w, count in counts.items()}
        for pack_id, place, item, there in named:
            weights = {word: self.rarity[word] for word in there}
            self.entries.append(
                Entry(
                    pack_id,
                    place,
                    item["number"],
                    item["name"],
                    plain(item["number"]),
                    unzeroed(item["number"]),
                    canonical(item["number"]),
                    frozenset(plain(text) for text in item["carried"]),
                    " ".join(words(unaccented(item["name"]))),
                    weights,
                    math.sqrt(sum(w * w for w in weights.values())),
                    sum(weights.values()),
                )
            )

    def pack(self, pack_id: str) -> Pack:
        """A compiled pack."""
        return self.engines[pack_id]["pack"]

    def like(self, word: str) -> list[tuple[str, float]]:
        """The known words that a word may be a spelling of, with how alike they are (0 to 1)."""
        if word not in self.near:
            if word in self.rarity:
                found = [(word, 1.0)]
            else:
                scores = ((w, OSA.normalized_similarity(word, w)) for w in self.rarity)
                found = [(w, s) for w, s in scores if s >= NEAR and len(word) > 2]
            self.near[word] = found
        return self.near[word]

    def spoken(self, said: Sequence[str]) -> tuple[dict[str, float], float]:
        """What words say, for in_common(): the known words meant, each with how alike it is, and
        the size of it all.
        """
        meant: dict[str, float] = {}
        size = 0.0
        for word in said:
            likes = self.like(word)
            size += max(((self.rarity[w] * s) ** 2 for w, s in likes), default=UNKNOWN)
            for w, s in likes:
                meant[w] = max(meant.get(w, 0.0), s)
        return meant, math.sqrt(size)


def in_common(spoken: tuple[dict[str, float], float], entry: Entry) -> tuple[float, float]:
    """How far the words said and those of an entry's name are the same, weighed by how rare they
    are: (cosine, share of the name that is said), each 0 to 1.
    """
    meant, size = spoken
    met = whole = 0.0
    for word, weight in entry.weights.items():
        if word in meant:
            met += weight * weight * meant[word]
            whole += weight * meant[word]
    if met == 0.0:
        return 0.0, 0.0
    return min(1.0, met / (size * entry.size)), whole / entry.sum
