"""The game can be lost: each of these mistakes, put into the rules or the storage, is found."""

from typing import Any

import pytest

from identify.core import merging, syncing
from identify.keeping import ops
from tests.sync import device, stories
from tests.sync.playing import play, tell

pytestmark = pytest.mark.heavy

Patch = pytest.MonkeyPatch


def last_writer_wins(patch: Patch) -> None:
    patch.setattr(merging, "unknown_to_others", lambda parents, places: places[:1])


def a_parent_is_overlooked(patch: Patch) -> None:
    right = merging.known_parents
    patch.setattr(merging, "known_parents", lambda ops: [places[:1] for places in right(ops)])


def a_head_is_left_out(patch: Patch) -> None:
    right = device.sealed

    def wrong(state: Any, entries: Any, heads: Any) -> Any:
        return right(state, entries, [{**row, "heads": row["heads"][:1]} for row in heads])

    patch.setattr(device, "sealed", wrong)


def sealed_only_after_the_pull(patch: Patch) -> None:
    right = device.Device.seal

    def wrong(self: Any) -> None:
        if not getattr(self, "taking", False):
            right(self)

    def take_page(self: Any, asked: Any, answer: Any, now: int) -> None:
        self.taking = True
        page(self, asked, answer, now)
        self.taking = False

    page = device.Device.take_page
    patch.setattr(device.Device, "seal", wrong)
    patch.setattr(device.Device, "take_page", take_page)


def an_edit_brings_nothing_back(patch: Patch) -> None:
    patch.setattr(merging, "changed_meanwhile", lambda parents, trashing, edits: False)


def deleting_for_good_keeps_the_values(patch: Patch) -> None:
    patch.setattr(merging, "emptied", lambda ops, dead, ends: [])


def nothing_is_pushed_again(patch: Patch) -> None:
    for where in (device, syncing):
        patch.setattr(where, "mark_of", lambda state: "held")


def held_once_the_push_was_answered(patch: Patch) -> None:
    right = device.Device.push

    def wrong(self: Any, server: Any, batches: Any, cut: int = -1) -> bool:
        done = right(self, server, batches, cut)
        if done:
            for entry in (entry for batch in batches for entry in batch):
                entry["held"] = device.mark_of(self.state)
        return done

    patch.setattr(device.Device, "push", wrong)


def a_late_answer_is_taken(patch: Patch) -> None:
    patch.setattr(device, "is_late", lambda state, asked: False)


def a_copy_of_the_phone_goes_unnoticed(patch: Patch) -> None:
    patch.setattr(device.Device, "fork", lambda self, moved: None)


def parents_keep_their_old_ids(patch: Patch) -> None:
    right = device.forked

    def wrong(state: Any, fresh: str, asked: Any, moved: Any) -> Any:
        made = right(state, fresh, asked, moved)
        for op in made["ops"]:
            op["parents"] = asked[op["place"]]["parents"]
        return made

    patch.setattr(device, "forked", wrong)


def the_server_knows_its_order_by_ids_alone(patch: Patch) -> None:
    right = ops.next_trail

    def wrong(last: str, content: str) -> str:
        return right(last, ops.orjson.loads(content)["id"])

    patch.setattr(ops, "next_trail", wrong)


def the_server_forgets_what_it_answered(patch: Patch) -> None:
    right = ops.push

    def wrong(store: Any, sent: Any) -> Any:
        answer = right(store, sent[:-1])
        return {**answer, "held": [one["id"] for one in sent]}

    patch.setattr(ops, "push", wrong)


BY_CHANCE = [
    last_writer_wins,
    a_parent_is_overlooked,
    a_head_is_left_out,
    sealed_only_after_the_pull,
    an_edit_brings_nothing_back,
    deleting_for_good_keeps_the_values,
    nothing_is_pushed_again,
    the_server_forgets_what_it_answered,
]
TOLD = [
    (held_once_the_push_was_answered, stories.the_servers_file_is_put_back),
    (a_copy_of_the_phone_goes_unnoticed, stories.a_phone_is_restored_from_an_old_copy),
    (a_copy_of_the_phone_goes_unnoticed, stories.two_phones_use_one_copy),
    (parents_keep_their_old_ids, stories.a_phone_is_restored_from_an_old_copy),
    (the_server_knows_its_order_by_ids_alone, stories.a_copy_fills_the_places_that_were_lost),
    (a_late_answer_is_taken, stories.an_answer_comes_late),
]


@pytest.mark.parametrize("mistake", BY_CHANCE)
def test_a_mistake_is_found_by_chance(mistake, monkeypatch):
    mistake(monkeypatch)
    for seed in range(60):  # they show in the first ten
        try:
            play(seed)
        except AssertionError:
            return
    pytest.fail(f"{mistake.__name__} was not found")


@pytest.mark.parametrize(("mistake", "story"), TOLD)
def test_a_mistake_is_found_in_a_story(mistake, story, monkeypatch):
    mistake(monkeypatch)
    with pytest.raises(AssertionError):
        tell_ten(story)


@pytest.mark.parametrize("story", stories.STORIES)
def test_the_stories_end_well(story):
    tell_ten(story)


def tell_ten(story):
    for seed in range(10):
        tell(story, seed)


@pytest.mark.parametrize("seed", range(12))
def test_what_chance_brings_ends_well(seed):
    play(seed)
