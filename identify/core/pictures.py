"""Which of these is it? Where a few looks are left that differ at a glance, their portraits are
shown, and one tap answers for all in which these differ: when that tells about as much by second as
the question that would be asked in words.
"""

from .asking import TAP, cost_of, unasked
from .belief import believe
from .lists import best_from, filled, largest, place_of, total
from .look_up import words
from .portraits import portrait, seen_state
from .reasons import variant_chances
from .rings import issues_of, state_of
from .types.engine import Belief, Engine
from .types.portraits import Choosing, Layer, Left, Looked, Picture, Pictures, Sitting, Tally
from .types.session import Answer, Session
from .worth import entropy

HELD = 0.6  # so much the pictures must hold together, or too often it is none of them
ONE_LEADS = 0.9  # a leader with this much is compared by itself
MOST_LEFT = 60  # of more variants than this a few pictures never hold enough
MOST_PICTURES = 8  # more pictures than this cannot be large enough
WIDE_ONES = 3  # so few are each as wide as the phone
FEW_LOOKS = 2  # one look is an ordinary question
MOST_LOOKS = 4  # in which pictures may differ: with more, one slip makes it none of them
MOSTLY = 0.9  # so much of the chance has a look recorded
FAINT = 0.005  # a variant with less, or with a fiftieth of the leader's chance, is left out
SEEN_TOO = 0.03  # a look with less is none to tell apart
GLANCE_SECONDS = 1.5  # seconds for a look at the pictures and the piece (a guess)
WORD_SECONDS = 0.24  # seconds to read a word: 250 a minute (common practice, no source)
# So much of what the question tells by second is enough: two looks also tell more than one of what
# is in no range, which is not counted here (simulated: 0.6 saves more seconds than 0.8 or 1).
ENOUGH_TOLD = 0.6
# What can be seen in a portrait half as wide as a phone, and without touching the piece; and what
# only in one as wide as the phone.
AT_A_GLANCE = [
    "body", "extent", "load", "train", "colour", "roof", "roof_shape", "base", "lining", "emblem",
    "windows", "plan",
]  # fmt: skip
CLOSE_UP = ["number", "front", "horns", "gangway", "footboards", "under_gear", "planks"]
NO_SUCH = "no such thing"  # beside the looks
PLAIN_TO_SEE = ["body", "colour", "roof", "base", "lining"]  # and needs no words beside the picture


def pictures(engine: Engine, shown: Sitting, session: Session, asked: int) -> Pictures:
    """The portraits to choose from, likeliest first, and what the choice of each answers; none
    where that would not help. `shown` is from `sitting`, `asked` the feature (index) that would be
    asked about in words.

    Variants that look the same share a picture. A picture answers the features in which the
    pictures differ, and no other: by the states that look like it.
    """
    state = believe(engine, session)
    chances = variant_chances(engine, state)
    leader = chances[largest(chances)]
    nothing: Pictures = {"features": [], "captioned": [], "layers": [], "pictures": []}
    variants = best_from(chances, max(FAINT, leader / 50.0))
    if leader >= ONE_LEADS or len(variants) > MOST_LEFT:
        return nothing
    left: Left = {
        "variants": variants,
        "held": [chances[v] for v in variants],
        "issues": [issues_of(state, v) for v in variants],
    }
    telling = looks_apart(engine, shown, session, state, left)
    glanced = [look for look in telling if shown["layers"][look["feature"]] in AT_A_GLANCE]
    found = best_offer(engine, shown, telling, left, WIDE_ONES)
    small = best_offer(engine, shown, glanced, left, MOST_PICTURES)
    if small["rate"] > found["rate"]:
        found = small
    if found["rate"] <= ENOUGH_TOLD * rate_in_words(engine, state, left, asked):
        return nothing
    return drawn_of(engine, shown, session, left, found)


def looks_apart(
    engine: Engine, shown: Sitting, session: Session, state: Belief, left: Left
) -> list[Looked]:
    """The features whose looks tell these variants apart in a portrait, what tells most first."""
    out: list[Looked] = []
    for f in unasked(engine, session):
        fine = shown["layers"][f] in AT_A_GLANCE or shown["layers"][f] in CLOSE_UP
        plain = engine["pack"]["features"][f]["needs"] == "nothing"
        if fine and plain and not is_covered(engine, shown, f):
            looks = looks_in(engine, shown, state, left, f)
            bits = bits_of_looks(looks, left["held"])
            if bits > 0.0:
                out.append({"feature": f, "looks": looks, "bits": bits})
    return sorted(out, key=lambda look: -look["bits"])


