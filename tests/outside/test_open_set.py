"""“In no range” on two published tables with whole classes left out, beside scikit-learn's methods.

Each class in turn (each third of them without --full) is in no reference. The rest is parted in
four: learned from three, asked of one. The score of every plant and animal, of the class left out
and of those asked, is held against whether it was left out: the area under the curve of Hanley and
McNeil 1982, with their standard error.

Sources: Zoo and Soybean as in test_zoo.py and test_soybean.py. The other methods: Liu, Ting and
Zhou 2008 (isolation forest), Schölkopf and others 2001 (one-class support vectors), and 1 minus the
largest chance of a naive Bayes (Hendrycks and Gimpel 2017 name it as the plain rule), all by
scikit-learn as it comes.
"""

from collections import Counter
from math import sqrt
from typing import Any

import numpy as np
import pytest
from sklearn.ensemble import IsolationForest
from sklearn.metrics import roc_auc_score
from sklearn.model_selection import StratifiedKFold
from sklearn.naive_bayes import CategoricalNB
from sklearn.preprocessing import OneHotEncoder
from sklearn.svm import OneClassSVM

from identify.core.belief import believe, prepare_with
from identify.core.lists import total
from identify.core.ranges.relatives import learn_relatives
from identify.core.session import answered, new_session
from tests.outside.data import read
from tests.sampling import sample
from tests.table_packs import table_pack

RATES = {"sure": 0.03, "twice": 0.01, "unsure": 0.25, "unrecorded": 1.0, "drawn_all": 1.0}
SMOOTHING = 0.5
FOLDS = 4  # the smallest class has as many
TABLES = {"Zoo": ("zoo.csv", "type", ("animal",)), "Soybean": ("soybean.csv", "class", ())}
Row = dict[str, str]


def shares_of(rows: list[Row], names: dict[str, list[str]]) -> dict[str, list[float]]:
    """The share of each state among these rows, SMOOTHING added to each count."""
    out = {}
    for name, states in names.items():
        counts = Counter(row[name] for row in rows if row[name] != "")
        whole = counts.total() + SMOOTHING * len(states)
        out[name] = [(counts[state] + SMOOTHING) / whole for state in states]
    return out


def own_scores(train: list[Row], asked: list[Row], label: str, names: dict[str, list[str]]):
    """The chance of “in no range” of each row that is asked, all its values told."""
    classes = sorted({row[label] for row in train})
    members = [[row for row in train if row[label] == one] for one in classes]
    ids = {name: [f"s{state}" for state in states] for name, states in names.items()}
    pack: Any = table_pack(
        ids, [shares_of(rows, names) for rows in members], [len(r) / len(train) for r in members]
    )
    pack["kinds"][0]["open"] = 0.12
    learn_relatives(pack)
    engine = prepare_with(pack, RATES)
    scores = []
    for row in asked:
        session = new_session(engine)
        for name in names:
            if row[name] != "":
                told = {"feature": name, "how": "sure", "states": [f"s{row[name]}"]}
                session = answered(session, told)
        scores.append(total(believe(engine, session)["unrecorded"]))
    return scores


def their_scores(train: list[Row], asked: list[Row], label: str, names: dict[str, list[str]]):
    """The same by scikit-learn's methods; what is not known is a value of its own."""

    def table(rows: list[Row]) -> list[list[str]]:
        return [[row[name] for name in names] for row in rows]

    hot = OneHotEncoder(handle_unknown="ignore", sparse_output=False).fit(table(train))
    known, met = hot.transform(table(train)), hot.transform(table(asked))
    forest = IsolationForest(random_state=0).fit(known)
    vectors = OneClassSVM().fit(known)

    def coded(rows: list[Row]) -> list[list[int]]:
        return [[["", *names[n]].index(row[n]) for n in names] for row in rows]

    bayes = CategoricalNB(alpha=SMOOTHING, min_categories=[len(s) + 1 for s in names.values()])
    bayes.fit(coded(train), [row[label] for row in train])
    return {
        "isolation forest": list(-forest.score_samples(met)),
        "one-class vectors": list(-vectors.score_samples(met)),
        "largest chance": list(1 - bayes.predict_proba(coded(asked)).max(axis=1)),
    }


def standard_error(area: float, positive: int, negative: int) -> float:
    """Of an area under the curve (Hanley and McNeil 1982, from memory)."""
    q1, q2 = area / (2 - area), 2 * area * area / (1 + area)
    spread = area * (1 - area)
    spread += (positive - 1) * (q1 - area**2) + (negative - 1) * (q2 - area**2)
    return sqrt(spread / (positive * negative))


@pytest.mark.heavy
@pytest.mark.parametrize("name", TABLES)
def test_what_is_in_no_range_is_told_from_what_is(name: str, capsys: pytest.CaptureFixture[str]):
    file, label, besides = TABLES[name]
    rows = read(file)
    names = {
        n: sorted({row[n] for row in rows if row[n] != ""})
        for n in rows[0]
        if n not in (label, *besides)
    }
    areas: dict[str, list[float]] = {}
    weights, errors = [], []
    for left in sorted({row[label] for row in rows})[:: sample(1, 3)]:
        out = [row for row in rows if row[label] == left]
        rest = [row for row in rows if row[label] != left]
        scores: dict[str, list[float]] = {}
        truth: list[int] = []
        split = StratifiedKFold(FOLDS, shuffle=True, random_state=1)
        for fold, (train, test) in enumerate(split.split(rest, [row[label] for row in rest])):
            asked = [rest[i] for i in test] + out[fold::FOLDS]
            truth += [0] * len(test) + [1] * len(out[fold::FOLDS])
            learned = [rest[i] for i in train]
            every = {"ours": own_scores(learned, asked, label, names)}
            every |= their_scores(learned, asked, label, names)
            for method, values in every.items():
                scores.setdefault(method, []).extend(values)
        for method, values in scores.items():
            areas.setdefault(method, []).append(float(roc_auc_score(truth, values)))
        weights.append(len(out))
        errors.append(standard_error(areas["ours"][-1], len(out), len(rest)))
    means = {m: float(np.average(values, weights=weights)) for m, values in areas.items()}
    shares = np.array(weights) / sum(weights)
    spread = 1.96 * sqrt(float(((shares * np.array(errors)) ** 2).sum()))
    with capsys.disabled():
        told = ", ".join(f"{method} {mean:.3f}" for method, mean in means.items())
        print(f"\n{name}, area under the curve of “in no range” (ours +- {spread:.3f}): {told}")
    assert means["ours"] > max(v for m, v in means.items() if m != "ours") - spread
