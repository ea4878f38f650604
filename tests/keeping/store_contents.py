"""What a store holds: its operations, and the records that a phone makes of them."""

from typing import Any

import orjson

from identify.core.merging import merged
from identify.keeping.ops import pull, read_operations
from identify.keeping.queries import rows
from identify.keeping.store import Store


def operations(store: Store) -> list[dict[str, Any]]:
    """All of them in the order of the server, in as many answers as they take."""
    found: list[dict[str, Any]] = []
    answer: dict[str, Any] = {"epoch": "", "after": 0, "last": "", "more": True}
    while answer["more"]:
        answer = pull(store, answer["epoch"], answer["after"], answer["last"], 1000)
        found += answer["ops"]
    return found


def records(store: Store) -> list[dict[str, Any]]:
    """Every record, merged, sorted by id: {id, type, fields: {name: value}, clashes:
    [{field, values: [{value, id}]}], heads, trashed, gone, brought_back}."""
    with store.read() as db:
        found = rows(db, "select record, content from ops order by record, seq")
    known: dict[str, list[str]] = {}
    for record, content in found:
        known.setdefault(record, []).append(content)
    return [_shown(record, contents) for record, contents in known.items()]


def _shown(record: str, contents: list[str]) -> dict[str, Any]:
    found = merged(read_operations(contents))
    clashes = [
        {
            "field": clash["field"],
            "values": [
                {"value": orjson.loads(one["text"]), "id": one["id"]} for one in clash["values"]
            ],
        }
        for clash in found["clashes"]
    ]
    return {
        "id": record,
        "type": found["type"],
        "fields": {name: orjson.loads(text) for name, text in found["fields"]},
        "clashes": clashes,
        "heads": found["heads"],
        "trashed": found["trashed"],
        "gone": found["gone"],
        "brought_back": found["brought_back"],
    }
