"""The two engines side by side: Python here, and the compiled one on a page of a real browser."""

import math
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from typing import Any

from playwright.sync_api import Browser, Page

from identify import phone
from identify.core.belief import prepare
from tests.conftest import serving

PAGE = b"<!doctype html><meta charset=utf-8><title>engine</title>"
TOGETHER = """
async () => {
  const core = await import('./engine.js');
  let engine = null;
  window.load = pack => { engine = core.prepare(pack); };
  // copied at once: what the engine keeps for its next answer may be among it
  window.ask = asked => asked.map(({ name, given, free }) => structuredClone(
    free ? core[name](...given) : core[name](engine, ...given)));
}"""
# what no screen calls by itself, and the other engine is asked all the same
ASKED_ONLY = ("believe", "problem", "undone", "add_money", "assess_for", *phone.FURTHER_EXPORTS)
Functions = Mapping[str, Callable[..., Any]]


@contextmanager
def compiled(browser: Browser) -> Iterator[Page]:
    """A page that holds the compiled engine."""
    engine = phone.engine_module(ASKED_ONLY).encode()
    with serving({"index.html": PAGE, "engine.js": engine}) as server:
        page = browser.new_page()
        page.goto(server.url)
        page.evaluate(TOGETHER)
        yield page
        page.close()


def same(one: Any, other: Any, at: str = "") -> None:
    """Fail where two results differ: numbers by more than 1e-9, anything else at all."""
    if isinstance(one, dict):
        assert isinstance(other, dict), at
        assert sorted(one) == sorted(other), at
        for key in one:
            same(one[key], other[key], f"{at}.{key}")
    elif isinstance(one, list):
        assert isinstance(other, list), at
        assert len(one) == len(other), at
        for n, (x, y) in enumerate(zip(one, other, strict=True)):
            same(x, y, f"{at}[{n}]")
    elif isinstance(one, float) and isinstance(other, int | float):
        assert math.isclose(one, other, rel_tol=1e-9, abs_tol=1e-9), (at, one, other)
    else:
        assert one == other, at


def agree(
    page: Page, pack: dict[str, Any], bound: Functions, free: Functions, asked: list[list[Any]]
) -> None:
    """Ask both engines the same things about one pack.

    bound: the functions, by name, that take the engine pack first; free: those that do not. Where
    all are free the pack is not sent, which takes longer than most questions.
    """
    engine = prepare(pack) if bound else None
    if bound:
        page.evaluate("pack => load(pack)", pack)
    calls = [{"name": name, "given": given, "free": name in free} for name, *given in asked]
    theirs = page.evaluate("asked => ask(asked)", calls)
    for (name, *given), their in zip(asked, theirs, strict=True):
        ours = free[name](*given) if name in free else bound[name](engine, *given)
        same(ours, their, name)
