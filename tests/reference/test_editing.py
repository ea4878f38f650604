"""A CSV file changed in its text, so that a diff shows just the change; what moved in a pack."""

import csv
import io

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from identify.reference.check import check_pack
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from identify.reference.editing_csv import CsvText

TROUBLE = st.text(alphabet='ab ,;"\n\r\u00e9', max_size=6)
WRITTEN = st.text(alphabet='ab ,;"\n\u00e9', max_size=6)  # csv.writer leaves a lone \r bare


@st.composite
def tables(draw: st.DrawFn) -> str:
    """The text of a CSV file, in one of the ways in which programs write them."""
    width = draw(st.integers(2, 4))
    cells = st.lists(WRITTEN, min_size=width, max_size=width)
    rows = draw(st.lists(cells, min_size=1, max_size=6))
    out = io.StringIO(newline="")
    quoting = draw(st.sampled_from([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]))
    end = draw(st.sampled_from(["\n", "\r\n"]))
    header = [f"c{n}" for n in range(width)]
    csv.writer(out, quoting=quoting, lineterminator=end).writerows([header, *rows])
    text = out.getvalue()
    return text.removesuffix(end) if draw(st.booleans()) else text


@pytest.mark.heavy
@settings(max_examples=400, deadline=None)
@given(tables(), st.data())
def test_one_cell_changes_and_every_other_byte_stays(text, data):
    file = CsvText(text, "items.csv")
    assert file.text == text
    rows = file.entries()
    if not rows:
        return
    row = data.draw(st.sampled_from(rows))
    column = data.draw(st.sampled_from(file.columns))
    value = data.draw(TROUBLE)
    was = [(each.key, each.text) for each in file.rows]
    old = file.fields(row).get(column, "")
    file.set(row.key, column, old, value)
    now = [(each.key, each.text) for each in file.rows]
    assert [n for n, (a, b) in enumerate(zip(was, now, strict=True)) if a != b] in (
        [],
        [file.rows.index(row)],
    )
    read = list(csv.reader(io.StringIO(file.text, newline=""), strict=True))
    assert read[file.rows.index(row)][file.columns.index(column)] == value
    file.set(row.key, column, value.strip(), old)
    cells = [[cell.strip() for cell in r] for r in csv.reader(io.StringIO(text, newline=""))]
    again = [[c.strip() for c in r] for r in csv.reader(io.StringIO(file.text, newline=""))]
    assert again == cells


@settings(max_examples=200, deadline=None)
@given(tables(), st.data())
def test_a_row_is_added_and_every_other_one_stays(text, data):
    file = CsvText(text, "items.csv")
    values = data.draw(st.lists(TROUBLE, min_size=len(file.columns), max_size=len(file.columns)))
    was = [row.text.rstrip("\r\n") for row in file.rows]
    file.add("n1", dict(zip(file.columns, values, strict=True)))
    now = [row for row in file.rows if row.key != "n1"]
    assert [row.text.rstrip("\r\n") for row in now] == was
    (added,) = [row for row in file.rows if row.key == "n1"]
    read = list(csv.reader(io.StringIO(file.text, newline=""), strict=True))
    assert read[file.rows.index(added)] == (values if any(values) or len(values) > 1 else [])


def test_a_pack_without_moves_is_compiled_to_the_same_bytes_as_ever(small):
    assert b'"moves"' not in pack_bytes(compile_pack(small))


@pytest.mark.parametrize(
    ("rows", "text"),
    [
        ("item,P1,P2,\n", "there is still an item like that"),
        ("item,P9,P8,\n", 'there is no item "P8": '),
        ("variant,a,b,\nvariant,b,a,\n", "these lead in a circle: a -> b -> a"),
        ("item,P9,P1,\nitem,P9,P2,\n", "is in line 2 already"),
        ("thing,P9,P1,\n", 'it must be "item" or "variant"'),
    ],
)
def test_mistakes_in_moves_are_told(small, rows, text):
    (small / "moves.csv").write_text("what,from,to,note\n" + rows)
    assert any(text in m.text and m.file == "moves.csv" for m in check_pack(small))
