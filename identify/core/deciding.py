"""The view of a session for a collector: assess(), and the verdict with questions aimed at it."""

from .assess import candidates, item_chances, view_of
from .belief import believe
from .focus import by_variant, focus
from .lists import largest, total
from .meaning import says_nothing, study
from .reasons import variant_chances
from .stopping import aimed
from .types.engine import Belief, Engine
from .types.holdings import Meanings, Studied
from .types.records import Hand, Records
from .types.session import Session
from .types.view import Meant, Owning, View
from .verdict import verdict
from .worth import joint

OWNING: list[Owning] = ["same", "other", "new"]


def assess_for(engine: Engine, session: Session, records: Records, hand: Hand) -> View:
    """assess() with the `verdict` beside it, by the collector's records and what is said of the
    piece in hand.

    While the verdict is not settled, the next question is about it. Once it is, stop is "verdict",
    unless the records have nothing to say: then which one it is remains to be found out.
    """
    return assess_studied(engine, session, study(engine, records, hand))


def assess_studied(engine: Engine, session: Session, studied: Studied) -> View:
    """assess_for() with the records and the hand worked out before, by study()."""
    state = believe(engine, session)
    chances = variant_chances(engine, state)
    unrecorded = total(state["unrecorded"])
    decision = verdict(engine, studied, chances, item_chances(engine, chances), unrecorded)
    kinds = studied["meanings"]["kind"]
    silent = len([v for v in candidates(chances) if not says_nothing(kinds[v])]) == 0
    unknown = says_nothing(kinds[largest(chances)])
    decided = decision["settled"] in [True]
    aim = aimed(engine, session, state, chances, [] if decided or silent else kinds)
    view = view_of(engine, session, state, chances, aim)
    question = view["question"]
    if aim["about"] == "verdict" and question is not None:
        place = question["feature"]
        question["means"] = what_answers_mean(engine, state, studied["meanings"], place)
    elif decided and not unknown and aim["stop"] in ["", "nothing"]:
        view["stop"] = "verdict"
    view["verdict"] = decision
    return view


def what_answers_mean(engine: Engine, state: Belief, meant: Meanings, place: int) -> list[Meant]:
    """For each state of a feature, the chances of the verdicts if that is seen."""
    focused = focus(state, by_variant(state))
    table = joint(engine, state, focused, place)
    count = len(engine["pack"]["features"][place]["states"])
    outcomes = len(focused["chances"])
    scales = table["scales"]
    views = table["views"]
    out: list[Meant] = []
    for a in range(count):
        seen = [scales[o] * views[o][a] for o in range(outcomes)]
        whole = total(seen)
        meaning: Meant = {"same": 0.0, "other": 0.0, "new": 0.0, "unrecorded": 0.0}
        for name in OWNING:
            for n in range(outcomes - 1):
                share = seen[n] / whole if whole > 0.0 else 0.0
                meaning[name] = meaning[name] + share * meant[name][focused["names"][n]]
        meaning["unrecorded"] = seen[outcomes - 1] / whole if whole > 0.0 else 0.0
        out.append(meaning)
    return out
