"""What is to be said of a mark that was read (marking.py): parts, texts and numbers, which the
screens and the terminal join to sentences.
"""

from .lists import place_of, plus
from .types.marks import (
    DatedNumber,
    MarkEnd,
    MarkRead,
    MarkSpan,
    MarkTables,
    NamedOne,
    Parts,
    Reading,
    ReadingSaid,
    WordingRow,
)

UNSAID = "By itself it gives no year."
PUBLISHED_END = "published"
MEMORY_END = "from memory"


def is_numbered(reading: Reading) -> bool:
    """Whether the reading is of a number."""
    return reading["number"]["problem"] != "none"


def is_from_memory(number: DatedNumber) -> bool:
    """Whether some of what dates a number is from memory."""
    return number["memory"]


def is_hard(end: MarkEnd) -> bool:
    """Whether an end rules out what is beyond it."""
    return end["hard"]


def is_bare(reading: Reading) -> bool:
    """Whether nothing before the number says what it is."""
    return reading["bare"]


def name_of_one(records: list[NamedOne], ident: str) -> str:
    """The name of the record with this id; the id itself where there is none."""
    at = place_of(records, ident)
    return records[at]["name"] if at >= 0 else ident


def listed(names: list[str], most: int) -> str:
    """Names with commas between them; of many the first, and how many more."""
    out = ""
    for i in range(len(names)):
        if i < most:
            out = out + ("" if i == 0 else ", ") + names[i]
    return out + (" and others" if len(names) > most else "")


def countries_said(tables: MarkTables, codes: list[str]) -> str:
    """The countries by name."""
    return listed([name_of_one(tables["countries"], code) for code in codes], 4)


def what_it_is(tables: MarkTables, reading: Reading) -> Parts:
    """The name of a reading: of the mark and its wording, or of the number."""
    number = reading["number"]
    if is_numbered(reading) and reading["series"] != "":
        series = tables["series"][place_of(tables["series"], reading["series"])]
        if number["kind"] == "application":
            return ["British patent, ", number["number"], " of ", number["first"]]
        if number["number"] > 0:
            return [series["name"], " ", number["number"]]
        return [series["name"]]
    if is_numbered(reading) and number["kind"] != "":
        return ["Barcode, ", number["kind"]]
    at = place_of(tables["features"], reading["feature"])
    feature = tables["features"][at]
    out: Parts = [feature["name"], ": ", name_of_one(feature["states"], reading["state"])]
    if len(reading["countries"]) > 0:
        out = plus(out, " (")
        out = plus(out, countries_said(tables, reading["countries"]))
        out = plus(out, ")")
    return out


def wrong_number(tables: MarkTables, reading: Reading) -> Parts:
    """What is wrong with a number, and what would be right."""
    number = reading["number"]
    problem = number["problem"]
    near = number["near"]
    if problem == "check":
        return [
            "By the other figures the last one should be ", near[0],
            ". Read it again, figure by figure.",
        ]  # fmt: skip
    if problem == "count":
        return [
            "A barcode has 8, 12 or 13 figures. Write also the small ones at its ends.",
        ]  # fmt: skip
    series = tables["series"][place_of(tables["series"], reading["series"])]
    they = "From memory: the series " if is_from_memory(number) else "The series "
    if problem == "empty":
        return ["There is no number after it. Add the figures, as in ", series["example"], "."]
    if problem == "letters":
        out: Parts = [
            "“", number["figures"], "” is not figures only. Look again for I read for 1, ",
            "O for 0 and S for 5.",
        ]  # fmt: skip
        return plus(out, " It may be " + number["meant"] + ".") if number["meant"] != "" else out
    if problem == "long":
        return ["That has too many figures: there are at most ", near[0], ". Read it again."]
    if problem == "year":
        return [
            "British patents were numbered by the year from ", near[0], " to ", near[1],
            ", not in such a year. Read the year again.",
        ]  # fmt: skip
    if problem == "unused":
        out = [they, "ended near ", near[0]]
        if near[1] > 0:
            out = [they, "ended near ", near[0], " and went on at ", near[1]]
        return plus(out, ". Such a number is most likely misread: look again.")
    if problem == "beyond":
        return [
            they, "had not reached ", near[0], " by ", near[1],
            ". Such a number is most likely misread: look again.",
        ]  # fmt: skip
    if reading["series"] == "patent_gb":
        return [
            "A British patent number below ", near[0], " gives no year by itself: before ", near[1],
            " they began again at 1 each year. Add the year, as in ", number["number"], "/09.",
        ]  # fmt: skip
    return ["The numbers begin at ", near[0], ": this one is too low."]


def years_of_number(tables: MarkTables, reading: Reading) -> Parts:
    """When a number was given, and what that says of the piece."""
    number = reading["number"]
    first = number["first"]
    if number["problem"] != "":
        return wrong_number(tables, reading)
    if reading["series"] == "":
        if number["kind"] == "":
            return []
        return [
            "Such bars have been printed since ",
            first,
            ". They do not say in which later year.",
        ]
    tail = " By the table, from memory." if is_from_memory(number) else ""
    if number["kind"] == "application":
        return [
            "Numbered in ", first, "; from 1916 on as an application. The piece is from ", first,
            " or later.",
        ]  # fmt: skip
    series = tables["series"][place_of(tables["series"], reading["series"])]
    done = series["done"]
    start: Parts = ["It was ", done, " in ", first]
    if number["last"] == 0:
        start = ["It was ", done, " in ", first, " or later"]
    elif number["last"] != first:
        start = ["It was ", done, " between ", first, " and ", number["last"]]
    more: Parts = ["; the piece is from ", first, " or later.", tail]
    for part in more:
        start = plus(start, part)
    return start


