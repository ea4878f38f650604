"""The engine on the Soybean table: noisy, with gaps, in ten folds.

Source: R. S. Michalski and R. L. Chilausky, "Soybean (Large)", UCI Machine Learning Repository,
1980 (CC BY 4.0).
"""

from collections import Counter
from typing import Any

import pytest
from sklearn.model_selection import KFold
from sklearn.naive_bayes import CategoricalNB

from identify.core.asking import questions
from identify.core.belief import believe, prepare_with
from identify.core.focus import by_variant
from identify.core.lists import largest
from identify.core.session import answered, new_session
from tests.outside.data import read
from tests.table_packs import EXACT, table_pack

pytestmark = pytest.mark.heavy

ROWS = read("soybean.csv")
FEATURES = [name for name in ROWS[0] if name != "class"]
STATES = {n: sorted({row[n] for row in ROWS if row[n] != ""}) for n in FEATURES}
IDS = {n: [f"s{s}" for s in STATES[n]] for n in FEATURES}
CLASSES = sorted({row["class"] for row in ROWS})
SMOOTHING = 0.5


def trained(rows: list[dict[str, str]]) -> dict[str, Any]:
    """One row a disease: shares of each state among its plants, 0.5 added to each count."""
    shares = []
    for name in CLASSES:
        members = [row for row in rows if row["class"] == name]
        disease = {}
        for n in FEATURES:
            found = Counter(m[n] for m in members if m[n] != "")
            whole = sum(found.values()) + SMOOTHING * len(STATES[n])
            disease[n] = [(found[s] + SMOOTHING) / whole for s in STATES[n]]
        shares.append(disease)
    priors = [sum(row["class"] == name for row in rows) / len(rows) for name in CLASSES]
    return prepare_with(table_pack(IDS, shares, priors), EXACT)


def told(name: str, value: str) -> dict[str, Any]:
    if value == "":
        return {"feature": name, "how": "cannot", "states": []}
    return {"feature": name, "how": "sure", "states": [f"s{value}"]}


def folds():
    labels = [row["class"] for row in ROWS]
    split = KFold(10, shuffle=True, random_state=1)
    for train, test in split.split(labels):
        yield [ROWS[i] for i in train], [ROWS[i] for i in test]


def test_posterior_equals_naive_bayes_where_all_is_known():
    """scikit-learn's CategoricalNB on the plants without gaps, to 1e-9."""
    whole = [row for row in ROWS if all(row[n] != "" for n in FEATURES)]
    present = sorted({row["class"] for row in whole})
    coded = [[STATES[n].index(row[n]) for n in FEATURES] for row in whole]
    model = CategoricalNB(alpha=SMOOTHING, min_categories=[len(STATES[n]) for n in FEATURES])
    model.fit(coded, [row["class"] for row in whole])
    theirs = model.predict_proba(coded)
    engine = trained(whole)
    for row, chances in zip(whole, theirs, strict=True):
        session = new_session(engine)
        for n in FEATURES:
            session = answered(session, told(n, row[n]))
        ours = dict(zip(CLASSES, believe(engine, session)["chances"], strict=True))
        assert [ours[name] for name in present] == pytest.approx(list(chances), abs=1e-9)


def test_ten_folds(capsys):
    """Greedy questions, stop at 0.95: at least 93 % right in at most 8.2 questions on average."""
    right = asked = 0
    for train, test in folds():
        engine = trained(train)
        for row in test:
            session = new_session(engine)
            count = 0
            while True:
                state = believe(engine, session)
                best = questions(engine, session, state, by_variant(state))["open"]
                if max(state["chances"]) >= 0.95 or not best:
                    break
                name = FEATURES[best[0]["feature"]]
                session = answered(session, told(name, row[name]))
                count += 1
            asked += count
            guess = CLASSES[state["rows"][largest(state["chances"])]]
            right += guess == row["class"]
    with capsys.disabled():
        print(f"\nSoybean: {right / len(ROWS):.1%} right in {asked / len(ROWS):.2f} questions")
    assert right / len(ROWS) >= 0.93
    assert asked / len(ROWS) <= 8.2
