"""The modules of web/: subjects over parts/ over data/, no circle, no long line."""

import posixpath
import re
from graphlib import CycleError, TopologicalSorter

import pytest

from identify.phone import WEB

IMPORTS = re.compile(r'(?:\bfrom |\bimport\()"(\.[^"]+\.js)"')
SUBJECTS = {
    "identify", "collection", "wants", "notebook", "range", "exchange", "sync", "desk",
    "first-steps", "settings",
}  # fmt: skip
BENEATH = {"data": {"data"}, "parts": {"data", "parts"}}
BENEATH |= {subject: {"data", "parts"} | SUBJECTS for subject in SUBJECTS}
SOURCES = {path.relative_to(WEB).as_posix(): path.read_text("utf-8") for path in WEB.rglob("*.js")}
NEEDS = {
    path: {
        posixpath.normpath(posixpath.join(posixpath.dirname(path), wanted))
        for wanted in IMPORTS.findall(text)
    }
    for path, text in SOURCES.items()
}


def test_no_module_needs_itself_by_any_way_at_once_or_later():
    try:
        TopologicalSorter(NEEDS).prepare()
    except CycleError as error:
        pytest.fail(f"these go round: {' <- '.join(error.args[1])}")


def test_every_folder_is_a_subject_or_lies_beneath_them():
    folders = {posixpath.dirname(path) for path in SOURCES} - {""}
    assert folders == SUBJECTS | {"data", "parts", "shell"}


@pytest.mark.parametrize("folder", sorted(BENEATH))
def test_a_folder_imports_only_from_what_lies_beneath_it(folder):
    wrong = [
        f"{path} imports {needed}"
        for path, needs in NEEDS.items()
        if path.startswith(f"{folder}/")
        for needed in sorted(needs)
        if posixpath.dirname(needed) not in BENEATH[folder]
    ]
    assert wrong == []


def test_no_line_is_longer_than_a_hundred_characters():
    """The formatter wraps code, but neither texts nor comments."""
    long = [
        f"{path}:{place}"
        for path, text in SOURCES.items()
        for place, line in enumerate(text.splitlines(), 1)
        if len(line) > 100
    ]
    assert long == []


def test_every_module_is_used():
    used = set().union(*NEEDS.values())
    # asked for by index.html or by address
    own = {"app.js", "sw.js", "light.js", "thread.js", "fetch-range.js"}
    assert set(SOURCES) - used == own
