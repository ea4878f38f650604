"""python -m tests.keeping.keep_version: keeps a file of every version of the database.

Run it once after a migration was added, with a row for each table that it brings, and never again
for a version that people have: versions/ holds what the program of that time wrote, as SQL.
"""

from pathlib import Path

import apsw

from identify.keeping.queries import rows
from identify.keeping.schema import APPLICATION, MIGRATIONS

FOLDER = Path(__file__).parent / "versions"
TIME = "2026-05-01T10:00:00+00:00"
# what the program of a version wrote first in tables that are new with it
NEW = {
    2: f"insert into devices values ('k0123', 'Phone', X'{'0f' * 32}', '{TIME}', '{TIME}', '')",
    3: f"insert into photos values ('{'ab' * 32}', 1234, '{TIME}')",
}


def file_of(version: int) -> Path:
    """The kept file of a version."""
    return FOLDER / f"version{version}.sql"


def keep(version: int) -> None:
    """Makes the file of a version from the one before."""
    db = apsw.Connection(":memory:")
    db.execute(file_of(version - 1).read_text(encoding="utf-8"))
    MIGRATIONS[version - 1](db)
    if version in NEW:
        db.execute(NEW[version])
    lines = [f"pragma application_id = {APPLICATION};", f"pragma user_version = {version};"]
    tables = rows(db, "select sql, name, type from sqlite_schema where sql is not null")
    lines += [f"{sql.strip()};" for sql, *_ in tables]
    for _, name, kind in tables:
        for row in rows(db, f"select * from {name}") if kind == "table" else ():
            values = ", ".join(apsw.format_sql_value(value) for value in row)
            lines.append(f"insert into {name} values ({values});")
    file_of(version).write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    for wanted in range(2, len(MIGRATIONS) + 1):
        if not file_of(wanted).exists():
            keep(wanted)
            print(f"{file_of(wanted)} is made. Look through it.")
