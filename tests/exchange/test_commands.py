"""The commands import, export and records-schema, as a person types them."""

import json

import orjson
import pytest

from identify.cli import main
from identify.phone import DEMO
from tests.damaging import cases

LIST = """No.;What;Colour;Condition;Paid;Bought
P 21;Express electric;black, silver line;VG;£1 7s 6d;12/5/98
G 1O;Oil tank;;good;lots;4/5/98
;;;good;;
"""


@pytest.fixture
def files(tmp_path):
    (tmp_path / "list.csv").write_text(LIST, encoding="cp1252")
    return tmp_path


def run(capsys, *words) -> tuple[int, str]:
    """A command's result and what it said."""
    code = main([str(word) for word in words])
    said = capsys.readouterr()
    return code, said.out + said.err


@pytest.mark.heavy
def test_nothing_is_written_unless_it_is_asked_for(files, capsys):
    code, said = run(capsys, "import", files / "list.csv", "--into", files / "b.json")
    assert code == 0
    assert "2 new, 0 changed, 0 as they were, 1 cannot be imported." in said
    assert "Does the day or the month come first in its dates?" in said
    assert 'Row 3, "Paid": "lots" has a word in it that is not a currency.' in said
    assert said.endswith("Nothing was written. Add --write to write it.\n")
    assert sorted(path.name for path in files.iterdir()) == ["list.csv"]


def test_a_currency_that_is_none_is_refused_at_once(files, capsys):
    code, said = run(
        capsys, "import", files / "list.csv", "--into", files / "b.json", "--currency", "gold"
    )
    assert code == 1
    assert said.startswith('"gold" is not a currency that can be read. Name one of these: GBP,')


def test_an_import_and_what_comes_after(files, capsys):
    into = ["--into", files / "b.json", "--dates", "day", "--write"]
    code, said = run(capsys, "import", files / "list.csv", *into)
    assert code == 0
    records = orjson.loads((files / "b.json").read_bytes())["records"]
    assert [(r["item"], r["when"]) for r in records] == [
        ("P 21", "1998-05-12"),
        ("G 10", "1998-05-04"),
    ]
    left = (files / "list-left-out.csv").read_text(encoding="utf-8-sig")
    assert left.splitlines()[0].startswith('"what is wrong","No."')
    assert "Row 4: nothing says which piece this is" in left.splitlines()[1]

    before = (files / "b.json").read_bytes()
    code, said = run(capsys, "import", files / "list.csv", *into)
    assert "0 new, 0 changed, 2 as they were" in said
    assert (
        orjson.loads(before)["records"] == orjson.loads((files / "b.json").read_bytes())["records"]
    )

    (files / "list.csv").write_text(LIST.replace("VG", "fair"), encoding="utf-8")
    code, said = run(capsys, "import", files / "list.csv", *into)
    assert "0 new, 1 changed, 1 as they were" in said
    records = orjson.loads((files / "b.json").read_bytes())["records"]
    assert records[0]["condition"] == "fair"


@pytest.mark.heavy
def test_what_is_exported_is_imported_without_a_change(files, capsys):
    backup = files / "b.json"
    backup.write_bytes(DEMO.read_bytes())
    for ending in ("csv", "xlsx", "json"):
        code, said = run(capsys, "export", backup, "-o", files / f"out.{ending}")
        assert (code, "it lists valuables in a house" in said) == (0, True)
        code, said = run(capsys, "import", files / f"out.{ending}", "--into", backup)
        assert "0 new, 0 changed, 122 as they were, 0 cannot be imported." in said
        code, said = run(capsys, "import", files / f"out.{ending}", "--into", files / "new.json",
                         "--write")  # fmt: skip
        new = orjson.loads((files / "new.json").read_bytes())["records"]
        assert new == orjson.loads(DEMO.read_bytes())["records"]
        (files / "new.json").unlink()


def test_a_page_of_wants(files, capsys):
    run(capsys, "export", DEMO, "-o", files / "wants.html", "--type", "want")
    assert "Osmere Lark driving trailer" in (files / "wants.html").read_text(encoding="utf-8")


def test_columns_can_be_told(files, capsys):
    into = ["--into", files / "b.json", "--column", "Colour="]
    _, said = run(capsys, "import", files / "list.csv", *into)
    assert "  Colour: left out\n" in said


WRONG = {
    "no file": (["import", "none.csv", "--into", "b.json"], "none.csv cannot be read: no such"),
    "no backup": (["import", "list.csv", "--into", "list.csv"], "list.csv is not a backup"),
    "a field": (["import", "list.csv", "--into", "b.json", "--column", "What=nothing"],
                '"What=nothing" is not NAME=FIELD. Fields are: number, name,'),
    "a column": (["import", "list.csv", "--into", "b.json", "--column", "Shelf=notes"],
                 'There is no column "Shelf". There are: No., What, Colour,'),
    "an ending": (["export", "b.json", "-o", "out.doc"], "out.doc should end in .csv"),
}  # fmt: skip


@pytest.mark.parametrize("name", WRONG)
def test_what_is_wrong_is_told(files, capsys, monkeypatch, name):
    monkeypatch.chdir(files)
    words, sentence = WRONG[name]
    code, said = run(capsys, *words)
    assert code == 1
    assert said.startswith(sentence)


@pytest.mark.parametrize("words", [[], ["--backup"]])
def test_schemas_are_printed(capsysbinary, words):
    assert main(["records-schema", *words]) == 0
    assert orjson.loads(capsysbinary.readouterr().out)["$schema"].endswith("2020-12/schema")


@pytest.mark.parametrize(
    "damage",
    [
        {"records": [{"id": "r1", "type": "piece", "made": "zzzz", "changed": "zzzz"}]},
        {"journal": [{"time": "2026-11-01T00:00:00Z", "group": "g", "record": "r1"}]},
        {"photos": [{"id": "p1"}]},
    ],
)
def test_a_backup_that_does_not_fit_through_the_gate_is_told_and_left_as_it_is(
    files, capsys, damage
):
    backup = files / "b.json"
    whole = {"format": 1, "kind": "identify backup", "records": []}
    backup.write_bytes(orjson.dumps(whole | damage))
    before = backup.read_bytes()
    for words in (
        ["import", files / "list.csv", "--into", backup, "--write"],
        ["export", backup, "-o", files / "out.json"],
    ):
        code, said = run(capsys, *words)
        assert code != 0
        assert "holds entries that cannot be read (1). The first: Its “" in said
        assert "Restore the file in the app" in said
        assert backup.read_bytes() == before
    assert not (files / "out.json").exists()


@pytest.mark.heavy
def test_damaged_backups_are_refused_in_a_sentence_or_read(files, capsys):
    """1,000 of them: none ends a command by an error that nobody thought of."""
    read = 0
    for one in cases("backup", 1_000):
        (files / "b.json").write_bytes(json.dumps(one).encode())
        code, said = run(capsys, "export", files / "b.json", "-o", files / "out.json")
        assert said.strip()
        read += code == 0
    assert 20 < read < 500
