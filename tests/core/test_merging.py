"""Merging against an oracle with sets, written from the published definition.

Shapiro, Preguica, Baquero, Zawirski, "A comprehensive study of Convergent and Commutative
Replicated Data Types", INRIA RR-7506 (2011): the values of a multi-value register
are those of the writes that no other write has seen. Trash and deletion are this project's rules
(identify/keeping/README.md), read here a second time.
"""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from identify.core.merging import merged
from tests.strategies import operation_sets

Op = dict[str, Any]


def ancestors(ops: dict[str, Op]) -> dict[str, set[str]]:
    """The transitive closure, by repeating until nothing is added."""
    above = {i: set(op["parents"]) & set(ops) for i, op in ops.items()}
    while True:
        wider = {i: known.union(*(above[j] for j in known)) for i, known in above.items()}
        if wider == above:
            return above
        above = wider


def oracle(listed: list[Op]) -> dict[str, Any]:
    ops = {op["id"]: op for op in listed}
    above = ancestors(ops)
    wrote = {i: dict(op["fields"]) for i, op in ops.items()}
    deleting = {i for i in ops if wrote[i].get("gone") == "true"}
    dead = {a for i in deleting for a in above[i]}
    live = set(ops) - dead

    def current(name: str) -> set[str]:
        register = {i for i in live if name in wrote[i]}
        return {i for i in register if not any(i in above[j] for j in register)}

    def clock(i: str) -> tuple[Any, ...]:
        return ops[i]["wall"], ops[i]["count"], ops[i]["device"], ops[i]["n"]

    names = {name for i in live for name in wrote[i]}
    fields, clashes = {}, {}
    for name in names - {"trashed", "gone"}:
        latest = sorted(current(name), key=clock, reverse=True)
        values = list(dict.fromkeys(wrote[i][name] for i in latest))
        fields[name] = values[0]
        if len(values) > 1:
            clashes[name] = values
    edits = {i for i in live - deleting if set(wrote[i]) - {"trashed", "gone"}}
    gone = any(wrote[i]["gone"] == "true" for i in current("gone")) and not edits
    away = {i for i in current("trashed") if wrote[i]["trashed"] not in ('""', "null")}
    seen_by_one = {a for i in away for a in above[i]} | away
    meanwhile = {e for e in edits - seen_by_one if any(t not in above[e] for t in away)}
    back = bool(away) and not gone and (away != current("trashed") or bool(meanwhile))
    if gone:
        fields["gone"] = "true"
    if "trashed" in names:
        shown = away and not back
        fields["trashed"] = wrote[max(away, key=clock)]["trashed"] if shown else '""'
    return {
        "fields": fields,
        "clashes": clashes,
        "heads": sorted(set(ops) - {p for op in listed for p in op["parents"]}),
        "trashed": gone or (bool(away) and not back),
        "gone": gone,
        "brought_back": back,
        "scrub": dead - deleting,
    }


def plain(found: dict[str, Any]) -> dict[str, Any]:
    clashes = {c["field"]: [v["text"] for v in c["values"]] for c in found["clashes"]}
    told = {name: found[name] for name in ("heads", "trashed", "gone", "brought_back")}
    return told | {
        "fields": dict(found["fields"]),
        "clashes": clashes,
        "scrub": set(found["scrub"]),
    }


@pytest.mark.heavy
@settings(max_examples=1500, deadline=None)
@given(operation_sets())
def test_merging_is_what_the_oracle_says(ops):
    found = merged(ops)
    assert plain(found) == oracle(ops)
    assert [name for name, _ in found["fields"]] == sorted({name for name, _ in found["fields"]})


@settings(max_examples=300, deadline=None)
@given(operation_sets(), st.randoms(use_true_random=False))
def test_order_does_not_matter(ops, chance):
    other = ops[:]
    chance.shuffle(other)
    assert merged(other) == merged(ops)


