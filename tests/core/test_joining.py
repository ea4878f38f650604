"""Several packs searched as one."""

from typing import Any

import pytest

from identify.core.assess import assess
from identify.core.belief import believe, prepare
from identify.core.joining import join
from identify.core.narrowing import narrowed, settled
from identify.core.session import answered, new_session, problem
from tests.kept_site import compiled_demo_packs


def told(feature: str, state: str) -> dict[str, Any]:
    return {"feature": feature, "how": "sure", "states": [state]}


@pytest.fixture(scope="module")
def packs() -> list[dict[str, Any]]:
    return list(compiled_demo_packs().values())


@pytest.fixture(scope="module")
def engine(packs) -> dict[str, Any]:
    return prepare(join(packs))


def test_everything_of_each_pack_is_there_and_adds_up(packs, engine):
    joined = engine["pack"]
    for key in ("items", "variants", "kinds", "parts", "sources", "changes", "spans"):
        assert len(joined[key]) == sum(len(pack[key]) for pack in packs)
    rows = len(joined["rows"]["variant"])
    assert sum(joined["rows"]["prior"]) == pytest.approx(1)
    for feature, cells, kinds in zip(
        joined["features"], joined["cells"], joined["backgrounds"], strict=True
    ):
        assert len(cells["codes"]) == rows
        for shares in [*cells["shares"][1:], *kinds]:
            assert len(shares) == len(feature["states"])
            assert sum(shares) == pytest.approx(1)
        assert all(state["drawing"] in joined["drawings"] for state in feature["states"])
    for change in joined["changes"]:
        states = joined["features"][change["feature"]]["states"]
        assert change["state"] < len(states)
    ids = [feature["id"] for feature in joined["features"]]
    assert len(ids) == len(set(ids))
    assert ids[:3] == ["kind", "gauge", "material"]


def test_gauge_or_material_comes_first(engine):
    view = assess(engine, new_session(engine))
    assert engine["pack"]["features"][view["question"]["feature"]]["id"] in ("gauge", "material")


def test_one_answer_leaves_one_pack_and_the_session_goes_on_in_it(packs, engine):
    session = new_session(engine)
    assert settled(engine, session) == ""
    session = answered(session, told("material", "material_tarrowby"))
    session = answered(session, told("gauge", "gauge_tarrowby"))
    session = answered(session, told("kind", "wagon"))
    session = answered(session, told("tarrowby_main_colour", "green"))
    session["missing"] = ["tarrowby_box", "pellmarsh_box"]
    session["able"] = ["loupe"]
    assert settled(engine, session) == "tarrowby"
    alone = prepare(next(pack for pack in packs if pack["id"] == "tarrowby"))
    kept = narrowed(alone, session)
    assert kept["answers"] == [told("kind", "wagon"), told("main_colour", "green")]
    assert (kept["missing"], kept["able"]) == (["box"], ["loupe"])
    assert all(problem(alone, answer) == "" for answer in kept["answers"])


def test_within_one_pack_the_joined_engine_says_the_same(packs, engine):
    """With gauge and material settled, the chances are those of the pack alone, to a few parts in
    a hundred (a kind of the other pack keeps a trace).
    """
    pack = next(pack for pack in packs if pack["id"] == "pellmarsh")
    alone = prepare(pack)
    one = answered(new_session(alone), told("kind", "coach"))
    both = answered(new_session(engine), told("kind", "coach"))
    both = answered(both, told("gauge", "gauge_pellmarsh"))
    both = answered(both, told("material", "material_pellmarsh"))
    one = answered(one, told("main_colour", "brown"))
    both = answered(both, told("pellmarsh_main_colour", "brown"))
    first = {
        pack["variants"][entry["variant"]]["id"]: entry["chance"]
        for entry in assess(alone, one)["variants"][:5]
    }
    second = {
        engine["pack"]["variants"][entry["variant"]]["id"]: entry["chance"]
        for entry in assess(engine, both)["variants"]
    }
    for name, chance in first.items():
        assert second[f"pellmarsh_{name}"] == pytest.approx(chance, rel=0.05)


def test_a_range_that_does_not_say_its_material_is_not_asked_for_it(packs):
    silent = {**packs[0], "range": {**packs[0]["range"], "material": ""}}
    joined = join([silent, packs[1]])
    assert [feature["id"] for feature in joined["features"][:2]] == ["kind", "gauge"]
    assert joined["features"][2]["id"] != "material"
    nothing = {**silent, "range": {**silent["range"], "gauge": ""}}
    assert join([nothing, packs[1]])["features"][1]["id"] not in ("gauge", "material")
    change = joined["changes"][0]
    assert joined["features"][change["feature"]]["id"].startswith(f"{packs[0]['id']}_")
    state = believe(prepare(joined), new_session(prepare(joined)))
    assert sum(state["chances"]) + sum(state["unrecorded"]) == pytest.approx(1)
