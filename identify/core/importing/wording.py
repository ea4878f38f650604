"""Which variants of an item a free text may mean: "maroon, metal horns".

Words that name states of the item's features are taken as answers that are not sure, and the engine
does the rest. A text that holds the very words of a variant's name counts for that variant as well.
"""

from collections.abc import Sequence

from ..belief import believe
from ..edtf import padded
from ..lists import best_first, filled, total
from ..session import new_session
from ..types.engine import Engine
from ..types.importing import Hit, NamedPart, Reference, StateWords, Wording
from ..types.pack import Pack
from ..types.records import Chance
from ..types.session import Answer, How
from .item_words import each_once, engine_of, stems
from .text_parts import joined_by, split_at, without_blanks

NAMED_SO = (
    6.0  # how many times likelier each part of its name that is said makes a variant: a guess
)
NAMED_WHOLE = 4.0  # and all of its name again: a guess
KNOWN_FROM = 0.9  # from here on the variant is taken as known
KEPT_FROM = 0.05  # variants below are not kept
NO_SENSE = [
    "A", "AN", "AND", "AT", "IN", "OF", "ON", "OR", "THE", "WITH", "ITS", "IT", "BY", "TO", "NO",
    "NOT", "ONE", "TWO", "BOTH", "THREE",
]  # fmt: skip
COUNTING = ["ONE", "TWO", "THREE", "BOTH"]
# Colours in German, French and Dutch (common practice, no source), as stems() writes them.
COLOUR_NAMES: list[list[str]] = [
    ["GREEN", "GRUN", "GRUNE", "VERT", "VERTE", "GROEN", "GROENE"],
    ["BLUE", "BLAU", "BLAUE", "BLEU", "BLEUE", "BLAUW", "BLAUWE"],
    ["BLACK", "SCHWARZ", "SCHWARZE", "NOIR", "NOIRE", "ZWART", "ZWARTE"],
    ["RED", "ROT", "ROTE", "ROUGE", "ROOD", "RODE"],
    ["MAROON", "WEINROT", "BORDEAUX"],
    ["BROWN", "BRAUN", "BRAUNE", "BRUN", "BRUNE", "MARRON", "BRUIN", "BRUINE"],
    ["GREY", "GRAY", "GRAU", "GRAUE", "GRIS", "GRISE", "GRIJS", "GRIJZE"],
    ["YELLOW", "GELB", "GELBE", "JAUNE", "GEEL", "GELE"],
    ["CREAM", "CREME"],
    ["SILVER", "SILBER", "SILBERN", "ARGENT", "ARGENTE", "ZILVER"],
    ["WHITE", "WEISS", "BLANC", "WIT"],
]
PARTS_OF_TEXT = ",;:()/\n."


def colour_of(word: str) -> str:
    """A word, a colour of another language in English."""
    for colour in COLOUR_NAMES:
        if word in colour:
            return colour[0]
    return word


def bag(text: str) -> list[str]:
    """The words of a text, each once, as they are compared."""
    return each_once([colour_of(word) for word in stems(text)])


def left_without(words_of: Sequence[str], others: Sequence[str]) -> list[str]:
    """The words that are not among others."""
    return [word for word in words_of if word not in others]


def are_all_in(words_of: Sequence[str], others: Sequence[str]) -> bool:
    """Whether all these words are among others."""
    for word in words_of:
        if word not in others:
            return False
    return True


def telling(words_of: Sequence[str]) -> list[str]:
    """The words that say something, those that count among them."""
    return [word for word in words_of if word not in NO_SENSE or word in COUNTING]


def clauses_of(text: str) -> list[list[str]]:
    """The words of each part of a text between commas and the like."""
    return [bag(part) for part in split_at(text, PARTS_OF_TEXT) if without_blanks(part) != ""]


def words_of_id(ident: str) -> str:
    """An id as words."""
    return joined_by(split_at(ident, "_"), " ")


