"""Records of every type as a collector might have them, and lists as collectors keep them."""

from collections.abc import Iterable
from typing import Any

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st

from identify.core.shapes import fields_of
from identify.exchange.new_records import SHAPES
from tests.strategies import BOXED, WORDS_OF_CONDITION, moneys, old_texts

QUICK = settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))

ANY = st.text(max_size=20)
NASTY = st.sampled_from(
    ["", "=1+1", "+44", "-5", "@sum", "\t=1", "\r=1", "'=1", "''x", "'plain", " =1", "\uff1d1",
     "x005F_", "_x005F_a", "_x000D_",
     "a\r\nb\rc\nd", "\x00\x07", "\ufffe", " spaces ", "é£½😀", '"quoted"',
     "a;b,c\td|e", "x" * 33_000, "yes", "1", "2020-01-01", "nan", "\u2028", "\x85", "#REF!"]
)  # fmt: skip
TEXT = st.one_of(ANY, ANY, NASTY)
EDTF = st.sampled_from(
    [
        "",
        "1984",
        "1984-03~",
        "2001-12-05",
        "198X",
        "../1970",
        "1957-21",
        "1957?/1959",
        "[1957,1958]",
    ]
)
TIME = st.datetimes().map(lambda time: f"{time.isoformat(timespec='milliseconds')}Z")
ID = st.text("abcdefgh0123456789", min_size=1, max_size=16)


@st.composite
def money(draw: st.DrawFn) -> dict[str, Any] | None:
    """Money of any sort, and none."""
    kind = draw(st.sampled_from(["none", "sum", "typed", "old"]))
    if kind == "none":
        return None
    if kind == "old":
        text, farthings = draw(old_texts())
        minor, over = divmod(farthings * 5, 48)
        return {"minor": minor, "over": over, "currency": "GBP", "typed": text}
    found = draw(moneys())
    return {**found, "typed": draw(TEXT)} if kind == "typed" else found


CHANCE = st.one_of(st.just(1), st.floats(0, 1, allow_nan=False))
CHANCES = st.lists(
    st.one_of(
        st.fixed_dictionaries({"variant": TEXT, "chance": CHANCE}),
        st.fixed_dictionaries({"item": TEXT, "variant": ID, "chance": CHANCE}),
    ),
    max_size=3,
)
ANSWERS = st.lists(
    st.fixed_dictionaries(
        {"feature": ID, "how": st.just("sure"), "states": st.lists(ID, max_size=2)}
    ),
    max_size=2,
)
JSON = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**53), 2**53) | st.floats(-1e9, 1e9) | TEXT,
    lambda inner: st.lists(inner, max_size=2) | st.dictionaries(TEXT, inner, max_size=2),
    max_leaves=4,
)
FIELDS: dict[str, st.SearchStrategy[Any]] = {
    "of": CHANCES,
    "answers": ANSWERS,
    "condition": st.sampled_from(WORDS_OF_CONDITION),
    "box_condition": st.sampled_from(WORDS_OF_CONDITION),
    "least": st.sampled_from(WORDS_OF_CONDITION),
    "boxed": st.sampled_from(BOXED),
    "box": st.sampled_from(["", "yes"]),
    "missing": st.lists(TEXT, max_size=2),
    "replaced": st.lists(ID, max_size=2),
    "photos": st.lists(ID.map("p{}".format), max_size=2),
    "urgency": st.integers(1, 3),
    "decision": st.sampled_from(["open", "bought", "left"]),
    "purpose": st.sampled_from(["", "spare", "donor"]),
    "kept": st.booleans(),
    "unrecorded": st.booleans(),
    "when": EDTF,
    "years": EDTF,
}
MONEYS = ("paid", "asking", "most", "asked", "offer", "amount")
BY_SORT = {  # in rows of a range
    "number": st.none() | st.floats(-1e6, 1e6),
    "pairs": st.lists(st.lists(TEXT, min_size=2, max_size=2), max_size=2),
    "texts": st.lists(TEXT, max_size=3),
    "text": TEXT,
    "flag": st.booleans(),
    "needs": st.sampled_from(["", "nothing", "loupe", "body off"]),
    "moving": st.sampled_from(["", "item", "variant"]),
}


@st.composite
def records(draw: st.DrawFn, sorts: Iterable[str] = SHAPES) -> dict[str, Any]:
    """A record of one of these types: some fields missing, some that no version knows."""
    sort = draw(st.sampled_from(sorted(sorts)))
    record = {"id": f"r{draw(ID)}", "type": sort, "made": draw(TIME), "changed": draw(TIME)}
    record["trashed"] = draw(st.one_of(st.just(""), TIME))
    for name, of in fields_of(sort):
        if draw(st.integers(0, 19)):
            usual = money() if name in MONEYS else FIELDS.get(name, TEXT)
            record[name] = draw(BY_SORT[of] if sort.startswith("range") else usual)
    if draw(st.integers(0, 3)) == 0:
        record |= draw(st.dictionaries(st.sampled_from(["demo", "came", "session", "x"]), JSON))
    return record


@st.composite
def lists(draw: st.DrawFn, numbers: list[str], names: list[str]) -> list[list[str]]:
    """A collector's list, its headings first: rows that mean something, and rows that do not."""
    some = st.sampled_from
    row = st.tuples(
        some([*numbers, "", "X 99"]),
        some([*names, "", "snow plough"]),
        some(["green", "maroon, metal horns", "", "no idea"]),
        some(["VG", "C7", "mint", "", "battered"]),
        some(["yes", "n", "", "good"]),
        some(["£4.50", "12/6", "", "lots", "4,50"]),
        some(["1998", "c.1957", "31.2.1957", "", "spring 1957"]),
        some(["from a friend", "", "=1"]),
    ).map(list)
    heads = ["No.", "What", "Colour", "Condition", "Box", "Paid", "Bought", "Remarks"]
    return [heads, *draw(st.lists(row, min_size=1, max_size=4))]
