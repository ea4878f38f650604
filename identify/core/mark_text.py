"""The text of a mark, as plain capitals: dots of abbreviations, other scripts and look-alikes."""

from typing import Any

from .runs import FIGURES, SPACES

# The figures 0 to 9 in Arabic, Persian, Devanagari and full width.
OTHER_FIGURES = [
    "\u0660\u0661\u0662\u0663\u0664\u0665\u0666\u0667\u0668\u0669",
    "\u06f0\u06f1\u06f2\u06f3\u06f4\u06f5\u06f6\u06f7\u06f8\u06f9",
    "\u0966\u0967\u0968\u0969\u096a\u096b\u096c\u096d\u096e\u096f",
    "\uff10\uff11\uff12\uff13\uff14\uff15\uff16\uff17\uff18\uff19",
]
# Cyrillic, then Greek capitals that look like those of LATIN.
ALIKE = (
    "\u0410\u0412\u0415\u041a\u041c\u041d\u041e\u0420\u0421\u0422\u0423\u0425\u0406"
    "\u0391\u0392\u0395\u0396\u0397\u0399\u039a\u039c\u039d\u039f\u03a1\u03a4\u03a5\u03a7"
)
LATIN = "ABEKMHOPCTYXI" + "ABEZHIKMNOPTYX"
DASHES_OF_MARKS = ["\u2010", "\u2011", "\u2012", "\u2013", "\u2014", "\u2212"]
ROUND = ["\u2018", "\u2019", "'", "`", "\u00b4"]


def place_in(text: str, wanted: str) -> int:
    """Where a character stands in a text, or -1."""
    at = 0
    for c in text:
        if c == wanted:
            return at
        at = at + 1
    return -1


def is_letter(c: str) -> bool:
    """Whether a character of plain capitals is a letter of any script. What JavaScript counts as
    two characters is none.
    """
    if "A" <= c <= "Z":
        return True
    if c >= "\u2000":
        return "\u3040" <= c < "\ud7fc" or "\uf900" <= c <= "\ufffd"
    return c >= "\u00c0" and c not in ["\u00d7", "÷"]


def one_script(text: str) -> list[Any]:
    """[text, changed]: in capitals, with figures of other scripts as 0 to 9 and foreign letters
    that look like ours as ours; changed: whether there were any. Dashes are hyphens.
    """
    out = ""
    changed = False
    for c in text.upper():
        d = c
        for figures in OTHER_FIGURES:
            at = place_in(figures, c)
            if at >= 0:
                d = FIGURES[at : at + 1]
        at = place_in(ALIKE, c)
        if at >= 0:
            d = LATIN[at : at + 1]
        if d != c:
            changed = True
        if c in SPACES or c in ["\n", "\r"]:
            d = " "
        elif c in DASHES_OF_MARKS:
            d = "-"
        elif c in ROUND:
            d = ""
        out = out + d
    return [out, changed]


def letters_from(text: str, start: int) -> int:
    """Where the letters that begin here end."""
    at = start
    while at < len(text) and is_letter(text[at]):
        at = at + 1
    return at


def figures_from(text: str, start: int) -> int:
    """Where the figures 0 to 9 that begin here end."""
    at = start
    while at < len(text) and text[at] in FIGURES:
        at = at + 1
    return at


def without_dots(text: str) -> str:
    """The text with D.R.G.M. as DRGM and PAT. NO. as PAT NO; dots between figures stay."""
    out = ""
    letters = 0  # since the last character that was none
    for i in range(len(text)):
        c = text[i]
        if c == "." and letters > 0:
            after = letters_from(text, i + 1) - i - 1
            if letters > 1 or after > 1:
                out = out + " "
        else:
            out = out + c
        letters = letters + 1 if is_letter(c) else 0
    return out


def plain_mark(text: str) -> list[Any]:
    """[text, changed] of one_script(), without the dots of abbreviations and with single spaces."""
    script = one_script(text)
    out = ""
    for c in without_dots(script[0]):
        last = out[len(out) - 1 : len(out)] if len(out) > 0 else " "
        if c != " " or last != " ":
            out = out + c
    end = len(out)
    while end > 0 and out[end - 1] == " ":
        end = end - 1
    return [out[0:end], script[1]]


def words_in(text: str) -> list[list[Any]]:
    """[[word, start, end]]: the runs of letters and the runs of figures of plain text."""
    out: list[list[Any]] = []
    at = 0
    while at < len(text):
        end = letters_from(text, at)
        if end == at:
            end = figures_from(text, at)
        if end > at:
            out.append([text[at:end], at, end])
            at = end
        else:
            at = at + 1
    return out
