"""How good a piece is: a scale of plain words, and what makes one piece better than another.

The words are plain English, best first; a scale of grades is set against them in
fixtures/grading.csv.
"""

from .types.records import Hand, Piece

CONDITIONS = ["as new", "excellent", "very good", "good", "fair", "poor"]


def conditions() -> list[str]:
    """The words of the scale, best first."""
    return CONDITIONS[:]


def condition_rank(word: str) -> int:
    """6 for the best word of the scale down to 1 for the worst; 0 for one that is not on it."""
    rank = 0
    for i in range(len(CONDITIONS)):
        if CONDITIONS[i] == word:
            rank = len(CONDITIONS) - i
    return rank


def box_rank(boxed: str) -> int:
    """2 with a box, 0 without, 1 where nothing is said."""
    if boxed == "yes":
        return 2
    return 0 if boxed == "no" else 1


def standard(piece: Piece) -> int:
    """One number to sort pieces by: condition, then box, then fewest parts missing or replaced."""
    odd = len(piece.get("missing", [])) + len(piece.get("replaced", []))
    rank = condition_rank(piece.get("condition", ""))
    return 1000 * rank + 100 * box_rank(piece.get("boxed", "")) - min(odd, 99)


def is_better(hand: Hand, piece: Piece) -> bool:
    """Whether the piece in hand is surely better than one owned: in better condition, or in the
    same condition and boxed where that one is not. Never where a condition is not said.
    """
    ours = condition_rank(piece.get("condition", ""))
    theirs = condition_rank(hand.get("condition", ""))
    if ours == 0 or theirs == 0:
        return False
    boxes = hand.get("boxed", "") == "yes" and piece.get("boxed", "") == "no"
    return theirs > ours or (theirs == ours and boxes)
