"""Is the seller right? A claim about the date, held against the answers.

could     chance that the piece's issue was in production at some time in the claimed years
chance    chance that the piece itself was made in the claimed years (never more than `could`)
bits      how far an answer moves the odds of `could`: the mean of what it does when it is put to
          all the others, and when it is the only one. The first alone would be nothing where two
          answers say the same; the second alone would not see that a part was swapped.
"""

from math import log

from .asking import questions
from .assess import question_card
from .belief import believe
from .lists import filled, total
from .seen import may_be, state_years
from .session import with_answers, without
from .types.claims import Claim, ClaimWord, Evidence, Judgement, Weight
from .types.engine import Belief, Engine
from .types.session import Answer, Session

FITS = 0.75  # `could` from here on: the claim fits
POSSIBLE = 0.25
UNLIKELY = 0.01  # below: ruled out
FAINTEST = 1e-9  # keeps the odds of a certainty finite


def row_shares(engine: Engine, claim: Claim, rows: list[int]) -> list[float]:
    """How much of each row's production falls within the claim, 0 to 1."""
    pack = engine["pack"]
    earliest = filled(len(pack["items"]), 9999.0)
    latest = filled(len(pack["items"]), 0.0)
    variants = pack["rows"]["variant"]
    spans = [pack["spans"][at] for at in pack["rows"]["span"]]
    for i in range(len(variants)):
        item = pack["variants"][variants[i]]["item"]
        earliest[item] = min(earliest[item], spans[i]["first"])
        latest[item] = max(latest[item], spans[i]["first"] + len(spans[i]["weights"]) - 1)
    out: list[float] = []
    for i in rows:
        item = pack["variants"][variants[i]]["item"]
        first = spans[i]["first"]
        weights = spans[i]["weights"]
        share = 0.0
        if claim["about"] == "first issue":
            share = 1.0 if first == earliest[item] else 0.0
        elif claim["about"] == "last issue":
            share = 1.0 if first + len(weights) - 1 == latest[item] else 0.0
        else:
            for n in range(len(weights)):
                if claim["first"] <= first + n and first + n <= claim["last"]:
                    share = share + weights[n]
        out.append(min(1.0, share))
    return out


def weigh_claim(state: Belief, shares: list[float]) -> Weight:
    """How far a claim holds, given that the piece is in the reference; 0 where it is not."""
    whole = total(state["chances"])
    could = 0.0
    chance = 0.0
    for j in range(len(shares)):
        chance = chance + state["chances"][j] * shares[j]
        if shares[j] > 0.0:
            could = could + state["chances"][j]
    if whole == 0.0:
        return {"could": 0.0, "chance": 0.0}
    return {"could": min(1.0, could / whole), "chance": min(1.0, chance / whole)}


def log_odds(p: float) -> float:
    """log2 of the odds of a chance, kept finite at 0 and 1."""
    kept = min(max(p, FAINTEST), 1.0 - FAINTEST)
    return log(kept / (1.0 - kept)) / log(2.0)


def verdict_on(could: float, recorded: float) -> ClaimWord:
    """The claim in a word: "fits", "possible", "unlikely", "ruled out"; "unknown" where the piece
    is likelier not in the reference at all.
    """
    if recorded < 0.5:
        return "unknown"
    if could >= FITS:
        return "fits"
    if could >= POSSIBLE:
        return "possible"
    return "unlikely" if could >= UNLIKELY else "ruled out"


def odds_with(
    engine: Engine,
    session: Session,
    answers: list[Answer],
    shares: list[float],
) -> float:
    """The odds of `could`, had these been the only answers."""
    state = believe(engine, with_answers(session, answers))
    return log_odds(weigh_claim(state, shares)["could"])


def judge(engine: Engine, session: Session, claim: Claim) -> Judgement:
    """Hold a claim (from read_claim, with no problem) against the answers."""
    state = believe(engine, session)
    shares = row_shares(engine, claim, state["rows"])
    weighed = weigh_claim(state, shares)
    now = log_odds(weighed["could"])
    none = odds_with(engine, session, [], shares)
    likely = may_be(engine, state)
    evidence: list[Evidence] = []
    for n in range(len(session["answers"])):
        answer = session["answers"][n]
        if answer["how"] != "cannot":
            left = without(session, answer["feature"])["answers"]
            last = now - odds_with(engine, session, left, shares)
            first = odds_with(engine, session, [answer], shares) - none
            made = state_years(engine, likely, answer, n)
            evidence.append(
                {
                    "feature": made["feature"],
                    "answer": made["answer"],
                    "earliest": made["earliest"],
                    "latest": made["latest"],
                    "first": made["first"],
                    "last": made["last"],
                    "variants": made["variants"],
                    "changes": made["changes"],
                    "bits": 0.5 * (first + last),
                }
            )
    inside = [1 if share > 0.0 else 0 for share in shares]
    asked = questions(engine, session, state, inside)
    return {
        "word": verdict_on(weighed["could"], total(state["chances"])),
        "could": weighed["could"],
        "chance": weighed["chance"],
        "evidence": sorted(evidence, key=lambda entry: -abs(entry["bits"])),
        "question": question_card(engine, state, asked, "claim"),
    }
