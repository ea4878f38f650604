"""What stands for any type in functions that work on values of every sort."""

from typing import TypedDict, TypeVar

Value = TypeVar("Value")


class Named(TypedDict):
    """Whatever has an id."""

    id: str
