"""The records that the operations of a store come to, as a phone works them out."""

from typing import Any

import orjson

from identify.core.merging import merged
from identify.keeping.asking import rows
from identify.keeping.ops import for_merging
from identify.keeping.store import Store


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
    found = merged(for_merging(contents))
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
