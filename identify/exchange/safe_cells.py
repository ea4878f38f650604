"""Cells that a spreadsheet must not take for formulas.

OWASP, "CSV Injection" (owasp.org/www-community/attacks/CSV_Injection; from memory): a cell that
begins with = + - @, a tab, a carriage return or a line feed may be run. Such a cell gets an
apostrophe in front, and so does one that begins with an apostrophe, so that it can be taken off
again. The wide and small forms of the signs are guarded as well, and blanks in front do not help.
"""

import re

# The wide and small forms look the same to some programs.
RISKY = re.compile(r"\s*[=+\-@＝＋－＠﹦﹢﹣﹫']|[\t\r\n]")  # noqa: RUF001
# What no XML 1.0 document can hold, and what openpyxl takes out of a cell that it reads.
UNFIT = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\ufdd0-\ufdef\ufffe\uffff]|x005F_")
OWN_SHEETS = ["records", "about"]  # of a workbook that this app writes
LONGEST = 32_000  # a cell of a spreadsheet holds 32,767


def guarded(text: str) -> str:
    """The text as it goes into a cell."""
    return f"'{text}" if RISKY.match(text) else text


def unguarded(cell: str) -> str:
    """The text of a cell that was guarded."""
    return cell[1:] if cell.startswith("'") and RISKY.match(cell[1:]) else cell


def fit_for_cell(text: str) -> str:
    """The text without what a cell cannot hold. Where that changes it, it is lost here."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n")
    return UNFIT.sub("", lines)[:LONGEST]
