"""Dates and years as people write them, read into EDTF: for the fields of the app, for what a
seller says, and for spreadsheets.

"before 1960" is 1959 at the latest, "by 1960" and "not later than 1960" are 1960; "after" and
"since" likewise.
"""

from typing import Literal

from .date_in_words import date_in_words
from .date_tokens import date_tokens, token_of
from .edtf import (
    bare,
    before_begin,
    both_marks,
    date_as,
    is_figures,
    is_open,
    is_season,
    just_after,
    just_before,
    mark_of,
    mark_of_date,
    no_date,
    padded,
    sides_of,
    span_of,
    written_edtf,
)
from .one_date import one_date, shape_of_date, year_of
from .types.dates import DateToken, DayOrder, Life, Mark, OneDate, ReadDate, Trimmed

ABOUT_OR_DOUBT = ["about", "doubt"]
TO_END = ["later", "to", "-"]  # behind a date: from then on
CONNECTORS = ["to", "-", "/", "or", "of"]
SAYS_NOTHING = ["ON", "OF", "EN"]  # that say nothing in front of a date
MOST_TOKENS = 24
NO_DATE_KNOWN = [
    "?", "UNKNOWN", "NOT KNOWN", "DON'T KNOW", "DON\u2019T KNOW", "DONT KNOW", "I DON'T KNOW",
    "NOT SURE", "I DON\u2019T KNOW", "DO NOT KNOW", "I DO NOT KNOW", "NO IDEA",
]  # fmt: skip
EXAMPLES = "1957, May 1957, 12 May 1957, about 1957 or 1957 to 1961"


def with_mark(date: OneDate, mark: Mark) -> str:
    """EDTF of a date with a mark on each end that is not open, besides what is marked there; a
    season, which takes none, becomes months.
    """
    if mark == "":
        return date["edtf"]
    season = is_season(date["edtf"])
    sides = sides_of(span_of(date["first"], date["last"])["edtf"] if season else date["edtf"])
    for at in range(len(sides)):
        if not is_open(sides[at]):
            sides[at] = bare(sides[at]) + both_marks(mark, mark_of(sides[at]))
    return sides[0] if len(sides) == 1 else sides[0] + "/" + sides[1]


def trimmed(tokens: list[DateToken]) -> Trimmed:
    """The tokens without what stands before or behind them for "about" and "perhaps"."""
    start = 0
    end = len(tokens)
    about = False
    doubt = False
    going = True
    while going and start < end:
        first = tokens[start]["role"]
        last = tokens[end - 1]["role"]
        about = about or first == "about" or last == "about"
        doubt = doubt or first == "doubt" or last == "doubt"
        going = first in ABOUT_OR_DOUBT or last in ABOUT_OR_DOUBT
        if first in ABOUT_OR_DOUBT:
            start = start + 1
        elif last in ABOUT_OR_DOUBT:
            end = end - 1
    return {"tokens": tokens[start:end], "mark": mark_of_date(about, doubt)}


def marked_date(tokens: list[DateToken], order: DayOrder, life: Life) -> OneDate:
    """One date, which can be about or uncertain."""
    kept = trimmed(tokens)
    out = one_date(kept["tokens"], order, life)
    out["mark"] = kept["mark"]
    return out


def open_before(date: OneDate, strict: bool) -> OneDate:
    """All time up to a date, or up to what comes before it."""
    if date["problem"] != "":
        return date
    end = just_before(date["first"]) if strict else date["last"]
    out = date_as("../" + end, "", end) if end != "" else no_date()
    out["mark"] = date["mark"]
    return out


def open_after(date: OneDate, strict: bool) -> OneDate:
    """All time from a date on, or from what comes after it."""
    if date["problem"] != "":
        return date
    start = just_after(date["last"]) if strict else date["first"]
    out = date_as(start + "/..", start, "") if start != "" else no_date()
    out["mark"] = date["mark"]
    return out


def open_date(tokens: list[DateToken], order: DayOrder, life: Life) -> OneDate:
    """What is open at one end: before 1960, since 1957, 1957 or later."""
    first = tokens[0]["role"]
    last = tokens[len(tokens) - 1]["role"]
    rest = marked_date(tokens[1:], order, life)
    war = len(tokens) == 2 and tokens[1]["role"] == "war"
    if war and first == "before":
        return date_as("../1939", "", "1939")
    if war and first == "after":
        return date_as("1945/..", "1945", "")
    if first in ["before", "until", "to"]:
        return open_before(rest, first == "before")
    if first in ["after", "since", "from"]:
        return open_after(rest, first == "after")
    if last == "earlier":
        return open_before(marked_date(tokens[0 : len(tokens) - 1], order, life), False)
    if last in TO_END:
        return open_after(marked_date(tokens[0 : len(tokens) - 1], order, life), False)
    return no_date()


def whole_last(left: list[DateToken], right: list[DateToken], life: Life) -> list[DateToken]:
    """The right side of a span, a year of one or two figures made whole by the left: 1957 to 59."""
    if len(left) == 0 or len(right) != 1 or right[0]["role"] != "n":
        return right
    before = left[len(left) - 1]["text"]
    figures = right[0]["text"]
    if left[len(left) - 1]["role"] != "n" or len(before) not in [2, 4] or len(figures) > 2:
        return right
    if len(before) == 2 and len(figures) == 2:
        return right
    begun = padded(year_of(before, life), 4)
    return [token_of("n", 0, begun[0 : 4 - len(figures)] + figures)]


