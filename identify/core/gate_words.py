"""What is wrong with something that does not fit through the gate, and what would be right."""

from .types.gate import Fault

# Of each fault the sentence, in two parts where the name of the field stands between them.
WORDS_OF_FAULTS = [
    ["group", "It is not a group of named fields.", ""],
    ["deep", "It is nested more than 100 deep, which nothing this app keeps is.", ""],
    ["unicode", "It holds text that is not valid Unicode. Type that text again.", ""],
    ["value", "It holds a number that is too large, or not a number.", ""],
    ["large", "One change may be 256 KB long; this one is longer. Shorten its text.", ""],
    ["name", "It has a field called “", "”, which nothing this app keeps has."],
    ["time", "Its “", "” is not a time such as 2026-11-01T10:00:00Z."],
    ["id", "Its “", "” is not one that this app gives."],
    ["type", "Its “", "” is a sort that this version does not know."],
    ["op", "Its “", "” is not a name that a device gives to a change."],
    ["parents", "Its “", "” should name other changes, in order, each once."],
    ["clock", "Its “", "” is an impossible time."],
    ["scrubbed", "It was deleted for good, so its “", "” should hold nothing."],
    ["field", "Its “", "” does not hold what it should."],
]


def fault_words(fault: Fault) -> str:
    """A fault of the gate as a sentence, with the name of the field that it is about."""
    for entry in WORDS_OF_FAULTS:
        if entry[0] == fault["why"]:
            return entry[1] + fault["at"] + entry[2] if entry[2] != "" else entry[1]
    return ""
