"""The commands import, export and records-schema: the same without the app."""

import argparse
import sys
from collections import Counter
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import orjson

from identify import phone
from identify.core.currencies import currencies
from identify.core.exporting.naming import naming_of
from identify.core.exporting.wants_page import wants_page
from identify.core.importing.column_headings import LIST_FIELDS, SORTS
from identify.core.importing.rows_matched import new_importing, rows_given_back
from identify.core.importing.text_parts import quoted
from identify.core.types.importing import AskedColumn, KeyedRow, LeftOutRow, Outcome, ReadTable
from identify.exchange.backups import now, read_backup, taken_up, write_backup
from identify.exchange.import_steps import match_rows, name_rows, read_file, reference_of
from identify.exchange.schemas import records_schema
from identify.exchange.table import FileError
from identify.exchange.writing import write_records

ENDINGS = ("csv", "xlsx", "json", "html")


def import_(args: argparse.Namespace) -> int:
    """Say what an import would change; with --write, change it. Raises FileError."""
    codes = [currency["code"] for currency in currencies()]
    if args.currency.upper() not in codes:
        raise FileError(
            f"{quoted(args.currency)} is not a currency that can be read. Name one of these: "
            f"{', '.join(codes)}."
        )
    reference = reference_of(tuple(args.pack or phone.demo_packs()))
    backup = read_backup(args.into, new=True)
    table = read_file(_bytes(args.file), reference, args.file.name, args.sheet)
    sort = "" if table["own"] else (args.sort or table["type"])
    columns = _settled(table, args.column, args.dates)
    named = name_rows(sort, columns, table["rows"])
    rows: list[KeyedRow] = [
        {"row": row["row"], "cells": row["cells"], "key": key}
        for row, key in zip(table["rows"], named["keys"], strict=True)
    ]
    about = new_importing(reference, sort, args.currency.upper(), columns)
    existing = [record for record in backup["records"] if not record.get("gone")]
    outcomes = match_rows(about, rows, existing)
    for line in [*table["notes"], *named["notes"]]:
        print(line)
    if not table["own"]:
        _print_columns(columns, sort)
    _print_rows(outcomes)
    failed = [
        (row, outcome) for row, outcome in zip(rows, outcomes, strict=True) if outcome["failed"]
    ]
    if not args.write:
        print("Nothing was written. Add --write to write it.")
        return 0
    taken_up(backup["records"], outcomes, now())
    write_backup(args.into, backup)
    print(f"Written to {args.into}. Restore it in the app.")
    if failed:
        left = args.file.with_name(f"{args.file.stem}-left-out.csv")
        rows_out: list[LeftOutRow] = [
            {"row": row["row"], "cells": row["cells"], "wrong": [outcome["failed"]]}
            for row, outcome in failed
        ]
        left.write_text(
            rows_given_back([c["name"] for c in columns], rows_out), "utf-8", newline=""
        )
        print(f"The rows that could not be imported are in {left}.")
    return 0


