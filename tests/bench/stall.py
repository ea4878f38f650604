"""The minute at the stall, played in a real Chromium: pieces drawn with a fixed seed, offline."""

import random
import statistics
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

import msgspec

from identify import phone
from identify.core.belief import prepare
from identify.core.types.pack import Pack
from identify.lab.pieces import Piece, piece
from tests.bench import stall_walk as walk
from tests.bench.effort import WORDS_A_SECOND, Effort
from tests.bench.serving import ARGS, PHONE, browser_path, served
from tests.bench.taps import share

MISREAD = 1 / 15  # of the answers
UNBOXED = 0.45  # of the pieces
SURE = 0.95
BOX = 15  # wagons in the box under the table
WAYS = ("kind", "number")
COLLECTIONS = ("empty", "demo")


@dataclass(frozen=True)
class Drawn:
    """A piece at the stall: what it is, and what the person makes of each feature."""

    pack: Pack
    piece: Piece
    seen: dict[str, str]
    boxed: bool

    @property
    def variant(self) -> dict[str, Any]:
        """The recorded variant that it is."""
        return dict(self.pack["variants"][self.pack["rows"]["variant"][self.piece.row]])

    @property
    def item(self) -> dict[str, Any]:
        """The item that it is."""
        return dict(self.pack["items"][self.variant["item"]])

    @property
    def kind(self) -> str:
        """What the kind is called on the start screen."""
        sort = self.pack["kinds"][self.item["kind"]]["id"]
        states = self.pack["features"][0]["states"]
        return next(state["name"] for state in states if state["id"] == sort)


def pieces(packs: list[Pack], count: int, seed: int, only: str = "") -> list[Drawn]:
    """So many pieces of these ranges in turn, as common as they are there; some are misread."""
    rng = random.Random(seed)
    engines = [prepare(pack) for pack in packs]
    out: list[Drawn] = []
    while len(out) < count:
        pack = packs[len(out) % len(packs)]
        found = piece(rng, pack)
        if only and pack["kinds"][pack["rows"]["kind"][found.row]]["id"] != only:
            continue
        wrong = engines[len(out) % len(packs)]["sure"]
        seen = dict(found.states)
        for place, feature in enumerate(pack["features"]):
            ids = [state["id"] for state in feature["states"]]
            true = ids.index(found.states[feature["id"]])
            others = [0.0 if n == true else row[true] for n, row in enumerate(wrong[place])]
            if rng.random() < MISREAD and place > 0 and sum(others) > 0:
                seen[feature["id"]] = rng.choices(ids, others)[0]
        out.append(Drawn(pack, found, seen, rng.random() >= UNBOXED))
    return out


def played(
    playwright: Any, count: int, seed: int, tick: Callable[[], None], box: int = BOX
) -> dict[str, Any]:
    """Every way of the table, with the same pieces: seconds, taps, words, and who was right."""
    files = phone.site(phone.demo_packs())
    names = [one["id"] for one in msgspec.json.decode(files[phone.INDEX])]
    packs: list[Pack] = [msgspec.json.decode(files[f"packs/{name}.json"]) for name in names]
    drawn = sorted(pieces(packs, count, seed), key=lambda one: one.pack["id"])
    out: dict[str, Any] = {"pieces": count, "seed": seed, "ways": [], "tasks": []}
    with served(files) as site:
        for collection in COLLECTIONS:
            with opened(playwright, site.url, collection == "demo") as page:
                for way in WAYS:
                    runs = [one_piece(page, one, way) for one in ticked(drawn, tick)]
                    out["ways"].append({"way": way, "collection": collection} | summed(runs))
                if collection == "demo":
                    wagons = pieces(packs[:1], box, seed, "wagon")
                    out["tasks"] = [
                        {"task": name} | vars(effort) | {"seconds": effort.seconds()}
                        for name, effort in tasks(page, drawn, wagons)
                    ]
    return out


def ticked(drawn: list[Drawn], tick: Callable[[], None]) -> Iterator[Drawn]:
    """The pieces one after another, each told of."""
    for one in drawn:
        tick()
        yield one


@contextmanager
def opened(playwright: Any, url: str, demo: bool) -> Iterator[Any]:
    """The app on a phone that has it already and has no signal."""
    browser = playwright.chromium.launch(executable_path=browser_path(), args=ARGS)
    try:
        context = browser.new_context(**PHONE)
        page = context.new_page()
        page.goto(url)
        page.wait_for_function("() => navigator.serviceWorker.controller !== null")
        if demo:
            page.get_by_role("button", name="Try the demo").click()
            page.get_by_text("100 pieces.").wait_for()
        else:
            page.get_by_role("button", name="Start empty").click()
        context.set_offline(True)
        yield page
    finally:
        browser.close()


