"""A range from its rows: what is wrong with them, and the compiled range that the engine takes.

FILES is the order in which the build joins them, with BESIDES of the core before; they become a
module of their own, which the phone loads when a range is edited.
"""

BESIDES = (
    "lists", "runs", "edtf", "kin", "misreading", "look_up", "looks", "shapes", "moved",
    "importing/text_parts", "importing/text_table",
)  # fmt: skip

FILES = (
    "year_bounds",
    "weights",
    "words",
    "windows",
    "cells",
    "splitting",
    "check_names",
    "issues",
    "relatives",
    "adding_marks",
    "check_range",
    "check_rows",
    "range_mistakes",
    "compiling",
    "usable",
    "own_rows",
    "own_records",
    "together",
    "learning",
    "completeness",
    "change_effect",
    "lists_in",
    "kit_entries",
    "folder_in",
    "folder_out",
    "faults",
    "editions",
    "sighted",
)
