"""In which encoding a text file is: the platform decodes it so, and the rest is told here."""

from ..edtf import padded
from ..types.tables import FileText
from .older_letters import NO_SIGN, older_text
from .text_parts import begins

ENCODING_MARKS: list[list[str]] = [
    ["\u00ef\u00bb\u00bf", "utf-8", "UTF-8"],
    ["\u00ff\u00fe\u0000\u0000", "utf-32le", "UTF-32"],
    ["\u0000\u0000\u00fe\u00ff", "utf-32be", "UTF-32"],
    ["\u00ff\u00fe", "utf-16le", "UTF-16"],
    ["\u00fe\u00ff", "utf-16be", "UTF-16"],
]
ZEROS_FROM = 0.4  # share of zeros among every other byte of UTF-16 in our letters
LEAST_FOR_ZEROS = 8
LOOKED_FOR_ZEROS = 4000
WHOLE_MARK = "\ufeff"


def zeros_from(raw: str, start: int) -> float:
    """The share of zeros among every other byte from a place on, at the beginning of a file."""
    last = min(len(raw), LOOKED_FOR_ZEROS)
    count = 0
    zeros = 0
    at = start
    while at < last:
        count = count + 1
        if raw[at] == "\u0000":
            zeros = zeros + 1
        at = at + 2
    return zeros / count if count > 0 else 0.0


def encoding_of(raw: str) -> list[str]:
    """The encoding of a file, each byte as the character of its number, and its name where a mark
    or its zeros tell it; without a name it is to be tried.
    """
    for mark in ENCODING_MARKS:
        if begins(raw, mark[0]):
            return mark[1:]
    if len(raw) > LEAST_FOR_ZEROS:
        if zeros_from(raw, 1) > ZEROS_FROM:
            return ["utf-16le", "UTF-16"]
        if zeros_from(raw, 0) > ZEROS_FROM:
            return ["utf-16be", "UTF-16"]
    return ["utf-8", ""]


def spoilt_lines(text: str) -> list[int]:
    """The lines with a sign that could not be read, from 1."""
    out: list[int] = []
    line = 1
    for at in range(len(text)):
        c = text[at]
        if c == NO_SIGN and (len(out) == 0 or out[max(0, len(out) - 1)] != line):
            out.append(line)
        if c == "\n" or (c == "\r" and text[at + 1 : at + 2] != "\n"):
            line = line + 1
    return out


def told_text(text: str, note: str) -> FileText:
    """The text of a file, with what there is to say about its encoding."""
    return {"text": text, "notes": [note] if note != "" else []}


def text_of_file(raw: str, decoded: str, name: str, bytes_above: str) -> FileText:
    """The text of a file by encoding_of(), and what to say about it.

    raw: each byte as the character of its number. decoded: the same in that encoding, with the sign
    \\ufffd for what cannot be read. bytes_above: the characters from 128 to 255, in order.
    """
    text = decoded[1:] if begins(decoded, WHOLE_MARK) else decoded
    spoilt = 0
    others = 0
    first = -1
    for at in range(len(text)):
        if text[at] == NO_SIGN:
            first = at if first < 0 else first
            spoilt = spoilt + 1
        elif text[at] > "\u007f":
            others = others + 1
    if name != "":
        if spoilt == 0:
            return told_text(text, "The file was read as " + name + "." if name != "UTF-8" else "")
        return told_text(
            text,
            "The file says that it is " + name + ", but not all of it is: it was cut short, or "
            + "changed by a program that wrote another encoding. What could not be read is shown "
            + 'as "' + NO_SIGN + '".',
        )  # fmt: skip
    if spoilt == 0:
        return told_text(text, "")
    if spoilt == 1 and first == len(text) - 1:
        cut = "The file ends inside a character: it was cut short. Look at its last row."
        return told_text(text[0:first], cut)
    if others > 3 * spoilt:
        lines = spoilt_lines(text)
        more = ""
        if len(lines) > 1:
            more = "and " + padded(len(lines) - 1, 1) + " more "
        return told_text(
            text,
            "The file is in UTF-8, but some characters in line " + padded(lines[0], 1) + " " + more
            + 'are not: they are shown as "' + NO_SIGN + '". Look at those rows.',
        )  # fmt: skip
    older = older_text(raw, bytes_above)
    return told_text(
        older["text"],
        "The file is not in Unicode; it was read as " + older["name"]
        + ". If £ or accents look wrong, save it again as CSV UTF-8.",
    )  # fmt: skip
