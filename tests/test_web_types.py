"""The engine's types for web/ are as the Python says, complete, and stay at home."""

import ast
import re

import pytest

from identify.phone import (
    EXPORTS,
    FURTHER_EXPORTS,
    MERGING_EXPORTS,
    RANGING_EXPORTS,
    TABLES_EXPORTS,
)
from tests.kept_site import kept_site
from tests.web_types import FILE, UnknownTypeError, declarations, typed


def test_the_file_is_as_the_python_says():
    assert FILE.read_text("utf-8") == declarations(), "run python -m tests.web_types"


def test_every_type_that_is_named_is_declared_once():
    text = re.sub(r"/\*\*.*?\*/|//[^\n]*|\"[^\"]*\"", "", FILE.read_text("utf-8"), flags=re.DOTALL)
    declared = re.findall(r"export (?:interface|type) (\w+)", text)
    assert len(declared) == len(set(declared))
    named = set(re.findall(r"\b[A-Z]\w*", text))
    assert named <= {*declared, "Array", "Record"}


@pytest.mark.parametrize(
    "name", [*EXPORTS, *FURTHER_EXPORTS, *MERGING_EXPORTS, *RANGING_EXPORTS, *TABLES_EXPORTS]
)
def test_every_function_that_the_screens_call_has_its_types(name):
    assert re.search(rf"\n  {name}\(.*\): .+;\n", FILE.read_text("utf-8"))


def test_the_phone_does_not_get_them():
    assert [name for name in kept_site() if name.endswith(".ts")] == []


def test_a_type_that_has_no_typescript_is_refused():
    with pytest.raises(UnknownTypeError):
        typed(ast.parse("set[str]", mode="eval").body)
