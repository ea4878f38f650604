"""What a cell says of a box: whether there is one, and in what condition it is."""

from collections.abc import Sequence

from ..types.importing import BoxRead
from .cell_values import is_in_word, read_condition, read_yes, word_cut
from .text_parts import one_line, quoted, without_signs

A_BOX = [
    "BOX", "BOXED", "OVP", "KARTON", "ORIGINALKARTON", "SCHACHTEL", "BOÎTE", "BOITE", "DOOS",
]  # fmt: skip
BEFORE_A_BOX = ["IN", "WITH", "HAS", "MIT", "THE", "ITS", "ORIGINAL", "ORIG"]
# "No" before a comma or the like, or before the box; a bare "no lid" has a box.
NO_AND = [
    "N", "NO", "NONE", "NEIN", "NON", "NEE", "OHNE", "SANS", "ZONDER", "UNBOXED", "LOOSE",
]  # fmt: skip
AFTER_NO = "-–,;:(/."
NO_BOX = ["NO", "NOT", "WITHOUT", "OHNE", "KEIN", "SANS", "ZONDER", "GEEN"]
LOST = ["LOST", "MISSING", "GONE", "FEHLT", "MANQUE", "ONTBREEKT"]
YES_AND = ["Y", "YES", "J", "JA", "O", "OUI", "SI", "X", "✓", "✔"]
YES_BLANK = ["Y", "YES", "JA", "OUI"]
AFTER_YES = "-–,;:(/.+&"
AROUND = " -–,;:(/.+&)"
MOST_SAID = 200  # letters of a cell that are looked at for a box


def parts_of_cell(text: str) -> list[str]:
    """Words and signs of a text in capitals, blanks left out."""
    return [part for part in word_cut(text) if part != " "]


def part_at(parts: Sequence[str], at: int) -> str:
    """A part, "" past the end."""
    return parts[at] if at < len(parts) else ""


def denies_box(parts: Sequence[str]) -> bool:
    """Whether these parts of a cell say that there is no box."""
    after = part_at(parts, 1)
    if part_at(parts, 0) in NO_AND and after != "" and after in AFTER_NO:
        return True
    for n in range(len(parts)):
        at = n + 1
        denied = parts[n] in NO_BOX
        if parts[n] == "W" and part_at(parts, n + 1) == "/" and part_at(parts, n + 2) == "O":
            denied = True
            at = n + 3
        if denied:
            at = at + 1 if part_at(parts, at) == "IN" else at
            at = at + 1 if part_at(parts, at) == "ORIGINAL" else at
            if part_at(parts, at) in A_BOX:
                return True
        if parts[n] in A_BOX:
            at = n + 2 if part_at(parts, n + 1) in ["IS", "WAS"] else n + 1
            if part_at(parts, at) in LOST:
                return True
    return False


def box_named_end(text: str, start: int) -> int:
    """Where the naming of a box that begins here ("in the original box") ends; -1 for none."""
    at = start
    while at < len(text):
        end = at
        while end < len(text) and is_in_word(text[end]):
            end = end + 1
        word = text[at:end]
        if word in A_BOX:
            return end
        if word not in BEFORE_A_BOX:
            return -1
        at = end + 1 if text[end : end + 1] == "." else end
        while at < len(text) and text[at] == " ":
            at = at + 1
    return -1


def without_box_named(text: str) -> str:
    """A text in capitals without the words that name a box."""
    out = ""
    at = 0
    while at < len(text):
        first = is_in_word(text[at]) and (at == 0 or not is_in_word(text[max(0, at - 1)]))
        end = box_named_end(text, at) if first else -1
        if end > 0:
            out = out + " "
            at = end
        else:
            out = out + text[at]
            at = at + 1
    return out


def after_yes(text: str) -> int:
    """Where what follows a yes at the beginning of a text in capitals begins; 0 for no yes."""
    end = 0
    while end < len(text) and is_in_word(text[end]):
        end = end + 1
    end = 1 if end == 0 and text[0:1] in ["✓", "✔"] else end
    word = text[0:end]
    at = end
    while at < len(text) and text[at] == " ":
        at = at + 1
    if word in YES_BLANK and at > end and at < len(text):
        return at
    if word in YES_AND and at < len(text) and text[at] in AFTER_YES:
        return at + 1
    return 0


def box_told(has: str, condition: str, more: str) -> BoxRead:
    """What a cell says of a box."""
    return {"has": has, "condition": condition, "more": more, "wrong": ""}


def read_box(text: str) -> BoxRead:
    """Whether there is a box (yes, no or ""), in what condition, and the cell where that leaves
    something out: "mint box", "y - torn".
    """
    plainly = read_yes(text)
    if plainly["wrong"] == "":
        return box_told(plainly["value"], "", "")
    written = one_line(text).upper()[0:MOST_SAID]
    if denies_box(parts_of_cell(written)):
        return box_told("no", "", text)
    yes = after_yes(written)
    rest = without_signs(without_box_named(written[yes:]), AROUND)
    said = yes > 0 or rest != without_signs(written, AROUND)
    condition = read_condition(rest)
    if condition["wrong"] != "":
        if said:
            return box_told("yes", "", text)
        out = box_told("", "", "")
        out["wrong"] = (
            quoted(text) + " does not say whether there is a box. Write yes, no or a condition."
        )
        return out
    return box_told("yes", condition["value"], text if condition["more"] != "" else "")
