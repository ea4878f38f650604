"""What a mark on a piece is, read as it stands there: "DRGM 1 234 567", "W. Germany", "49/11"."""

from typing import Any

from .dated_numbers import (
    number_told,
    parts_of_year,
    past,
    read_applications,
    read_bars,
    read_for_figures,
    read_series,
    whole_figures,
    without_gaps,
)
from .lists import place_of
from .mark_rates import TAXED, rate_beside
from .mark_shapes import shape_at
from .mark_text import figures_from, is_letter, plain_mark, words_in
from .runs import FIGURES
from .types.marks import (
    DatedNumber,
    MarkFound,
    MarkRead,
    MarkTables,
    Reading,
    SeriesTable,
    ShapeEntry,
)

LEADS = ["NO", "NOS", "NR", "NRO", "NUMBER", "NUM", "N", "NUMERO", "FOR", "NUMMER", "№"]
CLONED = 14  # figures of a British design that was taken over from the European register


def rows_of_mark(tables: MarkTables, feature: str, state: str, countries: list[str]) -> list[int]:
    """Places of the rows that say when a wording was in use in any of the countries."""
    out: list[int] = []
    for i in range(len(tables["rows"])):
        row = tables["rows"][i]
        if row["feature"] == feature and row["state"] == state:
            shared = [c for c in row["countries"] if c in countries]
            if len(shared) > 0:
                out.append(i)
    return out


def reading_of(tables: MarkTables, feature: str, state: str, countries: list[str]) -> Reading:
    """A reading of words or of a shape."""
    return {
        "feature": feature, "state": state, "countries": countries, "series": "",
        "rows": rows_of_mark(tables, feature, state, countries), "bare": False,
        "number": number_told("none", ""),
    }  # fmt: skip


def state_of_number(series: SeriesTable, number: int) -> str:
    """The state of the mark that a number of this series is."""
    state = ""
    for pair in series["states"]:
        if pair["number"] <= number:
            state = pair["state"]
    return state


def series_reading(tables: MarkTables, ident: str, number: DatedNumber) -> Reading:
    """A reading of a number of a series, whatever is wrong with it."""
    series = tables["series"][place_of(tables["series"], ident)]
    state = ""
    if number["kind"] == "application":
        state = "yearly"
    elif number["problem"] == "":
        state = state_of_number(series, number["number"])
    out = reading_of(tables, series["kind"], state, [series["country"]])
    out["series"] = ident
    out["number"] = number
    return out


def best_readings(readings: list[Reading]) -> list[Reading]:
    """Those with nothing wrong; all of them where something is wrong with each."""
    right = [each for each in readings if each["number"]["problem"] == ""]
    return right if len(right) > 0 else readings


def number_readings(tables: MarkTables, idents: list[str], written: str) -> list[Reading]:
    """What a number can be that stands after the words of these series."""
    out: list[Reading] = []
    parts = parts_of_year(written)
    figures = whole_figures(written)
    for ident in idents:
        if len(parts) > 0 and ident == "patent_gb":
            for number in read_applications(parts):
                out.append(series_reading(tables, ident, number))
        elif figures != "" and len(figures) == CLONED and ident == "design_gb":
            cloned = reading_of(tables, "design", "fourteen", ["GB"])
            cloned["number"] = number_told("", figures)
            out.append(cloned)
        elif figures != "":
            series = tables["series"][place_of(tables["series"], ident)]
            out.append(series_reading(tables, ident, read_series(series["rows"], figures)))
    if len(out) > 0:
        return best_readings(out)
    number = number_told("empty" if written == "" else "letters", written)
    meant = read_for_figures(written)
    if whole_figures(meant) != "" or len(parts_of_year(meant)) > 0:
        number["meant"] = meant
    return [series_reading(tables, each, number) for each in idents]


