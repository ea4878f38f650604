"""Packs made by chance: sound, as asked for, and the same for the same seed."""

import msgspec
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.cli import main
from identify.core import focus as focusing
from identify.core.assess import assess
from identify.core.belief import believe, prepare
from identify.core.focus import by_variant, focus
from identify.core.ranges.issues import usual_shares
from identify.core.worth import worth
from identify.lab.generating import KINDS, made_pack
from identify.reference.compiled import CompiledPack, pack_bytes
from identify.reference.loading import load_pack
from tests.bench.sessions import walked
from tests.strategies import sessions

pytestmark = pytest.mark.heavy

FEW = settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))


@FEW
@given(st.integers(1, 400), st.integers(0, 10**6))
def test_a_pack_has_the_rows_asked_for_and_is_sound(rows, seed):
    pack = made_pack(rows, seed)
    assert msgspec.json.decode(pack_bytes(pack), type=CompiledPack) == pack
    assert len(pack.rows.variant) == rows
    assert pack.rows.variant == sorted(pack.rows.variant), "rows of a variant stand together"
    assert set(pack.rows.variant) == set(range(len(pack.variants)))
    assert sum(pack.rows.prior) == pytest.approx(1)
    assert min(pack.rows.prior) > 0
    for span in pack.spans:
        assert sum(span.weights) == pytest.approx(1)
        assert pack.range.first <= span.first <= span.first + len(span.weights) - 1
        assert span.first + len(span.weights) - 1 <= pack.range.last
    for place, (feature, cells) in enumerate(zip(pack.features, pack.cells, strict=True)):
        assert len(cells.codes) == rows
        assert cells.shares[0] == []
        assert set(range(1, len(cells.shares))) == set(cells.codes) - {0}
        for shares in cells.shares[1:]:
            assert len(shares) == len(feature.states)
            assert sum(shares) == pytest.approx(1)
        plain = msgspec.to_builtins(pack.rows), msgspec.to_builtins(cells)
        usual = usual_shares(*plain, len(KINDS), len(feature.states))
        for kind, expected in enumerate(usual):
            assert pack.backgrounds[place][kind] == pytest.approx(expected)


def test_one_seed_gives_one_pack():
    assert pack_bytes(made_pack(300, 7)) == pack_bytes(made_pack(300, 7))
    assert pack_bytes(made_pack(300, 7)) != pack_bytes(made_pack(300, 8))


def test_it_has_everything_that_makes_packs_hard(tmp_path):
    pack = made_pack(2000)
    mixed = unknown = either = 0
    for cells in pack.cells:
        first: dict[int, int] = {}
        mixed += len(
            {
                v
                for v, code in zip(pack.rows.variant, cells.codes, strict=True)
                if first.setdefault(v, code) != code
            }
        )
        unknown += sum(code == 0 for code in cells.codes)
        either += sum(0 < max(cells.shares[code], default=0) < 1 for code in cells.codes)
    assert mixed > 100, "running changes split variants"
    assert unknown > 500
    assert either > 500
    assert {feature.part for feature in pack.features} == set(range(-1, len(pack.parts)))
    assert any(feature.none >= 0 and feature.part < 0 for feature in pack.features)
    file = tmp_path / "made.json"
    file.write_bytes(pack_bytes(pack))
    assert load_pack(file) == pack, "lab and ask take the file"


PACK = msgspec.json.decode(pack_bytes(made_pack(600, 3)))
ENGINE = prepare(PACK)
HELD_BACK = 0.00022 + 1e-9  # bits: what focus.faint() promises, with 16 states at most


@FEW
@given(st.data())
def test_the_rows_left_out_change_a_question_by_no_more_than_is_said(data):
    """Against the same sums with every row in them."""
    session = data.draw(sessions(PACK))
    state = believe(ENGINE, session)
    fewer = focus(state, by_variant(state))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(focusing, "LEFT_OUT", 0.0)
        every = focus(state, by_variant(state))
    assert len(every["rows"]) == sum(chance > 0 for chance in state["chances"])
    assert sum(every["chances"]) - sum(fewer["chances"]) <= 0.00001 + 1e-12
    for place in range(len(PACK["features"])):
        one = worth(ENGINE, state, fewer, place)["bits"]
        other = worth(ENGINE, state, every, place)["bits"]
        assert one == pytest.approx(other, abs=HELD_BACK)


@FEW
@given(st.data())
def test_what_was_asked_before_does_not_change_an_answer(data):
    """The engine keeps what it made of the last answers; a fresh one has nothing to keep."""
    for session in data.draw(st.lists(sessions(PACK), min_size=2, max_size=3)):
        assert assess(ENGINE, session) == assess(prepare(PACK), session)


def test_rows_fall_away_as_answers_come():
    """So a question costs less and less: it looks at these rows only."""
    left = []
    for session in walked(ENGINE, 250):
        state = believe(ENGINE, session)
        left.append(len(focus(state, by_variant(state))["rows"]))
    assert left[0] == len(PACK["rows"]["kind"])
    assert left == sorted(left, reverse=True)
    assert left[-1] < left[0] / 4


def test_a_pack_is_made_by_a_command(tmp_path, capsys):
    file = tmp_path / "large.json"
    assert main(["made-pack", "50", "-o", str(file), "--seed", "4"]) == 0
    assert "50 rows" in capsys.readouterr().out
    assert file.read_bytes() == pack_bytes(made_pack(50, 4))


@pytest.mark.parametrize("rows", ["0", "-3", "many", "9999999"])
def test_a_number_of_rows_that_cannot_be_is_told(rows, capsys):
    with pytest.raises(SystemExit):
        main(["made-pack", rows])
    assert "is not a whole number from 1" in capsys.readouterr().err
