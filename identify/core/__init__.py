"""The engine: the same source runs here and, compiled by pscript, on the phone.

Plain functions over numbers, text, lists and dicts. README.md has the mathematics; what may be
written is in DEVELOPERS.md, and tests/core/test_dialect.py refuses the rest. FILES is the order in
which the build joins them; what only devices need that share their records, MERGING, becomes a
module of its own.
"""

FILES = (
    "lists",
    "runs",
    "edtf",
    "date_tokens",
    "date_in_words",
    "one_date",
    "dates",
    "misreading",
    "session",
    "donors",
    "kin",
    "swapping",
    "belief",
    "focus",
    "worth",
    "asking",
    "checking",
    "certainty",
    "fit",
    "year_chances",
    "parts",
    "look_up",
    "looks",
    "portraits",
    "reasons",
<<<<<<< HEAD
    "rings",
=======
    "stopping",
>>>>>>> 7d85816 (The stop rule in a file of its own; a variant that is very likely and alone among what is recorded is named when nothing is left to ask)
    "assess",
    "currencies",
    "money",
    "tokens",
    "amounts",
    "seen",
    "claim_words",
    "claim",
    "joining",
    "narrowing",
    "condition",
    "holdings",
    "wants",
    "formation",
    "duplicates",
    "outside",
    "price",
    "meaning",
    "verdict",
    "deciding",
    "dated_numbers",
    "mark_text",
    "mark_shapes",
    "mark_rates",
    "marking",
    "mark_words",
    "apart",
    "moved",
    "clock_limits",
    "shapes",
    "forms",
    "fitting",
    "gate",
    "gate_words",
)

MERGING = ("clock", "merging", "syncing", "operation_forms")
