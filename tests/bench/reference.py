"""What has to do with the reference: compiling and checking packs, look-up, and memory."""

import resource
import statistics
import sys
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any

import msgspec

from identify import phone
from identify.core.belief import prepare
from identify.core.look_up import find
from identify.core.types.pack import Pack
from identify.lab.generating import made_pack
from identify.reference.check import check_pack
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from tests.bench.serving import ARGS, browser_path, served

PER_ITEM = 8.2  # rows of a made pack for each item, about
HITS = 12  # as many as the screen shows
LOOK_UP = """async (texts) => {
  const core = await import('./engine.js');
  const engine = core.prepare(await (await fetch('./pack.json')).json());
  const began = performance.now();
  core.find(engine, 'warm', 1);
  const first = performance.now() - began;
  const took = [];
  for (let round = 0; round < 3; round += 1) {
    for (const text of texts) {
      const from = performance.now();
      core.find(engine, text, 12);
      if (round === 2) took.push(performance.now() - from);
    }
  }
  return { first, took };
}"""


def timed(act: Callable[[], Any]) -> float:
    """Milliseconds that it takes, the best of three."""
    took = []
    for _ in range(3):
        began = time.perf_counter()
        act()
        took.append(1000 * (time.perf_counter() - began))
    return min(took)


def compiling(folders: list[Path], rows: int, seed: int) -> list[dict[str, Any]]:
    """Milliseconds to check and to compile each pack folder; and to make one of so many rows."""
    out: list[dict[str, Any]] = [
        {
            "pack": folder.name,
            "check": timed(partial(check_pack, folder)),
            "compile": timed(partial(compile_pack, folder)),
        }
        for folder in folders
    ]
    began = time.perf_counter()
    made_pack(rows, seed)
    return [*out, {"pack": f"made, {rows} rows", "make": 1000 * (time.perf_counter() - began)}]


def asked_for(pack: Pack) -> list[str]:
    """What people type: numbers, whole, in part and misread; names, whole, in part and misspelt."""
    items = pack["items"]
    some = [items[n * len(items) // 20] for n in range(20)]
    out = []
    for item in some:
        name = item["name"].split()[-1]
        number = item["number"]
        out += [number, number[:-1], f"{number[:-1]}O", item["name"], name[:-2], f"{name[:-1]}x"]
    return out


def looking_up(playwright: Any, names: int, seed: int) -> dict[str, Any]:
    """Milliseconds to look up a number or a name among so many, in Python and in Chromium."""
    packed = pack_bytes(made_pack(max(1, int(names * PER_ITEM)), seed))
    pack = msgspec.json.decode(packed)
    engine = prepare(pack)
    texts = asked_for(pack)
    find(engine, "warm", 1)
    ours = [timed(partial(find, engine, text, HITS)) for text in texts[:12]]
    out: dict[str, Any] = {"names": len(pack["items"]), "python": statistics.median(ours)}
    if playwright is None:
        return out
    engine_js = phone.engine_module().encode()
    page_html = b"<!doctype html><meta charset=utf-8><title>bench</title>"
    files = {"index.html": page_html, "engine.js": engine_js, "pack.json": packed}
    browser = playwright.chromium.launch(executable_path=browser_path(), args=ARGS)
    try:
        with served(files) as site:
            page = browser.new_page()
            page.goto(site.url)
            found = page.evaluate(LOOK_UP, texts)
    finally:
        browser.close()
    took = sorted(found["took"])
    return out | {
        "first": found["first"],
        "p50": statistics.median(took),
        "p98": took[int(0.98 * (len(took) - 1))],
    }


def most_memory() -> float:
    """Megabytes that this process has held at most (getrusage; kilobytes on Linux)."""
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return most / 1e6 if sys.platform == "darwin" else most / 1e3
