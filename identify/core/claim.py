"""Is the seller right? A claim about the date, held against the answers.

could     chance that the piece is a variant that was in production at some time in the claimed
          years: by variant, for a running change cuts a variant into rows of a year each
chance    chance that the piece itself was made in the claimed years (never more than `could`): a
          narrow claim has little of that, and is not an unlikely one
bits      how far an answer moves the odds that its issue was made in those years: the mean of what
          it does when it is put to all the others, and when it is the only one. The first alone
          would be nothing where two answers say the same; the second alone would not see that a
          part was swapped.
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
from .year_chances import years

FITS = 0.5  # of a claim of an issue: `chance` from here on
MAYBE = 0.05  # and from here on it is possible
POSSIBLE = 0.01  # a claimed year has this much: it is possible
NEVER = 0.01  # `could` below this: ruled out
RECORDED = 0.9  # but only of a piece that is so surely in the reference
WIDE = 0.5  # likely years that cover more than this of the range's life say nothing yet
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
    variants = state["variants"]
    touched = filled(1 + last_of(variants), 0.0)
    chance = 0.0
    for j in range(len(shares)):
        chance = chance + state["chances"][j] * shares[j]
        if shares[j] > 0.0:
            touched[variants[j]] = 1.0
    could = 0.0
    for j in range(len(shares)):
        could = could + state["chances"][j] * touched[variants[j]]
    if whole == 0.0:
        return {"could": 0.0, "chance": 0.0}
    return {"could": min(1.0, could / whole), "chance": min(1.0, chance / whole)}


def last_of(places: list[int]) -> int:
    """The largest of some places, -1 of none."""
    out = -1
    for place in places:
        out = max(out, place)
    return out


def issues_held(state: Belief, shares: list[float]) -> float:
    """The chance that its issue was made in the claimed years, were it in the reference."""
    whole = total(state["chances"])
    held = 0.0
    for j in range(len(shares)):
        if shares[j] > 0.0:
            held = held + state["chances"][j]
    return min(1.0, held / whole) if whole > 0.0 else 0.0


def log_odds(p: float) -> float:
    """log2 of the odds of a chance, kept finite at 0 and 1."""
    kept = min(max(p, FAINTEST), 1.0 - FAINTEST)
    return log(kept / (1.0 - kept)) / log(2.0)


def verdict_on(engine: Engine, state: Belief, claim: Claim, weighed: Weight) -> ClaimWord:
    """The claim in a word: "fits", "possible", "unlikely", "ruled out"; "open" where it cannot be
    said yet, "unknown" where the piece is likelier not in the reference at all.
    """
    recorded = total(state["chances"])
    if recorded < 0.5:
        return "unknown"
    beyond: ClaimWord = "unlikely"
    if weighed["could"] < NEVER and recorded >= RECORDED:
        beyond = "ruled out"
    if claim["about"] != "years":
        if weighed["chance"] >= FITS:
            return "fits"
        return "possible" if weighed["chance"] >= MAYBE else beyond
    made = years(engine, state)
    if claim["first"] <= made["last"] and made["first"] <= claim["last"]:
        life = engine["pack"]["range"]
        wide = made["last"] + 1 - made["first"] > WIDE * (life["last"] + 1 - life["first"])
        return "open" if wide and weighed["chance"] < FITS else "fits"
    for pair in made["chances"]:
        if claim["first"] <= pair[0] and pair[0] <= claim["last"] and pair[1] >= POSSIBLE:
            return "possible"
    return beyond


def odds_with(
    engine: Engine,
    session: Session,
    answers: list[Answer],
    shares: list[float],
) -> float:
    """The odds that its issue was made in those years, had these been the only answers."""
    state = believe(engine, with_answers(session, answers))
    return log_odds(issues_held(state, shares))


def judge(engine: Engine, session: Session, claim: Claim) -> Judgement:
    """Hold a claim (from read_claim, with no problem) against the answers."""
    state = believe(engine, session)
    shares = row_shares(engine, claim, state["rows"])
    weighed = weigh_claim(state, shares)
    now = log_odds(issues_held(state, shares))
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
        "word": verdict_on(engine, state, claim, weighed),
        "could": weighed["could"],
        "chance": weighed["chance"],
        "evidence": sorted(evidence, key=lambda entry: -abs(entry["bits"])),
        "question": question_card(engine, state, asked, "claim"),
    }