def fresh(page: Any, pack: str) -> None:
    """The start screen, as it is with nothing in the hand, looking in this range."""
    page.evaluate(walk.FORGET)
    page.goto(page.url)
    page.get_by_role("heading", name=walk.START).wait_for()
    if page.locator("#range").input_value() != pack:
        page.locator("#range").evaluate("range => { range.dataset.old = 'yes'; }")
        page.locator("#range").select_option(pack)
        page.locator("#range:not([data-old])").wait_for()


def one_piece(page: Any, one: Drawn, way: str) -> tuple[walk.Person, dict[str, Any], Drawn]:
    """From the start screen to the note: who did it, the note, and the truth."""
    fresh(page, one.pack["id"])
    person = walk.Person(page, Effort())
    if way == "kind":
        walk.by_kind(person, one.kind)
    else:
        walk.by_number(person, one.item["number"])
    walk.answered(person, one.pack, one.seen, one.boxed)
    return person, walk.noted(person), one


def summed(runs: list[tuple[walk.Person, dict[str, Any], Drawn]]) -> dict[str, Any]:
    """The line of the table, and where the seconds go."""
    efforts = [person.effort for person, _, _ in runs]
    out: dict[str, Any] = {}
    for name in ("questions", "taps", "words"):
        out[name] = middle([float(getattr(effort, name)) for effort in efforts])
    out["seconds"] = middle([effort.seconds() for effort in efforts])
    out["practised"] = middle([effort.seconds(practised=True) for effort in efforts])
    out["looking"] = statistics.mean(effort.looking for effort in efforts)
    out["reading"] = statistics.mean(effort.words for effort in efforts) / WORDS_A_SECOND
    out["screens"] = by_screen([person for person, _, _ in runs])
    middling = sorted(runs, key=lambda run: run[0].effort.seconds())[(len(runs) - 1) // 2]
    out["one"] = [{"screen": name} | took.operators() for name, took in middling[0].screens]
    out["within_60"] = sum(effort.seconds() <= 60 for effort in efforts)
    out |= {"item_right": 0, "variant_right": 0, "sure_and_wrong": 0}
    for _, note, one in runs:
        none: dict[str, Any] = {"item": "", "variant": "", "chance": 0}
        first = note["of"][0] if note["of"] else none
        item = first["item"] == one.item["number"]
        variant = first["variant"] == one.variant["id"]
        whole = sum(c["chance"] for c in note["of"] if c["item"] == first["item"])
        out["item_right"] += item
        out["variant_right"] += variant
        out["sure_and_wrong"] += (not item and whole >= SURE) or (
            not variant and first["chance"] >= SURE
        )
    return out


def by_screen(people: list[walk.Person]) -> list[dict[str, Any]]:
    """For each sort of screen how often it came, and its seconds by operator: means of a piece."""
    kept: dict[str, list[Effort]] = {}
    for person in people:
        for name, took in person.screens:
            kept.setdefault(name, []).append(took)
    out = []
    for name, each in kept.items():
        whole = sum(each, Effort()).operators()
        mean = {operator: seconds / len(people) for operator, seconds in whole.items()}
        out.append({"screen": name, "times": len(each) / len(people)} | mean)
    return out


def middle(values: list[float]) -> list[float]:
    """The median, and what nine of ten do not exceed."""
    return [statistics.median(values), share(values, 0.9)]


def tasks(page: Any, drawn: list[Drawn], wagons: list[Drawn]) -> Iterator[tuple[str, Effort]]:
    """The other things that are done at a stall, once each."""
    one = drawn[0]
    for name, act in walk.TASKS:
        fresh(page, one.pack["id"])
        person = walk.Person(page, Effort())
        act(person, one.item["number"])
        yield name, person.effort
    fresh(page, wagons[0].pack["id"])
    person = walk.Person(page, Effort())
    for place, wagon in enumerate(wagons):
        if place == 0:
            walk.by_kind(person, wagon.kind)
        elif place == 1:
            walk.next_of_the_box(person)
        person.effort.questions = 0
        walk.answered(person, wagon.pack, wagon.seen, wagon.boxed)
        if 0 < place < len(wagons) - 1:
            walk.noted_in_box(person)
        else:
            walk.noted(person)
    yield f"a box of {len(wagons)} wagons", person.effort