def is_covered(engine: Engine, shown: Sitting, feature: int) -> bool:
    """Whether another feature that a piece can have as well fills its layer: a portrait shows the
    first of them.
    """
    features = engine["pack"]["features"]
    for f in range(feature):
        if shown["layers"][f] == shown["layers"][feature]:
            for kind in features[f]["kinds"]:
                if kind in features[feature]["kinds"]:
                    return True
    return False


def rate_in_words(engine: Engine, state: Belief, left: Left, asked: int) -> float:
    """What the question in words would tell of these variants: bits by second."""
    if asked < 0:
        return 0.0
    feature = engine["pack"]["features"][asked]
    names: list[str] = []
    for each in left["issues"]:
        seen = state_of(engine, state, each, asked)
        names.append(feature["states"][seen]["id"] if seen >= 0 else "not known")
    shares = [tally["held"] for tally in tallied(names, left["held"])]
    whole = total(shares)
    if whole <= 0.0:
        return 0.0
    return whole * entropy([share / whole for share in shares]) / cost_of(feature)


def best_offer(
    engine: Engine, shown: Sitting, telling: list[Looked], left: Left, most: int
) -> Choosing:
    """The pictures, told apart by the first few of these looks, that tell most by second."""
    out: Choosing = {"rate": 0.0, "telling": [], "at": [], "names": []}
    deepest = min(MOST_LOOKS, len(telling))
    for count in range(FEW_LOOKS, deepest + 1):
        names = looks_together(telling[0:count], len(left["held"]))
        groups = sorted(tallied(names, left["held"]), key=lambda tally: -tally["held"])
        widest = min(most, len(groups))
        for n in range(2, widest + 1):
            first = groups[0:n]
            whole = total([tally["held"] for tally in first])
            at = [tally["first"] for tally in first]
            differing = [look for look in telling[0:count] if is_apart(look, at)]
            if whole >= HELD and len(differing) >= FEW_LOOKS:
                bits = whole * entropy([tally["held"] / whole for tally in first])
                rate = bits / seconds_for(engine, shown, differing, at)
                if rate > out["rate"]:
                    out = {"rate": rate, "telling": differing, "at": at, "names": names}
    return out


def looks_together(telling: list[Looked], count: int) -> list[str]:
    """How each variant looks in all of these; "" where one of them is not recorded."""
    out: list[str] = []
    for n in range(count):
        name = ""
        known = True
        for look in telling:
            known = known and look["looks"][n] != ""
            name = name + "/" + look["looks"][n]
        out.append(name if known else "")
    return out


def is_apart(look: Looked, at: list[int]) -> bool:
    """Whether these variants do not all look the same."""
    for place in at:
        if look["looks"][place] != look["looks"][at[0]]:
            return True
    return False


def seconds_for(engine: Engine, shown: Sitting, telling: list[Looked], at: list[int]) -> float:
    """How long it takes to choose: a glance for each look, and all captions read; a picture that
    has none takes as long as a word.
    """
    read = 0
    for place in at:
        told = 0
        for look in telling:
            if shown["layers"][look["feature"]] not in PLAIN_TO_SEE:
                told = told + words_for(engine, shown, look["feature"], look["looks"][place])
        read = read + max(1, told)
    return TAP + GLANCE_SECONDS * len(telling) + WORD_SECONDS * read


def words_for(engine: Engine, shown: Sitting, feature: int, look: str) -> int:
    """How many words say how it looks."""
    states = engine["pack"]["features"][feature]["states"]
    out = 0
    for s in range(len(states)):
        if shown["looks"][feature][s] == look:
            said = states[s].get("caption", states[s]["name"])
            out = out + len(words(said)) + (1 if out > 0 else 0)
    return out


