"""What is wrong with something that does not fit through the gate, and what would be right."""

from .types.gate import Fault

# Of each fault the sentence, in two parts where the name of the field stands between them.
WORDS_OF_FAULTS = [
    ["group", "It is not a group of named fields.", ""],
    ["deep", "It is nested more than 100 deep, and no record of this app is.", ""],
    ["unicode", "It holds text that is not valid Unicode. Type that text again.", ""],
    ["value", "It holds a number that is too large, or none.", ""],
    ["large", "One change may be 256 KB long; this one is longer. Shorten its text.", ""],
    ["name", "It has a field called “", "”, which no record of this app has."],
    ["time", "Its “", "” is no time such as 2026-11-01T10:00:00Z."],
    ["id", "Its “", "” is none that this app gives."],
    ["type", "Its “", "” is a sort of record that this version does not know."],
    ["op", "Its “", "” is no name that a device gives to an operation."],
    ["parents", "Its “", "” are other operations, sorted, each named once."],
    ["clock", "Its “", "” stands at no time that can be."],
    ["scrubbed", "It was deleted for good, so its “", "” hold nothing."],
    ["field", "Its “", "” holds something else than it should."],
]


def fault_words(fault: Fault) -> str:
    """A fault of the gate as a sentence, with the name of the field that it is about."""
    for entry in WORDS_OF_FAULTS:
        if entry[0] == fault["why"]:
            return entry[1] + fault["at"] + entry[2] if entry[2] != "" else entry[1]
    return ""
