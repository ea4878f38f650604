"""The app's editor shows every field that a pack's files can have, by the very records."""

import re

import pytest

from identify.phone import WEB
from identify.reference.editing import CSVS
from identify.reference.editor_fields import TABLES, editor_fields
from identify.reference.fields import fields

FIELDS = editor_fields()
SORTS = {"text", "long", "number", "truth", "id", "years", "kinds", "states", "pairs", "when",
         "state", "cell:kinds"}  # fmt: skip


@pytest.mark.parametrize("table", TABLES)
def test_every_field_that_is_read_is_shown(table):
    shown = [name for name, *_ in FIELDS[table]]
    assert len(shown) == len(set(shown))
    assert set(shown) - {"states"} == set(fields(TABLES[table]))


@pytest.mark.parametrize("table", TABLES)
def test_every_field_says_what_it_is_and_how_it_is_typed(table):
    for name, label, sort, _ in FIELDS[table]:
        what, _, more = sort.partition(":")
        assert label, name
        assert sort in SORTS or (what == "one" and more in FIELDS) or (what == "words" and more)
        assert sort != "number" or table not in CSVS, "a cell is text"


def test_words_are_those_that_are_read():
    sorts = {name: sort for name, _, sort, _ in FIELDS["feature"]}
    assert sorts["needs"] == "words:nothing|loupe|body off"


def test_the_app_has_no_list_of_its_own():
    scripts = "".join(path.read_text("utf-8") for path in (WEB / "range").glob("*.js"))
    labels = {label for table in FIELDS.values() for _, label, _, _ in table if " " in label}
    assert [label for label in labels if re.search(rf'"{re.escape(label)}"', scripts)] == []