def drawn_of(
    engine: Engine, shown: Sitting, session: Session, left: Left, offer: Choosing
) -> Pictures:
    """What is drawn of an offer. Where variants that share a picture do not look the same, that is
    not drawn.
    """
    out: list[Picture] = []
    for place in offer["at"]:
        states: list[list[int]] = []
        for look in offer["telling"]:
            names = shown["looks"][look["feature"]]
            states.append([s for s in range(len(names)) if names[s] == look["looks"][place]])
        out.append({"variant": left["variants"][place], "states": states})
    features = [told["feature"] for told in offer["telling"]]
    chosen = [shown["layers"][f] for f in features]
    seen = layers_seen(engine, shown, session)
    mixed = layers_mixed(engine, shown, left, offer)
    layers: list[str] = []
    for layer in AT_A_GLANCE:
        if layer in chosen or layer in seen or layer not in mixed:
            layers.append(layer)
    for layer in CLOSE_UP:
        if layer in chosen:
            layers.append(layer)
    captioned = [shown["layers"][f] not in PLAIN_TO_SEE for f in features]
    return {"features": features, "captioned": captioned, "layers": layers, "pictures": out}


def layers_seen(engine: Engine, shown: Sitting, session: Session) -> list[str]:
    """The layers of which one state was seen on the piece: a candidate that differs in them is one
    in spite of that.
    """
    features = engine["pack"]["features"]
    out: list[str] = []
    for f in range(len(features)):
        if seen_state(engine["pack"], f, session["answers"]) >= 0:
            out.append(shown["layers"][f])
    return out


def layers_mixed(engine: Engine, shown: Sitting, left: Left, offer: Choosing) -> list[str]:
    """The layers in which variants that share one of the pictures look different."""
    out: list[str] = []
    for place in offer["at"]:
        own = layers_drawn(engine, shown, left, place)
        whole = 0.0
        away = filled(len(AT_A_GLANCE), 0.0)
        for n in range(len(offer["names"])):
            same = offer["names"][n] == offer["names"][place]
            whole = whole + (left["held"][n] if same else 0.0)
            if same and n != place:
                other = layers_drawn(engine, shown, left, n)
                for a in range(len(away)):
                    if is_unlike(own, other, AT_A_GLANCE[a]):
                        away[a] = away[a] + left["held"][n]
        for a in range(len(away)):
            if away[a] > SEEN_TOO * whole:
                out.append(AT_A_GLANCE[a])
    return out


def layers_drawn(engine: Engine, shown: Sitting, left: Left, place: int) -> list[Layer]:
    """What the portrait shows of one of those that are left."""
    nothing: list[Answer] = []
    return portrait(engine["pack"], shown, [left["variants"][place]], nothing)["layers"]


def is_unlike(own: list[Layer], other: list[Layer], layer: str) -> bool:
    """Whether a portrait shows what another piece cannot look like, as far as both are recorded; of
    several looks it shows the likeliest.
    """
    here = possible_looks(own, layer)
    there = possible_looks(other, layer)
    if len(here) == 0 or len(there) == 0 or here[0] == "":
        return False
    return here[0] not in there


def possible_looks(layers: list[Layer], layer: str) -> list[str]:
    """All that a layer can be; [] where that is not recorded. That there is none is a look."""
    for one in layers:
        if one["layer"] == layer:
            return one["looks"]
    return [NO_SUCH]


def looks_in(engine: Engine, shown: Sitting, state: Belief, left: Left, feature: int) -> list[str]:
    """How each variant, by its issues, looks in a feature; "" where that is not recorded, or there
    is none.
    """
    about = engine["pack"]["features"][feature]
    out: list[str] = []
    for n in range(len(left["variants"])):
        item = engine["pack"]["items"][engine["pack"]["variants"][left["variants"][n]]["item"]]
        seen = state_of(engine, state, left["issues"][n], feature)
        drawn = seen >= 0 and seen != about["none"] and item["kind"] in about["kinds"]
        out.append(shown["looks"][feature][seen] if drawn else "")
    return out


def bits_of_looks(looks: list[str], chances: list[float]) -> float:
    """What telling these looks would give; 0 where they are alike, or not recorded of MOSTLY."""
    held = [tally["held"] for tally in tallied(looks, chances)]
    several = len([share for share in held if share > SEEN_TOO]) > 1
    whole = total(held)
    known = several and whole >= MOSTLY * total(chances)
    return entropy([share / whole for share in held]) if known else 0.0


def tallied(names: list[str], chances: list[float]) -> list[Tally]:
    """How much of the chance each name has that is not "", and where it is first."""
    out: list[Tally] = []
    for n in range(len(names)):
        if names[n] != "":
            place = place_of(out, names[n])
            if place < 0:
                out.append({"id": names[n], "first": n, "held": chances[n]})
            else:
                out[place]["held"] = out[place]["held"] + chances[n]
    return out
