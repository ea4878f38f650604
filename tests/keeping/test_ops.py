"""Operations in and out, whatever comes twice, late, wrong or from a newer version."""

import copy
import tempfile
import threading
from pathlib import Path
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from identify import keeping
from identify.core.forms import NO_NAMES
from identify.keeping import ops
from identify.keeping.canonical_json import text_of
from identify.keeping.troubles import RefusedError
from tests.keeping.power import memory
from tests.keeping.samples import Writer
from tests.keeping.store_contents import operations, records


@settings(max_examples=25, deadline=None)
@given(st.randoms(use_true_random=False), st.integers(1, 12), st.integers(1, 5))
def test_however_often_and_in_whatever_order_it_is_pushed(chance, count, limit):
    writer = Writer(Random(3))
    new = [writer.operation(f"r{n % 3}", {"name": n, "trashed": ""}) for n in range(count)]
    with (
        tempfile.TemporaryDirectory(dir=memory()) as folder,
        keeping.open(Path(folder)) as store,
    ):
        mixed = chance.choices(new, k=2 * count) + new
        chance.shuffle(mixed)
        while mixed:
            some, mixed = mixed[:limit], mixed[limit:]
            assert ops.push(store, some)["held"] == [one["id"] for one in some]
        found, place = [], {"epoch": "", "after": 0, "last": "", "more": True}
        while place["more"]:
            place = ops.pull(store, place["epoch"], place["after"], place["last"], limit)
            assert len(place["ops"]) <= limit
            assert place["from_start"] == (found == [])
            found += place["ops"]
        assert sorted(found, key=lambda one: one["id"]) == sorted(new, key=lambda one: one["id"])
        assert ops.pull(store, place["epoch"], place["after"], place["last"], 9)["ops"] == []


json_values = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(2**53) + 1, 2**53 - 1)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(st.characters(exclude_categories=["Cs"])),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text("aé_1"), inner, max_size=3),
    max_leaves=8,
)


@settings(max_examples=60, deadline=None)
@given(
    st.dictionaries(
        st.text(st.characters(exclude_categories=["Cs"]), max_size=20).filter(
            lambda name: name not in NO_NAMES
        ),
        json_values,
    )
)
def test_any_fields_come_back_as_they_were(fields):
    one = {**Writer(Random(3)).operation("r1", fields), "from a newer version": fields}
    content = ops.checked(one)
    assert ops.checked(copy.deepcopy(one)) == content
    (back,) = ops.read_operations([content])
    assert dict(back["fields"]) == {name: text_of(value) for name, value in fields.items()}


def test_numbers_are_the_same_however_they_are_written(store, writer):
    one = writer.operation("r1", {"paid": 1, "none": 0, "large": 2**60})
    other = {
        **one,
        "fields": {"large": 2.0**60, "none": -0.0, "paid": 1.0},
    }
    assert ops.push(store, [one])["held"] == [one["id"]]
    assert ops.push(store, [other]) == ops.push(store, [one])


def test_what_a_newer_version_writes_is_kept(store, writer):
    new = writer.operation("r1", {"glow": [1, {"a": None}]}, "lamp", lumen={"x": [True]})
    ops.push(store, [new])
    assert operations(store) == [new]
    (shown,) = records(store)
    assert (shown["type"], shown["fields"]) == ("lamp", {"glow": [1, {"a": None}]})


def test_another_content_under_an_id_is_a_fork(store, writer):
    one = writer.operation("r1", {"name": "a"})
    ops.push(store, [one])
    for change in ({"fields": {"name": "b"}}, {"wall": 1}, {"record": "r2"}, {"extra": 1}):
        found = ops.push(store, [{**one, **change}])
        assert (found["forked"], found["held"]) == ([one["id"]], [])
    assert operations(store) == [one]


def test_a_fork_within_one_push(store, writer):
    one = writer.operation("r1", {"name": "a"})
    found = ops.push(store, [one, {**one, "fields": {}}, one])
    assert found["held"] == [one["id"], one["id"]]
    assert found["forked"] == [one["id"]]


