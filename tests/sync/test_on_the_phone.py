"""The model devices do what the app's own scripts do, whatever happens to them."""

import pytest

from tests.sync.on_the_phone import OnThePhone, phones
from tests.sync.playing import play, tell
from tests.sync.stories import STORIES, an_answer_comes_late

pytestmark = pytest.mark.heavy

# in web/sync: the script, what is right in it, and the mistake in its place
MISTAKES = {
    "not sealed before what comes": (
        "taking-in.js",
        "while (await sealSome(there, state, rules, touched));\n  if (rules.is_late",
        "if (rules.is_late",
    ),
    "late answers are taken": (
        "taking-in.js",
        "if (rules.is_late(state, asked)) return true;",
        "",
    ),
    "never held": ("taking-in.js", "made[place].held || known", "known"),
    "parents keep their old ids": (
        "renaming.js",
        'op,\n    parents,\n    held: "",',
        'op,\n    held: "",',
    ),
}


@pytest.fixture(scope="module")
def running(tmp_path_factory):
    with phones(tmp_path_factory.mktemp("phones")) as process:
        OnThePhone.running = process
        yield


@pytest.mark.parametrize("seed", range(12))
def test_what_chance_brings_is_the_same_on_the_phone(running, seed):
    play(seed, devices=OnThePhone)


# the story that is left out reaches into the model's storage
@pytest.mark.parametrize("story", [one for one in STORIES if one is not an_answer_comes_late])
def test_the_stories_are_the_same_on_the_phone(running, story):
    for seed in range(3):
        tell(story, seed, devices=OnThePhone)


@pytest.mark.parametrize("mistake", MISTAKES)
def test_a_mistake_in_the_scripts_is_found(mistake, tmp_path, monkeypatch):
    with phones(tmp_path, *MISTAKES[mistake]) as process:
        monkeypatch.setattr(OnThePhone, "running", process)
        for seed in range(20):
            try:
                play(seed, devices=OnThePhone)
            except AssertionError:
                return
    pytest.fail(f"{mistake} was not found")
