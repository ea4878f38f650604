"""What the engine works with: a pack made ready once, and what is worked out for each session."""

from typing import NotRequired, TypedDict

from .holdings import Shelf
from .matches import Index
from .pack import Pack
from .session import Answer


class Errors(TypedDict):
    """How often answers are wrong, and what the world is like."""

    sure: float
    twice: float  # looked at twice, with the same answer
    unsure: float
    unrecorded: float  # times the share that the range says is in none; 0: a closed world
    drawn_all: float  # 1: there is nothing but what is drawn, so "something else" is no answer


class Sights(TypedDict):
    """P(a sure answer | what is recorded) of one feature, for each answer."""

    by_code: list[list[float]]  # for each of the cells' shares
    by_kind: list[list[float]]  # for each kind's background
    kin: list[list[list[float]]]  # for each sort of relative and each of the cells' shares
    strange: list[list[float]]  # for each kind where the piece is in no range and differs in it


class Parting(TypedDict):
    """Classes of rows, parted further by what is recorded of one more feature."""

    of: list[int]  # class of each row
    code: list[int]  # of each class
    came_from: list[int]  # the class that each was a part of


class PartBelief(TypedDict):
    """What the answers on one part say, and the classes of rows that they cannot tell apart.

    With no answer the classes are the kinds.
    """

    answers: list[Answer]
    told: int  # how many answers there are
    of: list[int]  # class of each row in scope
    kind: list[int]  # index of the kind of each class
    own: list[float]  # P(answers | the class, the part being its own)
    factors: list[float]  # P(answers | the class)
    swapped: list[float]  # P(replaced | the class)
    kin: list[list[float]]  # P(answers | a relative of the class), for each sort
    beyond: list[float]  # P(answers | a stranger of a kind)
    donors: list[list[float]]  # by kind of piece: chance of each kind a replacement comes from
    years: NotRequired[list[int]]  # first and last likely year of the part, once asked for


class InScope(TypedDict):
    """The rows in scope and what they and their relatives are believed of; it adds up to 1."""

    rows: list[int]  # index of each; kinds to chances are of each of them
    kinds: list[int]  # index
    variants: list[int]  # index
    spans: list[int]  # index
    priors: list[float]
    chances: list[float]
    # for each sort of relative: the chance of an unrecorded variant of its item, of an unrecorded
    # item nearly the same, of one like it
    kin: list[list[float]]
    # for each sort of relative: what the chance of the row is to be multiplied by to have that of
    # what would be a relative but differs in nothing
    less: list[list[float]]
    strangers: list[float]  # by kind: the chance of what is like none of them
    parts: list[PartBelief]  # by part


class Beginning(InScope):
    """What is known before the first answer; the same for every answer to come.

    `parts` are what the last answers on each came to.
    """

    kind: str  # of the scope
    items: list[str]  # of the scope


class Belief(InScope):
    """What is believed after a session's answers."""

    unrecorded: list[float]  # by kind: relatives and strangers together
    bare: list[float]  # by row: the chance by what is on no part, to scale


class Heard(TypedDict):
    """An answer that says something."""

    answer: Answer
    place: int  # index of the feature
    part: int  # index of the part it is on, -1: the piece itself
    like: list[float]  # P(answer | recorded shares), by cell code
    kin: list[list[float]]  # the same of each sort of relative
    any: list[float]  # P(answer | background), by kind
    beyond: list[float]  # the same of what is in no range


class Engine(TypedDict):
    """A pack with its reading errors worked out: what all functions take as `engine`.

    Made by `prepare`, once after loading.
    """

    pack: Pack
    sure: list[list[list[float]]]  # by feature: P(answer | state), rows by answer, "sure"
    unsure: list[list[list[float]]]  # the same for "unsure"
    twice: list[list[list[float]]]  # the same for "twice"
    sights: list[Sights]  # by feature
    # by feature and sort of relative: the chance that each state differs
    differs: list[list[list[float]]]
    # by feature and state: the share of each other state where it differs
    otherwise: list[list[list[float]]]
    # by sort of relative and row: the chance that it would differ in nothing
    same: list[list[float]]
    strange: list[list[list[float]]]  # by feature and kind: share of each state where it differs
    open: list[float]  # by kind: share of pieces that are in no range
    drawn_all: float
    donors: list[list[list[float]]]  # by part and kind: chance of each kind a replacement is from
    varying: list[list[int]]  # by feature: the variants whose rows are not all recorded alike
    begun: list[Beginning]  # the last one, kept
    index: list[Index]  # made when something is looked for first, and kept
    shelf: list[Shelf]  # made when records are first held against the pack, and kept
