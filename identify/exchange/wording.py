"""Which variants of an item a free text may mean: "maroon, metal horns".

Words that name states of the item's features are taken as answers that are not sure, and the engine
does the rest. A text that holds the very words of a variant's name counts for that variant as well.
"""

from dataclasses import dataclass, field
from functools import cache

from identify.core.belief import believe
from identify.core.session import new_session
from identify.core.types.engine import Engine
from identify.core.types.pack import Pack
from identify.core.types.records import Chance
from identify.core.types.session import Answer, How
from identify.exchange.reference import stems

NAMED = 6.0  # how many times likelier each part of its name that is said makes a variant: a guess
WHOLE = 4.0  # and all of its name again: a guess
KNOWN = 0.9  # from here on the variant is taken as known
LEAST = 0.05  # variants below are not kept
EMPTY = frozenset("A AN AND AT IN OF ON OR THE WITH ITS IT BY TO NO NOT ONE TWO BOTH THREE".split())
COUNTS = frozenset("ONE TWO THREE BOTH".split())


# Colours in German, French and Dutch (common practice, no source), as stems() writes them.
COLOURS = {
    word: colour.split()[0]
    for colour in (
        "GREEN GRUN GRUNE VERT VERTE GROEN GROENE", "BLUE BLAU BLAUE BLEU BLEUE BLAUW BLAUWE",
        "BLACK SCHWARZ SCHWARZE NOIR NOIRE ZWART ZWARTE", "RED ROT ROTE ROUGE ROOD RODE",
        "MAROON WEINROT BORDEAUX", "BROWN BRAUN BRAUNE BRUN BRUNE MARRON BRUIN BRUINE",
        "GREY GRAY GRAU GRAUE GRIS GRISE GRIJS GRIJZE", "YELLOW GELB GELBE JAUNE GEEL GELE",
        "CREAM CREME", "SILVER SILBER SILBERN ARGENT ARGENTE ZILVER", "WHITE WEISS BLANC WIT",
    )
    for word in colour.split()
}  # fmt: skip


@cache
def _bag(text: str) -> frozenset[str]:
    return frozenset(COLOURS.get(word, word) for word in stems(text))


@dataclass(frozen=True)
class State:
    """A state of a feature with what must stand in a text for it: each set of words is enough.

    bare: words that name it without saying what of (a colour), if nothing else uses them.
    """

    feature: int
    state: str
    phrases: tuple[frozenset[str], ...]
    bare: frozenset[str]


