"""Records as a file: CSV, XLSX or JSON. Each says that it lists valuables in a house: the JSON in a
field, the workbook on a sheet of its own, the CSV by its name, so that nothing is in the way when
it is read again.
"""

import csv
import io
from datetime import UTC, datetime
from typing import Any

import orjson
from openpyxl import Workbook
from openpyxl.cell import WriteOnlyCell
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter

from identify.exchange.columns import WRONG
from identify.exchange.flat import Names, table_of
from identify.exchange.safe_cells import OWN_SHEETS, fit_for_cell, guarded

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
VALUABLES = "valuables"  # in the name of every file
WIDEST = 40  # letters that a column is wide at most


def name_of(what: str, ending: str, day: str) -> str:
    """What a file is called: it says what it holds."""
    return f"identify-{what}-{VALUABLES}-{day}.{ending}"


def names_from(packs: dict[str, dict[str, Any]]) -> Names:
    """What a record is about and its variant, in the words of compiled packs."""
    items: dict[Any, str] = {
        (p, item["number"]): item["name"] for p, pack in packs.items() for item in pack["items"]
    }
    variants: dict[Any, str] = {
        (p, one["id"]): one["name"] for p, pack in packs.items() for one in pack["variants"]
    }

    def names(record: dict[str, Any]) -> tuple[str, str]:
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


def write_records(
    records: list[dict[str, Any]], ending: str, packs: dict[str, dict[str, Any]]
) -> bytes:
    """The file of these records. ending: csv, xlsx or json; packs: compiled, by id."""
    if ending == "json":
        made = datetime.now(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
        about = " ".join(ABOUT[:2])
        head = {"format": 1, "kind": "identify records", "made": made, "about": about}
        lines = b",\n".join(orjson.dumps(record) for record in records)
        return orjson.dumps(head)[:-1] + b',"records":[\n' + lines + b"\n]}\n"
    names, rows = table_of(records, names_from(packs))
    return _csv([names, *rows]) if ending == "csv" else _workbook(names, rows)


def write_failed(header: list[str], rows: list[dict[str, Any]], ending: str) -> bytes:
    """The rows that could not be imported, each with what is wrong, in the columns they came in."""
    table = [
        [guarded(fit_for_cell(cell)) for cell in [" ".join(row["wrong"]), *row["cells"]]]
        for row in rows
    ]
    names = [WRONG, *(guarded(fit_for_cell(name)) for name in header)]
    return _csv([names, *table]) if ending == "csv" else _workbook(names, table, ())


def _csv(rows: list[list[str]]) -> bytes:
    """UTF-8 with a mark in front, by which spreadsheets know it; lines end as RFC 4180 says."""
    out = io.StringIO()
    csv.writer(out, quoting=csv.QUOTE_ALL).writerows(rows)
    return out.getvalue().encode("utf-8-sig")


def _workbook(names: list[str], rows: list[list[str]], about: tuple[str, ...] = ABOUT) -> bytes:
    """A workbook with all cells as text, and a sheet that says what it is."""
    book = Workbook(write_only=True)
    sheet = book.create_sheet(OWN_SHEETS[0] if about else "rows")
    sheet.freeze_panes = "A2"
    for place, name in enumerate(names):
        longest = max([len(name), *(len(row[place]) for row in rows[:200] if place < len(row))])
        sheet.column_dimensions[get_column_letter(place + 1)].width = min(longest + 2, WIDEST)
    sheet.append([_text(sheet, name, bold=True) for name in names])
    for row in rows:
        sheet.append([_text(sheet, cell) if cell else None for cell in row])
    if about:
        told = book.create_sheet(OWN_SHEETS[1])
        told.column_dimensions["A"].width = 100
        for line in about:
            told.append([line])
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _text(sheet: Any, text: str, bold: bool = False) -> Any:
    """A cell that is text whatever it looks like."""
    cell = WriteOnlyCell(sheet, value=text)
    cell.data_type = "s"
    if bold:
        cell.font = Font(bold=True)
    return cell
