"""What is worked out to choose the next question: an outcome is what is to be decided.

Outcomes are variants, or issues to settle the years, or meanings for the verdict. A class of rows
looks alike for a feature: the same code, the same kind, the same doubt that its part was replaced.
"""

from typing import TypedDict


class Kin(TypedDict):
    """The rows whose relatives count, when it is asked what a stray piece looks like."""

    rows: list[int]  # index
    # for each sort: the chance of each row's relatives, with those that differ in nothing
    weights: list[list[float]]
    same: list[float]  # by row: the chance of these, of all sorts
    of: list[list[int]]  # by part, and last for the piece itself: the class of each row
    whole: float  # all the chance of relatives, of those rows too that do not count
    strangers: list[float]  # by kind


class Focus(TypedDict):
    """The rows that still count, those of an outcome together, and outcomes numbered from 0."""

    rows: list[int]  # index
    weights: list[float]  # chance of each row
    of: list[list[int]]  # by part, and last for the piece itself: the class of each row
    starts: list[int]  # where the rows of each outcome begin, and last their count
    first: list[int]  # each outcome's first row
    first_of: list[list[int]]  # and by part its class
    names: list[int]  # the outcome of each number
    number: list[int]  # the number of each outcome, -1: none
    many: list[int]  # numbers of outcomes with more rows than one
    chances: list[float]  # by number, what is in no range last, for as much as it counts
    beyond: float  # the chance of what is in no range, as it is believed
    elsewhere: int  # rows whose outcome is not their variant
    kin: Kin


class Look(TypedDict):
    """What says how likely each answer is about one feature.

    A class of rows is `code * length of kinds + its class of doubt`.
    """

    codes: list[int]  # by row of the pack
    varying: list[int] | None  # the only variants that can have rows of more classes; None: any
    rows: list[int]
    of: list[int]
    first_of: list[int]
    doubts: list[float]  # by class of doubt
    kinds: list[int]  # by class of doubt
    by_code: list[list[float]]  # P(answer) by the record
    by_kind: list[list[float]]
    spares: list[list[float]]  # by answer: P(answer) for each kind where the part was replaced
    made: list[list[float]]  # by class: what view_from found; []: not yet
    strange: list[list[float]]  # P(answer) by kind, where the piece is in no range and differs
    kin: Kin
    kin_of: list[int]  # class of each of its rows
    by_kin: list[list[list[float]]]  # P(answer) by code, for each sort of relative
    strangers: list[float]


class Away(TypedDict):
    """How likely it is that there is nothing to look at."""

    lacking: list[float]  # 1 for each kind without the feature
    by_code: list[float]
    by_kind: list[float]
    replaced: list[float]  # by kind, where the part was replaced


class Parted(TypedDict):
    """Outcomes all of whose rows are of one class, and the others."""

    alike: list[float]  # by class: the chance of the outcomes that are of it alone
    mixed: list[int]  # the other outcomes


class Joint(TypedDict):
    """P(outcome, answer) for one feature: scales[outcome] * views[outcome][answer].

    The last outcome is the unrecorded.
    """

    scales: list[float]
    views: list[list[float]]


class Worth(TypedDict):
    """What a question is worth."""

    bits: float  # what the answer is expected to tell of the outcome
    absent: float  # the chance that there is nothing to look at


class Scored(TypedDict):
    """A question with what it is worth."""

    feature: int  # index
    bits: float
    score: int  # bits by second of looking, in steps


class Questions(TypedDict):
    """Every question worth asking, best first."""

    open: list[Scored]
    shut: list[Scored]  # those that need something the person has not got
    focus: Focus


class IfSeen(TypedDict):
    """What is left if a state is seen."""

    state: int  # index
    variants: int  # how many outcomes have at least a hundredth of the best one's chance then


class Leaves(TypedDict):
    """What each answer leaves."""

    expected: list[float]  # chance of each state
    groups: list[IfSeen]
