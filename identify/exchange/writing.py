"""Records as a file: CSV, XLSX or JSON. Each says that it lists valuables in a house: the JSON in a
field, the workbook on a sheet of its own, the CSV by its name, so that nothing is in the way when
it is read again.
"""

from datetime import UTC, datetime
from typing import Any

import orjson

from identify.core.importing.rows_matched import BYTE_ORDER_MARK, csv_text
from identify.core.types.importing import Fields
from identify.core.types.pack import Pack
from identify.exchange.own_tables import Names, table_of

ABOUT = (
    "This lists valuables in a house. Keep it, and send it, with care.",
    "Pictures are not in it; a backup has them.",
    "Every column may be changed but “record” and “further”. A changed cell is taken up when the "
    "file is imported; an empty “record” makes a new one.",
    "An apostrophe in front of a cell keeps spreadsheets from running it; it is taken off again.",
)
TYPES = {
    "csv": "text/csv; charset=utf-8",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    "json": "application/json",
    "html": "text/html; charset=utf-8",
}
VALUABLES = "valuables"  # in the name of every file that lists what is owned
WANTS = "wanted"  # the page for a friend


def name_of(what: str, ending: str, day: str) -> str:
    """What a file is called: it says what it holds. A page of wants tells nothing of the house."""
    parts = [what] if what == WANTS else ["identify", what, VALUABLES]
    return f"{'-'.join([*parts, day])}.{ending}"


def names_from(packs: dict[str, Pack]) -> Names:
    """What a record is about and its variant, in the words of compiled packs."""
    items: dict[Any, str] = {
        (p, item["number"]): item["name"] for p, pack in packs.items() for item in pack["items"]
    }
    variants: dict[Any, str] = {
        (p, one["id"]): one["name"] for p, pack in packs.items() for one in pack["variants"]
    }

    def names(record: Fields) -> tuple[str, str]:
        pack = record.get("pack")
        of = record.get("of")
        of = [one for one in of if isinstance(one, dict)] if isinstance(of, list) else []
        number = record.get("item") or (of[0].get("item") if of else "")
        ids = [one.get("variant") for one in of] or [record.get("variant")]
        which = " or ".join(variants.get((pack, one), "") for one in ids if _named(one))
        return items.get((pack, number), "") if _named(number) else "", which

    return names


def _named(value: Any) -> bool:
    return isinstance(value, str) and value != ""


def write_records(records: list[Fields], ending: str, packs: dict[str, Pack]) -> bytes:
    """The file of these records. ending: csv, xlsx or json; packs: compiled, by id."""
    if ending == "json":
        made = datetime.now(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
        about = " ".join(ABOUT[:2])
        head = {"format": 1, "kind": "identify records", "made": made, "about": about}
        lines = b",\n".join(orjson.dumps(record) for record in records)
        return orjson.dumps(head)[:-1] + b',"records":[\n' + lines + b"\n]}\n"
    names, rows = table_of(records, names_from(packs))
    if ending == "csv":
        return (BYTE_ORDER_MARK + csv_text([names, *rows])).encode()
    return _workbook(names, rows)


def _workbook(names: list[str], rows: list[list[str]]) -> bytes:
    """A workbook with all cells as text, and a sheet that says what it is."""
    # openpyxl takes as long to load as all the rest of the program: only where it is wanted
    from identify.exchange.making_workbooks import workbook  # noqa: PLC0415

    return workbook(names, rows, ABOUT)
