"""What the cells of a list say: conditions, prices, yes and no.

Words of English, German, French and Dutch, and short forms such as VG: common practice, no source.
The grades C10 to C1 are those of fixtures/grading.csv (a test holds them together).
"""

from ..amounts import read_money
from ..condition import CONDITIONS
from ..edtf import is_figures
from ..runs import sort_of
from ..types.importing import CellRead
from .cell_dates import said_by_cell, unread_cell
from .text_parts import ends, joined_by, one_line, quoted, without_blanks, without_signs

CONDITION_WORDS: list[list[str]] = [
    ["as new", "AS NEW", "MINT", "M", "MT", "BRAND NEW", "UNUSED", "LIKE NEW", "NEAR MINT", "NM",
     "NEUWERTIG", "NEU", "UNGEBRAUCHT", "NEUF", "COMME NEUF", "ÉTAT NEUF", "NIEUW", "ALS NIEUW",
     "NIEUWSTAAT", "FACTORY NEW", "LN", "C10", "C9", "C8"],
    ["excellent", "EXCELLENT", "EXC", "EX", "E", "AUSGEZEICHNET", "HERVORRAGEND", "EXZELLENT",
     "EXCELLENT ÉTAT", "UITSTEKEND", "C7"],
    ["very good", "VERY GOOD", "SEHR GUT", "TRÈS BON", "TRES BON", "TB", "ZEER GOED", "C6"],
    ["good", "GOOD", "G", "GD", "GC", "GUT", "BON", "BON ÉTAT", "GOED", "C5"],
    ["fair", "FAIR", "F", "AVERAGE", "AKZEPTABEL", "BEFRIEDIGEND", "MOYEN", "REDELIJK", "MATIG",
     "WORN", "PLAYED WITH", "PLAYWORN", "PLAY WORN", "GEBRAUCHT", "BESPIELT", "BESPEELD",
     "GEBRUIKT", "USAGÉ", "C4"],
    ["poor", "POOR", "P", "BAD", "SCHLECHT", "MAUVAIS", "SLECHT", "JUNK", "SCRAP", "FOR SPARES",
     "RESTORATION REQUIRED", "C3", "C2", "C1"],
]  # fmt: skip
GOODS = ["GOOD", "GD", "GC", "G"]  # after V or VERY: v. good, v.g., VGC
YES = [
    "YES", "Y", "TRUE", "1", "X", "✓", "✔", "JA", "J", "OUI", "O", "SI", "BOXED", "BOX", "MIB",
    "OVP", "WITH", "HAS", "MIT", "WITH BOX", "HAS BOX", "MIT OVP", "ORIGINAL BOX", "IN BOX",
]  # fmt: skip
NO = [
    "NO", "N", "FALSE", "0", "NONE", "NEIN", "NON", "NEE", "UNBOXED", "WITHOUT", "OHNE", "SANS",
    "ZONDER", "-", "–", "NO BOX", "WITHOUT BOX", "OHNE OVP", "SANS BOÎTE", "ZONDER DOOS",
    "NOT BOXED", "LOOSE",
]  # fmt: skip
NOT_KNOWN = [
    "", "?", "N/A", "N/K", "UNKNOWN", "NOT KNOWN", "UNBEKANNT", "INCONNU", "ONBEKEND",
]  # fmt: skip
ABOUT_CONDITION = ["CONDITION", "COND", "ZUSTAND", "ÉTAT", "STAAT"]
BETWEEN_TWO = ["/", ",", ";", "-", "–", "("]  # what parts two conditions, besides "to" and "bis"
BETWEEN_WORDS = ["TO", "BIS"]
URGENCIES: list[list[str]] = [["LOW", "1"], ["MEDIUM", "NORMAL", "2", ""], ["HIGH", "3"]]
MONEY_WORDS: list[list[str]] = [
    ["amount", "has no amount in it. Write it like 4.50, £4 or 12/6."],
    ["word", "has a word in it that is not a currency. Write it like 4.50, £4 or 12/6."],
    ["which", "is written as several currencies are. Write its code too, like 4.50 USD."],
    ["currency", "is in a currency the app does not know. Write it with a code like GBP or EUR."],
    ["mixed", "has two currencies in it. Write one."],
    ["decimals", "has more decimals than its currency. Write it like 4.50."],
    ["parts", "has more than 19 shillings, 11 old pence or 99 pence beside a larger unit."],
    ["large", "is too large."],
    ["ambiguous", "can be read in more than one way. Write it like 4.50, £4 or 12/6."],
]
DASHED = ["-", "–"]
IN_WORDS = ["letter", "figure", "foreign"]


