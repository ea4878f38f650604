"""A mistake in a pack: where it stands, what is wrong and what would be right."""

from collections.abc import Iterable

import msgspec
from rapidfuzz import fuzz, process

from identify.errors import UserError

LONGEST = 40  # characters of a wrong text that are repeated
NAMED = 8  # at most so many known words are listed when none comes near


class Mistake(msgspec.Struct, frozen=True):
    """One mistake. Line 0 means the file as a whole, column "" the line as a whole."""

    file: str
    line: int
    column: str
    text: str

    def __str__(self) -> str:
        place = self.file
        if self.line:
            place += f" line {self.line}"
        if self.column:
            place += f", {self.column}"
        return f"{place}: {self.text}"


class PackError(UserError):
    """A pack that cannot be compiled, with all of its mistakes."""

    def __init__(self, mistakes: list[Mistake]) -> None:
        super().__init__("\n".join(str(mistake) for mistake in mistakes))
        self.mistakes = mistakes


def quoted(text: str) -> str:
    """A text from a pack as it is repeated in a sentence: in quotes, and not all of a long one."""
    return f'"{text[:LONGEST]}…"' if len(text) > LONGEST else f'"{text}"'


def instead(word: str, known: Iterable[str]) -> str:
    """What to write instead of an unknown word: the nearest known one, or what is known."""
    words = [each for each in dict.fromkeys(known) if each]
    if not words:
        return "none is declared."
    best = process.extractOne(word, words, scorer=fuzz.ratio, processor=str.lower, score_cutoff=60)
    if best is not None:
        return f"did you mean {quoted(best[0])}?"
    more = " and so on" if len(words) > NAMED else ""
    return f"known are {', '.join(words[:NAMED])}{more}."
