"""A lifetime's collection in a real Chromium: what each thing costs as the collection grows."""

import math
import tempfile
from functools import partial
from pathlib import Path
from typing import Any

from identify import phone
from tests.bench import first_sync
from tests.bench.made_collection import write
from tests.bench.own_server import OwnServer, own_server
from tests.bench.serving import kept_browser
from tests.bench.table import aligned, number
from tests.bench.taps import WATCH
from tests.bench.walking import LONG, OPENED, Told, Walk

SIZES = (1_000, 5_000, 20_000)
SCROLLED = 40  # turns of a wheel
SLOW = "slowed 4 times: "


def lifetime(
    playwright: Any, sizes: tuple[int, ...], seed: int, told: Told
) -> list[dict[str, Any]]:
    """All steps at each size of a collection."""
    return [_at_size(playwright, pieces, seed, told) for pieces in sizes]


def _at_size(playwright: Any, pieces: int, seed: int, told: Told) -> dict[str, Any]:
    told(f"\na collection of {pieces} pieces:")
    files = phone.site(phone.demo_packs())
    with tempfile.TemporaryDirectory() as text:
        folder = Path(text)
        file = folder / "made.json"
        write(pieces, seed, file)
        with own_server(folder / "server", files) as server:
            with kept_browser(playwright, folder / "phone") as context:
                walk = Walk(context.new_page(), pieces, told)
                _restored(walk, server.url, file)
            with kept_browser(playwright, folder / "phone") as context:
                context.add_init_script(WATCH)
                again = Walk(context.new_page(), pieces, told)
                again.out["steps"] |= walk.out["steps"]
                _walked(again, server, folder)
            slow = partial(_walked_slowly, url=server.url)
            again.out["steps"] |= first_sync.taken(playwright, server, pieces, told, slow)
    return again.out


def _restored(walk: Walk, url: str, file: Path) -> None:
    """The collection comes onto the phone as a person brings it: by a backup file."""
    walk.page.goto(url)
    walk.page.evaluate("() => navigator.serviceWorker.ready")
    with walk.step("the first start"):
        walk.page.reload()
        walk.page.wait_for_function(OPENED)
    walk.more("Backup")
    with walk.step("restore"):
        walk.page.get_by_label("Restore a backup file").set_input_files(file)
        walk.page.get_by_text("Restored:").wait_for(timeout=LONG)


def _walked(walk: Walk, server: OwnServer, folder: Path) -> None:
    page = walk.page
    page.goto("about:blank")
    with walk.step("open the app"):
        page.goto(server.url, timeout=LONG)
        page.wait_for_function(OPENED, timeout=LONG)
    with walk.step("begin a piece"):
        walk.button("Not sure: ask me").click(timeout=LONG)
        page.get_by_role("group", name="Tap what you see").wait_for(timeout=LONG)
    page.go_back()
    walk.at("What have you got?")
    with walk.step("collection"):
        walk.place("Collection")
        walk.at("Collection")
    _listed(walk)
    _other_lists(walk)
    _files(walk, folder)
    with walk.step("print or save"):
        walk.more("Print or save")
    with walk.step("print for the insurer"):
        page.get_by_role("button", name="List for the insurer").click(timeout=LONG)
        walk.at("List for the insurer")
    first_sync.sent(walk, server)


def _walked_slowly(walk: Walk, url: str) -> None:
    walk.before = SLOW
    walk.page.goto("about:blank")
    with walk.step("open the app"):
        walk.page.goto(url, timeout=LONG)
        walk.page.wait_for_function(OPENED, timeout=LONG)
    with walk.step("collection"):
        walk.place("Collection")
        walk.at("Collection")
    _listed(walk)