@dataclass
class Wording:
    """What texts can say about the variants of one pack."""

    engine: Engine
    states: list[State] = field(default_factory=list)
    known: dict[tuple[int, str], list[Chance]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        taken: set[frozenset[str]] = set()
        for place, feature in enumerate(self.engine["pack"]["features"]):
            if feature["id"] == "kind" or feature["id"].startswith("mark_"):
                continue
            nouns = (_bag(feature["name"]) | _bag(feature["id"].replace("_", " "))) - EMPTY
            for state in feature["states"]:
                own = _bag(state["id"].replace("_", " "))
                if state["id"] in ("none", "plain"):
                    continue
                first = _bag(state["name"].split(",")[0].split(":")[0])
                phrases = [words | {noun} for noun in nouns for words in (own, first)]
                phrases += [first] if len(first - EMPTY) > 1 else []
                bare = own if own not in taken and own - EMPTY else frozenset()
                taken.add(own)  # of features that share a word, the first is meant
                self.states.append(State(place, state["id"], tuple(phrases), bare))

    def mentioned(self, item: int, text: str) -> list[Answer]:
        """The states of an item's features that a text names, as answers of a session.

        A feature of which two states are named is "one of these"; of phrases within one another
        the longest counts, and a bare word counts where no phrase uses it.
        """
        pack = self.engine["pack"]
        kind = pack["items"][item]["kind"]
        there = [s for s in self.states if kind in pack["features"][s.feature]["kinds"]]
        hits: dict[int, list[str]] = {}
        own = self._named(item)
        for whole in _clauses(text):
            clause = whole - own
            used: frozenset[str] = frozenset()
            longest: dict[int, tuple[int, list[str]]] = {}
            for state in there:
                fits = [phrase for phrase in state.phrases if len(phrase) > 1 and phrase <= clause]
                if fits:
                    size = max(len(phrase) for phrase in fits)
                    used |= frozenset().union(*fits)
                    most, states = longest.get(state.feature, (0, []))
                    if size >= most:
                        kept = states if size == most else []
                        longest[state.feature] = (size, [*kept, state.state])
            for place, (_, states) in longest.items():
                hits.setdefault(place, []).extend(states)
            for state in there:
                if state.bare and state.bare <= clause - used:
                    hits.setdefault(state.feature, []).append(state.state)
        answers: list[Answer] = []
        for place, named in sorted(hits.items()):
            states = list(dict.fromkeys(named))
            how: How = "unsure" if len(states) == 1 else "several"
            answers.append({"feature": pack["features"][place]["id"], "how": how, "states": states})
        return answers

    def _named(self, item: int) -> frozenset[str]:
        """The words that only say which item it is."""
        pack = self.engine["pack"]
        entry = pack["items"][item]
        return _bag(f"{entry['name']} {pack['kinds'][entry['kind']]['name']}")

    def variants(self, item: int, text: str) -> list[Chance]:
        """The variants that a text may mean, likeliest first: [{variant, chance}], whose chances
        add up to 1. Empty where the text tells nothing.
        """
        key = (item, " ".join(stems(text)))
        if key not in self.known:
            self.known[key] = self._variants(item, text)
        return self.known[key]

    def _variants(self, item: int, text: str) -> list[Chance]:
        pack = self.engine["pack"]
        mine = [v for v, variant in enumerate(pack["variants"]) if variant["item"] == item]
        by_id = [v for v in mine if pack["variants"][v]["id"] == text.strip()]
        if by_id:
            return [{"variant": pack["variants"][by_id[0]]["id"], "chance": 1}]
        answers = self.mentioned(item, text)
        clauses = [clause - EMPTY | (clause & COUNTS) for clause in _clauses(text)]
        if not any(clause - self._named(item) for clause in clauses):
            return []
        said = {v: _said(pack["variants"][v]["name"], clauses) for v in mine}
        if len(mine) == 1 or (not answers and len(set(said.values())) == 1):
            return []
        session = new_session(self.engine) | {"answers": answers}
        session["scope"] = {"kind": "", "items": [pack["items"][item]["number"]]}
        belief = believe(self.engine, session)
        chances = dict.fromkeys(mine, 0.0)
        for row, chance in zip(belief["rows"], belief["chances"], strict=True):
            chances[pack["rows"]["variant"][row]] += chance
        for v in mine:
            chances[v] *= NAMED ** said[v][0] * (WHOLE if said[v][1] else 1.0)
        return _kept(pack, chances)


def _kept(pack: Pack, chances: dict[int, float]) -> list[Chance]:
    """The likely ones of these; none where that leaves out nothing."""
    whole = sum(chances.values())
    if whole == 0.0:
        return []
    shares = {v: chance / whole for v, chance in chances.items()}
    best = max(shares, key=lambda v: shares[v])
    if shares[best] >= KNOWN:
        return [{"variant": pack["variants"][best]["id"], "chance": 1}]
    kept = sorted((v for v in shares if shares[v] >= LEAST), key=lambda v: -shares[v])
    if len(kept) == len(shares):
        return []
    left = sum(shares[v] for v in kept)
    return [
        {"variant": pack["variants"][v]["id"], "chance": round(shares[v] / left, 3)} for v in kept
    ]


def _clauses(text: str) -> list[frozenset[str]]:
    """The words of each part of a text between commas and the like."""
    for mark in ";:()/\n.":
        text = text.replace(mark, ",")
    return [_bag(part) for part in text.split(",") if part.strip()]


def _said(name: str, clauses: list[frozenset[str]]) -> tuple[int, bool]:
    """How many parts of a variant's name stand in a text, and whether all do."""
    parts = [part - EMPTY | (part & COUNTS) for part in _clauses(name)]
    count = sum(any(part <= clause for clause in clauses) for part in parts if part)
    return count, bool(parts) and count == len(parts)
