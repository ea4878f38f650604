"""Engine packs made from plain tables, for checks against other methods."""

from collections.abc import Mapping, Sequence
from typing import Any

EXACT = {"sure": 0.0, "twice": 0.0, "unsure": 0.0, "unrecorded": 0.0, "drawn_all": 1.0}
Shares = Sequence[float]


def table_pack(
    features: Mapping[str, Sequence[str]],
    rows: Sequence[Mapping[str, Shares]],
    priors: Sequence[float],
    parts: Mapping[str, tuple[str, float]] | None = None,
) -> dict[str, Any]:
    """A compiled pack with one variant a row and one kind.

    features: state ids by feature. rows: shares of the states by feature, [] for not recorded.
    priors: of the rows, adding up to 1. parts: feature -> (part id, chance of a swap).
    """
    parts = parts or {}
    part_ids = sorted({part for part, _ in parts.values()})
    swaps = dict(parts.values())
    out: dict[str, Any] = {
        "id": "table",
        "version": "v1",
        "range": {"first": 1950, "last": 1950},
        "kinds": [{"id": "thing", "name": "Thing", "plural": "Things", "open": 0.02}],
        "parts": [{"id": p, "name": p, "swap": swaps[p]} for p in part_ids],
        "features": [],
        "items": [],
        "variants": [],
        "changes": [],
        "rows": {
            "variant": list(range(len(rows))),
            "kind": [0] * len(rows),
            "prior": list(priors),
            "span": [0] * len(rows),
        },
        "spans": [{"first": 1950, "weights": [1.0]}],
        "cells": [],
        "backgrounds": [],
    }
    for place in range(len(rows)):
        out["variants"].append({"id": f"v{place}", "name": f"v{place}", "item": place})
        out["items"].append(
            {
                "id": f"i{place}",
                "number": f"n{place}",
                "name": f"n{place}",
                "kind": 0,
                "carried": [],
                "formation": "",
                "contains": [],
            }
        )
    for name, states in features.items():
        out["features"].append(
            {
                "id": name,
                "part": part_ids.index(parts[name][0]) if name in parts else -1,
                "seconds": 1.0,
                "needs": "nothing",
                "states": [{"id": s} for s in states],
                "mistaken": [],
                "kinds": [0],
                "none": -1,
            }
        )
        shares: list[list[float]] = [[]]
        codes = []
        for row in rows:
            share = list(row[name])
            if share not in shares:
                shares.append(share)
            codes.append(shares.index(share))
        out["cells"].append({"shares": shares, "codes": codes})
        known = [(p, row[name]) for p, row in zip(priors, rows, strict=True) if row[name]]
        weight = sum(p for p, _ in known) or 1.0
        out["backgrounds"].append(
            [
                [sum(p * row[s] for p, row in known) / weight for s in range(len(states))]
                if known
                else [1 / len(states)] * len(states)
            ]
        )
    return out


def sharp(states: Sequence[str], state: str) -> list[float]:
    """All of the share on one state."""
    return [1.0 if s == state else 0.0 for s in states]
