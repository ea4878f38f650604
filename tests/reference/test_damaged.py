"""DamagedError files: whatever stands in them, the check says something or the pack compiles."""

import random
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.reference.check import check_pack
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from identify.reference.mistakes import PackError
from tests.reference.small_pack import small_files, write

SMALL = {name: text.encode() for name, text in small_files().items()}
TEXTS = [name for name in SMALL if not name.startswith("drawings/")] + ["drawings/none.svg"]


@st.composite
def damaged(draw: st.DrawFn) -> dict[str, bytes]:
    """The small pack with some bytes of some files changed, cut off, doubled or put in."""
    files = dict(SMALL)
    for _ in range(draw(st.integers(1, 3))):
        name = draw(st.sampled_from(TEXTS))
        data = files[name]
        place = draw(st.integers(0, len(data)))
        how = draw(st.sampled_from(["change", "cut", "double", "insert", "remove"]))
        length = draw(st.integers(1, 12))
        middle = {
            "change": draw(st.binary(min_size=1, max_size=2)),
            "cut": b"",
            "double": data[place : place + length] * 2,
            "insert": draw(st.sampled_from(INSERTED)) + data[place : place + length],
            "remove": b"",
        }[how]
        files[name] = data[:place] + middle + (b"" if how == "cut" else data[place + length :])
    return files


WORDS = (
    b", ; \" ' | ? = # < / ~ none 1957 kind 99999999999999999999 1e999 nan true [] {} &x; "
    b"1979-05-27T07:32:00Z \xef\xbb\xbf \xff \x00 \xc2\xa0"
)
INSERTED = [*WORDS.split(b" "), b" ", b"\n", b"\r", b"\n\n", b"[[feature]]\n", b"id = 1\n"]


def checked(folder: Path) -> None:
    """Neither call raises anything but PackError, and both say the same."""
    mistakes = check_pack(folder)
    if mistakes:
        with pytest.raises(PackError) as error:
            compile_pack(folder)
        assert error.value.mistakes == mistakes
    else:
        assert pack_bytes(compile_pack(folder))
    for mistake in mistakes:
        assert len(str(mistake)) < 500
        assert str(mistake).endswith((".", "?"))
        assert mistake.line >= 0


@pytest.mark.heavy
@settings(
    deadline=None, max_examples=120, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(files=damaged())
def test_a_damaged_pack_is_never_a_traceback(
    files: dict[str, bytes], tmp_path_factory: pytest.TempPathFactory
) -> None:
    checked(write(tmp_path_factory.mktemp("damaged"), files))


@pytest.mark.heavy
def test_bytes_flipped_all_over_the_pack(tmp_path: Path) -> None:
    chance = random.Random(20)
    for turn in range(40):
        files = {}
        for name, data in SMALL.items():
            flipped = bytearray(data)
            for _ in range(chance.choice([0, 0, 1, 5])):
                flipped[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
            files[name] = bytes(flipped)
        checked(write(tmp_path / str(turn), files))
