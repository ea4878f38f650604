"""What measures a lifetime's collection: what is made fits through the app's gate, and every part
of the bench that uses it runs.
"""

import pytest

from identify.core.gate import entry_fault, file_record_fault, photo_fault
from identify.exchange.backups import backup_bytes
from tests.bench.against import against_table, by_turns
from tests.bench.aims import aims_table, reached
from tests.bench.first_visit import first_visits
from tests.bench.lifetime import lifetime, lifetime_table, slope
from tests.bench.made_collection import made_collection
from tests.bench.processor import Busyness
from tests.bench.steps_of import steps_of, steps_table
from tests.bench.ten_devices import devices_table, ten_devices


def test_a_made_collection_fits_and_is_the_same_each_time():
    made = made_collection(60)
    assert [r for r in made["records"] if file_record_fault(r)] == []
    assert [e for e in made["journal"] if entry_fault(e, False)] == []
    assert [p for p in made["photos"] if photo_fault(p)] == []
    kinds = [one["type"] for one in made["records"]]
    assert (kinds.count("piece"), kinds.count("want"), kinds.count("note")) == (60, 15, 15)
    shown = {photo for one in made["records"] for photo in one.get("photos", [])}
    assert shown == {photo["id"] for photo in made["photos"]} != set()
    again = b"".join(backup_bytes(made_collection(60)))
    assert again == b"".join(backup_bytes(made))
    assert again != b"".join(backup_bytes(made_collection(60, seed=2)))


def test_what_its_journal_tells_comes_to_its_records():
    made = made_collection(20)
    told: dict[str, dict] = {}
    for entry in made["journal"]:
        told[entry["record"]] = told.get(entry["record"], {}) | entry["after"]
    for record in made["records"]:
        assert told[record["id"]] | {"changed": record["changed"]} == record


def test_growth_is_the_slope_between_logarithms():
    found = [{"pieces": n, "steps": {"a": {"thread": 3.0 * n**1.5}}} for n in (10, 100, 1000)]
    assert slope(found, "a", "thread") == pytest.approx(1.5)


@pytest.mark.parametrize(
    ("found", "why"),
    [
        (Busyness(0.1, 0.05, 0.0, 0.03), []),
        (Busyness(2.0, 0.05, 0.0, 0.03), ["2.00 programs waiting for each processor"]),
        (Busyness(0.1, 0.5, 0.2, 0.4), ["50% of", "20.0% of the time", "up to 40% longer"]),
    ],
)
def test_a_busy_machine_is_not_called_quiet(found, why):
    said = found.why_not_quiet()
    assert len(said) == len(why)
    assert all(part in text for part, text in zip(why, said, strict=True))
    assert found.told().startswith("NOT" if why else "A quiet")


@pytest.mark.heavy
def test_ten_devices_push_and_pull_at_once():
    found = ten_devices(100, 10)
    assert (found["push"]["requests"], found["pull"]["requests"]) == (10, 10)
    assert found["floor"]["a_second"] > 0
    assert "SQLite alone" in devices_table(found)


@pytest.mark.heavy
def test_two_apps_are_measured_by_turns(playwright, site):
    found = by_turns(playwright, {"before": site, "now": site}, 1, lambda text: None)
    for side in found.values():
        assert all(len(times) == 1 and times[0] > 0 for times in side.values())
    assert "1 of each" in against_table(found | {"commit": "HEAD", "rounds": 1})


@pytest.mark.heavy
def test_every_step_with_a_collection_is_measured(playwright):
    found = lifetime(playwright, (40,), 1, lambda text: None)
    steps = found[0]["steps"]
    assert {"restore", "open the app", "a save", "a backup", "first sync"} < set(steps)
    assert steps["first sync of another phone"]["clock"] > 0
    assert all(step["thread"] > 0 for step in steps.values())
    assert "first sync" in lifetime_table(found)
    assert {"slowed 4 times: open the app", "slowed 4 times: a save"} < set(steps)


def test_every_aim_is_told_met_or_not():
    step = {"thread": 40.0, "longest": 60.0, "over": 1, "clock": 900.0, "most_mb": 20.0}
    steps = {
        "open the app": step,
        "a save": step,
        "slowed 4 times: open the app": step | {"clock": 1e4},
    }
    found = {
        "answers": {"core_to_lowest": 2.5},
        "taps": {"p98": 40.0, "first": 120.0},
        "cold": {"median": 400.0, "sent": {"script": 70_000}},
        "visit": {"shown": 900.0, "used": 1900.0, "moved": 0.0},
        "lifetime": [{"pieces": 10, "steps": steps}],
    }
    aims = {aim["name"]: (aim["reached"], aim["met"]) for aim in reached(found)}
    assert aims["opening"] == (900.0, True)
    assert aims["opening, slowed 4 times"] == (10000.0, False)
    assert aims["longest task of any step, not slowed"] == (60.0, False)
    assert aims["number search"] == (None, False), "what was not measured is not met"
    text = aims_table(found | {"aims": reached(found)})
    assert "a save: 60 ms, 1 tasks" in text


@pytest.mark.heavy
def test_a_first_visit_is_shown_before_it_is_used(playwright, site):
    found = first_visits(playwright, site, 1, lambda: None)
    assert 0 < found["shown"] < found["used"]
    assert found["moved"] >= 0


@pytest.mark.heavy
def test_a_start_and_its_taps_are_looked_at_step_by_step(playwright, site):
    found = steps_of(playwright, site, 1, lambda text: None)
    order = ["finger lifted", "step handed to the disk", "step safe on the disk", "painted"]
    for tap in found["the first tap"] + found["a later tap"]:
        assert sorted(order, key=lambda name: tap[name]) == order
    assert {"app.js here", "storage open", "painted"} < set(found["a start"][0])
    assert "the first tap (1 times)" in steps_table(found)