WRONG = {
    "id": (7, "", "a.1", "d" + "a" * 16 + ".0", "d" + "a" * 16 + ".1\n", "../../etc"),
    "record": ("", "x1", "r", "r1\n", "r/..", "r" + "a" * 65, None),
    "type": ("", "Piece", "9", "a" * 41, "pie ce", 3, "constructor"),
    "parents": ("x", [1], ["r1"], None, [f"daaaaaaaaaaaaaaaa.{n}" for n in range(1, 66)]),
    "wall": (-1, 2**53, 2**53 - 1, 9 * 10**15, "1", 1.5, True, None),
    "count": (-1, 2**53 - 1, "0", None),
    "fields": ([], None, "x", {"a" * 201: 1}),
    "what": ("a" * 4001, 5),
    "time": ("a" * 101, 5, "zzzz", "123 ms", "2026-02-30T00:00:00Z", "9999-12-31T23:59:59Z"),
    "group": (None, "a" * 101),
    "scrubbed": ("yes", 1),
}


@pytest.mark.parametrize(("name", "value"), [(name, v) for name in WRONG for v in WRONG[name]])
def test_what_is_no_operation_is_refused_alone(name, value, store, writer):
    good = writer.operation("r1", {"name": "a"})
    bad = {**writer.operation("r1", {"name": "b"}), name: value}
    found = ops.push(store, [bad, good])
    assert found["held"] == [good["id"]]
    (refused,) = found["refused"]
    assert refused["id"] == (bad["id"] if isinstance(bad["id"], str) else "")
    assert refused["why"].startswith("The server cannot keep this change.")
    assert f"“{name}”" in refused["why"]


@pytest.mark.parametrize("missing", ["id", "record", "type", "parents", "wall", "count", "fields"])
def test_what_lacks_something_is_refused(missing, writer):
    one = writer.operation("r1", {})
    del one[missing]
    with pytest.raises(RefusedError, match=missing):
        ops.checked(one)


@pytest.mark.parametrize("sent", [None, 3, "op", [], {}, {"id": {}}])
def test_what_is_nothing_at_all_is_refused(sent, store):
    found = ops.push(store, [sent])
    assert [one["id"] for one in found["refused"]] == [""]


def nested(deep):
    return [] if deep == 0 else [nested(deep - 1)]


@pytest.mark.parametrize(
    ("fields", "why"),
    [
        ({"a": "x" * 300_000}, "longer"),
        ({"a": nested(150)}, "nested more than 100 deep"),
        ({"a": float("inf")}, "too large"),
        ({"a": 10**400}, "too large"),
        ({"a": "half \ud800 of a pair"}, "valid Unicode"),
        ({"half \ud800": 1}, "valid Unicode"),
        ({"__proto__": 1}, "which nothing this app keeps has"),
        ({"came": {"constructor": 1}}, "which nothing this app keeps has"),
    ],
)
def test_fields_that_cannot_be_kept_are_refused(fields, why, writer):
    with pytest.raises(RefusedError, match=why):
        ops.checked(writer.operation("r1", fields))


def test_parents_are_other_operations_sorted_once(writer):
    one = writer.operation("r1", {})
    a, b = "daaaaaaaaaaaaaaaa.8", "daaaaaaaaaaaaaaaa.9"
    for parents in ([b, a], [a, a], [one["id"]]):
        with pytest.raises(RefusedError, match="in order, each once"):
            ops.checked({**one, "parents": parents})


def test_a_pull_is_never_much_larger_than_it_should_be(store, writer):
    new = [writer.operation("r1", {"text": "x" * 250_000}) for _ in range(20)]
    for one in new:
        ops.push(store, [one])
    found = ops.pull(store, "", 0, "", 1000)
    assert (found["more"], len(found["ops"])) == (True, 7)
    rest = ops.pull(store, found["epoch"], found["after"], found["last"], 1000)
    assert rest["ops"][0] == new[7]


def test_an_unknown_place_begins_from_the_beginning(store, writer):
    new = [writer.operation("r1", {"name": n}) for n in range(3)]
    ops.push(store, new)
    at = ops.pull(store, "", 0, "", 2)
    for epoch, after, last in (
        ("another", at["after"], at["last"]),
        (at["epoch"], at["after"], "another"),
        (at["epoch"], at["after"] + 7, at["last"]),
        (at["epoch"], -1, ""),
        (at["epoch"], 2**70, at["last"]),
        (at["epoch"], at["after"], "half \ud800"),
        (at["epoch"], 0, "x"),
    ):
        found = ops.pull(store, epoch, after, last, 10)
        assert (found["from_start"], found["ops"]) == (True, new)


