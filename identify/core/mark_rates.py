"""The rate of a tax beside the word for it: 17.5% VAT, VAT at 17½%, 18,6 % TVA."""

from .mark_text import figures_from
from .runs import FIGURES
from .types.marks import TaxRate

TAXED = ["vat", "gst", "consumption"]  # wordings of the mark "tax" that a rate may stand beside
BETWEEN = ["AT ", "@", "ZU ", "À ", "A "]


def rate_state(written: str) -> str:
    """The wording of the mark "rate" that a rate is, such as "r17_5"; "" for no rate."""
    out = ""
    after = False
    for c in written:
        if c in FIGURES:
            out = out + c
        elif c == "½" and not after:
            out = out + "_5"
            after = True
        elif c in [".", ","] and not after:
            out = out + "_"
            after = True
        else:
            return ""
    while after and out[len(out) - 1 : len(out)] in ["0", "_"]:
        after = out[len(out) - 1 : len(out)] == "0"
        out = out[0 : len(out) - 1]
    return "r" + out if out != "" and out[0] in FIGURES else ""


def is_part_of_rate(c: str) -> bool:
    """Whether a character may stand in a rate."""
    return c in FIGURES or c in [".", ",", "½"]


def rate_before(text: str, end: int) -> TaxRate:
    """The rate that ends just before this place: {state, start, end}."""
    out: TaxRate = {"state": "", "start": end, "end": end}
    at = end
    while at > 0 and text[at - 1] == " ":
        at = at - 1
    if at == 0 or text[at - 1] != "%":
        return out
    at = at - 1
    while at > 0 and text[at - 1] == " ":
        at = at - 1
    start = at
    while start > 0 and is_part_of_rate(text[start - 1]):
        start = start - 1
    out["state"] = rate_state(text[start:at])
    out["start"] = start
    return out


def rate_after(text: str, start: int) -> TaxRate:
    """The rate that begins just after this place: {state, start, end}."""
    out: TaxRate = {"state": "", "start": start, "end": start}
    at = start
    while at < len(text) and text[at] in [" ", ":"]:
        at = at + 1
    for word in BETWEEN:
        if text[at : at + len(word)] == word:
            at = at + len(word)
    while at < len(text) and text[at] == " ":
        at = at + 1
    end = figures_from(text, at)
    while end < len(text) and end > at and is_part_of_rate(text[end]):
        end = end + 1
    percent = end
    while percent < len(text) and text[percent] == " ":
        percent = percent + 1
    if end > at and text[percent : percent + 1] == "%":
        out["state"] = rate_state(text[at:end])
        out["end"] = percent + 1
    return out


def rate_beside(text: str, start: int, end: int) -> TaxRate:
    """The rate beside a word that stands here, before it or after: {state, start, end}."""
    before = rate_before(text, start)
    if before["state"] != "":
        before["end"] = end
        return before
    after = rate_after(text, end)
    after["start"] = start
    return after
