"""The engine on the Zoo table, against published data and general-purpose libraries.

Source: R. S. Forsyth, "Zoo", UCI Machine Learning Repository, 1990 (CC BY 4.0).
"""

import heapq
from collections import Counter
from typing import Any

import numpy as np
import pytest
from scipy.stats import entropy as scipy_entropy
from sklearn.naive_bayes import CategoricalNB
from sklearn.preprocessing import OneHotEncoder
from sklearn.tree import DecisionTreeClassifier

from identify.core.asking import questions
from identify.core.belief import believe, prepare_with
from identify.core.focus import by_variant, focus
from identify.core.session import answered, new_session
from identify.core.worth import entropy, worth
from tests.outside.data import read
from tests.table_packs import EXACT, sharp, table_pack

ROWS = read("zoo.csv")
FEATURES = [name for name in ROWS[0] if name not in ("animal", "type")]
STATES = {name: sorted({row[name] for row in ROWS}) for name in FEATURES}
IDS = {name: [f"s{value}" for value in STATES[name]] for name in FEATURES}


def told(name: str, value: str) -> dict[str, Any]:
    return {"feature": name, "how": "sure", "states": [f"s{value}"]}


@pytest.fixture(scope="module")
def animals() -> Counter[tuple[str, ...]]:
    """The different rows of features, and how many animals have each."""
    return Counter(tuple(row[name] for name in FEATURES) for row in ROWS)


@pytest.fixture(scope="module")
def engine(animals: Counter[tuple[str, ...]]) -> dict[str, Any]:
    rows = [
        {n: sharp(STATES[n], value) for n, value in zip(FEATURES, animal, strict=True)}
        for animal in animals
    ]
    priors = [count / len(ROWS) for count in animals.values()]
    return prepare_with(table_pack(IDS, rows, priors), EXACT)


def test_there_are_as_many_different_animals_as_published(animals):
    assert (len(ROWS), len(animals)) == (101, 59)
    assert entropy([c / 101 for c in animals.values()]) == pytest.approx(5.516, abs=5e-4)


def test_entropy_equals_scipy(animals):
    counts = list(animals.values())
    assert entropy([c / 101 for c in counts]) == pytest.approx(
        scipy_entropy(counts, base=2), abs=1e-12
    )


def test_every_question_is_worth_the_mutual_information_that_scipy_gives(engine):
    """I(O;A) = H(O) + H(A) - H(O,A) with scipy.stats.entropy, from the counts of the table."""
    session = new_session(engine)
    state = believe(engine, session)
    outcome = ["".join(row[n] for n in FEATURES) for row in ROWS]
    focused = focus(state, by_variant(state))
    for place, name in enumerate(FEATURES):
        ours = worth(engine, state, focused, place)["bits"]
        answers = [row[name] for row in ROWS]

        def h(values):
            return scipy_entropy(list(Counter(values).values()), base=2)

        theirs = h(outcome) + h(answers) - h(zip(outcome, answers, strict=True))
        assert ours == pytest.approx(theirs, abs=1e-9)


def questions_needed(engine: dict[str, Any], animal: tuple[str, ...]) -> int:
    values = dict(zip(FEATURES, animal, strict=True))
    session = new_session(engine)
    count = 0
    while True:
        state = believe(engine, session)
        best = questions(engine, session, state, by_variant(state))["open"]
        if not best:
            assert max(state["chances"]) == pytest.approx(1.0)
            return count
        name = FEATURES[best[0]["feature"]]
        session = answered(session, told(name, values[name]))
        count += 1


def huffman(counts: list[int]) -> float:
    """Mean code length of a Huffman code (Huffman 1952), the least that yes/no questions can do."""
    heap = list(counts)
    heapq.heapify(heap)
    length = 0
    while len(heap) > 1:
        merged = heapq.heappop(heap) + heapq.heappop(heap)
        length += merged
        heapq.heappush(heap, merged)
    return length / sum(counts)


@pytest.mark.filterwarnings("ignore:The number of unique classes")  # that is the job here
def test_few_questions_are_needed(engine, animals, capsys):
    ours = sum(questions_needed(engine, a) * c for a, c in animals.items()) / len(ROWS)
    table = np.array([[row[n] for n in FEATURES] for row in ROWS])
    hot = OneHotEncoder().fit_transform(table).toarray()
    names = [list(animals).index(tuple(row)) for row in table]
    tree = DecisionTreeClassifier(criterion="entropy", random_state=0).fit(hot, names)
    theirs = np.asarray(tree.decision_path(hot).sum(axis=1)).mean() - 1
    bound = huffman(list(animals.values()))
    with capsys.disabled():
        print(f"\nZoo: {ours:.3f} questions; Huffman {bound:.3f}; entropy tree {theirs:.3f}")
    assert ours <= 4.95
    assert bound == pytest.approx(5.564, abs=5e-4)
    assert ours < theirs


def test_posterior_equals_naive_bayes(animals):
    """scikit-learn's CategoricalNB of the type of animal, with 1 added to each count."""
    kinds = sorted({row["type"] for row in ROWS})
    coded = np.array([[STATES[n].index(row[n]) for n in FEATURES] for row in ROWS])
    wanted = [kinds.index(row["type"]) for row in ROWS]
    model = CategoricalNB(alpha=1.0, min_categories=[len(STATES[n]) for n in FEATURES])
    model.fit(coded, wanted)
    theirs = model.predict_proba(coded)
    rows = []
    for kind in kinds:
        members = [row for row in ROWS if row["type"] == kind]
        row = {}
        for n in FEATURES:
            found = Counter(m[n] for m in members)
            whole = len(members) + len(STATES[n])
            row[n] = [(found[s] + 1.0) / whole for s in STATES[n]]
        rows.append(row)
    priors = [sum(row["type"] == kind for row in ROWS) / len(ROWS) for kind in kinds]
    engine = prepare_with(table_pack(IDS, rows, priors), EXACT)
    for row, chances in zip(ROWS, theirs, strict=True):
        session = new_session(engine)
        for n in FEATURES:
            session = answered(session, told(n, row[n]))
        assert believe(engine, session)["chances"] == pytest.approx(list(chances), abs=1e-9)
