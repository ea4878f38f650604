"""What a mark without words looks like: a price, a code in an address, a telephone number.

A shape is a list of pieces {kind, least, most, text}:

figures   that many figures, and no more beside them
letters   that many letters A to Z
pence     0 to 11, or a dash, with or without a half
word      three letters or more, of any script
district  N, S, E or W, or two letters such as SE or WC
text      these very characters
gap       spaces, or none
space     a space or a comma, or several
"""

from .mark_text import figures_from, is_letter, letters_from
from .runs import FIGURES
from .types.marks import ShapePiece

DISTRICTS = ["N", "S", "E", "W", "NE", "NW", "SE", "SW", "EC", "WC"]
LEAST_WORD = 3


def past_spaces(text: str, start: int, commas: bool) -> int:
    """Where the spaces that begin here end."""
    at = start
    while at < len(text) and (text[at] == " " or (commas and text[at] == ",")):
        at = at + 1
    return at


def past_pence(text: str, start: int) -> int:
    """Where pence end that begin here, or -1."""
    end = figures_from(text, start)
    if end == start:
        return start + 1 if text[start : start + 1] == "-" else -1
    if end - start > 2 or int(text[start:end]) > 11:
        return -1
    return end + 1 if text[end : end + 1] == "½" else end


def past_piece(text: str, start: int, piece: ShapePiece) -> int:
    """Where a piece of a shape ends that begins here, or -1."""
    kind = piece["kind"]
    least = piece["least"]
    most = piece["most"]
    if kind == "gap":
        return past_spaces(text, start, False)
    if kind == "space":
        end = past_spaces(text, start, True)
        return end if end > start else -1
    if kind == "text":
        wanted = piece["text"]
        end = start + most
        return end if text[start:end] == wanted else -1
    if kind == "pence":
        return past_pence(text, start)
    if kind == "figures":
        end = figures_from(text, start)
        return end if least <= end - start <= most else -1
    end = letters_from(text, start)
    if kind == "word":
        return end if end - start >= LEAST_WORD else -1
    if kind == "district":
        return end if text[start:end] in DISTRICTS else -1
    for i in range(start, end):
        if not "A" <= text[i] <= "Z":
            return -1
    return end if least <= end - start <= most else -1


def touches(text: str, at: int) -> bool:
    """Whether a letter or a figure stands here."""
    return 0 <= at < len(text) and (text[at] in FIGURES or is_letter(text[at]))


def after_point(text: str, at: int) -> bool:
    """Whether the figures that stand here are those after a point, as in 12.50."""
    return at > 1 and text[at] in FIGURES and text[at - 1] in ".," and text[at - 2] in FIGURES


def shape_at(text: str, start: int, shape: list[ShapePiece]) -> int:
    """Where a shape ends that begins here and stands by itself, or -1."""
    if (touches(text, start) and touches(text, start - 1)) or after_point(text, start):
        return -1
    at = start
    for piece in shape:
        at = past_piece(text, at, piece)
        if at < 0 or at > len(text):
            return -1
    if touches(text, at - 1) and touches(text, at):
        return -1
    return at
