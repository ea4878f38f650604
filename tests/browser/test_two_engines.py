"""The engine in Python and the same engine compiled, in a real Chromium: equal answers."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import orjson
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Page

from identify.core.assess import assess
from identify.core.belief import believe, prepare
from identify.core.claim import judge
from identify.core.claim_words import read_claim
from identify.core.joining import join
from identify.core.look_up import find
from identify.core.narrowing import narrowed, settled
from identify.core.reasons import why_not
from identify.core.seen import seen_years
from identify.core.session import answered, mend, new_session, problem, undone, without
from tests.browser.engines import agree, compiled
from tests.sampling import sample
from tests.strategies import answers, packs, sessions

RECORDED = Path(__file__).with_name("recorded.json")
BOUND = {
    "assess": assess, "believe": believe, "find": find, "why_not": why_not, "mend": mend,
    "problem": problem, "new_session": new_session, "read_claim": read_claim, "judge": judge,
    "seen_years": seen_years,
}  # fmt: skip
FREE = {"answered": answered, "undone": undone, "without": without}


@pytest.fixture(scope="module")
def page(browser) -> Iterator[Page]:
    with compiled(browser) as page:
        yield page


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


# 2,000 sessions with --full, each asked for everything the screens use
@pytest.mark.heavy
@settings(max_examples=sample(2000, 200), deadline=None, suppress_health_check=list(HealthCheck))
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
        BOUND,
        FREE,
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
            ["seen_years", session],
        ],
    )


def prefixes(recorded: list[dict[str, Any]]) -> Iterator[dict[str, Any]]:
    """Every session as it stood after each of its answers."""
    for session in recorded:
        for count in range(len(session["answers"]) + 1):
            yield {**session, "answers": session["answers"][:count]}


def test_recorded_sessions(page, pellmarsh):
    """Twelve pieces of the demo pack, step by step: kinds, numbers, tools, slips and doubts."""
    pack = pellmarsh["pack"]
    fresh = new_session(pellmarsh)
    found = [fresh | s for s in prefixes(orjson.loads(RECORDED.read_bytes()))]
    for session in found:
        assert mend(pellmarsh, session)["dropped"] == [], "the demo pack still knows every answer"
    asked: list[list[Any]] = []
    for session in found:
        asked += [
            ["assess", session],
            ["judge", session, ANY_YEARS | {"first": 1956, "last": 1959}],
            ["seen_years", session],
        ]
        leader = assess(pellmarsh, session)["variants"][:2][-1]["variant"]
        asked.append(["why_not", session, leader])
    asked += [["find", item["number"], 8] for item in pack["items"]]
    asked += [["find", item["name"][1:], 8] for item in pack["items"]]
    agree(page, pack, BOUND, FREE, asked)


def test_several_packs_as_one(page, site):
    """Both demo packs joined by either engine, asked, settled, and carried over to one of them."""
    both = [orjson.loads(site[f"packs/{name}.json"]) for name in ("pellmarsh", "tarrowby")]
    joined = join(both)
    session = new_session(prepare(joined))
    asked: list[list[Any]] = [["join", both], ["assess", session], ["settled", session]]
    told = [("kind", "wagon"), ("gauge", "gauge_tarrowby"), ("tarrowby_main_colour", "green")]
    for feature, state in told:
        answer = {"feature": feature, "how": "sure", "states": [state]}
        session = answered(session, answer)
        asked += [["assess", session], ["settled", session], ["why_not", session, 300]]
    agree(page, joined, {**BOUND, "settled": settled}, {"join": join}, asked)
    agree(page, both[1], {"narrowed": narrowed}, {}, [["narrowed", session]])