def is_in_word(c: str) -> bool:
    """Whether a character (of a text in capitals, "" past its end) is of a word."""
    return c != "" and sort_of(c) in IN_WORDS


def word_cut(text: str) -> list[str]:
    """A text in capitals cut into words and what stands between them, every sign by itself."""
    out: list[str] = []
    word = ""
    for c in text:
        if is_in_word(c):
            word = word + c
        else:
            if word != "":
                out.append(word)
            out.append(c)
            word = ""
    if word != "":
        out.append(word)
    return out


def condition_named(text: str) -> str:
    """The word of the scale that a text in capitals is, "" for none."""
    for written in CONDITION_WORDS:
        if text in written[1:]:
            return written[0]
    return ""


def after_very(cut: list[str], start: int) -> int:
    """Where the words for very good that go on here, after V or VERY, end; -1 for none."""
    at = start
    while at < len(cut) and cut[at] in [" ", ".", "-"]:
        at = at + 1
    if at >= len(cut):
        return -1
    if cut[at] == "G" and at + 2 < len(cut) and cut[at + 1] == "." and cut[at + 2] == "C":
        return at + 3
    return at + 1 if cut[at] in GOODS else -1


def with_very_good(text: str) -> str:
    """A text in capitals with every short form of very good written out."""
    cut = word_cut(text)
    out: list[str] = []
    at = 0
    while at < len(cut):
        end = after_very(cut, at + 1) if cut[at] in ["V", "VERY"] else -1
        if cut[at] in ["VGOOD", "VGD", "VGC", "VG"]:
            end = at + 1
        if end > 0:
            out.append("VERY GOOD")
            at = end
        else:
            out.append(cut[at])
            at = at + 1
    return joined_by(out, "")


def bare_condition(text: str) -> str:
    """A text in capitals without a plus or minus at its end and words like condition; C 7 as C7."""
    whole = text
    last = len(whole)
    sign = whole[last - 1 : last] if last > 0 else ""
    if sign in ["+", "-"]:
        while last > 0 and whole[last - 1 : last] == sign:
            last = last - 1
        whole = without_blanks(whole[0:last])
    kept = [part for part in word_cut(whole) if part not in ABOUT_CONDITION]
    out: list[str] = []
    at = 0
    while at < len(kept):
        graded = kept[at] == "C" and at + 2 < len(kept) and kept[at + 1] in [" ", "-"]
        if graded and is_figures(kept[at + 2]):
            out.append("C" + kept[at + 2])
            at = at + 3
        else:
            out.append(kept[at])
            at = at + 1
    return without_signs(joined_by(out, ""), " :.")


def condition_parts(text: str) -> list[str]:
    """The parts of a text in capitals that may be a condition each: "good to very good"."""
    out: list[str] = []
    part = ""
    for word in word_cut(text):
        if word in BETWEEN_TWO or word in BETWEEN_WORDS:
            out.append(without_signs(part, " .+()"))
            part = ""
        else:
            part = part + word
    out.append(without_signs(part, " .+()"))
    return out


