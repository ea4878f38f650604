"""The engine in Python and the same engine compiled, in a real Chromium: equal answers."""

import math
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Page

from identify import phone
from identify.core.assess import assess
from identify.core.belief import believe, prepare
from identify.core.claim import judge
from identify.core.claim_words import read_claim
from identify.core.finding import find
from identify.core.reasons import why_not
from identify.core.session import answered, mend, new_session, problem, undone, without
from tests.conftest import serving
from tests.strategies import answers, packs, sessions

PAGE = b"<!doctype html><meta charset=utf-8><title>engine</title>"
TOGETHER = """
async () => {
  const core = await import('./engine.js');
  let engine = null;
  window.load = pack => { engine = core.prepare(pack); };
  window.ask = asked => asked.map(([name, ...given]) => {
    const free = ['answered', 'undone', 'without'].includes(name);
    return free ? core[name](...given) : core[name](engine, ...given);
  });
}"""
PYTHON = {
    "assess": assess, "believe": believe, "find": find, "why_not": why_not, "mend": mend,
    "problem": problem, "new_session": new_session, "answered": answered, "undone": undone,
    "without": without, "read_claim": read_claim, "judge": judge,
}  # fmt: skip
FREE = ("answered", "undone", "without")


@pytest.fixture(scope="module")
def page(browser) -> Iterator[Page]:
    with serving({"index.html": PAGE, "engine.js": phone.engine_module().encode()}) as server:
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


def agree(page: Page, pack: dict[str, Any], asked: list[list[Any]]) -> None:
    """Ask both engines the same things about one pack."""
    engine = prepare(pack)
    page.evaluate("pack => load(pack)", pack)
    theirs = page.evaluate("asked => ask(asked)", asked)
    for (name, *given_), their in zip(asked, theirs, strict=True):
        args = given_ if name in FREE else [engine, *given_]
        same(PYTHON[name](*args), their, name)


TEXTS = st.one_of(
    st.text(max_size=12),
    st.sampled_from(["N 1O", "n10", "N10", "701", "7O1", "item", "itme 2", "N 1", "kind 0", ""]),
)

WORDS = st.sampled_from(
    "1955 55 '55 1950s fifties early mid late c. about ish before after pre-war by since first "
    "issue last 1957/58 57-59 195X ../1955 1955/.. ~ ? to or between first version purple".split()
)
ANY_YEARS = {"about": "years", "first": 1953, "last": 1956, "problem": ""}
CLAIMS = st.lists(WORDS, max_size=4).map(" ".join)


# 2,000 sessions, each asked for everything the screens use
@settings(max_examples=2000, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.data())
def test_random_sessions(page, data):
    pack = data.draw(packs())
    session = data.draw(sessions(pack))
    more = data.draw(answers(pack["features"][0]))
    wrong = data.draw(
        st.sampled_from(
            [
                more,
                {**more, "feature": "f9"},
                {**more, "how": "guess"},
                {**more, "states": ["s9"]},
                {**more, "states": ["s0", "s0"]},
            ]
        )
    )
    text = data.draw(CLAIMS)
    claim = read_claim(prepare(pack), text)
    stale = {**session, "version": "v0", "missing": ["p0", "gone"]}
    stale["answers"] = [*session["answers"], wrong]
    stale["scope"] = {"kind": "k9", "items": ["N 1O", "N 99"]}
    agree(
        page,
        pack,
        [
            ["believe", session],
            ["assess", session],
            ["why_not", session, data.draw(st.integers(0, len(pack["variants"]) - 1))],
            ["find", data.draw(TEXTS), 5],
            ["problem", wrong],
            ["mend", stale],
            ["answered", session, more],
            ["undone", session],
            ["without", session, more["feature"]],
            ["new_session"],
            ["read_claim", text],
            ["judge", session, claim if claim["problem"] == "" else ANY_YEARS],
        ],
    )
