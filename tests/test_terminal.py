"""What the terminal says of a piece: in the same words as the phone."""

import pytest

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.terminal import standing
from tests.demo import PIECES, asked_out, ident, looked_at
from tests.kept_site import compiled_demo_packs

PACK = compiled_demo_packs()["pellmarsh"]
ENGINE = prepare(PACK)
PARTS = {part["id"]: place for place, part in enumerate(PACK["parts"])}


@pytest.mark.parametrize("piece", [p for p in PIECES if p["parts"]], ids=ident)
def test_how_surely_a_part_was_replaced(piece):
    view = assess(ENGINE, asked_out(ENGINE, looked_at(ENGINE, piece)))
    told = "\n".join(standing(PACK, view))
    for part, word in piece["parts"].items():
        assert f"  {PACK['parts'][PARTS[part]]['name']} {word} (" in told


def test_a_finish_is_not_replaced_but_repainted():
    view = assess(ENGINE, looked_at(ENGINE, PIECES[0]))
    finish = {**view["parts"][0], "part": PARTS["finish"], "how": "probably", "swapped": 0.7}
    told = standing(PACK, {**view, "parts": [finish]})
    assert "  Finish probably repainted (70 %)" in told
