"""Questions to the database whose answers the type checker takes as they come."""

from typing import Any

import apsw


def rows(db: apsw.Connection, sql: str, *values: Any) -> list[tuple[Any, ...]]:
    """Every row of the answer."""
    return db.execute(sql, values).fetchall()


def value(db: apsw.Connection, sql: str, *values: Any) -> Any:
    """The first value of the answer; None where there is none."""
    return db.execute(sql, values).get