def _bytes(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError as error:
        raise FileError(f"{path} cannot be read: {(error.strerror or '').lower()}.") from error


def _settled(table: ReadTable, settings: list[str], dates: str) -> list[AskedColumn]:
    """The columns with what the person said of them. Raises FileError."""
    known = [field[0] for field in LIST_FIELDS]
    said = {}
    for setting in settings:
        name, sign, field = setting.rpartition("=")
        if not sign or (field not in known and field != ""):
            raise FileError(f"{quoted(setting)} is not NAME=FIELD. Fields are: {', '.join(known)}.")
        said[name] = field
    unknown = set(said) - {column["name"] for column in table["columns"]}
    if unknown:
        there = ", ".join(column["name"] for column in table["columns"])
        raise FileError(f"There is no column {quoted(min(unknown))}. There are: {there}.")
    return [
        {
            "name": column["name"],
            "field": said.get(column["name"], column["field"]),
            "order": dates or column["order"],
        }
        for column in table["columns"]
    ]


def _print_columns(columns: list[AskedColumn], sort: str) -> None:
    print(f"Each row is taken as a {sort} (--as). The columns (--column NAME=FIELD):")
    for column in columns:
        print(f"  {column['name']}: {column['field'] or 'left out'}")
        if column["order"] in ("ask", "mixed"):
            print(
                "    Does the day or the month come first in its dates? Say --dates day or month."
            )


def _print_rows(outcomes: list[Outcome]) -> None:
    """What becomes of the rows."""
    counts: Counter[str] = Counter()
    for outcome in outcomes:
        same = outcome["same"]
        for problem in outcome["problems"]:
            print(problem["sentence"])
        if outcome["failed"]:
            counts["failed"] += 1
            print(outcome["failed"])
        elif same is None:
            counts["new"] += 1
            if outcome["chosen"] < 0 and outcome["candidates"]:
                best = outcome["candidates"][0]
                print(
                    f"Row {outcome['row']}: perhaps {best['item']} {best['name']} "
                    f"({best['sure']:.0%}); no number was taken."
                )
        else:
            counts["changed" if set(same["sets"]) - {"came"} else "same"] += 1
            for clash in same["clashes"]:
                print(f"{clash['sentence']} It was left as it is in the backup.")
    print(
        f"{counts['new']} new, {counts['changed']} changed, {counts['same']} as they were, "
        f"{counts['failed']} cannot be imported."
    )


def export(args: argparse.Namespace) -> int:
    """Write the records of a backup as a table, JSON, or a page of wants."""
    ending = args.output.suffix.lower().removeprefix(".")
    if ending not in ENDINGS:
        raise FileError(f"{args.output} should end in .csv, .xlsx, .json or .html (wants).")
    backup = read_backup(args.backup)
    reference = reference_of(tuple(args.pack or phone.demo_packs()))
    packs = [engine["pack"] for engine in reference["engines"]]
    records = [
        record
        for record in backup["records"]
        if not record.get("gone") and (not args.type or record["type"] in args.type)
    ]
    if ending == "html":
        day = datetime.now(UTC).strftime("%-d %B %Y")
        content = wants_page(records, naming_of(packs), "", day, {}).encode()
    else:
        content = write_records(records, ending, packs)
    args.output.write_bytes(content)
    if ending == "html":
        print(f"{args.output}: the wants, without your notes and what you own.")
    else:
        print(f"{args.output}: it lists valuables in a house. Keep it with care.")
    return 0


def schema(args: argparse.Namespace) -> int:
    """Print the JSON Schema of the files with records."""
    sys.stdout.buffer.write(orjson.dumps(records_schema(args.backup), option=orjson.OPT_INDENT_2))
    return 0


def add(commands: Any) -> None:
    """Add the parsers of this area."""
    packs = "range that the numbers belong to (the demo ranges)"
    p = commands.add_parser("import", help="take a collector's spreadsheet into a backup file")
    p.add_argument("file", type=Path, help="CSV or XLSX, or a file that export wrote")
    p.add_argument(
        "--into",
        type=Path,
        required=True,
        help="backup file; a new one if there is none of that name",
    )
    p.add_argument("--pack", type=Path, action="append", help=packs)
    p.add_argument("--as", dest="sort", choices=SORTS, default="", help="what each row is")
    p.add_argument("--sheet", default="", help="sheet of a workbook (the first with rows)")
    p.add_argument("--currency", default="GBP", help="currency of prices without one (GBP)")
    p.add_argument(
        "--dates", choices=("day", "month"), default="", help="what comes first in 12/5/57"
    )
    p.add_argument(
        "--column", action="append", default=[], metavar="NAME=FIELD", help="what a column is"
    )
    p.add_argument(
        "--write",
        action="store_true",
        help="change the backup; without this it is only said what would change",
    )
    p.set_defaults(run=import_)

    p = commands.add_parser("export", help="write a backup's records as CSV, XLSX, JSON or HTML")
    p.add_argument("backup", type=Path, help="backup file made in the app")
    p.add_argument("-o", "--output", type=Path, required=True, help=".csv, .xlsx, .json, .html")
    p.add_argument("--pack", type=Path, action="append", help=packs)
    p.add_argument(
        "--type", action="append", choices=SORTS, help="only these (pieces, wants, notes)"
    )
    p.set_defaults(run=export)

    p = commands.add_parser("records-schema", help="print the JSON Schema of files with records")
    p.add_argument("--backup", action="store_true", help="of the backup file")
    p.set_defaults(run=schema)
