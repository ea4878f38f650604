"""What can be told apart at all, and what each feature is worth."""

from dataclasses import dataclass
from itertools import combinations

from identify.core.asking import questions
from identify.core.belief import believe
from identify.core.focus import by_variant, focus
from identify.core.kin import RELATIVES
from identify.core.session import new_session
from identify.core.swapping import look_at_part
from identify.core.types.engine import Belief, Engine
from identify.core.types.pack import Pack
from identify.core.worth import worth

PLAIN = 0.5  # a feature on which two variants differ in so much of their shares tells them apart


@dataclass
class Alike:
    """Two variants that nothing visible tells apart, and the features that would: (place, bits)."""

    one: int
    other: int
    would: list[tuple[int, float]]


def rows_by_variant(pack: Pack) -> list[list[int]]:
    """The rows of each variant."""
    out: list[list[int]] = [[] for _ in pack["variants"]]
    for i, variant in enumerate(pack["rows"]["variant"]):
        out[variant].append(i)
    return out


def looks(pack: Pack, rows: list[int], place: int) -> list[float]:
    """The share of each state of a feature over the rows of one variant."""
    cells = pack["cells"][place]
    out = [0.0] * len(pack["features"][place]["states"])
    whole = sum(pack["rows"]["prior"][i] for i in rows)
    for i in rows:
        shares = cells["shares"][cells["codes"][i]]
        shares = shares or pack["backgrounds"][place][pack["rows"]["kind"][i]]
        for s, share in enumerate(shares):
            out[s] += share * pack["rows"]["prior"][i] / whole
    return out


def only(engine: Engine, one: list[int], other: list[int]) -> Belief:
    """The posterior in which the piece is one of two variants, as likely as each other."""
    pack = engine["pack"]
    rows = [*one, *other]
    chances = []
    for part in (one, other):
        whole = sum(pack["rows"]["prior"][i] for i in part)
        chances += [pack["rows"]["prior"][i] / whole / 2 for i in part]
    state: Belief = {
        "rows": rows,
        "kinds": [pack["rows"]["kind"][i] for i in rows],
        "variants": [pack["rows"]["variant"][i] for i in rows],
        "spans": [pack["rows"]["span"][i] for i in rows],
        "priors": [pack["rows"]["prior"][i] for i in rows],
        "chances": chances,
        "bare": chances,
        "kin": [[0.0] * len(rows) for _ in RELATIVES],
        "strangers": [0.0] * len(pack["kinds"]),
        "unrecorded": [0.0] * len(pack["kinds"]),
        "parts": [],
    }
    for place in range(len(pack["parts"])):
        state["parts"].append(look_at_part(engine, state, [], place))
    return state


def alike_pairs(engine: Engine) -> list[Alike]:
    """Every pair of variants between which the app has nothing visible left to ask, whatever was
    answered; the commonest first. engine: without errors and swaps.
    """
    pack = engine["pack"]
    visible = [n for n, f in enumerate(pack["features"]) if f["needs"] == "nothing"]
    rows = rows_by_variant(pack)
    priors = [sum(pack["rows"]["prior"][i] for i in each) for each in rows]
    met = [v for v, prior in enumerate(priors) if prior > 0]
    seen = {v: [looks(pack, rows[v], n) for n in visible] for v in met}
    session = new_session(engine)
    out = []
    for one, other in combinations(met, 2):
        if any(
            sum(abs(a - b) for a, b in zip(x, y, strict=True)) / 2 >= PLAIN
            for x, y in zip(seen[one], seen[other], strict=True)
        ):
            continue
        state = only(engine, rows[one], rows[other])
        asked = questions(engine, session, state, by_variant(state))
        if not asked["open"]:
            would = [(each["feature"], each["bits"]) for each in asked["shut"]]
            out.append(Alike(one, other, would))
    return sorted(out, key=lambda pair: -min(priors[pair.one], priors[pair.other]))


def worths(engine: Engine) -> list[float]:
    """For each feature, the bits it tells about the variant as a first question, of the kind of
    piece (or of all of them) where it tells most.
    """
    pack = engine["pack"]
    most = [0.0] * len(pack["features"])
    for kind in ["", *(k["id"] for k in pack["kinds"])]:
        session = new_session(engine)
        session["scope"]["kind"] = kind
        state = believe(engine, session)
        focused = focus(state, by_variant(state))
        for place in range(len(most)):
            bits = worth(engine, state, focused, place)["bits"]
            most[place] = max(most[place], bits)
    return most
