"""The years of a mark, or of a number or barcode, as lines for the terminal."""

from identify.errors import UserError
from identify.reference.barcodes import BarcodeError, read_barcode
from identify.reference.marks import OPEN, MarkError, Marks, read_marks, rows_for
from identify.reference.mistakes import PackError
from identify.reference.numbers import NumberError, design_years, first_bars, patent_years
from identify.reference.records import MarkRow
from identify.reference.windows import NONE

SERIES = {"design": design_years, "patent": patent_years}


class DateError(UserError, ValueError):
    """What cannot be dated, with what would be right."""


def dated(what: str, text: str, country: str) -> list[str]:
    """What is known of the years, a line each, with who says so.

    what: "design", "patent" or "barcode" with a number, or the id of a mark with the id or the name
    of one of its wordings. Raises DateError, PackError for a table with mistakes.
    """
    marks, mistakes = read_marks()
    if mistakes:
        raise PackError(mistakes)
    states = [state for mark in marks.features if mark.id == what for state in mark.states]
    wanted = text.strip().casefold()
    named = {
        state.id: state.name for state in states if wanted in (state.id, state.name.casefold())
    }
    try:
        if what == "barcode" and not named:
            return _barcode(marks, text)
        if what in SERIES and not named:
            return _number(what, text, country)
        return _wording(marks, what, named or {text.strip(): text}, country)
    except (BarcodeError, MarkError, NumberError) as error:
        raise DateError(str(error)) from error


def _wording(marks: Marks, what: str, named: dict[str, str], country: str) -> list[str]:
    """When a wording was in use in a country."""
    ((state, name),) = named.items()
    if state == NONE:
        raise MarkError(f'"{name}" says no year by itself: many pieces carry no such mark.')
    rows = rows_for(marks, country, what, state)
    return [f"{name}, {country}:", *(f"  {_span(row)} {_of_mark(marks, row)}" for row in rows)]


def _barcode(marks: Marks, text: str) -> list[str]:
    found = read_barcode(text)
    row = first_bars("twelve" if found.kind.startswith("UPC") else "thirteen")
    return [found.text, f"  {_of_mark(marks, row)}"]


def _number(what: str, text: str, country: str) -> list[str]:
    """The years of a British number with the rows of the table that say so."""
    if country != "GB":
        raise NumberError(
            f"Only British {what} numbers can be dated, not those of {country}. Leave out "
            "--country, or give a wording of the mark."
        )
    found = SERIES[what](text)
    return [found.text, *dict.fromkeys(f"  {_who(row.label, row.source)}" for row in found.rows)]


def _span(row: MarkRow) -> str:
    """From when and until when, as the table has it, with its note."""
    start = "" if row.earliest == OPEN else row.earliest
    end = "" if row.latest == OPEN else row.latest
    if start and end:
        when = f"{start} to {end}"
    elif start:
        when = f"{start} or later"
    else:
        when = f"until {end}" if end else "in all years"
    return f"{when}. {row.note}".strip()


def _of_mark(marks: Marks, row: MarkRow) -> str:
    said = {source.id: source.what for source in marks.sources}
    return _who(row.label, said.get(row.source, ""))


def _who(label: str, source: str) -> str:
    return f"({label}: {source})" if source else f"({label})"
