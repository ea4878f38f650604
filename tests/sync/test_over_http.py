"""The same devices and the server over real HTTP: routes, pairing and limits lie between."""

import pytest

from tests.sync import stories
from tests.sync.playing import play, tell
from tests.sync.real_store import Served

pytestmark = pytest.mark.heavy


@pytest.mark.parametrize("seed", range(4))
def test_what_chance_brings_ends_well(seed):
    play(seed, kind=Served)


@pytest.mark.parametrize("story", stories.STORIES)
def test_the_stories_end_well(story):
    tell(story, 0, Served)
