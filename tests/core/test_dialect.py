"""The house rules of the core: what Python and JavaScript would read differently is refused."""

import ast
from pathlib import Path

import pytest

from identify import core
from identify.core import exporting, importing, ranges
from identify.phone import SHARED, EngineError, _module
from tests.core.dialect import functions_of, refusals, truth_functions, type_refusals

HERE = Path(core.__file__).parent
RANGES = tuple(f"ranges/{name}" for name in ranges.FILES)
IMPORTING = tuple(f"importing/{name}" for name in importing.FILES)
EXPORTING = tuple(f"exporting/{name}" for name in exporting.FILES)
FOLDERS = ("ranges", "importing", "exporting")
SOURCES = {
    name: (HERE / f"{name}.py").read_text("utf-8")
    for name in (*core.FILES, *core.MERGING, *RANGES, *IMPORTING, *EXPORTING)
}
TREES = {name: ast.parse(source) for name, source in SOURCES.items()}
TYPES = {path.stem: path.read_text("utf-8") for path in (HERE / "types").glob("*.py")}
NATIVE = ast.parse((HERE / "native" / "values.py").read_text("utf-8"))
KNOWN = [*TREES.values(), NATIVE]
FUNCTIONS = {f.name for tree in KNOWN for f in functions_of(tree)}
TRUTHS = {name for tree in KNOWN for name in truth_functions(tree)}


def test_every_file_of_the_core_is_compiled():
    here = {path.stem for path in HERE.glob("*.py")} - {"__init__"}
    there = {
        f"{folder}/{path.stem}"
        for folder in FOLDERS
        for path in (HERE / folder).glob("*.py")
        if path.stem != "__init__"
    }
    assert here | there == set(SOURCES)


@pytest.mark.parametrize(
    "files",
    [core.FILES, (*SHARED, *core.MERGING), (*ranges.BESIDES, *RANGES)],
    ids=["engine", "merging", "ranging"],
)
def test_no_name_stands_twice_in_what_becomes_one_module(files):
    """The later one would silently take the place of the earlier."""
    made = [
        ast.unparse(node.targets[0]) if isinstance(node, ast.Assign) else node.name
        for name in files
        for node in TREES[name].body
        if isinstance(node, ast.FunctionDef | ast.Assign)
    ]
    assert [name for name in set(made) if made.count(name) > 1] == []


def test_a_file_uses_only_files_before_it():
    order = list(SOURCES)
    for name, tree in TREES.items():
        for node in tree.body:
            ours = isinstance(node, ast.ImportFrom) and node.level > 0
            if ours and not node.module.startswith(("types.", "native.")):
                folder = name.rpartition("/")[0]
                beside = folder != "" and node.level == 1
                used = f"{folder}/{node.module}" if beside else node.module
                assert order.index(used.replace(".", "/")) < order.index(name), (name, used)


@pytest.mark.parametrize(
    "files",
    [
        core.FILES,
        (*SHARED, *core.MERGING),
        (*ranges.BESIDES, *RANGES),
        (*core.FILES, *IMPORTING, *EXPORTING),
    ],
)
def test_no_two_functions_or_constants_of_a_module_share_a_name(files):
    names = [f.name for file in files for f in functions_of(TREES[file])]
    for file in files:
        names += [n.targets[0].id for n in TREES[file].body if isinstance(n, ast.Assign)]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("name", SOURCES)
def test_the_core_keeps_the_rules(name):
    deep = 2 if "/" in name else 1
    assert refusals(SOURCES[name], FUNCTIONS, TRUTHS, deep) == []


def test_modules_of_types_hold_types_and_no_more():
    assert len(TYPES) > 1
    assert [text for source in TYPES.values() for text in type_refusals(source)] == []


@pytest.mark.parametrize(
    "source",
    [
        "def f():\n    return 1",
        "import json",
        "from identify import phone",
        "from ..session import new_session",
        "COUNT = len([1])",
        'class A(TypedDict):\n    """A."""\n\n    def f(self):\n        return 1',
        "class A(TypedDict):\n    a: int",
        'class A(TypedDict):\n    """A."""\n\n    a: int = 1',
    ],
)
def test_whatever_would_run_is_refused_in_a_module_of_types(source):
    assert type_refusals(source) != []


@pytest.mark.parametrize(
    ("body", "sentence"),
    [
        ("return sorted(xs)", "give sorted() a key, a lambda"),
        ("return sorted(xs, key=len)", "give sorted() a key, a lambda"),
        ("return sorted(xs, key=lambda x: -x, reverse=True)", "give sorted() a key, a lambda"),
        ("return sorted(xs, key=lambda x: (x, 1))", "a list instead of Tuple"),
        ("return {x for x in xs}", "a list instead of SetComp"),
        ("return {1, 2}", "a list instead of Set"),
        ("return sum(x for x in xs)", "a list comprehension instead of GeneratorExp"),
        ("return sum(xs)", "sum() is not in the core"),
        ("return xs[-1]", "count an index from the front"),
        ("return xs[0:-1]", "a slice with bounds from the front"),
        ("return xs[::2]", "a slice with bounds from the front"),
        ("return y % 2", "a count kept in a variable instead of Mod"),
        ("return round(y)", "round() is not in the core"),
        ("return str(y)", "str() is not in the core"),
        ("return f'{y}'", "let the screen write the sentence"),
        ("if xs:\n        return 1", "make the condition a comparison: `xs`"),
        ("while y:\n        y = y - 1", "make the condition a comparison: `y`"),
        ("return [x for x in xs if x]", "make the condition a comparison: `x`"),
        ("return xs or 1", "use and/or between comparisons only"),
        ("return max(xs, default=0)", "call max() with arguments by position"),
        ("return {'length': 1}", "use text keys that are plain words"),
        ("return {'1957': 1}", "use text keys that are plain words"),
        ("return {y: 1}", "use text keys that are plain words"),
        ("y += 1", "x = x + y instead of AugAssign"),
        ("x = 1\n    return [x for x in xs]", "x would leak out of this comprehension"),
        ("true = 1\n    return true", "true is a word of JavaScript"),
        ("try:\n        return 1\n    except KeyError:\n        return 2", "with `in` beforehand"),
        ("return xs == [1]", "not lists or dicts"),
        ("return y is 1", "use `is` with None"),
        ("return [0] * 3", "instead of + and * on lists"),
        (
            "for i in range(f(xs, y)):\n        y = y + i",
            "work out the bounds of range() beforehand",
        ),
        ("return xs.count(1)", "instead of the method .count()"),
        ("return xs.real", "a key of a dict instead of .real"),
        ("import math", "an import from inside core instead of Import"),
        ("from math import floor", "import from inside core, or log from math"),
        ("z: int", "give it a value at once"),
    ],
)
@pytest.mark.filterwarnings("ignore::SyntaxWarning")
def test_what_the_engines_read_differently_is_refused_with_what_to_write(body, sentence):
    found = refusals(f"def f(xs, y):\n    {body}\n", set(), set())
    assert any(sentence in text for text in found), found


def test_defaults_and_keyword_only_arguments_are_refused():
    assert "with no defaults" in refusals("def f(x=1):\n    return x\n", set(), set())[0]


def test_two_functions_of_one_name_are_never_joined_into_one_module():
    """The phone would call the one for the other: Python knows them apart by their files."""
    with pytest.raises(EngineError, match="number_in"):
        _module(("forms", "native/values"), ("is_time",))
