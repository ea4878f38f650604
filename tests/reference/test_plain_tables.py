"""Plain tables as packs: what is recorded, and what is said of a bad one."""

from pathlib import Path

import jsonschema
import orjson
import pytest

from identify.core.belief import prepare
from identify.core.look_up import find
from identify.reference.compiled import pack_bytes, pack_schema
from identify.reference.mistakes import PackError
from identify.reference.plain_tables import MOST_COLUMNS, MOST_STATES, table_pack

TABLE = """\
Name,Colour,Wheels,Seen by
Tank engine,red,4,me
Tank engine,red,6,me
Tank engine,,4,me
Van,"grün, matt",,you
Coach,blue,8,
"""


def compiled(folder: Path, text: str, *leave_out: str, name: str = "Name"):
    path = folder / "My trains.csv"
    path.write_bytes(text.encode())
    return table_pack(path, name, leave_out)


def mistakes(folder: Path, text: str | bytes, name: str = "Name", *leave_out: str) -> list[str]:
    path = folder / "bad.csv"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    with pytest.raises(PackError) as raised:
        table_pack(path, name, leave_out)
    return str(raised.value).splitlines()


def test_names_become_items_and_columns_become_features(tmp_path):
    pack, same = compiled(tmp_path, TABLE, "Seen by")
    assert same == []
    assert pack.id == "my_trains"
    assert [item.number for item in pack.items] == ["Tank engine", "Van", "Coach"]
    assert [f.name for f in pack.features[1:]] == ["Colour", "Wheels"]
    assert [s.name for s in pack.features[1].states] == ["blue", "grün, matt", "red"]
    assert [s.id for s in pack.features[1].states] == ["blue", "grun_matt", "red"]
    assert [s.id for s in pack.features[2].states] == ["is_4", "is_6", "is_8"]
    assert pack.rows.prior == pytest.approx([0.6, 0.2, 0.2])


def test_states_that_are_numbers_are_in_the_order_of_numbers(tmp_path):
    pack, _ = compiled(tmp_path, "Name,Wheels\na,10\nb,4\nc,none\nd,6.5\ne,-2\nf,about 3\n")
    names = [state.name for state in pack.features[1].states]
    assert names == ["-2", "4", "6.5", "10", "about 3", "none"]


def test_repeated_names_become_shares_and_single_ones_are_taken_at_their_word(tmp_path):
    """Tank engine: twice red of two known, 0.5 added to each of three states."""
    pack, _ = compiled(tmp_path, TABLE, "Seen by")
    colour, wheels = pack.cells[1], pack.cells[2]
    tank, van, coach = (colour.shares[code] for code in colour.codes)
    assert tank == pytest.approx([0.5 / 3.5, 0.5 / 3.5, 2.5 / 3.5])
    assert (van, coach) == ([0, 1, 0], [1, 0, 0])
    assert wheels.shares[wheels.codes[0]] == pytest.approx([2.5 / 4.5, 1.5 / 4.5, 0.5 / 4.5])
    assert wheels.codes[1] == 0, "blank is not recorded"


def test_it_fits_the_schema_and_the_engine(tmp_path):
    pack, _ = compiled(tmp_path, TABLE, "Seen by")
    plain = orjson.loads(pack_bytes(pack))
    jsonschema.validate(plain, pack_schema())
    assert find(prepare(plain), "coach", 3)[0]["item"] == 2
    assert pack_bytes(compiled(tmp_path, TABLE, "Seen by")[0]) == pack_bytes(pack)


def test_a_column_that_says_the_same_in_every_row_is_left_out_and_named(tmp_path):
    pack, same = compiled(tmp_path, TABLE.replace("you", "me"))
    assert same == ["Seen by"]
    assert len(pack.features) == 3


def test_words_that_would_make_the_same_id_get_different_ones(tmp_path):
    text = "Name,A b,a-b,kind,constructor,ü\nx,-,+,p,1,1\ny,--,++,q,2,2\nX,*,1,q,3,3\n"
    pack, _ = compiled(tmp_path, text)
    assert [f.id for f in pack.features] == [
        "kind", "a_b", "a_b_2", "kind_2", "constructor_2", "u",
    ]  # fmt: skip
    assert [v.id for v in pack.variants] == ["x", "y", "x_2"]
    assert [s.id for s in pack.features[1].states] == ["is", "is_2", "is_3"]
    for feature in pack.features:
        assert len({s.id for s in feature.states}) == len(feature.states)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (TABLE + "Wagon,red", "bad.csv line 7, Wheels: this row has 2 cells, but the first row"),
        (TABLE + "Wagon,red,4,me,5", "bad.csv line 7, column 5: this row has 5 cells"),
        (TABLE + ",red,4,me", "bad.csv line 7, Name: this row has no name."),
        (TABLE + 'Wagon,"red', "bad.csv line 7: this row cannot be read as CSV"),
        (TABLE.encode("latin-1"), "bad.csv line 5, character 8: this is not UTF-8."),
        (TABLE.encode("utf-16"), "bad.csv line 1, character 1: this is not UTF-8."),
        ("", "bad.csv: this file is empty."),
        (" \n", "bad.csv: this file is empty."),
        ("Name,Colour\n", "bad.csv line 1: there is only the row with the names of the columns."),
        ("Nam,Colour\nx,y\n", 'line 1, Name: there is no column "Name": did you mean "Nam"?'),
        ("Name;Colour\nx;y\n", "bad.csv line 1: the columns must be separated by commas."),
        ("Name,,b\nx,y,z\n", "bad.csv line 1, column 2: this column has no name."),
        ("Name,b,b\nx,y,z\n", 'bad.csv line 1, b: the column "b" is here 2 times.'),
        ("Name\nx\ny\n", "bad.csv line 1: no column tells one row from another."),
        ("Name,b\nx,1\ny,1\n", "bad.csv line 1: no column tells one row from another."),
        ("Name,b\nx,\x00\n", "bad.csv line 2: there is a control character"),
        (f"Name,b\nx,{'y' * 2_000_000}\n", "bad.csv line 2: this row cannot be read as CSV"),
    ],
)
def test_what_is_wrong_is_said_with_its_row_and_column(tmp_path, text, said):
    assert any(said in line for line in mistakes(tmp_path, text)), mistakes(tmp_path, text)


def test_too_many_columns(tmp_path):
    header = ",".join(["Name", *(f"c{n}" for n in range(MOST_COLUMNS))])
    said = mistakes(tmp_path, header + "\n")
    assert said == [
        "bad.csv line 1, column 100001: the table has 100001 columns, but at most 100000 can be "
        "read."
    ]


def test_too_many_values_to_choose_from(tmp_path):
    rows = "".join(f"n{n},{n}\n" for n in range(MOST_STATES + 1))
    said = mistakes(tmp_path, "Name,Weight\n" + rows)
    assert len(said) == 1
    assert "line 1, Weight: this column has 101 different values" in said[0]
    assert '--leave-out "Weight"' in said[0]


def test_a_column_to_leave_out_must_be_there(tmp_path):
    said = mistakes(tmp_path, TABLE, "Name", "Seen")
    assert said == ['bad.csv line 1, Seen: there is no column "Seen": did you mean "Seen by"?']


def test_every_mistake_is_named_at_once(tmp_path):
    assert len(mistakes(tmp_path, TABLE + "Wagon\n,red,4,me\nVan,red,4,me,6\n")) == 3


def test_a_file_that_is_not_there(tmp_path):
    with pytest.raises(PackError, match=r"nothing\.csv: this file is missing"):
        table_pack(tmp_path / "nothing.csv", "Name", [])
