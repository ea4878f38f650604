"""What the files of a pack say, as the rows that the core checks and compiles."""

from typing import Any

from identify.core.types.rows import (
    ChangeRow,
    DrawingRow,
    FeatureRow,
    ItemRow,
    KindRow,
    RangeRow,
    RangeRows,
    SourceRow,
    StateRow,
    VariantRow,
)
from identify.reference.entries import (
    Change,
    Feature,
    Item,
    Kind,
    Pack,
    Range,
    Source,
    State,
    Variant,
)


def _pairs(pairs: list[tuple[str, str]]) -> list[Any]:
    return [list(pair) for pair in pairs]


def _cells(cells: dict[str, str]) -> list[Any]:
    return [[feature, text] for feature, text in cells.items()]


def range_row(about: Range) -> RangeRow:
    """The range itself."""
    return {
        "name": about.name,
        "maker": about.maker,
        "gauge_mm": about.gauge_mm,
        "gauge": f"{about.gauge_mm:g} mm",
        "scale": about.scale,
        "country": about.country,
        "years": about.years,
        "about": about.about,
        "material": about.material,
        "by": about.by,
        "invented": about.invented,
    }


def kind_row(kind: Kind) -> KindRow:
    """A sort of piece."""
    return {
        "id": kind.id,
        "name": kind.name,
        "plural": kind.plural,
        "caption": kind.caption,
        "complete": kind.complete,
    }


def state_rows(states: list[State]) -> list[StateRow]:
    """What can be seen of a feature."""
    return [
        {"id": each.id, "name": each.name, "caption": each.caption, "look": each.look}
        for each in states
    ]


def feature_row(feature: Feature, seen: float = 0.0) -> FeatureRow:
    """A feature."""
    return {
        "id": feature.id,
        "name": feature.name,
        "title": feature.title,
        "question": feature.question,
        "where": feature.where,
        "part": feature.part,
        "seconds": feature.seconds,
        "needs": feature.needs,
        "every": feature.kinds is None,
        "kinds": feature.kinds or [],
        "when": [[parent, states] for parent, states in feature.when.items()],
        "mistaken": _pairs(feature.mistaken),
        "states": state_rows(feature.states),
        "layer": feature.layer,
        "unseen": feature.unseen,
        "seen": seen,
    }


def source_row(source: Source) -> SourceRow:
    """Who says so."""
    return {"id": source.id, "what": source.what, "year": source.year, "trust": source.trust}


def _item(item: Item) -> ItemRow:
    return {
        "number": item.number,
        "name": item.name,
        "kind": item.kind,
        "years": item.years,
        "source": item.source,
        "other_years": _pairs(item.other_years),
        "formation": item.formation,
        "contains": item.contains,
        "carried": item.carried,
        "note": item.note,
        "cells": _cells(item.cells),
    }


def _variant(variant: Variant) -> VariantRow:
    return {
        "id": variant.id,
        "item": variant.item,
        "name": variant.name,
        "years": variant.years,
        "source": variant.source,
        "other_years": _pairs(variant.other_years),
        "common": variant.common,
        "note": variant.note,
        "cells": _cells(variant.cells),
    }


def change_row(change: Change) -> ChangeRow:
    """A running change."""
    return {
        "feature": change.feature,
        "state": change.state,
        "since": change.came,
        "until": change.ended,
        "kinds": change.kinds,
        "items": change.items,
        "source": change.source,
        "other_from": _pairs(change.other_from),
        "note": change.note,
        "to_source": "",
        "hard": [],
    }


def drawing_rows(drawings: dict[str, str]) -> list[DrawingRow]:
    """Drawings by their names."""
    return [{"id": name, "text": text} for name, text in drawings.items()]


def rows_of_pack(pack: Pack) -> RangeRows:
    """The rows of a folder, in the order of its files."""
    return {
        "id": pack.id,
        "range": range_row(pack.range),
        "kinds": [kind_row(k) for k in pack.kinds],
        "parts": [
            {
                "id": p.id,
                "name": p.name,
                "swap": p.swap,
                "replaced": p.replaced,
                "altered": p.altered,
            }
            for p in pack.parts
        ],
        "cautions": [{"kinds": c.kinds or [], "text": c.text} for c in pack.cautions],
        "features": [feature_row(feature) for feature in pack.features],
        "sources": [source_row(source) for source in pack.sources],
        "items": [_item(item) for item in pack.items],
        "variants": [_variant(variant) for variant in pack.variants],
        "changes": [change_row(change) for change in pack.changes],
        "moves": [{"what": m.what, "was": m.old, "now": m.new, "note": m.note} for m in pack.moves],
        "drawings": drawing_rows(pack.drawings),
    }
