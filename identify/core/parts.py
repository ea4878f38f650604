"""Parts that may not belong: the chance that each was replaced, and when each was made."""

from .certainty import how_replaced
from .lists import filled, total
from .types.engine import Belief, Engine, PartBelief
from .types.pack import Pack
from .types.session import Session
from .types.view import Suspect, Whole
from .year_chances import likely_years, year_chances, years_of_spans


def suspects(engine: Engine, session: Session, state: Belief) -> list[Suspect]:
    """Each part with an answer, most suspect first."""
    pack = engine["pack"]
    whole = total(state["chances"])
    out: list[Suspect] = []
    for p in range(len(pack["parts"])):
        part = state["parts"][p]
        if part["told"] > 0 and whole > 0.0:
            chance = 0.0
            of = part["of"]
            for j in range(len(of)):
                chance = chance + state["chances"][j] * part["swapped"][of[j]]
            if "years" not in part:
                part["years"] = part_years(engine, state, part)
            span = part["years"]
            out.append(
                {
                    "part": p,
                    "swapped": chance / whole,
                    "how": how_replaced(chance / whole),
                    "features": answered_on(pack, session, p),
                    "first": span[0] if len(span) > 0 else 0,
                    "last": span[1] if len(span) > 0 else 0,
                }
            )
    return sorted(out, key=lambda entry: -entry["swapped"])


def answered_on(pack: Pack, session: Session, part: int) -> list[int]:
    """The features on this part that were answered."""
    answered = [answer["feature"] for answer in session["answers"] if answer["how"] != "cannot"]
    out: list[int] = []
    for f in range(len(pack["features"])):
        if pack["features"][f]["part"] == part and pack["features"][f]["id"] in answered:
            out.append(f)
    return out


def part_years(engine: Engine, state: Belief, part: PartBelief) -> list[int]:
    """[first, last] likely years of one part: of the issues in scope that are recorded with what
    was seen on it, by their priors alone.
    """
    priors = state["priors"]
    spans = state["spans"]
    of = part["of"]
    by_span = filled(len(engine["pack"]["spans"]), 0.0)
    for j in range(len(spans)):
        by_span[spans[j]] = by_span[spans[j]] + priors[j] * part["own"][of[j]]
    return likely_years(years_of_spans(engine, by_span))


def whole_piece(engine: Engine, state: Belief) -> Whole:
    """Whether all of it can belong together."""
    whole = total(state["chances"])
    kept = state["chances"][:]
    for part in state["parts"]:
        of = part["of"]
        swapped = part["swapped"]
        if part["told"] > 0:
            for j in range(len(of)):
                kept[j] = kept[j] * (1.0 - swapped[of[j]])
    original = total(kept)
    for part in state["parts"]:
        if part["told"] == 0:
            original = original * (1.0 - part["swapped"][0])
    span = likely_years(year_chances(engine, state["spans"], state["bare"]))
    return {
        "original": original / whole if whole > 0.0 else 0.0,
        "first": span[0] if len(span) > 0 else 0,
        "last": span[1] if len(span) > 0 else 0,
    }
