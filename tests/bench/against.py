"""Two commits beside each other in one run, by turns: the app of each, measured by this bench.

What was gathered of another commit is measured by the same code as this checkout's, so that an old
commit need not know what is measured today. Processor time of the screen's thread is told beside
the clock's: other work on the machine lengthens it little.
"""

import shutil
import statistics
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator, Mapping
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import Any

from identify.errors import UserError
from identify.shipped import ROOT
from tests.bench.serving import Site, kept_browser, served, slowed
from tests.bench.table import aligned, number
from tests.bench.taps import SLOWED, WATCH
from tests.bench.thread_time import Watched

ALL = "Not sure: ask me"
LONG = 120_000  # milliseconds that a start or a tap may take on a busy machine
SLOW = {"offline": False, "latency": 150, "downloadThroughput": 2e5, "uploadThroughput": 2e5}
WHATS = {
    "visit_ms": "first visit at 1.6 Mbit/s, 150 ms, to the first question (ms)",
    "start_ms": "cold start, no network, to the first question (ms)",
    "start_thread": "the same, the screen's thread (ms of processor)",
    "start_all": "the same, all threads of the page",
    "tap_ms": "first tap to painted question (ms)",
    "tap_thread": "the same, the screen's thread",
}


@contextmanager
def worktree(commit: str) -> Iterator[Path]:
    """Another commit's files, in a folder that goes again."""
    with tempfile.TemporaryDirectory() as text:
        folder = Path(text) / "tree"
        _git("worktree", "add", "--detach", str(folder), commit)
        try:
            yield folder
        finally:
            _git("worktree", "remove", "--force", str(folder))


def _git(*words: str) -> None:
    done = subprocess.run(["git", *words], cwd=ROOT, capture_output=True, text=True, check=False)
    if done.returncode != 0:
        raise UserError(f"git {words[0]} {words[1]}: {done.stderr.strip()}")


def site_of(tree: Path) -> dict[str, bytes]:
    """The app of a checkout, as it publishes it."""
    with tempfile.TemporaryDirectory() as text:
        out = Path(text) / "site"
        done = subprocess.run(
            [sys.executable, "-m", "identify", "publish", str(out)],
            cwd=tree,
            capture_output=True,
            text=True,
            check=False,
        )
        if done.returncode != 0:
            raise UserError(f"That commit's app cannot be gathered: {done.stderr.strip()}")
        files = [path for path in out.rglob("*") if path.is_file()]
        return {path.relative_to(out).as_posix(): path.read_bytes() for path in files}


def compared(
    playwright: Any, commit: str, rounds: int, told: Callable[[str], None]
) -> dict[str, Any]:
    """Both apps by turns: {commit, rounds, before and now: lists by what is measured}."""
    with worktree(commit) as tree:
        sites = {"before": site_of(tree), "now": site_of(ROOT)}
    return {"commit": commit, "rounds": rounds} | by_turns(playwright, sites, rounds, told)


def by_turns(
    playwright: Any,
    sites: Mapping[str, Mapping[str, bytes]],
    rounds: int,
    told: Callable[..., None],
) -> dict[str, dict[str, list[float]]]:
    """First visits, starts without a network, first taps of both: by turns, each first as often."""
    found = {side: {what: [] for what in WHATS} for side in sites}
    with ExitStack() as stack:
        folders = {}
        for side, files in sites.items():
            folders[side] = Path(stack.enter_context(tempfile.TemporaryDirectory()))
            site = Site(files)
            try:
                with kept_browser(playwright, folders[side]) as context:
                    _kept(context.new_page(), site.url)
            finally:
                site.stop()
            found[side]["url"] = [site.url]
        for turn in range(rounds):
            for side in list(sites)[:: 1 if turn % 2 == 0 else -1]:
                found[side]["visit_ms"].append(_visit(playwright, sites[side]))
                url = found[side]["url"][0]
                for what, value in _start(playwright, folders[side], url).items():
                    found[side][what].append(value)
                told(".")
    for side in sites:
        del found[side]["url"]
    return found


def _kept(page: Any, url: str) -> None:
    page.goto(url)
    page.get_by_role("heading", level=1).wait_for()
    page.evaluate("() => navigator.serviceWorker.ready")
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")


def _visit(playwright: Any, files: Mapping[str, bytes]) -> float:
    """A first visit over a slow line (Network.emulateNetworkConditions), the CPU as it is."""
    with (
        tempfile.TemporaryDirectory() as text,
        served(files) as site,
        kept_browser(playwright, Path(text)) as context,
    ):
        page = context.new_page()
        page.add_init_script(WATCH)
        line = context.new_cdp_session(page)
        line.send("Network.enable")
        line.send("Network.emulateNetworkConditions", SLOW)
        page.goto(site.url, timeout=LONG)
        page.wait_for_function("() => typeof window.usable === 'number'", timeout=LONG)
        return float(page.evaluate("() => window.usable"))


def _start(playwright: Any, folder: Path, url: str) -> dict[str, float]:
    """One start without a network, and the first tap of it; what it keeps goes again."""
    with tempfile.TemporaryDirectory() as text, ExitStack() as stack:
        again = Path(text) / "phone"
        shutil.copytree(folder, again, ignore=shutil.ignore_patterns("Singleton*"))
        context = stack.enter_context(kept_browser(playwright, again))
        context.set_offline(True)
        page = context.new_page()
        page.add_init_script(WATCH)
        slowed(page, SLOWED)
        watched = Watched(page)
        with watched.doing() as start:
            page.goto(url)
            page.wait_for_function("() => typeof window.usable === 'number'", timeout=LONG)
        usable = page.evaluate("() => window.usable")
        page.wait_for_timeout(1500)
        page.evaluate("() => { window.taps.length = 0; }")
        with watched.doing() as tap:
            page.get_by_role("button", name=ALL, exact=True).tap(timeout=LONG)
            page.wait_for_function("() => window.taps.length > 0", timeout=LONG)
        return {
            "start_ms": usable,
            "start_thread": start.thread,
            "start_all": start.thread + start.others,
            "tap_ms": page.evaluate("() => window.taps[0]"),
            "tap_thread": tap.thread,
        }


def against_table(found: dict[str, Any]) -> str:
    """Medians of both, and the ratio of each turn: its median, and where half of them lie."""
    rows = [("", "before", "now", "now / before", "half of the turns")]
    for what, name in WHATS.items():
        before, now = found["before"][what], found["now"][what]
        ratios = [one / other for one, other in zip(now, before, strict=True)]
        low, _, high = (
            statistics.quantiles(ratios, n=4, method="inclusive") if len(ratios) > 1 else ratios * 3
        )
        medians = [number(statistics.median(each)) for each in (before, now, ratios)]
        rows.append((name, *medians, f"{number(low)} to {number(high)}"))
    head = f"{found['commit']} and this checkout by turns, {found['rounds']} of each, CPU slowed 4x"
    return "\n".join([head, *aligned(rows)])