def number_after(text: str, start: int) -> list[int]:
    """[where the number begins that stands here, where it ends]: figures with what may part them,
    and letters among them that may be figures.
    """
    at = start
    going = True
    while going:
        at = past(text, at, [" ", ":", ".", ",", "#", "-"])
        going = False
        for lead in LEADS:
            end = at + len(lead)
            if not going and text[at:end] == lead:
                after = text[end : end + 1]
                if after == "" or not is_letter(after):
                    at = end
                    going = True
    end = at
    seen = at
    going = True
    while going and end < len(text):
        c = text[end]
        if c in FIGURES or ("A" <= c <= "Z" and seen == end):
            end = end + 1
            seen = end
        elif c in [" ", ",", ".", "'", "/"] and end + 1 < len(text) and text[end + 1] in FIGURES:
            end = end + 1
            seen = end + 1
        else:
            going = False
    if past(text, at, FIGURES) == at and past(read_for_figures(text[at:end]), 0, FIGURES) == 0:
        return [at, at]
    return [at, end]


def has_figure(text: str) -> bool:
    """Whether there is any figure in the text."""
    for c in text:
        if c in FIGURES:
            return True
    return False


def words_at(tables: MarkTables, words: list[list[Any]], start: int) -> list[int]:
    """The longest words of the table that begin at this word: [where they end in the text, their
    places in the table]; [0] where none do.
    """
    best = 0
    places: list[int] = []
    for i in range(len(tables["words"])):
        wanted = tables["words"][i]["words"]
        same = len(wanted) >= best and start + len(wanted) <= len(words)
        for k in range(len(wanted)):
            if same and words[start + k][0] != wanted[k]:
                same = False
        if same:
            if len(wanted) > best:
                places = []
            best = len(wanted)
            places.append(i)
    end: int = words[start + best - 1][2] if best > 0 else 0
    out = [end]
    for place in places:
        out.append(place)
    return out


def rated(tables: MarkTables, state: str, readings: list[Reading]) -> list[Reading]:
    """The readings of a tax with this rate, for the countries that had it; [] where none had."""
    out: list[Reading] = []
    for each in readings:
        if each["feature"] == "tax" and each["state"] in TAXED:
            rows = rows_of_mark(tables, "rate", state, each["countries"])
            had = [code for i in rows for code in tables["rows"][i]["countries"]]
            those = [code for code in each["countries"] if code in had]
            if len(those) > 0:
                out.append(reading_of(tables, "rate", state, those))
    return out


def marks_in_words(tables: MarkTables, text: str) -> list[MarkFound]:
    """The marks that words name, with the numbers after them: [{start, end, readings}]."""
    words = words_in(text)
    out: list[MarkFound] = []
    done = 0
    for w in range(len(words)):
        if words[w][1] >= done:
            named = words_at(tables, words, w)
            if len(named) > 1:
                done = named[0]
                readings: list[Reading] = []
                idents: list[str] = []
                for i in named[1:]:
                    entry = tables["words"][i]
                    for ident in entry["series"]:
                        idents.append(ident)
                    if entry["state"] != "":
                        readings.append(
                            reading_of(tables, entry["feature"], entry["state"], entry["countries"])
                        )
                number = number_after(text, done)
                written = text[number[0] : number[1]]
                if len(idents) > 0 and (has_figure(written) or len(readings) == 0):
                    done = max(done, number[1])
                    worded = readings
                    readings = number_readings(tables, idents, written)
                    for each in worded:
                        readings.append(each)
                start: int = words[w][1]
                rate = rate_beside(text, start, done)
                with_rate = rated(tables, rate["state"], readings)
                if len(with_rate) > 0 and free_of(out, rate["start"], rate["end"]):
                    readings = with_rate
                    start = rate["start"]
                    done = rate["end"]
                out.append({"start": start, "end": done, "text": "", "readings": readings})
    return out


def free_of(marks: list[MarkFound], start: int, end: int) -> bool:
    """Whether no mark has been found in this stretch of the text."""
    for mark in marks:
        if mark["start"] < end and start < mark["end"]:
            return False
    return True


def readings_of_shape(tables: MarkTables, entry: ShapeEntry, written: str) -> list[Reading]:
    """What a text of this shape is: a mark, or a number of a series."""
    if len(entry["series"]) == 0:
        return [reading_of(tables, entry["feature"], entry["state"], entry["countries"])]
    figures = ""
    for c in written:
        if c in FIGURES:
            figures = figures + c
    return number_readings(tables, entry["series"], figures)


