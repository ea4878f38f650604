"""Which of these is it? Once a few looks are left that differ at a glance, their portraits are
shown, and one tap answers for all in which these differ.
"""

from .asking import unasked
from .belief import believe
from .lists import best_from, largest, place_of, total
from .reasons import variant_chances
from .rings import state_of
from .types.engine import Belief, Engine
from .types.portraits import Looked, Picture, Pictures, Sitting, Tally
from .types.session import Session
from .worth import entropy

HELD = 0.85  # so much the pictures must hold together, or too often it is none of them
ONE_LEADS = 0.9  # a leader with this much is compared by itself
MOST_PICTURES = 8  # more pictures than this cannot be large enough
WIDE_ONES = 3  # so few are each as wide as the phone
FEW_LOOKS = 2  # one look is an ordinary question
MOST_LOOKS = 4  # in which pictures may differ: with more, one slip makes it none of them
MOSTLY = 0.9  # so much of the chance has a look recorded
TOLD = 0.8  # bits: a choice that tells less is not worth a screen
FAINT = 0.005  # a variant with less, or with a fiftieth of the leader's chance, is left out
SEEN_TOO = 0.03  # a look with less is none to tell apart
# What can be seen in a portrait half as wide as a phone, and without touching the piece; and what
# only in one as wide as the phone.
AT_A_GLANCE = [
    "body", "extent", "load", "train", "colour", "roof", "base", "lining", "emblem", "windows",
    "plan",
]  # fmt: skip
CLOSE_UP = ["number", "front", "horns"]


def pictures(engine: Engine, shown: Sitting, session: Session) -> Pictures:
    """The portraits to choose from, likeliest first, and what the choice of each answers; none
    where that would not help. `shown` is from `sitting`.

    Variants that look the same share a picture. A picture answers the features in which the
    pictures differ, and no other: by the states that look like it.
    """
    state = believe(engine, session)
    chances = variant_chances(engine, state)
    leader = chances[largest(chances)]
    nothing: Pictures = {"features": [], "layers": [], "pictures": []}
    if leader >= ONE_LEADS:
        return nothing
    left = best_from(chances, max(FAINT, leader / 50.0))
    held = [chances[v] for v in left]
    telling: list[Looked] = []
    for f in unasked(engine, session):
        fine = shown["layers"][f] in AT_A_GLANCE or shown["layers"][f] in CLOSE_UP
        if fine and engine["pack"]["features"][f]["needs"] == "nothing":
            looks = looks_in(engine, shown, state, left, f)
            bits = bits_of_looks(looks, held)
            if bits > 0.0:
                telling.append({"feature": f, "looks": looks, "bits": bits})
    telling = sorted(telling, key=lambda look: -look["bits"])
    large = chosen(shown, left, held, telling)
    if len(large["pictures"]) <= WIDE_ONES and len(large["pictures"]) > 0:
        return large
    return chosen(
        shown, left, held, [t for t in telling if shown["layers"][t["feature"]] in AT_A_GLANCE]
    )


def chosen(shown: Sitting, left: list[int], chances: list[float], looked: list[Looked]) -> Pictures:
    """The same of these variants, told apart by the first few of these looks."""
    telling = looked[0:MOST_LOOKS]
    at: list[int] = []
    while len(telling) >= FEW_LOOKS and len(at) == 0:
        at = told_apart(telling, chances)
        if len(at) == 0:
            telling = telling[0 : len(telling) - 1]
    out: list[Picture] = []
    for place in at:
        states: list[list[int]] = []
        for look in telling:
            names = shown["looks"][look["feature"]]
            states.append([s for s in range(len(names)) if names[s] == look["looks"][place]])
        out.append({"variant": left[place], "states": states})
    layers = AT_A_GLANCE[:]
    for look in telling:
        if shown["layers"][look["feature"]] in CLOSE_UP:
            layers.append(shown["layers"][look["feature"]])
    features = [each["feature"] for each in telling]
    return {"features": features, "layers": layers, "pictures": out}


def looks_in(
    engine: Engine, shown: Sitting, state: Belief, variants: list[int], feature: int
) -> list[str]:
    """How each variant looks in a feature; "" where that is not recorded, or there is none."""
    none = engine["pack"]["features"][feature]["none"]
    out: list[str] = []
    for variant in variants:
        seen = state_of(engine, state, variant, feature)
        out.append(shown["looks"][feature][seen] if seen >= 0 and seen != none else "")
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


def told_apart(telling: list[Looked], chances: list[float]) -> list[int]:
    """The places of variants that stand for all that look like them, likeliest looks first; []
    where these are too many or tell too little.
    """
    names: list[str] = []
    for n in range(len(chances)):
        name = ""
        known = True
        for look in telling:
            known = known and look["looks"][n] != ""
            name = name + "/" + look["looks"][n]
        names.append(name if known else "")
    out: list[int] = []
    held: list[float] = []
    for tally in sorted(tallied(names, chances), key=lambda tally: -tally["held"]):
        if total(held) < HELD and len(out) < MOST_PICTURES:
            out.append(tally["first"])
            held.append(tally["held"])
    whole = total(held)
    nothing: list[int] = []
    if len(out) < 2 or whole < HELD or entropy([share / whole for share in held]) < TOLD:
        return nothing
    return out