def test_an_old_copy_of_the_file_is_noticed_even_when_the_same_operation_stands_there(
    tmp_path, writer
):
    first, second, third, other = [writer.operation("r1", {"name": n}) for n in range(4)]
    for name in ("now", "old"):
        with keeping.open(tmp_path / name) as store:
            store.set_meta("epoch", "one")
    with keeping.open(tmp_path / "now") as store:
        ops.push(store, [first, second, third])
        place = ops.pull(store, "one", 0, "", 10)
    with keeping.open(tmp_path / "old") as store:  # the copy has none, and fills in another order
        ops.push(store, [first, other, third])
        found = ops.pull(store, "one", place["after"], place["last"], 10)
    assert found["from_start"] is True
    assert [one["id"] for one in found["ops"]] == [one["id"] for one in (first, other, third)]


def written_anywhere(store, text):
    return [
        path.name
        for path in store.folder.rglob("*")
        if path.is_file() and text.encode() in path.read_bytes()
    ]


def test_deleted_for_good_is_nowhere_any_more(store, writer):
    kept = writer.operation("r2", {"name": "another"})
    new = [writer.operation("r1", {"name": f"Heirloom {n}"}, what="Heirloom") for n in range(50)]
    ops.push(store, [kept, *new])
    assert written_anywhere(store, "Heirloom")
    ops.push(store, [writer.operation("r1", {"gone": True})])
    assert written_anywhere(store, "Heirloom") == []
    emptied = [one for one in operations(store) if one.get("scrubbed")]
    assert [one["id"] for one in emptied] == [one["id"] for one in new]
    for one, before in zip(emptied, new, strict=True):
        assert one == {**before, "fields": {}, "what": "Deleted for good", "scrubbed": True}
    assert kept in operations(store)


def test_what_comes_late_under_a_deletion_is_emptied_too(store, writer):
    late = writer.operation("r1", {"name": "Heirloom"})
    gone = writer.operation("r1", {"gone": True})
    ops.push(store, [gone])
    ops.push(store, [late])
    assert written_anywhere(store, "Heirloom") == []
    assert ops.push(store, [late])["held"] == [late["id"]]
    assert written_anywhere(store, "Heirloom") == []


def test_an_edit_beside_a_deletion_stays(store, writer):
    first = writer.operation("r1", {"name": "Heirloom", "where": "loft"})
    gone = writer.operation("r1", {"trashed": "2026-05-01", "gone": True})
    writer.heads["r1"] = [first["id"]]
    edit = writer.operation("r1", {"notes": "cleaned"})
    ops.push(store, [first, gone, edit])
    (shown,) = records(store)
    assert shown["brought_back"] is True
    assert shown["fields"]["notes"] == "cleaned"
    assert written_anywhere(store, "Heirloom") == []


def test_emptied_on_one_side_is_the_same_operation(store, writer):
    one = writer.operation("r1", {"name": "a"})
    emptied = {**one, "fields": {}, "scrubbed": True}
    ops.push(store, [emptied])
    assert ops.push(store, [one])["held"] == [one["id"]]
    assert ops.push(store, [{**one, "parents": ["daaaaaaaaaaaaaaaa.77"]}])["forked"] == [one["id"]]
    assert operations(store) == [emptied]
    whole = writer.operation("r2", {"name": "a"})
    for sent in (whole, {**whole, "scrubbed": False}, whole):  # said or left out: the same
        assert ops.push(store, [sent])["held"] == [whole["id"]]
    with pytest.raises(RefusedError, match="deleted for good, so its “fields” should hold nothing"):
        ops.checked({**one, "scrubbed": True})


def test_values_that_clash_are_offered(store, writer):
    first = writer.operation("r1", {"name": "a"})
    second = writer.operation("r1", {"name": "b"})
    writer.heads["r1"] = [first["id"]]
    third = writer.operation("r1", {"name": {"c": 1}})
    ops.push(store, [first, second, third])
    (shown,) = records(store)
    assert shown["fields"]["name"] == {"c": 1}
    (clash,) = shown["clashes"]
    assert clash["field"] == "name"
    assert clash["values"] == [
        {"value": {"c": 1}, "id": third["id"]},
        {"value": "b", "id": second["id"]},
    ]
    assert shown["heads"] == sorted([second["id"], third["id"]])


def test_threads_may_share_a_store(store):
    def work(letter):
        for n in range(1, 21):
            one = Writer(Random(n)).operation(f"r{letter}", {"name": n})
            ops.push(store, [{**one, "id": "d" + letter * 16 + f".{n}", "parents": []}])
            ops.pull(store, "", 0, "", 5)

    threads = [threading.Thread(target=work, args=(letter,)) for letter in "abcdef"]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len({one["id"] for one in operations(store)}) == 120