def marks_in_shapes(tables: MarkTables, text: str, named: list[MarkFound]) -> list[MarkFound]:
    """The marks that look like a price, a code or a telephone number, apart from those found; of
    several from one place the longest, all of them where they are equally long.
    """
    out: list[MarkFound] = []
    for start in range(len(text)):
        best = start
        readings: list[Reading] = []
        for entry in tables["shapes"]:
            end = shape_at(text, start, entry["pieces"])
            if end >= best and end > start:
                if end > best:
                    readings = []
                best = end
                for each in readings_of_shape(tables, entry, text[start:end]):
                    readings.append(each)
        taken = free_of(named, start, best) and free_of(out, start, best)
        if len(readings) > 0 and taken:
            out.append({"start": start, "end": best, "text": "", "readings": readings})
    return out


def bare_readings(tables: MarkTables, text: str) -> list[Reading]:
    """What figures can be that stand alone: those under a barcode, or a number of any series."""
    figures = without_gaps(text)
    only = figures_from(figures, 0) == len(figures)
    if only and len(figures) in [8, 12, 13]:
        number = read_bars(tables["barcode"], text)
        if number["problem"] == "" or len(figures) > 8:
            state = "twelve" if number["kind"] == "UPC-A" else "thirteen"
            if figures[0:2] == "45" and number["kind"] == "EAN-13":
                state = "forty_five"
            bars = reading_of(tables, "barcode", state, [])
            bars["number"] = number
            return [bars]
    tried: list[Reading] = []
    if only and len(figures) == CLONED:
        tried = number_readings(tables, ["design_gb"], text)
    elif whole_figures(text) != "" or len(parts_of_year(text)) > 0:
        tried = number_readings(tables, [series["id"] for series in tables["series"]], text)
    out: list[Reading] = []
    for reading in tried:
        if reading["number"]["problem"] in ["", "beyond"]:
            reading["bare"] = True
            out.append(reading)
    return out


def with_look_alikes(text: str) -> str:
    """The text with letters as the figures they look like, in words that have figures or nothing
    but such letters.
    """
    out = ""
    at = 0
    while at < len(text):
        end = at
        while end < len(text) and (text[end] in FIGURES or is_letter(text[end])):
            end = end + 1
        word = text[at:end]
        figures = read_for_figures(word)
        whole = past(figures, 0, FIGURES) == len(figures)
        out = out + (figures if whole and len(word) > 1 else word)
        if end == at:
            out = out + text[at]
            end = at + 1
        at = end
    return out


def marks_in(tables: MarkTables, text: str) -> list[MarkFound]:
    """The marks in plain text, in the order in which they stand."""
    marks = marks_in_words(tables, text)
    for mark in marks_in_shapes(tables, text, marks):
        marks.append(mark)
    bare = bare_readings(tables, text)
    if len(bare) > 0 and len(marks) <= 1:
        if len(marks) == 0:
            marks.append({"start": 0, "end": len(text), "text": "", "readings": []})
        if marks[0]["start"] == 0 and marks[0]["end"] == len(text):
            for each in bare:
                marks[0]["readings"].append(each)
    marks = sorted(marks, key=lambda mark: mark["start"])
    for mark in marks:
        mark["text"] = text[mark["start"] : mark["end"]]
    return marks


def read_mark(tables: MarkTables, text: str) -> MarkRead:
    """What a text on a piece says. Several readings of a mark: it can be each of them."""
    plain = plain_mark(text)
    read: str = plain[0]
    out: MarkRead = {
        "problem": "", "read": read, "changed": plain[1], "meant": "", "marks": [],
    }  # fmt: skip
    if read == "":
        out["problem"] = "empty"
        return out
    out["marks"] = marks_in(tables, read)
    if len(out["marks"]) == 0:
        out["problem"] = "nothing"
        meant = with_look_alikes(read)
        if meant != read and len(marks_in(tables, meant)) > 0:
            out["meant"] = meant
    return out
