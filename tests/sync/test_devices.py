"""Six devices and the real server's storage, and everything that can go wrong between them.

A failure prints a blob for `@reproduce_failure`; `--hypothesis-profile soak` plays for longer.
"""

import shutil
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, rule

from tests.sync.playing import memory
from tests.sync.real_store import Kept
from tests.sync.world import NAMES, World

pytestmark = pytest.mark.heavy

names = st.sampled_from(NAMES)


class Devices(RuleBasedStateMachine):
    """Each rule is something that happens; at the end everyone syncs."""

    @initialize(seed=st.integers(0, 2**32))
    def begin(self, seed):
        self.folder = Path(tempfile.mkdtemp(prefix="sync", dir=memory()))
        self.world = World(Kept(self.folder), seed)
        for name in NAMES[:3]:
            self.world.make(name)
            self.world.sync(name)

    @rule(name=names)
    def makes(self, name):
        self.world.make(name)

    @rule(name=names, times=st.integers(1, 3))
    def edits(self, name, times):
        for _ in range(times):
            self.world.edit(name)

    @rule(name=names, what=st.sampled_from(["take_away", "undo", "settle", "trash", "trash"]))
    def changes(self, name, what):
        getattr(self.world, what)(name)

    @rule(name=names)
    def deletes_for_good(self, name):
        self.world.delete_for_good(name)

    @rule(name=names)
    def syncs(self, name):
        self.world.sync(name)

    @rule(name=names, other=names)
    def two_sync(self, name, other):
        self.world.sync(name)
        self.world.sync(other)

    @rule(name=names, what=st.sampled_from(["pull_some", "push_some", "page_again"]))
    def the_line_breaks(self, name, what):
        getattr(self.world, what)(name)

    @rule()
    def a_push_comes_again(self):
        self.world.push_again()

    @rule(name=names)
    def the_clock_jumps(self, name):
        self.world.set_clock(name)

    @rule(name=names)
    def the_phone_is_copied(self, name):
        self.world.keep_copy(name)

    @rule(name=names, onto=st.none() | names)
    def the_copy_is_put_back(self, name, onto):
        self.world.restore_copy(name, onto or name)

    @rule(name=names, what=st.sampled_from(["export", "import_file"]))
    def a_file_of_a_phone(self, name, what):
        getattr(self.world, what)(name)

    @rule(what=st.sampled_from(["back_up", "restore", "lose_server"]))
    def a_backup_of_the_server(self, what):
        getattr(self.world, what)()

    @rule(what=st.sampled_from(["copy_file", "put_file_back"]))
    def a_copy_of_the_servers_file(self, what):
        getattr(self.world, what)()

    def teardown(self):
        if not hasattr(self, "world"):
            return
        try:
            self.world.finish()
        finally:
            self.world.server.close()
            shutil.rmtree(self.folder)


TestDevices = Devices.TestCase
if settings.get_current_profile_name() != "soak":
    TestDevices.settings = settings(
        max_examples=150,
        stateful_step_count=40,
        deadline=None,
        print_blob=True,
        suppress_health_check=list(HealthCheck),
    )
