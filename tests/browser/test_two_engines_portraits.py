"""Portraits, rings and differences, in Python and compiled, in a real Chromium: equal answers."""

import random
from collections.abc import Iterator
from typing import Any

import msgspec
import pytest
from playwright.sync_api import Page

from identify.core.belief import prepare
from identify.core.pictures import pictures
from identify.core.portraits import differences, portrait, sitting
from identify.core.rings import odd_rings, rings
from identify.core.session import answered, new_session
from identify.lab.pieces import piece
from tests.browser.engines import agree, compiled
from tests.kept_site import compiled_demo_packs
from tests.sampling import sample

PACKS = compiled_demo_packs()
FREE = {"sitting": sitting, "portrait": portrait, "differences": differences}


@pytest.fixture(scope="module")
def page(browser) -> Iterator[Page]:
    with compiled(browser) as page:
        yield page


def unsaid(pack: dict[str, Any]) -> dict[str, Any]:
    """The range as one would be that says nothing of portraits."""
    plain = msgspec.json.decode(msgspec.json.encode(pack))
    for feature in plain["features"]:
        feature.pop("layer", None)
        feature.pop("unseen", None)
        for state in feature["states"]:
            state.pop("look", None)
    return plain


@pytest.mark.heavy
@pytest.mark.parametrize("name", PACKS)
@pytest.mark.parametrize("said", [True, False])
def test_portraits(page, name, said):
    pack = PACKS[name] if said else unsaid(PACKS[name])
    shown = sitting(pack)
    rng = random.Random(5)
    asked: list[list[Any]] = [["sitting", pack]]
    count = len(pack["variants"])
    for place in range(0, count, sample(1, 7)):
        found = piece(rng, pack)
        answers = [
            {"feature": feature, "how": "sure", "states": [state]}
            for feature, state in list(found.states.items())[:6]
        ]
        other = rng.randrange(count)
        asked.append(["portrait", pack, shown, [place], []])
        asked.append(["portrait", pack, shown, [place, other], answers])
        asked.append(["differences", pack, shown, [place], [other], answers])
    agree(page, pack, {}, FREE, asked)


@pytest.mark.heavy
@pytest.mark.parametrize("name", PACKS)
def test_rings(page, name):
    pack = PACKS[name]
    engine = prepare(pack)
    shown = sitting(pack)
    asked: list[list[Any]] = []
    for seed in range(sample(30, 6)):
        found = piece(random.Random(seed), pack)
        session = new_session(engine)
        features = list(found.states.items())
        random.Random(seed).shuffle(features)
        for feature, state in features[:9]:
            session = answered(session, {"feature": feature, "how": "sure", "states": [state]})
            asked.append(["rings", shown, session])
            asked.append(["odd_rings", shown, session])
            asked.append(["pictures", shown, session, seed % len(pack["features"])])
    choices = {"rings": rings, "odd_rings": odd_rings, "pictures": pictures}
    agree(page, pack, choices, {}, asked)
