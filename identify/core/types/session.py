"""What is asked and answered about one piece: saved on the phone after every tap."""

from typing import Literal, NotRequired, TypedDict

# sure (one state) · twice (the same, looked at twice) · unsure (one state, "I think") ·
# several (one of these) · other (something else than any drawing) · cannot (can't tell)
How = Literal["sure", "twice", "unsure", "several", "other", "cannot"]

# what is wrong with an answer: it names no feature, way of answering or state that the pack has, or
# more or fewer states than that way takes; "" for nothing
AnswerProblem = Literal["", "feature", "how", "count", "state"]


class Answer(TypedDict):
    """What was seen of one feature."""

    feature: str  # id of the feature
    how: How
    states: list[str]  # ids of its states
    changed: NotRequired[bool]  # true: a sure look before it said something else


class Scope(TypedDict):
    """What the search is limited to; empty: nothing."""

    kind: str  # id of a kind, "" for any
    items: list[str]  # numbers of items


class Session(TypedDict):
    """The answers about one piece, and what they are about. Made by `new_session`."""

    pack: str  # id of the compiled pack
    version: str  # and its version
    scope: Scope
    able: list[str]  # what can be done besides looking: "loupe", "body off"
    missing: list[str]  # ids of parts that are not there (no box): their features are not asked
    answers: list[Answer]  # oldest first, one a feature
    unchecked: NotRequired[bool]  # true: what would prove the leader wrong is not asked for


class Dropped(TypedDict):
    """Something of a session that the pack no longer knows."""

    what: str  # the id, or an item's number
    reason: Literal["feature", "how", "count", "state", "item", "kind", "part"]


class Mended(TypedDict):
    """A session made to fit a pack, and what had to go."""

    session: Session
    dropped: list[Dropped]
