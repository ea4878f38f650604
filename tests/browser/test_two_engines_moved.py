"""What moved, in Python and compiled, in a real Chromium: equal answers."""

from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Page

from identify.core.moved import moved
from tests.browser.engines import agree, compiled
from tests.sampling import sample
from tests.table_packs import sharp, table_pack

NAMES = st.sampled_from(["A 1", "A 2", "a", "b", "constructor", "7", "i0", "row0", ""])
MOVE = st.fixed_dictionaries(
    {"what": st.sampled_from(["item", "variant"]), "from": NAMES, "to": NAMES, "note": st.just("")}
)
ONE = st.fixed_dictionaries({"variant": NAMES, "chance": st.floats(0, 1)}, optional={"item": NAMES})
RECORD = st.fixed_dictionaries(
    {"id": st.sampled_from(["r1", "r2"]), "pack": st.sampled_from(["table", "other"])},
    optional={"item": NAMES, "variant": NAMES, "of": st.lists(ONE, max_size=3)},
)


@pytest.fixture(scope="module")
def page(browser) -> Iterator[Page]:
    with compiled(browser) as page:
        yield page


@pytest.mark.heavy
@settings(max_examples=sample(100, 40), deadline=None, suppress_health_check=list(HealthCheck))
@given(st.lists(MOVE, max_size=4), st.lists(RECORD, max_size=4))
def test_moved(page, moves, records):
    pack = table_pack(
        {"x": ["a", "b"]}, [{"x": sharp(["a", "b"], one)} for one in "ab"], [0.5, 0.5]
    )
    numbers = [item["number"] for item in pack["items"]]
    names = [variant["id"] for variant in pack["variants"]]
    more = {"what": "item", "from": "A 1", "to": numbers[0], "note": ""}
    also = {"what": "variant", "from": "a", "to": names[-1], "note": ""}
    given_pack = {**pack, "moves": [*moves, more, also]}
    ours = [{**record, "pack": record["pack"].replace("table", pack["id"])} for record in records]
    agree(page, given_pack, {"moved": moved}, {}, [["moved", ours]])