def state_words(pack: Pack) -> Wording:
    """What texts can say about the variants of a range."""
    states: list[StateWords] = []
    taken: list[str] = []
    for place in range(len(pack["features"])):
        feature = pack["features"][place]
        if feature["id"] == "kind" or feature["id"][0:5] == "mark_":
            continue
        nouns = left_without(bag(feature["name"] + " " + words_of_id(feature["id"])), NO_SENSE)
        for state in feature["states"]:
            if state["id"] in ["none", "plain"]:
                continue
            own = bag(words_of_id(state["id"]))
            first = bag(split_at(state["name"], ",:")[0])
            phrases: list[list[str]] = []
            for noun in nouns:
                for said in [own, first]:
                    phrase = said[:]
                    phrase.append(noun)
                    phrases.append(each_once(phrase))
            if len(left_without(first, NO_SENSE)) > 1:
                phrases.append(first)
            name = joined_by(sorted(own, key=lambda word: word), " ")
            free = name not in taken and len(left_without(own, NO_SENSE)) > 0
            taken.append(name)  # of features that share a word, the first is meant
            states.append(
                {
                    "feature": place, "state": state["id"], "phrases": phrases,
                    "bare": own if free else own[0:0],
                }
            )  # fmt: skip
    return {"states": states}


def wording_of(reference: Reference, at: int) -> Wording:
    """What texts can say about the variants of one of the ranges; worked out once."""
    kept = reference["wordings"][at]
    if len(kept) == 0:
        kept.append(state_words(reference["engines"][at]["pack"]))
    return kept[0]


def longest_phrases(there: list[StateWords], clause: list[str], used: list[str]) -> list[Hit]:
    """The states that phrases of a clause name; of one feature those of the longest phrase. The
    words of all phrases go into `used`.
    """
    named: list[Hit] = []
    sizes: list[int] = []
    for state in there:
        size = 0
        for phrase in state["phrases"]:
            if len(phrase) > 1 and are_all_in(phrase, clause):
                size = max(size, len(phrase))
                for word in phrase:
                    used.append(word)
        if size > 0:
            named.append({"feature": state["feature"], "state": state["state"]})
            sizes.append(size)
    out: list[Hit] = []
    for n in range(len(named)):
        longer = 0
        for k in range(len(named)):
            if named[k]["feature"] == named[n]["feature"] and sizes[k] > sizes[n]:
                longer = longer + 1
        if longer == 0:
            out.append(named[n])
    return out


def mentioned(pack: Pack, wording: Wording, item: int, text: str) -> list[Answer]:
    """The states of an item's features that a text names, as answers of a session.

    A feature of which two states are named is "one of these"; a bare word counts where no phrase
    uses it.
    """
    kind = pack["items"][item]["kind"]
    there = [
        each for each in wording["states"] if kind in pack["features"][each["feature"]]["kinds"]
    ]
    own = only_names(pack, item)
    hits: list[Hit] = []
    for whole in clauses_of(text):
        clause = left_without(whole, own)
        used: list[str] = []
        for hit in longest_phrases(there, clause, used):
            hits.append(hit)
        left = left_without(clause, used)
        for state in there:
            if len(state["bare"]) > 0 and are_all_in(state["bare"], left):
                hits.append({"feature": state["feature"], "state": state["state"]})
    answers: list[Answer] = []
    for place in range(len(pack["features"])):
        states = each_once([each["state"] for each in hits if each["feature"] == place])
        if len(states) > 0:
            how: How = "unsure" if len(states) == 1 else "several"
            answers.append({"feature": pack["features"][place]["id"], "how": how, "states": states})
    return answers


def only_names(pack: Pack, item: int) -> list[str]:
    """The words that only say which item it is."""
    entry = pack["items"][item]
    return bag(entry["name"] + " " + pack["kinds"][entry["kind"]]["name"])


