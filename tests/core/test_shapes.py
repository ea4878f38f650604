"""The one list of fields says the same as the JSON Schema that others read."""

from typing import get_args

import msgspec
import pytest

from identify.core.shapes import BESIDES, RECORD_SHAPES, fields_of, new_fields, words_of
from identify.exchange import schemas
from identify.exchange.schemas import Record

STRUCTS = {
    str(one.__struct_config__.tag): one
    for one in (schemas.Piece, schemas.Want, schemas.Note, schemas.Sighting, schemas.Budget)
}


def test_the_sorts_of_records_are_those_of_the_schema():
    assert [shape["type"] for shape in RECORD_SHAPES] == list(STRUCTS)


@pytest.mark.parametrize("kind", STRUCTS)
def test_fields_and_what_they_hold_when_new_are_those_of_the_schema(kind):
    found = {
        field.name: field.default
        if field.default_factory is msgspec.NODEFAULT
        else field.default_factory()
        for field in msgspec.structs.fields(STRUCTS[kind])
        if field.name not in Record.__struct_fields__
    }
    assert dict(new_fields(kind)) == found


@pytest.mark.parametrize("kind", STRUCTS)
def test_words_are_those_of_the_schema(kind):
    annotations = {field.name: field.type for field in msgspec.structs.fields(STRUCTS[kind])}
    for name, sort in fields_of(kind):
        words = words_of(sort)
        if words:
            assert list(get_args(annotations[name])) == words, name


def test_what_any_record_may_have_besides_is_in_the_schema_or_stays_on_the_phone():
    assert {name for name, _ in BESIDES} - {"session"} <= set(Record.__struct_fields__)
