"""The gauges of the demo ranges are gauges that models run on.

Source: NEM 010, MOROP, edition 2011 (fixtures/outside/SOURCES.md). A foot is 304.8 mm exactly
(international yard and pound agreement, 1959).
"""

import re
import tomllib

import pytest

from identify import phone
from tests.outside.data import read

NEM = {row["size"]: float(row["gauge_mm"]) for row in read("nem_010.csv")}
RANGES = {
    folder.name: tomllib.loads((folder / "range.toml").read_text("utf-8"))
    for folder in phone.demo_packs()
}


@pytest.mark.parametrize(("name", "size"), [("pellmarsh", "S"), ("tarrowby", "0")])
def test_the_gauge_is_one_of_the_standard(name, size):
    assert RANGES[name]["gauge_mm"] == NEM[size]


@pytest.mark.parametrize("name", RANGES)
def test_millimetres_to_the_foot_and_the_ratio_agree(name):
    """NEM 010 note 3.4: 7 mm scale is 1:43.5; 1:64 is 3/16 of an inch, 4.7625 mm."""
    mm, ratio = re.match(r"([\d.]+) mm to the foot \(1:([\d.]+)\)", RANGES[name]["scale"]).groups()
    assert 304.8 / float(mm) == pytest.approx(float(ratio), rel=0.005)
