"""The gate in both engines: thousands of whole and damaged values, each with the same answer.

They go to the page as text and are read there, as what comes from a file or a server is.
"""

import json
from collections.abc import Callable
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
from identify.core.types.gate import Fault
from tests.browser.engines import compiled
from tests.damaging import ODD, WHOLE, cases, demo
from tests.sampling import sample

pytestmark = pytest.mark.heavy

GATES: dict[str, tuple[Callable[..., Fault | None], list[list[bool]]]] = {
    "record_fault": (record_fault, [[]]),
    "file_record_fault": (file_record_fault, [[]]),
    "entry_fault": (entry_fault, [[True], [False]]),
    "operation_fault": (operation_fault, [[True], [False]]),
    "photo_fault": (photo_fault, [[]]),
}
ASKED = [(name, more) for name, (_, ways) in GATES.items() for more in ways]
LOT = 500  # values that go over at once: some are of 300,000 letters
ASK = """
([asked, text]) => {
  const values = JSON.parse(text);
  return asked.map(([name, more]) => values.map((value) => {
    const fault = free[name](value, ...more);
    return fault === null ? null : [fault.why, fault.at, free.fault_words(fault)];
  }));
}"""


@pytest.fixture(scope="module")
def page(browser):
    with compiled(browser) as page:
        page.evaluate("async () => { window.free = await import('./engine.js'); }")
        yield page


def values() -> list[Any]:
    """Damaged ones of every kind, whole ones, and odd ones by themselves."""
    out = [*ODD, *demo()["records"], *demo()["journal"]]
    for kind in WHOLE:
        out += cases(kind, sample(10_000, 500), seed=21)
    files = [one for one in out if isinstance(one, dict) and isinstance(one.get("photos"), list)]
    return [*out, *(photo for one in files for photo in one["photos"])]


def test_the_gate_says_the_same_of_thousands_of_values(page, capsys):
    asked = values()
    refused = [0] * len(ASKED)
    for at in range(0, len(asked), LOT):
        # a text of half a character, or a number beyond all, goes over as JSON has it
        text = json.dumps(asked[at : at + LOT])
        here = json.loads(text)
        answers = page.evaluate(ASK, [ASKED, text])
        for number, ((name, more), theirs) in enumerate(zip(ASKED, answers, strict=True)):
            gate, _ = GATES[name]
            for value, their in zip(here, theirs, strict=True):
                fault = gate(value, *more)
                ours = None if fault is None else [fault["why"], fault["at"], fault_words(fault)]
                assert ours == their, (name, more, str(value)[:500])
                refused[number] += ours is not None
    assert all(0 < count < len(asked) for count in refused)
    with capsys.disabled():
        for (name, more), count in zip(ASKED, refused, strict=True):
            print(f"\n{name} {more}: {len(asked)} values, {count} refused, the same in both")
