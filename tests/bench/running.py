"""The whole of the bench: every part in turn, with what is not there left out by name."""

import importlib
import importlib.util
import os
import platform
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import msgspec

from identify import phone, shipped
from identify.lab.generating import made_pack
from identify.reference.compiled import pack_bytes
from tests.bench import reference, taps
from tests.bench.engine import answers_at
from tests.bench.serving import browser_path
from tests.bench.syncing import synced

Progress = Callable[[str], None]
INSTALL = "pip install -e '.[dev]'"


@dataclass(frozen=True)
class Sizes:
    """How much of everything."""

    rows: tuple[int, ...] = (2_000, 20_000, 100_000)
    pieces: int = 4  # identified by the engine, eight answers each
    features: tuple[int, ...] = (9, 18, 36, 72)  # of packs of the second size, or the only one
    rounds: int = 5  # times that each answer is measured in the browser
    tapped: int = 6  # pieces identified by taps
    pause: int = taps.PAUSE  # milliseconds between two taps
    starts: int = 7
    names: int = 20_000
    operations: int = 5_000
    photos: int = 200


def left_out() -> list[str]:
    """What cannot be measured here, and how to make it measurable."""
    out = []
    if importlib.util.find_spec("playwright") is None:
        out.append(f"Left out: everything in a browser. It needs playwright: {INSTALL}")
    elif browser_path() is None:
        out.append("Left out: everything in a browser. Debian: apt-get install chromium")
    if importlib.util.find_spec("wasmtime") is None:
        out.append(f"Left out: the floor with SIMD. It needs wasmtime: {INSTALL}")
    if importlib.util.find_spec("sklearn") is None:
        out.append(f"Left out: the comparison with scikit-learn. It needs {INSTALL}")
    return out


@contextmanager
def browsers() -> Iterator[Any]:
    """Playwright, started; None where there is no browser to drive."""
    if importlib.util.find_spec("playwright") is None or browser_path() is None:
        yield None
        return
    with importlib.import_module("playwright.sync_api").sync_playwright() as started:
        yield started


def run(sizes: Sizes, seed: int, told: Progress) -> dict[str, Any]:
    """Every part of the bench; `told` hears what is being done. All times are in milliseconds."""
    peer = None
    if importlib.util.find_spec("sklearn") is not None:
        peer = importlib.import_module("tests.bench.peer").with_peer
    out: dict[str, Any] = {
        "machine": {
            "system": platform.platform(),
            "python": platform.python_version(),
            "processors": os.cpu_count(),
            "load": os.getloadavg()[0],
        },
        "seed": seed,
        "left_out": left_out(),
        "answers": [],
        "by_features": [],
        "taps": [],
        "cold": None,
    }

    def tick() -> None:
        told(".")

    with browsers() as playwright:
        for rows in sizes.rows:
            told(f"\nan answer at {rows} rows ")
            packed = pack_bytes(made_pack(rows, seed))
            out["answers"].append(answers_at(packed, playwright, peer, sizes.pieces, sizes.rounds))
        for features in sizes.features:
            told(f"\nan answer with {features} features ")
            packed = pack_bytes(made_pack(sizes.rows[:2][-1], seed, features))
            found = answers_at(packed, playwright, None, sizes.pieces, sizes.rounds)
            out["by_features"].append(found)
        if playwright is not None:
            for name, files, packed in _tapped(sizes, seed):
                told(f"\ntaps: {name} ")
                pack = msgspec.json.decode(packed)
                walk = sizes.tapped, sizes.pause
                found = taps.tap_times(playwright, files, pack, walk, tick)
                out["taps"].append({"pack": name} | found)
            told("\ncold starts ")
            files = phone.site(phone.demo_packs())
            out["cold"] = taps.cold_starts(playwright, files, sizes.starts, tick)
        told(f"\nlook-up among {sizes.names} names ")
        out["look_up"] = reference.looking_up(playwright, sizes.names, seed)
    told("\npacks ")
    out["packs"] = reference.compiling(phone.demo_packs(), sizes.rows[0], seed)
    told("\nsync ")
    out["sync"] = synced(sizes.operations, sizes.photos, tick)
    out["memory_mb"] = reference.most_memory()
    told("\n")
    return out


def _tapped(sizes: Sizes, seed: int) -> Iterator[tuple[str, dict[str, bytes], bytes]]:
    """The packs to tap through: (name, files of the app with it, the pack)."""
    files = phone.site([shipped.PACKS / "pellmarsh"])
    yield "demo", files, files["packs/pellmarsh.json"]
    for rows in sizes.rows[1:]:
        pack = made_pack(rows, seed)
        packed = pack_bytes(pack)
        listed = phone.site([shipped.PACKS / "pellmarsh"])
        yield f"{rows} rows", only_pack(listed, pack, packed), packed


def only_pack(files: dict[str, bytes], pack: Any, packed: bytes) -> dict[str, bytes]:
    """The same app with this pack in place of the ones it has."""
    kept = {n: c for n, c in files.items() if not n.startswith("packs/") or n == phone.MARKS}
    entry = {"id": pack.id, "version": pack.version, "url": f"packs/{pack.id}.json"}
    listed = msgspec.json.encode([entry | msgspec.to_builtins(pack.range)])
    return kept | {phone.INDEX: listed, entry["url"]: packed}


def saved(found: dict[str, Any], file: Path) -> None:
    """The figures as JSON."""
    file.write_bytes(msgspec.json.format(msgspec.json.encode(found), indent=2))
