"""What a device does with what it wrote and with what it hears; the rest is in tests/sync/."""

from hypothesis import given, settings
from hypothesis import strategies as st

from identify.core.syncing import figures, forked, mark_of, met, pulled, sealed

STATE = {
    "device": "da", "n": 0, "clock": {"wall": 0, "count": 0}, "epoch": "e", "after": 3, "last": "t",
    "round": 1,
}  # fmt: skip


@settings(deadline=None)
@given(st.integers(1, 2**53))
def test_figures(number):
    assert figures(number) == str(number)


@settings(deadline=None)
@given(st.lists(st.tuples(st.sampled_from("abc"), st.integers(0, 9)), max_size=12))
def test_sealing_gives_one_chain_a_record_and_clocks_that_rise(entries):
    heads = [{"record": "ra", "heads": ["dz.2", "dy.10"]}]
    asked = [{"record": f"r{letter}", "time": time} for letter, time in entries]
    made = sealed(STATE, asked, heads)
    assert [op["id"] for op in made["ops"]] == [f"da.{n}" for n in range(1, len(entries) + 1)]
    ends = {"ra": ["dy.10", "dz.2"]}
    for entry, op in zip(asked, made["ops"], strict=True):
        assert op["parents"] == ends.get(entry["record"], [])
        assert op["wall"] >= entry["time"]
        ends[entry["record"]] = [op["id"]]
    clocks = [(op["wall"], op["count"]) for op in made["ops"]]
    assert clocks == sorted(set(clocks))
    touched = {entry["record"] for entry in asked}
    assert {row["record"]: row["heads"] for row in made["heads"]} == {r: ends[r] for r in touched}
    assert made["n"] == len(entries)


def test_what_begins_from_the_beginning_makes_nothing_count_as_held():
    same = {"epoch": "e", "from_start": False, "after": 9, "last": "u"}
    assert mark_of(STATE | pulled(STATE, same)) == mark_of(STATE)
    assert mark_of(STATE | pulled(STATE, {**same, "from_start": True})) != mark_of(STATE)


def test_only_own_operations_that_are_not_known_mean_a_copy():
    def heard(ident, here):
        return {"id": ident, "device": ident[:2], "wall": 5, "count": 1, "here": here}

    found = met(STATE, [heard("db.1", ""), heard("da.1", "same")], 2)
    assert (found["take"], found["known"], found["fork"]) == ([0], [1], False)
    assert (found["clock"]["wall"], found["clock"]["count"]) == (5, 2)
    assert met(STATE, [heard("da.7", "")], 2)["fork"]
    found = met(STATE, [heard("db.1", "other")], 2)
    assert (found["take"], found["moved"], found["fork"]) == ([0], ["db.1"], True)


def test_at_a_fork_others_keep_what_they_know():
    def op(ident, held="", parents=()):
        return {"id": ident, "device": ident[:2], "held": held, "parents": list(parents)}

    ops = [
        op("da.1", "an older mark"),
        op("da.2", "", ["da.1"]),
        op("db.4", mark_of(STATE), ["da.2"]),
        op("db.5", "", ["da.2"]),
        op("dc.1", "", ["db.4"]),
    ]
    made = forked(STATE, "dn", ops, [])
    assert [(one["place"], one["id"], one["parents"]) for one in made["ops"]] == [
        (1, "dn.1", ["da.1"]),
        (3, "dn.2", ["dn.1"]),
    ]
    assert (made["device"], made["n"], made["after"], made["last"]) == ("dn", 2, 0, "")
    made = forked(STATE, "dn", ops, ["da.1", "db.4"])
    assert [one["place"] for one in made["ops"]] == [0, 1, 2, 3, 4]
