"""The JSON Schemas say what the files hold; shapes are the same as in the app."""

import jsonschema
import msgspec
import orjson
import pytest
from hypothesis import given

from identify.core.shapes import BESIDES, RECORD_SHAPES
from identify.core.types import records as types
from identify.exchange.new_records import SHAPES
from identify.exchange.schemas import Record, records_schema
from identify.exchange.writing import write_records
from identify.phone import DEMO, WEB
from tests.exchange.strategies import QUICK, records
from tests.schema_sorts import plain

BACKUP = orjson.loads(DEMO.read_bytes())


def test_the_demo_backup_is_as_the_schema_says():
    jsonschema.validate(BACKUP, records_schema(backup=True))


def test_what_is_exported_is_as_the_schema_says():
    jsonschema.validate(
        orjson.loads(write_records(BACKUP["records"], "json", [])), records_schema()
    )


@given(found=records([shape["type"] for shape in RECORD_SHAPES]))
@QUICK
def test_records_of_every_sort_are_as_the_schema_says(found):
    found = {name: found[name] for name in found if name not in ("came", "demo")}
    checker = jsonschema.Draft202012Validator(records_schema())
    assert list(checker.iter_errors(orjson.loads(write_records([found], "json", [])))) == []


WRONG = {
    "type": {"type": "engine"},
    "condition": {"condition": "splendid"},
    "money": {"paid": {"minor": 1.5, "currency": "GBP"}},
    "currency": {"paid": {"minor": 1, "currency": "pounds"}},
    "id": {"id": "7"},
    "chance": {"of": [{"variant": "p1_a", "chance": 2}]},
}


@pytest.mark.parametrize("name", WRONG)
def test_what_is_wrong_is_found(name):
    record = BACKUP["records"][0] | WRONG[name]
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(BACKUP | {"records": [record]}, records_schema(backup=True))


def test_the_app_has_no_shapes_of_its_own():
    """It asks the compiled core, whose list is the only one (core/shapes.py)."""
    script = (WEB / "data" / "record-shapes.js").read_text(encoding="utf-8")
    assert "new_fields(type)" in script
    assert [name for fields in SHAPES.values() for name in fields if f"{name}:" in script] == []


@pytest.mark.parametrize("name", ["Piece", "Want", "Note", "Sighting", "Budget", "Photo", "Money"])
def test_the_types_say_the_same_as_the_schema(name):
    whole, other = records_schema(backup=True), msgspec.json.schema(getattr(types, name))
    said = plain(whole["$defs"][name], whole["$defs"])
    meant = plain(other, other["$defs"])
    meant.pop("session", None)  # kept on the phone, and in no file for others
    assert meant == said


def test_what_any_record_may_have_besides_is_in_the_schema_or_stays_on_the_phone():
    assert {name for name, _ in BESIDES} - {"session"} <= set(Record.__struct_fields__)
