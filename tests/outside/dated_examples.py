"""Marks that others have dated (fixtures/outside), and how the tables read them."""

import csv
from pathlib import Path
from typing import Any

from identify.core.dated_numbers import parts_of_year, read_applications, read_series
from identify.core.marking import read_mark, state_of_number
from identify.reference.mark_tables import mark_tables
from identify.reference.marks import read_marks

OUTSIDE = Path(__file__).resolve().parents[2] / "fixtures" / "outside"
TABLES = mark_tables()
SERIES = {each["id"]: each for each in TABLES["series"]}
NOW = 2026
WAITING = 4  # years between an application and what the table gives, at most


def examples(file: str) -> list[dict[str, str]]:
    with (OUTSIDE / file).open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines))


def verdict(series: str, number: str, years: str, of: str) -> str:
    """Whether a number reads as of the years that somebody else gives: right, wrong, undecided.
    of: "applied" where those are the years of the application, "" where of what the table gives.
    """
    if "/" in number:
        found = read_applications(parts_of_year(number))[0]
    else:
        found = read_series(SERIES[series]["rows"], number)
    if found["problem"]:
        return "undecided"
    first, _, last = years.partition("/")
    latest = int(last or first) + (WAITING if of == "applied" else 0)
    fits = found["first"] <= latest and int(first) <= (found["last"] or NOW)
    return "right" if fits else "wrong"


def fits(row: Any, year: int) -> bool:
    """Whether a year lies within the ends of a row, or in a tail of them."""
    since, until = row["since"], row["until"]
    early = since["year"] == 0 or year >= since["year"] - since["tail"]
    return early and (until["year"] == 0 or year <= until["year"] + until["tail"])


def wordings_met() -> tuple[set[tuple[str, str]], set[tuple[str, str]], int, int]:
    """Every wording of the table, those with a dated example (a dated number is one of its kind),
    and how many of the examples of wordings fit one of the times of each wording they may be.
    """
    seen = set()
    right = wrong = 0
    for example in examples("mark_wordings.csv"):
        year, country = int(example["year"]), example["country"]
        readings = [
            each
            for mark in read_mark(TABLES, example["text"])["marks"]
            for each in mark["readings"]
            if country in each["countries"] or not each["countries"]
        ]
        rows = [
            TABLES["rows"][place]
            for each in readings
            for place in each["rows"]
            if country in TABLES["rows"][place]["countries"]
        ]
        times: dict[tuple[str, str], list[bool]] = {}
        for row in rows:
            times.setdefault((row["feature"], row["state"]), []).append(fits(row, year))
        if readings and all(any(met) for met in times.values()):
            right += 1
        else:
            wrong += 1
        seen |= {(row["feature"], row["state"]) for row in rows}
        seen |= {(each["feature"], each["state"]) for each in readings}
    for example in examples("mark_numbers.csv"):
        series = SERIES[example["series"]]
        number = example["number"]
        state = "yearly" if "/" in number else state_of_number(series, int(number))
        seen.add((series["kind"], state))
    every = {(row.feature, row.state) for row in read_marks()[0].rows}
    return every, every & seen, right, wrong
