"""What each sort of record holds when it is new. web/data/shapes.js says the same (tested)."""

from copy import deepcopy
from typing import Any

SHAPES: dict[str, dict[str, Any]] = {
    "piece": {
        "pack": "", "item": "", "called": "", "of": [], "answers": [], "condition": "", "boxed": "",
        "box_condition": "", "missing": [], "replaced": [], "paid": None, "where": "", "when": "",
        "photos": [], "notes": "", "kept": False, "purpose": "", "asking": None,
    },
    "want": {
        "pack": "", "item": "", "variant": "", "least": "", "box": "", "most": None, "urgency": 2,
        "notes": "",
    },
    "note": {
        "pack": "", "of": [], "answers": [], "condition": "", "boxed": "", "hall": "", "table": "",
        "asked": None, "offer": None, "come_back": "", "decision": "open", "photos": [], "text": "",
        "piece": "",
    },
    "sighting": {
        "pack": "", "version": "", "kind": "", "item": "", "called": "", "unrecorded": False,
        "of": [], "answers": [], "years": "", "text": "", "photos": [],
    },
    "budget": {"day": "", "amount": None},
}  # fmt: skip


def blank(sort: str) -> dict[str, Any]:
    """A new record of a type, without id and times."""
    return {"type": sort, "trashed": "", **deepcopy(SHAPES[sort])}
