"""Records as a file: CSV, XLSX or JSON. What is in each is core (exporting/records_out.py)."""

import io
import zipfile
from datetime import UTC, datetime

from identify.core.exporting.naming import naming_of
from identify.core.exporting.own_tables import cells_of, columns_for, table_of
from identify.core.exporting.records_out import records_csv, records_json, records_workbook
from identify.core.types.exporting import WorkbookPart
from identify.core.types.importing import Fields
from identify.core.types.pack import Pack


def write_records(records: list[Fields], ending: str, packs: list[Pack]) -> bytes:
    """The file of these records. ending: csv, xlsx or json; packs: compiled."""
    if ending == "json":
        made = datetime.now(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
        return records_json(records, made).encode()
    fields = columns_for(records)
    naming = naming_of(packs)
    table = table_of(fields, [cells_of(record, fields, naming) for record in records])
    return records_csv(table).encode() if ending == "csv" else zipped(records_workbook(table))


def zipped(parts: list[WorkbookPart]) -> bytes:
    """A zip file of these parts; the same parts make the same bytes."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        for part in parts:
            archive.writestr(zipfile.ZipInfo(part["name"]), part["text"], zipfile.ZIP_DEFLATED)
    return out.getvalue()