def read_condition(text: str) -> CellRead:
    """A condition as a word of the scale ("" for none), and what of the text that leaves out.

    Of two ("good to very good") the lesser counts.
    """
    written = without_signs(with_very_good(one_line(text).upper()), " .")
    if written in NOT_KNOWN or written in DASHED:
        return said_by_cell("", "")
    named = condition_named(written)
    if named != "":
        return said_by_cell(named, "")
    bare_text = bare_condition(written)
    named = condition_named(bare_text)
    if named != "":
        graded = written == bare_text + "+" or written == bare_text + "-"
        return said_by_cell(named, text if graded else "")
    parts = condition_parts(bare_text)
    worst = -1
    count = 0
    for part in parts:
        word = condition_named(part)
        if word != "":
            count = count + 1
            for n in range(len(CONDITIONS)):
                if CONDITIONS[n] == word:
                    worst = max(worst, n)
    if count > 0 and len(parts) > 1:
        return said_by_cell(CONDITIONS[worst], text)
    last = len(CONDITIONS) - 1
    return unread_cell(
        quoted(text) + " is not a condition the app knows. Write "
        + joined_by(CONDITIONS[0:last], ", ") + " or " + CONDITIONS[last]
        + ", or a grade from C10 (the best) to C1."
    )  # fmt: skip


def read_yes(text: str) -> CellRead:
    """Yes, no or "" of a cell."""
    written = without_signs(one_line(text).upper(), " .")
    if written in NOT_KNOWN:
        return said_by_cell("", "")
    if written in YES:
        return said_by_cell("yes", "")
    if written in NO:
        return said_by_cell("no", "")
    return unread_cell(quoted(text) + " is neither yes nor no.")


def is_iso_day(text: str) -> bool:
    """Whether a text is written like 1998-05-12."""
    if len(text) != 10 or text[4:5] != "-" or text[7:8] != "-":
        return False
    return is_figures(text[0:4] + text[5:7] + text[8:10])


def read_price(text: str, usual: str) -> CellRead:
    """Money of a cell, None for none. usual: the currency meant where none is written."""
    written = without_blanks(text)
    out = said_by_cell("", "")
    out["value"] = None
    if written.upper() in NOT_KNOWN or written in DASHED:
        return out
    if is_iso_day(written):
        out["wrong"] = (
            quoted(text) + " is a date: a spreadsheet takes 12/6 for one. Write it like 12s 6d."
        )
        return out
    read = read_money(written, usual)
    for words_of in MONEY_WORDS:
        if words_of[0] == read["problem"]:
            out["wrong"] = quoted(text) + " " + words_of[1]
    if read["problem"] == "":
        out["value"] = read["money"]
    return out


def read_count(text: str) -> CellRead:
    """A quantity; 1 for an empty cell."""
    written = without_blanks(text).upper()
    if ends(written, "X"):
        written = without_blanks(written[0 : len(written) - 1])
    out = said_by_cell("", "")
    out["value"] = 1
    if written in NOT_KNOWN:
        return out
    if is_figures(written) and len(written) < 10 and 0 < int(written) < 1000:
        out["value"] = int(written)
        return out
    out["wrong"] = quoted(text) + " is not a number of pieces. Write a whole number from 1."
    return out


def read_urgency(text: str) -> CellRead:
    """How much something is wanted, 1 (least) to 3; 2 for an empty cell."""
    written = without_blanks(text).upper()
    out = unread_cell(quoted(text) + " is not an urgency. Write 1, 2 or 3.")
    for n in range(len(URGENCIES)):
        if written in URGENCIES[n]:
            out["value"] = n + 1
            out["wrong"] = ""
    return out


def looks_like_money(text: str) -> bool:
    """Whether a text is written as money is, and not only as a number."""
    whole = text.upper()
    cut = word_cut(whole)
    for n in range(len(cut)):
        if cut[n] in ["£", "€", "$", "¥", "GBP", "EUR", "USD", "S", "D", "GNS"]:
            return True
        after = cut[n + 1][0] if n + 1 < len(cut) else ""
        slash = cut[n] == "/" and n > 0 and sort_of(cut[max(0, n - 1)][0]) == "figure"
        if slash and after != "" and after in "-0123456789":
            return True
    at = len(whole) - 3
    pence = at > 0 and is_figures(whole[at + 1 :]) and whole[at] in [".", ","]
    return pence and is_figures(whole[at - 1 : at])
