"""Rows of a list as records, and what an earlier import made of them. Nothing is written here;
README.md says what is given back.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from identify.exchange.fields import TYPES
from identify.exchange.list_rows import About, ListRow
from identify.exchange.own_tables import (
    FURTHER,
    HIDDEN,
    RecordError,
    field_named,
    record_of,
    shown,
    texts_of,
)
from identify.exchange.reference import Reference
from identify.exchange.second_import import ITEM, KEPT, OWN, changes, held, merged
from identify.exchange.shapes import SHAPES
from identify.exchange.table import quoted
from identify.exchange.types import AskedColumn, FieldClash, Fields, KeyedRow, Outcome, SameRecord
from identify.exchange.wording import Wording


@dataclass
class Importing:
    """What is known of all rows: the packs, what the rows are to be, and the columns.

    columns: [{name, field, order}] by place; currency: the one meant where none is written.
    """

    reference: Reference
    sort: str
    currency: str
    columns: Sequence[AskedColumn]
    wordings: dict[str, Wording] = field(default_factory=dict)

    def match(self, rows: Sequence[KeyedRow], existing: list[Fields]) -> list[Outcome]:
        """What becomes of each row {row, cells, key}; existing: the records of earlier imports."""
        by_key = {r["came"].get("key"): r for r in existing if isinstance(r.get("came"), dict)}
        by_key |= {f"{OWN}{r.get('id')}": r for r in existing}
        return [self._row(row, by_key.get(row["key"])) for row in rows]

    def _row(self, row: KeyedRow, existing: Fields | None) -> Outcome:
        texts = texts_of([column["name"] for column in self.columns], row["cells"])
        if row["key"].startswith(OWN) and texts.get("record", "").strip():
            return self._own(row, texts, existing)
        sort = self.sort or texts.get("type", "").strip().lower()
        sort = sort if sort in TYPES else "piece"
        about = About(self.reference, self.currency, self.columns, self.wording)
        one = ListRow(about, sort, row)
        out = one.outcome()
        if existing is not None and out["record"] is None and _chosen_before(out, existing):
            out["record"], out["failed"] = out.get("if_chosen"), ""
        if existing is not None and out["record"] is not None:
            if existing.get("type") != sort:
                return out
            sets, both = changes(out["record"], existing)
            record = out["record"]
            clashes = [
                _clash(row, name, one.heads.get(name, name), existing, record) for name in both
            ]
            out["same"] = _same(existing, sets, clashes)
        return out

    def _own(self, row: KeyedRow, texts: dict[str, str], existing: Fields | None) -> Outcome:
        """A row of a table that this app wrote."""
        out: Outcome = {
            "row": row["row"], "key": row["key"], "failed": "", "record": None, "candidates": [],
            "none": {}, "chosen": -1, "sure": 1.0, "problems": [], "same": None,
        }  # fmt: skip
        heads = {field_named(column["name"]): column["name"] for column in self.columns}
        try:
            record, wrong = record_of(texts, self.currency)
            _checked(record, existing)
        except RecordError as error:
            out["failed"] = f"Row {row['row']}: {error}"
            return out
        for name, sentence in wrong:
            left = " It was left as it was." if existing is not None else ""
            column = heads.get(name, name)
            said = f'Row {row["row"]}, "{column}": {sentence}{left}'
            out["problems"].append({"column": column, "sentence": said})
        out["record"] = record
        if existing is None:
            unread = {name for name, _ in wrong}
            for name, usual in SHAPES[record["type"]].items():
                if name not in record and (name in unread or name not in (*texts, *HIDDEN)):
                    record.setdefault(name, usual)
            return out
        if any(name == FURTHER for name, _ in wrong):  # only what the columns themselves change
            texts_now = {f: cell.strip() for f, cell in texts.items()}
            record = {
                f: value
                for f, value in record.items()
                if f in KEPT or shown(f, existing.get(f)) != texts_now.get(f, "")
            }
        sets, both = merged(record, existing)
        clashes = [_clash(row, name, heads.get(name, name), existing, record) for name in both]
        out["same"] = _same(existing, sets, clashes)
        return out

    def wording(self, pack: str) -> Wording:
        """What texts can say about the variants of a pack."""
        if pack not in self.wordings:
            self.wordings[pack] = Wording(self.reference.engines[pack])
        return self.wordings[pack]


def _checked(record: Fields, existing: Fields | None) -> None:
    """Raises RecordError for a record that this app cannot hold."""
    own = str(record["id"])
    if not (own.startswith("r") and own[1:].replace("_", "").isalnum() and own.isascii()):
        raise RecordError(
            f'"{own}" is not a record of this app. Leave the cell empty for a new one.'
        )
    if existing is not None and existing.get("type") != record["type"]:
        raise RecordError(
            f"the record {own} is a {existing.get('type')} and cannot become a {record['type']}. "
            "Leave the cell of the record empty for a new one."
        )


def _chosen_before(out: Outcome, existing: Fields) -> bool:
    """Whether the item of an unsure row was chosen at an earlier import, for the same words."""
    chosen = out.get("if_chosen")
    if chosen is None:
        return False
    now = chosen["came"]["cells"][ITEM]
    return bool(existing.get("came", {}).get("cells", {}).get(ITEM) == now)


def _same(existing: Fields, sets: Fields, clashes: list[FieldClash]) -> SameRecord:
    """What an import changes in a record that is there already."""
    before = {name: existing.get(name) for name in sets if name != "came"}
    return {"id": existing["id"], "sets": sets, "before": before, "clashes": clashes}


def _clash(row: KeyedRow, name: str, column: str, existing: Fields, record: Fields) -> FieldClash:
    """A field that was changed in the app and in the file."""
    ours, theirs = held(existing, name), held(record, name)
    return {
        "field": name,
        "ours": ours,
        "theirs": theirs,
        "cell": record.get("came", {}).get("cells", {}).get(name, ""),
        "sentence": f'Row {row["row"]}, "{column}": this was changed here and in the file. '
        f"Here: {_in_words(name, ours)}. In the file: {_in_words(name, theirs)}.",
    }


def _in_words(field: str, value: Any) -> str:
    """What a field holds, for a person; "nothing" where it holds nothing."""
    if field == ITEM:
        number = value.get("item") or ""
        variants = "; ".join(one["variant"] for one in value.get("of", []) if one["variant"])
        text = ", ".join(part for part in (number, variants or value.get("variant", "")) if part)
        text = text or value.get("called", "")
    else:
        text = shown(field, value)
    return quoted(text) if text else "nothing"
