"""The lab, and packs made from plain tables, on open data, against published figures.

Sources: R. S. Forsyth, "Zoo", and R. S. Michalski and R. L. Chilausky, "Soybean (Large)", UCI
Machine Learning Repository, 1990 and 1980 (CC BY 4.0). Entropy tree: scikit-learn.
"""

import csv
import io
import random
from pathlib import Path
from typing import Any

import msgspec
import numpy as np
import pytest
from sklearn.model_selection import KFold
from sklearn.preprocessing import OneHotEncoder
from sklearn.tree import DecisionTreeClassifier

from identify.core.asking import questions
from identify.core.belief import believe, prepare_with
from identify.core.focus import by_variant
from identify.core.lists import largest
from identify.core.session import answered, new_session
from identify.lab.measuring import measure
from identify.lab.report import summary
from identify.lab.trials import Asker, mean, trials
from identify.reference.plain_tables import table_pack
from tests.outside.data import OUTSIDE, read
from tests.sampling import sample
from tests.table_packs import EXACT

pytestmark = pytest.mark.heavy


@pytest.mark.filterwarnings("ignore:The number of unique classes")  # that is the job here
def test_zoo_needs_fewer_questions_than_an_entropy_tree():
    """Published with the table: 59 different animals, 5.516 bits, Huffman 5.564, tree 5.832."""
    pack, same = table_pack(OUTSIDE / "zoo.csv", "animal", ["type"])
    assert same == []
    found = measure(pack, 101, 1, io.StringIO())
    rows = read("zoo.csv")
    values = [[row[n] for n in row if n not in ("animal", "type")] for row in rows]
    hot = OneHotEncoder().fit_transform(np.array(values)).toarray()
    kinds = [values.index(each) for each in values]
    tree = DecisionTreeClassifier(criterion="entropy", random_state=0).fit(hot, kinds)
    theirs = np.asarray(tree.decision_path(hot).sum(axis=1)).mean() - 1
    ours = mean(len(trial.asked) for trial in found.scenarios[0].best)
    assert found.bits == pytest.approx(5.516, abs=5e-4)
    assert found.huffman_two == pytest.approx(5.564, abs=5e-4)
    assert theirs == pytest.approx(5.832, abs=0.05)
    assert found.huffman_most <= ours <= 4.95 < theirs
    assert ours < mean(len(trial.asked) for trial in found.scenarios[0].random)
    assert f"Perfect answers: {ours:.2f} questions" in "\n".join(summary(found))


def test_nothing_is_told_apart_that_the_table_gives_alike():
    """Animals with the same row are the pairs that the lab names, no more and no fewer."""
    pack, _ = table_pack(OUTSIDE / "zoo.csv", "animal", ["type"])
    found = measure(pack, 1, 1, io.StringIO())
    rows = [[row[n] for n in row if n not in ("animal", "type")] for row in read("zoo.csv")]
    same = {(i, j) for j in range(len(rows)) for i in range(j) if rows[i] == rows[j]}
    assert {(pair.one, pair.other) for pair in found.alike} == same


def test_every_animal_ends_among_its_likes():
    pack = msgspec.to_builtins(table_pack(OUTSIDE / "zoo.csv", "animal", ["type"])[0])
    exact = prepare_with(pack, EXACT)
    done = trials(random.Random(1), Asker(exact), exact, 101, lambda: None)
    likes: dict[str, int] = {}
    for row in read("zoo.csv"):
        key = str([row[n] for n in row if n not in ("animal", "type")])
        likes[key] = likes.get(key, 0) + 1
    assert max(trial.place for trial in done) <= max(likes.values())


def _disease(engine: dict[str, Any], row: dict[str, str]) -> tuple[str, int]:
    """The disease that the engine ends with, and how many questions it took."""
    pack = engine["pack"]
    session = new_session(engine)
    while True:
        state = believe(engine, session)
        best = questions(engine, session, state, by_variant(state))["open"]
        if max(state["chances"]) >= 0.95 or not best:
            guess = state["rows"][largest(state["chances"])]
            return pack["items"][guess]["number"], len(session["answers"])
        feature = pack["features"][best[0]["feature"]]
        value = row[feature["where"].split('"')[1]]
        states = [state["id"] for state in feature["states"] if state["name"] == value]
        how = "sure" if states else "cannot"
        session = answered(session, {"feature": feature["id"], "how": how, "states": states})


def _written(path: Path, rows: list[dict[str, str]]) -> Path:
    with path.open("w", encoding="utf-8", newline="") as file:
        table = csv.DictWriter(file, list(rows[0]))
        table.writeheader()
        table.writerows(rows)
    return path


def test_soybean_as_a_plain_table_in_folds(tmp_path, capsys):
    """As many right, with as few questions, as where the shares are worked out by hand."""
    rows = read("soybean.csv")
    right = asked = 0
    folds = list(KFold(10, shuffle=True, random_state=1).split(rows))[: sample(10, 3)]
    for train, test in folds:
        path = _written(tmp_path / "soybean.csv", [rows[i] for i in train])
        engine = prepare_with(msgspec.to_builtins(table_pack(path, "class", [])[0]), EXACT)
        for i in test:
            guess, questions = _disease(engine, rows[i])
            right += guess == rows[i]["class"]
            asked += questions
    count = sum(len(test) for _, test in folds)
    with capsys.disabled():
        print(
            f"\nSoybean table: {right / count:.1%} right in {asked / count:.2f} questions ({count})"
        )
    assert right / count >= 0.93
    assert asked / count <= 8.2
