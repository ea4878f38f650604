"""Texts that are not in Unicode: of the encodings in which every byte is a character, the one with
the most letters and marks that such lists have, where they can stand; of equals, the first.

The signs of each encoding above 127 are those of Python's codecs (a test holds them together).
"""

from ..types.tables import OlderText
from .text_parts import joined_by

NO_SIGN = "\ufffd"  # no character of that encoding
USUAL_SIGNS = "£€½¼¾°–—‘’“”…×·ßÄÖÜäöüéèêëàâáçñôóòûúùîïíìÉÈÀÇåÅæÆøØ"  # noqa: RUF001
# fmt: off
OLDER: list[list[str]] = [
    ["Windows-1252",
     "€�‚ƒ„…†‡ˆ‰Š‹Œ�Ž��‘’“”•–—˜™š›œ�žŸ"  # noqa: RUF001
     "\u00a0¡¢£¤¥¦§¨©ª«¬\u00ad®¯°±²³´µ¶·¸¹º»¼½¾¿"  # noqa: RUF001
     "ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖ×ØÙÚÛÜÝÞß"  # noqa: RUF001
     "àáâãäåæçèéêëìíîïðñòóôõö÷øùúûüýþÿ"],
    ["Mac Roman",
     "ÄÅÇÉÑÖÜáàâäãåçéèêëíìîïñóòôöõúùûü"
     "†°¢£§•¶ß®©™´¨≠ÆØ∞±≤≥¥µ∂∑∏π∫ªºΩæø"  # noqa: RUF001
     "¿¡¬√ƒ≈∆«»…\u00a0ÀÃÕŒœ–—“”‘’÷◊ÿŸ⁄€‹›ﬁﬂ"  # noqa: RUF001
     "‡·‚„‰ÂÊÁËÈÍÎÏÌÓÔ\uf8ffÒÚÛÙıˆ˜¯˘˙˚¸˝˛ˇ"],  # noqa: RUF001
    ["code page 850 (DOS)",
     "ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜø£Ø×ƒ"  # noqa: RUF001
     "áíóúñÑªº¿®¬½¼¡«»░▒▓│┤ÁÂÀ©╣║╗╝¢¥┐"
     "└┴┬├─┼ãÃ╚╔╩╦╠═╬¤ðÐÊËÈıÍÎÏ┘┌█▄¦Ì▀"
     "ÓßÔÒõÕµþÞÚÛÙýÝ¯´\u00ad±‗¾¶§÷¸°¨·¹³²■\u00a0"],  # noqa: RUF001
    ["ISO 8859-15",
     "\u0080\u0081\u0082\u0083\u0084\u0085\u0086\u0087\u0088\u0089\u008a\u008b\u008c\u008d\u008e\u008f\u0090\u0091\u0092\u0093\u0094\u0095\u0096\u0097\u0098\u0099\u009a\u009b\u009c\u009d\u009e\u009f"
     "\u00a0¡¢£€¥Š§š©ª«¬\u00ad®¯°±²³Žµ¶·ž¹º»ŒœŸ¿"
     "ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖ×ØÙÚÛÜÝÞß"  # noqa: RUF001
     "àáâãäåæçèéêëìíîïðñòóôõö÷øùúûüýþÿ"],
    ["Windows-1250",
     "€�‚�„…†‡�‰Š‹ŚŤŽŹ�‘’“”•–—�™š›śťžź"  # noqa: RUF001
     "\u00a0ˇ˘Ł¤Ą¦§¨©Ş«¬\u00ad®Ż°±˛ł´µ¶·¸ąş»Ľ˝ľż"  # noqa: RUF001
     "ŔÁÂĂÄĹĆÇČÉĘËĚÍÎĎĐŃŇÓÔŐÖ×ŘŮÚŰÜÝŢß"  # noqa: RUF001
     "ŕáâăäĺćçčéęëěíîďđńňóôőö÷řůúűüýţ˙"],
]
# fmt: on


def is_out_of_place(before: str, sign: str, after: str) -> bool:
    """Whether a sign is a capital after a small letter, or a letter before a figure."""
    capital = "À" <= sign <= "Þ" and sign != "×"  # noqa: RUF001
    return ("a" <= before <= "z" and capital) or ("À" <= sign <= "ÿ" and "0" <= after <= "9")


def strangeness_in(text: str, places: list[int], numbers: list[int], signs: str) -> int:
    """How many signs of a text are none that such a list often has, or stand where they hardly can;
    -1 where one is no sign of this encoding.

    places: where the bytes from 128 on stand; numbers: which they are, less 128.
    """
    out = 0
    for n in range(len(places)):
        sign = signs[numbers[n] : numbers[n] + 1]
        if sign == NO_SIGN:
            return -1
        at = places[n]
        before = text[max(0, at - 1) : at]
        if sign not in USUAL_SIGNS or is_out_of_place(before, sign, text[at + 1 : at + 2]):
            out = out + 1
    return out


def older_text(text: str, bytes_above: str) -> OlderText:
    """The text of bytes in the likeliest older encoding; each byte comes as the character of its
    number. bytes_above: those characters from 128 to 255, in order.
    """
    number_of: dict[str, int] = {}
    places: list[int] = []
    numbers: list[int] = []
    for n in range(len(bytes_above)):
        number_of["b" + bytes_above[n]] = n
    for at in range(len(text)):
        if text[at] > "\u007f":
            places.append(at)
            numbers.append(number_of["b" + text[at]])
    best = -1
    chosen = OLDER[0]
    for older in OLDER:
        odd = strangeness_in(text, places, numbers, older[1])
        if odd >= 0 and (best < 0 or odd < best):
            best = odd
            chosen = older
    pieces: list[str] = []
    start = 0
    for n in range(len(places)):
        pieces.append(text[start : places[n]])
        pieces.append(chosen[1][numbers[n] : numbers[n] + 1])
        start = places[n] + 1
    pieces.append(text[start:])
    return {"text": joined_by(pieces, ""), "name": chosen[0]}
