"""What one answer costs: the posterior, and the worth of every question that is left.

Five ways with the same sessions: the engine in Python; the engine as it is compiled for the phone,
in Chromium; floor.js beside it, the same mathematics written by hand over typed arrays, and again
with WebAssembly's SIMD (floor-simd.js, floor-simd.wat); and a peer, scikit-learn's naive Bayes with
its mutual information (peer.py).
"""

import importlib
import importlib.util
import math
import statistics
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import msgspec

from identify import phone
from identify.core.asking import WORTH, questions
from identify.core.belief import believe, prepare
from identify.core.focus import WARY, by_variant
from identify.core.types.engine import Engine
from identify.core.types.pack import Pack
from identify.core.types.session import Session
from tests.bench.serving import ARGS, browser_path, served
from tests.bench.sessions import numbered, rows_of, walked

Peer = Callable[[Pack, list[Any], list[list[list[int]]]], float]
FLOOR = ("floor.js", "floor-worth.js", "floor-simd.js")
PAGE = b"<!doctype html><meta charset=utf-8><title>bench</title>"
BOTH = """async ({ sessions, plain, rounds, wary, worth, simd }) => {
  const core = await import('./engine.js');
  const { floorOf, floorRun } = await import('./floor.js');
  const { readingTime, simdOf, simdRun } = await import('./floor-simd.js');
  const started = performance.now();
  const pack = await (await fetch('./pack.json')).json();
  const parsed = performance.now();
  const engine = core.prepare(pack);
  const prepared = performance.now();
  const floor = floorOf(pack, engine.sure, wary);
  const low2 = simd && (await simdOf(floor, Uint8Array.from(simd)));
  const ours = sessions.map(() => []);
  const theirs = sessions.map(() => []);
  const quick = sessions.map(() => []);
  const possible = [];
  let worst = 0;
  const differ = (one, other) => {
    const by = Math.abs(one - other);
    if (!(by <= worst)) worst = by;
  };
  for (let round = 0; round < rounds; round += 1) {
    for (let n = 0; n < sessions.length; n += 1) {
      const began = performance.now();
      const state = core.believe(engine, sessions[n]);
      const found = core.questions(engine, sessions[n], state, core.by_variant(state));
      const between = performance.now();
      const low = floorRun(floor, plain[n]);
      const ended = performance.now();
      const lowest = simd && simdRun(low2, plain[n]);
      if (simd) quick[n].push(performance.now() - ended);
      ours[n].push(between - began);
      theirs[n].push(ended - between);
      if (round > 0) continue;
      possible.push(found.focus.rows.length);
      state.chances.forEach((p, i) => differ(p, low.chances[i]));
      if (simd) {
        lowest.chances().forEach((p, i) => differ(p, low.chances[i]));
        lowest.unrecorded.forEach((p, k) => differ(p, low.unrecorded[k]));
        lowest.bits.forEach((bits, f) => differ(bits, low.bits[f]));
      }
      const listed = [...found.open, ...found.shut];
      for (const { feature, bits } of listed) differ(bits, low.bits[feature]);
      if (low.bits.filter((bits) => bits >= worth).length !== listed.length) worst = Infinity;
    }
  }
  const reading = simd && Array.from({ length: 9 }, () => readingTime(low2));
  return { ours, theirs, quick, reading, possible,
           worst: Number.isFinite(worst) ? worst : null,
           parse: parsed - started, prepare: prepared - parsed };
}"""


def in_python(engine: Engine, sessions: list[Session]) -> float:
    """Median milliseconds for one answer."""
    took = []
    for session in sessions:
        began = time.perf_counter()
        state = believe(engine, session)
        questions(engine, session, state, by_variant(state))
        took.append(1000 * (time.perf_counter() - began))
    return statistics.median(took)


def simd_code() -> bytes | None:
    """floor-simd.wat as bytes; None where wasmtime is not installed."""
    if importlib.util.find_spec("wasmtime") is None:
        return None
    text = Path(__file__).with_name("floor-simd.wat").read_text("utf-8")
    return bytes(importlib.import_module("wasmtime").wat2wasm(text))


def in_chromium(
    playwright: Any, packed: bytes, sessions: list[Any], plain: list[Any], rounds: int
) -> dict[str, Any]:
    """The compiled engine and the floor beside each other on one page."""
    engine = phone.engine_module(("believe", "questions", "by_variant"))
    files = {
        "index.html": PAGE,
        "engine.js": engine.encode(),
        "pack.json": packed,
    }
    files |= {name: Path(__file__).with_name(name).read_bytes() for name in FLOOR}
    code = simd_code()
    browser = playwright.chromium.launch(executable_path=browser_path(), args=ARGS)
    try:
        with served(files) as site:
            page = browser.new_page(bypass_csp=True)  # it forbids WebAssembly, as the app has none
            page.goto(site.url)
            found: dict[str, Any] = page.evaluate(
                BOTH,
                {
                    "sessions": sessions,
                    "plain": plain,
                    "rounds": rounds,
                    "wary": WARY,
                    "worth": WORTH,
                    "simd": code and list(code),
                },
            )
    finally:
        browser.close()
    return found


def answers_at(
    packed: bytes, playwright: Any, peer: Peer | None, pieces: int, rounds: int
) -> dict[str, Any]:
    """All five at one size of pack; playwright, peer: None leaves them out. Times are milliseconds
    for one answer.
    """
    pack = msgspec.json.decode(packed)
    engine = prepare(pack)
    each = [walked(engine, row) for row in rows_of(pack, pieces)]
    sessions = [session for steps in each for session in steps]
    plain = [numbered(pack, session) for session in sessions]
    out: dict[str, Any] = {
        "rows": len(pack["rows"]["kind"]),
        "features": len(pack["features"]),
        "python": in_python(engine, sessions),
        "peer": peer(pack, engine["sure"], plain[: len(each[0])]) if peer else None,
    }
    if playwright is None:
        return out
    found = in_chromium(playwright, packed, sessions, plain, rounds)
    best_ours = [statistics.median(times) for times in found["ours"]]
    best_theirs = [statistics.median(times) for times in found["theirs"]]
    best_quick = [statistics.median(times) for times in found["quick"] if times]
    lowest = min(sum(best_theirs), sum(best_quick) if best_quick else math.inf)
    by_step = []
    for step in range(max(len(steps) for steps in each)):
        at = [n for n, session in enumerate(sessions) if len(session["answers"]) == step]
        by_step.append(
            {
                "answers": step,
                "rows_left": statistics.median(found["possible"][n] for n in at),
                "core": statistics.median(best_ours[n] for n in at),
                "floor": statistics.median(best_theirs[n] for n in at),
            }
        )
    return out | {
        "core": statistics.median(best_ours),
        "floor": statistics.median(best_theirs),
        "simd": statistics.median(best_quick) if best_quick else None,
        "reading": statistics.median(found["reading"]) if best_quick else None,
        "core_to_floor": sum(best_ours) / sum(best_theirs),
        "core_to_lowest": sum(best_ours) / lowest,
        "peer_to_core": out["peer"] / statistics.median(best_ours) if peer else None,
        "difference": found["worst"],
        "read": found["parse"],
        "prepare": found["prepare"],
        "by_answers": by_step,
    }
