"""What is wrong with something that does not fit through the gate, and what would be right."""

from typing import Any

WORDS_OF_FAULTS = [
    ["group", "It is not a group of named fields."],
    ["deep", "It is nested more than 100 deep, and no record of this app is."],
    ["unicode", "It holds text that is not valid Unicode. Type that text anew."],
    ["value", "It holds a number that is too large, or none."],
    ["large", "One change may be 256 KB long; this one is longer. Shorten its text."],
    ["op", "Its name is not one that a device gives."],
    ["parents", "Its parents are other operations, sorted, each named once."],
    ["clock", "Its clock stands at no time that can be."],
    ["scrubbed", "It was deleted for good, so it has no fields."],
]


def fault_words(fault: dict[str, Any]) -> str:
    """A fault of the gate as a sentence, with the name of the field that it is about."""
    at = " (" + fault["at"] + ")" if fault["at"] != "" else ""
    for entry in WORDS_OF_FAULTS:
        if entry[0] == fault["why"]:
            return entry[1] + at
    if fault["why"] == "name":
        return "It has a field called “" + fault["at"] + "”, which no record of this app has."
    if fault["why"] == "time":
        return "Its time “" + fault["at"] + "” is none such as 2026-11-01T10:00:00Z."
    if fault["why"] == "id":
        return "Its “" + fault["at"] + "” is not one that this app gives."
    if fault["why"] == "type":
        return "It is of a sort that this version does not know."
    return "Its “" + fault["at"] + "” holds something else than it should."
