"""A peer to compare with: scikit-learn's categorical naive Bayes and its mutual information.

It knows neither swapped parts nor issues: each row is a class of its own. Its tables are filled in
from the pack, since fitting makes a square table of all classes, which no machine here can hold.
"""

import statistics
import time
from typing import Any

import numpy as np
from sklearn.metrics import mutual_info_score
from sklearn.naive_bayes import CategoricalNB

from identify.core.types.pack import Pack

UNITS = 10**9  # mutual_info_score counts in whole numbers, and multiplies two of them


def with_peer(pack: Pack, channels: list[Any], answers: list[list[list[int]]]) -> float:
    """Median milliseconds of predict_proba and of the mutual information of every question left.

    channels: P(sure answer | state) by feature. answers: of each session, [feature, state].
    """
    logs = []
    for place, cells in enumerate(pack["cells"]):
        channel = np.array(channels[place])
        backgrounds = np.array(pack["backgrounds"][place])
        by_code = np.array([shares or [0.0] * len(channel) for shares in cells["shares"]])
        codes = np.array(cells["codes"])
        known = by_code[codes]
        known[codes == 0] = backgrounds[np.array(pack["rows"]["kind"])][codes == 0]
        logs.append(np.log(known @ channel.T))
    rows = len(pack["rows"]["kind"])
    peer = CategoricalNB()
    peer.classes_ = np.arange(rows)
    peer.class_count_ = np.ones(rows)
    peer.class_log_prior_ = np.log(np.array(pack["rows"]["prior"]))
    took = []
    for told in answers:
        began = time.perf_counter()
        places = [place for place, _ in told]
        peer.feature_log_prob_ = [logs[place] for place in places]
        peer.n_features_in_ = len(places)
        peer.n_categories_ = np.array([log.shape[1] for log in peer.feature_log_prob_], dtype=int)
        chances = np.exp(peer.class_log_prior_)
        if told:
            chances = peer.predict_proba(np.array([[state for _, state in told]]))[0]
        for place, log in enumerate(logs):
            if place not in places:
                table = np.rint(chances[:, None] * np.exp(log) * UNITS).astype(np.int64)
                mutual_info_score(None, None, contingency=table)
        took.append(1000 * (time.perf_counter() - began))
    return statistics.median(took)