def end_said(end: MarkEnd, word: str) -> str:
    """One end: "not before June 1974", or "hardly after 1984" where it is soft."""
    return ("not " if is_hard(end) else "hardly ") + word + " " + end["when"]


def years_of_row(tables: MarkTables, row: WordingRow) -> Parts:
    """When a wording was in use, as surely as the row has it."""
    since = row["since"]
    until = row["until"]
    if since["year"] == 0 and until["year"] == 0:
        return [countries_said(tables, row["countries"]), ": gives no year by itself."]
    said = ""
    if since["year"] > 0:
        said = end_said(since, "before")
    if until["year"] > 0:
        said = said + (", " if said != "" else "") + end_said(until, "after")
    out: Parts = [countries_said(tables, row["countries"]), ": ", said, "."]
    if row["note"] != "" and row["note"] != "Gives no year by itself.":
        out = plus(out, " " + row["note"])
    return out


def source_said(tables: MarkTables, label: str, place: int) -> str:
    """Who says so: the label, and the source with where it was read."""
    if place < 0:
        return label
    source = tables["sources"][place]
    where = "; " + source["read"] if source["read"] != "" else ""
    return label + ": " + source["what"] + where


def who_says(tables: MarkTables, reading: Reading) -> list[str]:
    """Each source of a reading, once, with its label."""
    out: list[str] = []
    number = reading["number"]
    if is_numbered(reading) and number["row"] >= 0:
        series = tables["series"][place_of(tables["series"], reading["series"])]
        for at in [number["row"], number["row"] + 1]:
            if at < len(series["rows"]):
                label = MEMORY_END if series["rows"][at][3] == 1 else PUBLISHED_END
                said = source_said(tables, label, series["sources"][at])
                if said not in out:
                    out.append(said)
        return out
    for place in reading["rows"]:
        for end in [tables["rows"][place]["since"], tables["rows"][place]["until"]]:
            if end["year"] > 0:
                said = source_said(tables, end["label"], end["source"])
                if said not in out:
                    out.append(said)
    return out


def reading_said(tables: MarkTables, reading: Reading) -> ReadingSaid:
    """{what, lines, who}: what a reading is, sentences about its years, who says so. `what` and
    each line are parts to be joined.
    """
    lines: list[Parts] = []
    number = reading["number"]
    if is_bare(reading):
        lines.append(["Nothing says what the number is: if it is this one, then:"])
    if is_numbered(reading):
        about = years_of_number(tables, reading)
        if len(about) > 0:
            lines.append(about)
        if reading["series"] != "" and number["problem"] == "":
            note = tables["series"][place_of(tables["series"], reading["series"])]["note"]
            if note != "":
                lines.append([note])
    if (
        not is_numbered(reading)
        or number["kind"] in ["EAN-8", "EAN-13", "UPC-A"]
        or reading["series"] == ""
    ):
        for place in reading["rows"]:
            lines.append(years_of_row(tables, tables["rows"][place]))
    if len(lines) == 0:
        lines.append([UNSAID])
    return {
        "what": what_it_is(tables, reading),
        "lines": lines,
        "who": who_says(tables, reading),
    }


def mark_span(tables: MarkTables, reading: Reading) -> MarkSpan:
    """The years that a reading leaves: {first, last (0: open), first_hard, last_hard}."""
    number = reading["number"]
    out: MarkSpan = {"first": 0, "last": 0, "first_hard": False, "last_hard": False}
    if is_numbered(reading) and reading["series"] != "":
        if number["problem"] == "":
            out["first"] = number["first"]
            out["first_hard"] = not is_from_memory(number)
        return out
    rows = [tables["rows"][place] for place in reading["rows"]]
    if len(rows) == 0:
        return out
    out["first"] = rows[0]["since"]["year"]
    out["last"] = rows[0]["until"]["year"]
    out["first_hard"] = rows[0]["since"]["hard"]
    out["last_hard"] = rows[0]["until"]["hard"]
    for row in rows:
        if row["since"]["year"] < out["first"]:
            out["first"] = row["since"]["year"]
            out["first_hard"] = row["since"]["hard"]
        if out["last"] > 0 and (row["until"]["year"] == 0 or row["until"]["year"] > out["last"]):
            out["last"] = row["until"]["year"]
            out["last_hard"] = row["until"]["hard"]
    return out


def nothing_said(read: MarkRead) -> Parts:
    """What to do about a text in which no mark was read; [] where one was."""
    if read["problem"] == "empty":
        return ["Nothing typed yet. Type what it says on the piece, just as it is written."]
    if read["problem"] == "nothing" and read["meant"] != "":
        return [
            "“", read["read"], "” is not a mark the app knows. Look again for I read for 1, O ",
            "for 0 and S for 5. It may be ", read["meant"], ".",
        ]  # fmt: skip
    if read["problem"] == "nothing":
        return [
            "“", read["read"], "” is not a mark the app knows. It would have to be the words ",
            "of a patent, a design or a country, a price, a code in an address, a telephone ",
            "number, or the figures under a barcode. Type it as it is there, with the words ",
            "before a number.",
        ]  # fmt: skip
    return []
