"""The gate in both engines: thousands of whole and damaged values, each with the same answer.

They go to the page as text and are read there, as what comes from a file or a server is.
"""

import json
from typing import Any

import pytest

from identify.core.gate import (
    entry_fault,
    file_record_fault,
    operation_fault,
    photo_fault,
    record_fault,
)
from identify.core.gate_words import fault_words
from tests.browser.engines import compiled
from tests.damaging import ODD, WHOLE, cases, demo
from tests.sampling import sample

pytestmark = pytest.mark.heavy

GATES = {
    "record_fault": (record_fault, []),
    "file_record_fault": (file_record_fault, []),
    "entry_fault": (entry_fault, [[True], [False]]),
    "operation_fault": (operation_fault, [[True], [False]]),
    "photo_fault": (photo_fault, []),
}
ASK = """
([name, text, more]) => JSON.parse(text).map((value) => {
  const fault = free[name](value, ...more);
  return fault === null ? null : [fault.why, fault.at, free.fault_words(fault)];
})"""


@pytest.fixture(scope="module")
def page(browser):
    with compiled(browser) as page:
        page.evaluate("async () => { window.free = await import('./engine.js'); }")
        yield page


def values() -> list[Any]:
    """Damaged ones of every kind, whole ones, and odd ones by themselves."""
    out = [*ODD, *demo()["records"], *demo()["journal"]]
    for kind in WHOLE:
        out += cases(kind, sample(10_000, 1_000), seed=21)
    files = [one for one in out if isinstance(one, dict) and isinstance(one.get("photos"), list)]
    return [*out, *(photo for one in files for photo in one["photos"])]


@pytest.mark.parametrize("name", GATES)
def test_the_gate_says_the_same_of_thousands_of_values(page, name, capsys):
    gate, ways = GATES[name]
    asked = values()
    # a text of half a character, or a number beyond all, goes over as JSON has it
    text = json.dumps(asked)
    here = json.loads(text)
    for more in ways or [[]]:
        theirs = page.evaluate(ASK, [name, text, more])
        refused = 0
        for value, their in zip(here, theirs, strict=True):
            fault = gate(value, *more)
            ours = None if fault is None else [fault["why"], fault["at"], fault_words(fault)]
            assert ours == their, (name, more, str(value)[:500])
            refused += ours is not None
        assert 0 < refused < len(here)
        with capsys.disabled():
            print(f"\n{name} {more}: {len(here)} values, {refused} refused, the same in both")