def name_said(name: str, clauses: list[list[str]]) -> NamedPart:
    """How many parts of a variant's name stand in a text, and whether all do."""
    count = 0
    there = 0
    for part in clauses_of(name):
        said = telling(part)
        if len(said) > 0:
            there = there + 1
            inside = 0
            for clause in clauses:
                if are_all_in(said, clause):
                    inside = 1
            count = count + inside
    return {"count": count, "whole": 1 if there > 0 and count == there else 0}


def rounded_share(share: float) -> float:
    """A share in thousandths."""
    return int(share * 1000.0 + 0.5) / 1000.0


def likely_ones(pack: Pack, variants: list[int], chances: list[float]) -> list[Chance]:
    """The likely ones of these variants; none where that leaves out nothing."""
    out: list[Chance] = []
    whole = total(chances)
    if whole == 0.0:
        return out
    order = best_first(chances)
    best = order[0]
    if chances[best] / whole >= KNOWN_FROM:
        return [{"variant": pack["variants"][variants[best]]["id"], "chance": 1}]
    kept = [at for at in order if chances[at] / whole >= KEPT_FROM]
    if len(kept) == len(chances):
        return out
    left = total([chances[k] / whole for k in kept])
    for n in kept:
        share = rounded_share(chances[n] / whole / left)
        out.append({"variant": pack["variants"][variants[n]]["id"], "chance": share})
    return out


def variants_of(pack: Pack, item: int) -> list[int]:
    """The places of an item's variants."""
    return [v for v in range(len(pack["variants"])) if pack["variants"][v]["item"] == item]


def variants_read(engine: Engine, wording: Wording, item: int, text: str) -> list[Chance]:
    """The variants that a text may mean, worked out."""
    pack = engine["pack"]
    nothing: list[Chance] = []
    mine = variants_of(pack, item)
    for v in mine:
        if pack["variants"][v]["id"] == without_blanks(text):
            return [{"variant": pack["variants"][v]["id"], "chance": 1}]
    answers = mentioned(pack, wording, item, text)
    clauses = [telling(clause) for clause in clauses_of(text)]
    own = only_names(pack, item)
    if len([clause for clause in clauses if not are_all_in(clause, own)]) == 0:
        return nothing
    said = [name_said(pack["variants"][each]["name"], clauses) for each in mine]
    alike = len([part for part in said if is_same_part(part, said[0])])
    if len(mine) == 1 or (len(answers) == 0 and alike == len(said)):
        return nothing
    session = new_session(engine)
    session["answers"] = answers
    session["scope"] = {"kind": "", "items": [pack["items"][item]["number"]]}
    belief = believe(engine, session)
    by_variant = filled(len(pack["variants"]), 0.0)
    for n in range(len(belief["rows"])):
        v = pack["rows"]["variant"][belief["rows"][n]]
        by_variant[v] = by_variant[v] + belief["chances"][n]
    chances: list[float] = []
    for n in range(len(mine)):
        chance = by_variant[mine[n]]
        for _ in range(said[n]["count"]):
            chance = chance * NAMED_SO
        chances.append(chance * NAMED_WHOLE if said[n]["whole"] > 0 else chance)
    return likely_ones(pack, mine, chances)


def is_same_part(first: NamedPart, second: NamedPart) -> bool:
    """Whether two names are said alike."""
    return first["count"] == second["count"] and first["whole"] == second["whole"]


def variants_meant(reference: Reference, pack: str, item: int, text: str) -> list[Chance]:
    """The variants of an item that a text may mean, likeliest first, whose chances add up to 1;
    empty where the text tells nothing. What was read is kept.
    """
    at = engine_of(reference, pack)
    name = "v" + padded(at, 1) + " " + padded(item, 1) + " " + without_blanks(text)
    known = reference["read_at"].get(name, -1)
    if known < 0:
        known = len(reference["read"])
        wording = wording_of(reference, at)
        reference["read_at"][name] = known
        reference["read"].append(variants_read(reference["engines"][at], wording, item, text))
    return reference["read"][known]