@settings(max_examples=300, deadline=None)
@given(operation_sets(), st.data())
def test_what_was_deleted_for_good_never_comes_back_as_more_arrives(ops, data):
    some = data.draw(st.lists(st.sampled_from(ops), unique_by=lambda op: op["id"]))
    assert set(merged(some)["scrub"]) <= set(merged(ops)["scrub"])
    empty = set(merged(some)["scrub"])
    scrubbed = [{**op, "fields": []} if op["id"] in empty else op for op in ops]
    assert merged(scrubbed) == merged(ops)


@settings(max_examples=300, deadline=None)
@given(operation_sets())
def test_writing_a_field_with_all_heads_settles_it(ops):
    found = merged(ops)
    for clash in found["clashes"]:
        last = {
            **ops[0], "id": "dz.1", "device": "dz", "n": 1, "parents": found["heads"], "wall": -1,
            "fields": [[clash["field"], '"settled"']],
        }  # fmt: skip
        after = merged([*ops, last])
        assert dict(after["fields"])[clash["field"]] == '"settled"'
        assert clash["field"] not in [one["field"] for one in after["clashes"]]


def op(ident: str, parents: str = "", wall: int = 0, **fields: str) -> Op:
    device, n = ident.split(".")
    return {
        "id": ident, "device": device, "n": int(n), "parents": parents.split(), "wall": wall,
        "count": 0, "type": "piece", "fields": [list(field) for field in fields.items()],
    }  # fmt: skip


MADE = op("da.1", made='"m"', notes='"one"', trashed='""')


def test_two_values_that_knew_nothing_of_one_another_are_both_kept():
    found = merged([MADE, op("da.2", "da.1", 5, notes='"two"'), op("db.1", "da.1", 4, notes='"3"')])
    assert dict(found["fields"])["notes"] == '"two"'
    values = [{"text": '"two"', "id": "da.2"}, {"text": '"3"', "id": "db.1"}]
    assert found["clashes"] == [{"field": "notes", "values": values}]
    assert found["heads"] == ["da.2", "db.1"]


def test_an_edit_brings_back_what_was_trashed_meanwhile_but_not_one_that_the_trashing_knew_of():
    away = op("da.2", "da.1", trashed='"2024"')
    edit = op("db.1", "da.1", notes='"two"')
    assert merged([MADE, away])["trashed"]
    back = merged([MADE, away, edit])
    assert (back["trashed"], back["brought_back"]) == (False, True)
    assert dict(back["fields"])["trashed"] == '""'
    again = merged([MADE, away, edit, op("dc.1", "da.2 db.1", trashed='"2025"')])
    assert (again["trashed"], again["brought_back"]) == (True, False)
    kept = merged([MADE, away, edit, op("dc.1", "da.2 db.1", trashed='""')])
    assert (kept["trashed"], kept["brought_back"]) == (False, False)


def test_of_what_was_deleted_for_good_only_what_was_written_meanwhile_is_left():
    away = op("da.2", "da.1", made='"m"', trashed='"2024"', gone="true")
    found = merged([MADE, away])
    assert (found["gone"], found["trashed"], found["scrub"]) == (True, True, ["da.1"])
    edit = op("db.1", "da.1", place='"shelf"')
    back = merged([MADE, away, edit])
    assert (back["gone"], back["brought_back"]) == (False, True)
    assert dict(back["fields"]) == {"made": '"m"', "place": '"shelf"', "trashed": '""'}
    restored = merged([MADE, away, op("db.1", "da.1", trashed='""')])
    assert restored["gone"], "there is nothing left that could be shown"


def test_a_ring_that_no_device_writes_ends():
    ring = [op("da.1", "db.1", notes='"1"'), op("db.1", "da.1", notes='"2"')]
    assert merged(ring)["heads"] == []


def test_nothing_at_all():
    assert merged([])["fields"] == []


@pytest.mark.parametrize("count", [500])
def test_a_long_history_is_followed_to_its_end(count):
    long = [op("da.1", notes='"0"')]
    long += [op(f"da.{n}", f"da.{n - 1}", -n, notes=f'"{n}"') for n in range(2, count + 1)]
    found = merged(long)
    assert dict(found["fields"]) == {"notes": f'"{count}"'}
    assert found["clashes"] == []