def left_of(left: list[DateToken], right: list[DateToken], order: DayOrder, life: Life) -> OneDate:
    """The left side of a span; what it lacks is taken from the right: May to June 1957."""
    years = [token for token in left if token["role"] == "n" and len(token["text"]) == 4]
    whole = [token for token in right if token["role"] == "n" and len(token["text"]) == 4]
    if len(years) == 0 and (len(whole) > 0 or shape_of_date(left) in ["m", "s", "p"]):
        for count in range(1, len(right)):
            more = left[0:]
            for at in range(len(right) - count, len(right)):
                more.append(right[at])
            date = marked_date(more, order, life)
            if date["problem"] == "":
                return date
    return marked_date(left, order, life)


def without_at(tokens: list[DateToken], place: int) -> list[DateToken]:
    """The tokens but for the one here."""
    return [tokens[at] for at in range(len(tokens)) if at != place]


def between_dates(tokens: list[DateToken], order: DayOrder, life: Life) -> OneDate:
    """A span from one date to another."""
    lead = tokens[0]["role"] in ["between", "from"]
    kept = tokens[1:] if lead else tokens
    for at in range(1, len(kept) - 1):
        if kept[at]["role"] in CONNECTORS:
            left = kept[0:at]
            right = whole_last(left, kept[at + 1 :], life)
            first = no_date()
            last = no_date()
            role = kept[at]["role"]
            part_of = role == "of" and left[len(left) - 1]["role"] == "part"
            if not part_of and role not in [token["role"] for token in without_at(kept, at)]:
                first = left_of(left, right, order, life)
                last = marked_date(right, order, life)
            if first["problem"] == "order":
                return first
            if first["problem"] == "" and last["problem"] == "":
                out = span_of(first["first"] + first["mark"], last["last"] + last["mark"])
                out["first"] = first["first"]
                out["last"] = last["last"]
                if before_begin(out["first"], out["last"]):
                    out["problem"] = "reversed"
                return out
    return no_date()


def hardest(dates: list[OneDate]) -> OneDate:
    """The first that is a date, else the first that says why not."""
    for date in dates:
        if date["problem"] == "":
            return date
    for date in dates:
        if date["problem"] not in ["", "unread"]:
            return date
    return no_date()


def date_of(tokens: list[DateToken], order: DayOrder, life: Life) -> OneDate:
    """The date or the span that tokens say."""
    kept = trimmed(tokens)
    words = kept["tokens"]
    if len(words) > 1 and words[0]["text"] in SAYS_NOTHING:
        words = words[1:]
    if len(words) == 0 or len(words) > MOST_TOKENS:
        return no_date()
    out = one_date(words, order, life)
    if out["problem"] in ["unread", "month"]:
        ways = [out, open_date(words, order, life), between_dates(words, order, life)]
        out = hardest(ways)
    out["mark"] = kept["mark"] if kept["mark"] != "" else out["mark"]
    return out


def is_edtf(text: str) -> bool:
    """Whether a text is EDTF and not, as people write it, a span: 1919-21 is not spring 1919."""
    season = is_season(text) and is_figures(text[2:4] + text[5:7])
    if season and int(text[5:7]) > int(text[2:4]):
        return False
    return written_edtf(text)["problem"] in ["", "reversed"]


def why_not_a_date(date: OneDate) -> str:
    """What is wrong with a date, in a sentence; "" where nothing is."""
    if date["problem"] == "reversed":
        return "It ends before it begins. Put the earlier one first."
    if date["problem"] == "order":
        both = [date_in_words(reading) for reading in date["readings"]]
        return "It can be " + both[0] + " or " + both[1] + "."
    if date["problem"] == "unread":
        return "Write it like " + EXAMPLES + "."
    return date["why"]


def read_tokens(tokens: list[DateToken], order: DayOrder, life: Life) -> ReadDate:
    """A date from the tokens of a text."""
    date = date_of(tokens, order, life)
    return {
        "edtf": with_mark(date, date["mark"]) if date["problem"] == "" else "",
        "problem": date["problem"],
        "why": why_not_a_date(date),
        "readings": date["readings"],
    }


def says_not_known(text: str) -> bool:
    """Whether a typed text says that the date is not known."""
    return text.upper() in NO_DATE_KNOWN


def read_date(text: str, order: DayOrder, life: Life) -> ReadDate:
    """A date, a year or a span of them from a typed text.

    order: which figure of 12/5/57 is the day; where that is not known and both are possible, the
    date is refused with both readings.
    """
    written = text.upper()
    if not is_edtf(written):
        return read_tokens(date_tokens(text), order, life)
    date = written_edtf(written)
    edtf = written if date["problem"] == "" else ""
    return {
        "edtf": edtf, "problem": date["problem"], "why": why_not_a_date(date), "readings": [],
    }  # fmt: skip


def figures_order(text: str) -> DayOrder | Literal["either"]:
    """Which figure of a date in figures can only be the day: "day" (the first), "month" (the
    second is), "either"; "" for any other text, and where it does not matter.
    """
    tokens = date_tokens(text)
    if shape_of_date(tokens) not in ["n-n-n", "n/n/n"]:
        return ""
    life: Life = {"first": 0, "last": 0}
    asked = read_tokens(tokens, "", life)
    if asked["problem"] == "order":
        return "either"
    same = int(tokens[0]["text"]) == int(tokens[2]["text"])
    if asked["problem"] != "" or same or len(tokens[0]["text"]) == 4:
        return ""
    return "day" if int(tokens[0]["text"]) > 12 else "month"
