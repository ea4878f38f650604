"""What the screen shows of a session: given anew by `assess` after every answer."""

from typing import Literal, NotRequired, TypedDict

from .pack import Needs
from .questions import IfSeen, Questions
from .verdict import Verdict

# variant, check (what would prove the leader wrong), again (what does not fit it, looked at once
# more), years (once the variant is settled), verdict (while that is not), claim (in a judgement)
About = Literal["variant", "check", "again", "years", "verdict", "claim"]

# "" · sure (one variant has 95 %) · unrecorded (95 % that it is not in the reference) · nothing (no
# question is left that is worth asking) · unseen (nor was anything seen that decides it) · verdict
# (settled, and the records have something to say)
Stop = Literal["", "sure", "unrecorded", "nothing", "unseen", "verdict"]

# from 95 % and checked, 95 %, 85 %, 60 %, below (core/certainty.py)
HowSure = Literal["it is", "almost certainly", "very likely", "probably", "could be"]
HowReplaced = Literal["almost certainly", "probably", "perhaps", ""]


class Aim(TypedDict):
    """What to ask about, the questions, and whether to stop."""

    about: About
    asked: Questions
    stop: Stop


class Candidate(TypedDict):
    """A variant that it may be."""

    variant: int  # index
    chance: float
    first: int  # its likely years, given the answers
    last: int


class ItemChance(TypedDict):
    """An item that it may be."""

    item: int  # index
    chance: float


class Years(TypedDict):
    """When a recorded piece was made; 0 where there is nothing to say."""

    chances: list[list[float]]  # [year, chance], in order
    first: int  # the shortest span with 90 %
    last: int
    earliest: int  # the years with at least 1 %
    latest: int


class Suspect(TypedDict):
    """A part with an answer, given that the piece is in the reference."""

    part: int  # index
    swapped: float  # chance that it was replaced
    how: HowReplaced  # the word for it; "" where it could be original
    features: list[int]  # index of the answered features on it
    first: int  # likely years of the part by itself, whatever it is fitted to
    last: int


class Whole(TypedDict):
    """Whether all of it can belong together."""

    original: float  # chance that no part was replaced
    first: int  # likely years by what is on no part
    last: int


Owning = Literal["same", "other", "new"]


class Meant(TypedDict):
    """The chances of the verdicts, if a state is seen."""

    same: float
    other: float
    new: float
    unrecorded: float


class Question(TypedDict):
    """The next question, and why it is asked."""

    feature: int  # index
    bits: float  # what its answer is expected to tell of what it is about
    about: About
    expected: list[float]  # chance of each state
    groups: list[IfSeen]
    means: NotRequired[list[Meant]]  # by state, of a question about the verdict


class Worthwhile(TypedDict):
    """Another question worth asking."""

    feature: int  # index
    bits: float


class WouldTell(Worthwhile):
    """A question that is not asked because of what it needs."""

    needs: Needs


class Fit(TypedDict):
    """Whether what was seen fits the leader, whatever else it could be."""

    chance: float  # of answers as surprising as these, or more, were it just that
    odd: list[int]  # places of the answers that do not fit it, worst first
    passed: bool


class View(TypedDict):
    """Candidates, years, suspect parts, the next question, and whether to stop."""

    unrecorded: float  # chance that the piece is in no row of the reference
    variants: list[Candidate]  # by chance, those with at least 0.0005, at most 40
    items: list[ItemChance]  # the same way
    possible: int  # number of variants with at least a hundredth of the leader's chance
    years: Years
    parts: list[Suspect]  # most suspect first
    whole: Whole
    question: Question | None
    others: list[Worthwhile]  # the next best questions, at most 6
    stop: Stop
    alike: list[int]  # at "nothing": the variants that hold 95 % together, not to be told apart
    would_tell: list[WouldTell]
    how_sure: HowSure  # of the leader
    fit: Fit | None  # of the leader; None where nothing is in scope
    unseen: list[int]  # features that would have proved it wrong, and were not looked at
    verdict: NotRequired[Verdict]  # what it means for the collector, from `assess_for`


class Against(TypedDict):
    """What one answer says between a variant and the leader."""

    feature: int  # index
    answer: int  # place in the session's answers
    bits: float  # above 0: against this variant and for the leader
    recorded: list[int]  # the states that this variant is recorded with; empty: not recorded
