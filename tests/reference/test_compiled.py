"""The compiled pack as a whole: its form, its order, the same bytes every time."""

import hashlib
import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from identify.reference.compile import compile_pack
from identify.reference.compiled import CompiledPack, pack_bytes, pack_schema
from tests.reference.small_pack import SVG, changed, small_files, write

PACKS = Path(__file__).resolve().parents[2] / "fixtures" / "packs"


@pytest.fixture
def small(tmp_path: Path) -> CompiledPack:
    return compile_pack(write(tmp_path, small_files()))


def problems(pack: Any) -> list[str]:
    """What the schema has against a pack."""
    Draft202012Validator.check_schema(pack_schema())
    return [each.message for each in Draft202012Validator(pack_schema()).iter_errors(pack)]


def test_the_schema_takes_a_compiled_pack(small: CompiledPack) -> None:
    assert pack_schema()["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert problems(json.loads(pack_bytes(small))) == []


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("more",), 1),
        (("format",), 2),
        (("features", 1, "part"), -2),
        (("features", 1, "needs"), "magnifier"),
        (("rows", "prior", 0), 1.5),
        (("items", 0, "kind"), -1),
        (("variants", 0, "said", 0), ["cat", "1957"]),
        (("spans", 0, "first"), "1957"),
    ],
)
def test_the_schema_refuses_what_is_not_one(
    small: CompiledPack, path: tuple[str | int, ...], value: object
) -> None:
    pack = json.loads(pack_bytes(small))
    inner = pack
    for step in path[:-1]:
        inner = inner[step]
    inner[path[-1]] = value
    assert len(problems(pack)) == 1


