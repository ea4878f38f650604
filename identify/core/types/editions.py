"""What another edition of a range says otherwise."""

from typing import TypedDict


class EditionNews(TypedDict):
    """What became of everything that has a number or is asked, for people to be told.

    Variants are told of numbers that are in both editions only.
    """

    new: list[str]  # numbers that only the later edition has
    gone: list[str]  # numbers that it has no more, under any other one
    moved: list[list[str]]  # [what it was, what the number is now]
    items: list[str]  # numbers of which something else is said
    variants_new: list[str]  # ids of variants
    variants_gone: list[str]
    variants: list[str]  # of which something else is said
    questions_new: list[str]  # names of features
    questions_gone: list[str]
    questions: list[str]  # that are put otherwise, or have other answers


class Beside(TypedDict):
    """Two editions side by side: the place that each thing of the earlier has in the later one."""

    features: list[int]  # -1: it has none; so for all of them
    states: list[list[int]]  # by feature
    items: list[int]
    variants: list[int]
