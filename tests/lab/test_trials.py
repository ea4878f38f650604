"""Sessions with drawn pieces: the lab asks and stops as the app does, and counts right."""

import random
from collections import Counter
from typing import Any

import pytest

from identify.core.assess import assess
from identify.core.belief import prepare_with
from identify.core.misreading import usual_errors
from identify.core.session import answered, new_session
from identify.lab.pieces import piece, read_by, rows_drawn
from identify.lab.trials import Asker, Shuffler, among, session_with, trials
from identify.reference.loading import load_engine
from tests.reference.small_pack import small_files, write
from tests.table_packs import EXACT, sharp, table_pack

pytestmark = pytest.mark.heavy

AB = ["a", "b"]


@pytest.fixture(scope="module")
def engine(tmp_path_factory) -> dict[str, Any]:
    folder = write(tmp_path_factory.mktemp("packs"), small_files())
    return load_engine(folder)


def four(priors: list[float]) -> dict[str, Any]:
    """Four things, told apart by two yes/no features."""
    rows = [{"x": sharp(AB, x), "y": sharp(AB, y)} for x in AB for y in AB]
    return table_pack({"x": AB, "y": AB}, rows, priors)


def test_rows_are_drawn_in_proportion():
    pack = four([0.5, 0.25, 0.125, 0.125])
    drawn = Counter(rows_drawn(random.Random(3), pack, 8))
    assert drawn == {0: 4, 1: 2, 2: 1, 3: 1}


def test_the_same_question_and_the_same_end_as_in_the_app(engine):
    rng = random.Random(5)
    asker = Asker(engine)
    for _ in range(12):
        session_with(rng, asker, engine, piece(rng, engine["pack"]))
    ends = set()
    for key, now in asker.known.items():
        session = new_session(engine)
        for said in key:
            feature, how, state, changed = said.split(" ")
            answer = {"feature": feature, "how": how, "states": [state]}
            again = {"changed": True} if changed == "True" else {}
            session = answered(session, answer | again)
        view = assess(engine, session)
        assert view["stop"] == now.stop
        assert now.stop or view["question"]["feature"] == now.question
        ends.add(now.stop)
    assert {"", "nothing"} <= ends, "so few features leave a fifth for what is in no range"


def test_perfect_answers_to_two_even_questions():
    exact = prepare_with(four([0.25] * 4), EXACT)
    done = trials(random.Random(1), Asker(exact), exact, 8, lambda: None)
    assert [len(trial.asked) for trial in done] == [2] * 8
    assert [trial.seconds for trial in done] == [2.0] * 8
    assert [trial.bits for trial in done] == pytest.approx([0.0] * 8)
    assert (among(done, 1), {trial.stop for trial in done}) == (1.0, {"sure"})


def test_a_random_order_skips_only_what_can_tell_nothing():
    rows = [{"x": sharp(AB, x), "same": sharp(AB, "a")} for x in AB]
    exact = prepare_with(table_pack({"same": AB, "x": AB}, rows, [0.5, 0.5]), EXACT)
    asked = set()
    for seed in range(10):
        rng = random.Random(seed)
        trial = session_with(rng, Shuffler(exact, rng), exact, piece(rng, exact["pack"]))
        asked.add(tuple(trial.asked))
    assert asked == {(1,)}
    even = prepare_with(four([0.25] * 4), EXACT)
    orders = set()
    for seed in range(20):
        rng = random.Random(seed)
        trial = session_with(rng, Shuffler(even, rng), even, piece(rng, even["pack"]))
        orders.add(tuple(trial.asked))
    assert orders == {(0, 1), (1, 0)}


def test_a_random_order_stops_where_the_app_stops(engine):
    ends = set()
    for seed in range(12):
        rng = random.Random(seed)
        shuffler, drawn = Shuffler(engine, rng), piece(rng, engine["pack"])
        session, now = new_session(engine), None
        while now is None or not now.stop:
            now = shuffler.standing(session)
            assert now.stop == assess(engine, session)["stop"]
            if not now.stop:
                seen = drawn.states[engine["pack"]["features"][now.question]["id"]]
                session = answered(session, read_by(rng, engine, now.question, seen))
        ends.add(now.stop)
    assert "nothing" in ends, "some are worth less, all together, than a look"


def test_misread_answers_make_mistakes(engine):
    """A person who is wrong half of the time is seldom right at the end."""
    blind = prepare_with(engine["pack"], {**usual_errors(), "sure": 0.6, "unsure": 0.6})
    clear = trials(random.Random(2), Asker(engine), engine, 40, lambda: None)
    dim = trials(random.Random(2), Asker(engine), blind, 40, lambda: None)
    assert among(dim, 1) < among(clear, 1) - 0.2