def _listed(walk: Walk) -> None:
    page = walk.page
    pieces = page.get_by_role("list", name="Pieces")
    with walk.step("scroll the list"):
        page.mouse.move(180, 400)
        for _ in range(SCROLLED):
            page.mouse.wheel(0, 900)
            page.wait_for_timeout(30)
    with walk.step("a piece"):
        pieces.get_by_role("button").nth(30).click(timeout=LONG)
        page.get_by_label("Notes").wait_for(timeout=LONG)
    with walk.step("a save"):
        page.get_by_label("Notes").fill("Another note")
        page.get_by_label("Notes").blur()
        page.get_by_text("Saved").first.wait_for(timeout=LONG)
    with walk.step("back to the list"):
        walk.page.get_by_role("button", name="Back", exact=True).click()
        walk.at("Collection")
    search = page.locator("#within")  # by its label all of the list would be looked through
    for name, text in (("the first search", "P 2"), ("a number search", "P 21")):
        with walk.step(name):
            search.fill(text, timeout=LONG)
            page.locator(".results-of > p").filter(has_text=" of ").wait_for(timeout=LONG)
    search.fill("")


def _other_lists(walk: Walk) -> None:
    for name in ("Duplicates", "Sets and trains"):
        with walk.step(name.lower()):
            walk.more(name)
    walk.more("Search everything")
    for name, text in (("search everything", "brush"), ("search once more", "brushes")):
        with walk.step(name):
            walk.page.get_by_label("Search for").fill(text, timeout=LONG)
            walk.page.get_by_text(" found").first.wait_for(timeout=LONG)
    with walk.step("undo"):
        walk.page.get_by_role("button", name="Undo", exact=True).click()
        walk.page.get_by_role("alert").filter(has_text="Undone").wait_for(timeout=LONG)
    with walk.step("a verdict after a change"):
        walk.place("Identify")
        walk.at("What have you got?")
        walk.button("Not sure: ask me").click(timeout=LONG)
        walk.page.get_by_role("group", name="Tap what you see").wait_for(timeout=LONG)
    walk.page.go_back()
    walk.at("What have you got?")
    for name in ("Wants", "Notebook"):
        with walk.step(name.lower()):
            walk.place(name)
            walk.at(name)


def _files(walk: Walk, folder: Path) -> None:
    page = walk.page
    with walk.step("the backup's screen"):
        walk.more("Backup")
    with walk.step("a backup"), page.expect_download(timeout=LONG) as waiting:
        walk.button("Make a backup file").click()
    waiting.value.save_as(folder / "backup.json")


def slope(found: list[dict[str, Any]], step: str, what: str) -> float:
    """How a figure grows with the pieces: the slope between logarithms, by least squares."""
    points = [
        (math.log(one["pieces"]), math.log(max(one["steps"][step][what], 0.1)))
        for one in found
        if step in one["steps"]
    ]
    across = sum(x for x, _ in points) / len(points)
    up = sum(y for _, y in points) / len(points)
    wide = sum((x - across) ** 2 for x, _ in points)
    return sum((x - across) * (y - up) for x, y in points) / wide if wide else 0.0


def lifetime_table(found: list[dict[str, Any]]) -> str:
    """A row a step: processor time of the screen's thread at each size and how it grows, the
    longest task, the memory and the clock's time at the largest.
    """
    sizes = [one["pieces"] for one in found]
    heads = (
        "ms of processor, screen's thread",
        *(f"{pieces:,}" for pieces in sizes),
        "slope",
        "longest task",
        "over 50",
        "MB",
        "clock, s",
    )
    rows: list[tuple[str, ...]] = [heads]
    for step in found[0]["steps"]:
        largest = next(one["steps"][step] for one in reversed(found) if step in one["steps"])
        rows.append(
            (
                step,
                *(number(one["steps"].get(step, {}).get("thread")) for one in found),
                f"{slope(found, step, 'thread'):.2f}",
                number(largest["longest"]),
                str(largest["over"]),
                number(largest["most_mb"]),
                number(largest["clock"] / 1000),
            )
        )
    return "\n".join([*aligned(rows), *_taps_told(found)])


def _taps_told(found: list[dict[str, Any]]) -> list[str]:
    """A line for each first sync in which somebody tapped."""
    return [
        f"{one['pieces']:,} pieces, {name}: {step['taps']} taps, 98 of 100 within "
        f"{number(step['p98'])} ms, the slowest {number(step['slowest'])}"
        for one in found
        for name, step in one["steps"].items()
        if step.get("taps")
    ]