def test_the_version_is_of_everything_else(small: CompiledPack, tmp_path: Path) -> None:
    everything = json.loads(pack_bytes(small))
    version = everything.pop("version")
    text = json.dumps(everything, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    assert version == hashlib.sha256(text.encode()).hexdigest()[:16]
    other = compile_pack(write(tmp_path / "other", changed("range.toml", "for tests", "to test")))
    assert other.version != version


def test_kind_comes_first_and_is_certain(small: CompiledPack) -> None:
    kind = small.features[0]
    assert (kind.id, kind.part, kind.seconds, kind.none) == ("kind", -1, 2.0, -1)
    assert [state.drawing for state in kind.states] == ["kind-locomotive", "kind-coach", "kind-set"]
    for row, place in enumerate(small.rows.kind):
        shares = small.cells[0].shares[small.cells[0].codes[row]]
        assert shares == [1.0 if n == place else 0.0 for n in range(3)]


def test_none_is_added_only_where_it_is_wanted(small: CompiledPack) -> None:
    last = {feature.id: feature.states[-1] for feature in small.features}
    assert (last["coupling"].id, last["coupling"].name) == ("none", "None")
    assert last["coupling"].drawing == "none"
    assert (last["horns"].name, last["horns"].drawing) == ("No horns", "horns-none")
    assert last["livery"].id == "red"
    # What a piece visibly lacks is a state like any other: only an added "none" is marked.
    assert [feature.none for feature in small.features] == [-1, 2, -1, 2, -1]


def test_ids_become_places(small: CompiledPack) -> None:
    assert small.items[2].contains == [0, 1]
    assert small.items[0].carried == ["101", "102"]
    assert small.items[1].said == [(0, "1952/1959"), (1, "1951/1959")]
    assert [variant.item for variant in small.variants] == [0, 0, 1, 1, 2]
    assert small.variants[4].years == "1953/1954"
    assert small.variants[4].said == [(0, "1953/1954")]
    assert small.features[1].part == 0
    assert small.features[1].mistaken == [(1, 0)]
    assert [feature.kinds for feature in small.features] == [
        [0, 1, 2],
        [0, 1],
        [0],
        [0],
        [0, 1, 2],
    ]
    assert [caution.kinds for caution in small.cautions] == [[2], [0, 1, 2]]
    assert [change.items for change in small.changes] == [[], [], [], [0]]
    assert [change.kinds for change in small.changes] == [[0, 1], [0, 1], [0], [0]]
    assert small.changes[1].said == [(0, "1953"), (1, "1955")]
    assert (small.range.first, small.range.last) == (1950, 1959)


def test_the_rows_the_engine_reads(small: CompiledPack) -> None:
    assert small.rows.variant == [0, 0, 1, 1, 1, 2, 2, 2, 2, 3, 3, 4]
    assert small.rows.kind == [0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 2]


def test_backgrounds_by_hand(small: CompiledPack) -> None:
    livery = small.backgrounds[4]
    # Locomotives: p1a's two rows are recorded, green; half a row is shared out over two states.
    assert livery[0] == pytest.approx([2.25 / 2.5, 0.25 / 2.5])
    # Coaches: p2a (common 1) half green, p2b (0.5) red, six rows.
    assert livery[1] == pytest.approx([(6 / 3 + 0.25) / 6.5, (12 / 3 + 0.25) / 6.5])


def test_a_background_of_nothing_recorded_is_even(tmp_path: Path) -> None:
    pack = compile_pack(write(tmp_path, changed("items.csv", ",red", ",?")))
    assert pack.backgrounds[4][2] == [0.5, 0.5]


def test_only_the_drawings_of_states_are_packed_and_they_are_clean(tmp_path: Path) -> None:
    files = small_files()
    files["drawings/livery-red.svg"] = SVG.replace("><", ">\n <!-- here -->\n  <")
    pack = compile_pack(write(tmp_path, files))
    assert pack.drawings["livery-red"] == SVG.replace("/>", "></path>")
    wanted = {state.drawing for feature in pack.features for state in feature.states}
    assert set(pack.drawings) == wanted


PRINT = """
import hashlib, sys
from pathlib import Path
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
for folder in sys.argv[1:]:
    print(hashlib.sha256(pack_bytes(compile_pack(Path(folder)))).hexdigest())
"""


@pytest.mark.heavy
def test_the_same_bytes_in_every_process(tmp_path: Path) -> None:
    folders = [write(tmp_path, small_files()), PACKS / "pellmarsh"]
    seen = set()
    for seed in ("1", "2"):
        done = subprocess.run(
            [sys.executable, "-c", PRINT, *map(str, folders)],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        )
        seen.add(done.stdout)
        assert len(done.stdout.split()) == 2
    assert len(seen) == 1


@pytest.mark.heavy
@pytest.mark.parametrize("folder", sorted(PACKS.iterdir()), ids=lambda folder: folder.name)
def test_the_demo_packs_compile_to_no_more_rows_than_a_phone_can_reason_over(folder: Path) -> None:
    pack = compile_pack(folder)
    assert 100 < len(pack.rows.variant) < 1500
    assert problems(json.loads(pack_bytes(pack))) == []
    assert set(pack.rows.variant) == set(range(len(pack.variants)))


def test_what_a_replaced_part_means_is_told_where_the_pack_says_it(
    small: CompiledPack, tmp_path: Path
) -> None:
    assert [part.replaced for part in small.parts] == [""]
    text = changed("range.toml", "swap = 0.1", 'swap = 0.1\nreplaced = "It matters little."')
    assert compile_pack(write(tmp_path / "told", text)).parts[0].replaced == "It matters little."


def test_what_is_said_of_what_is_altered_where_it_is_comes_from_the_pack(
    small: CompiledPack, tmp_path: Path
) -> None:
    assert [part.altered for part in small.parts] == [""]
    assert all("altered" not in part for part in json.loads(pack_bytes(small))["parts"])
    text = changed("range.toml", "swap = 0.1", 'swap = 0.1\naltered = "repainted"')
    assert compile_pack(write(tmp_path / "told", text)).parts[0].altered == "repainted"
