"""Stories from a number, or told by hand, that end with everything checked."""

import shutil
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from tests.sync.device import Device
from tests.sync.real_store import Kept
from tests.sync.world import NAMES, World

ACTS = """
    make edit edit edit take_away undo settle trash delete_for_good sync sync sync pull_some
    push_some page_again set_clock keep_copy export import_file
""".split()
OF_THE_SERVER = "push_again back_up restore lose_server copy_file put_file_back".split()


def memory() -> str | None:
    """Where files need not wait for a disk, or None."""
    return "/dev/shm" if Path("/dev/shm").is_dir() else None


@contextmanager
def begun(seed: int, kind: type[Kept] = Kept, devices: type[Device] = Device) -> Iterator[World]:
    """A world with a record by each of three devices; what has happened in it is checked."""
    folder = Path(tempfile.mkdtemp(prefix="sync", dir=memory()))
    world = World(kind(folder), seed, devices)
    try:
        for name in NAMES[:3]:
            world.make(name)
            world.sync(name)
        yield world
        world.finish()
    finally:
        world.server.close()
        shutil.rmtree(folder)


def play(
    seed: int, steps: int = 60, kind: type[Kept] = Kept, devices: type[Device] = Device
) -> None:
    """Lets things happen; where the seed is odd, phones are copied too, and less can be checked."""
    acts = [*ACTS, *OF_THE_SERVER, *["restore_copy"] * (seed % 2)]
    with begun(seed, kind, devices) as world:
        for _ in range(steps):
            act = world.chance.choice(acts)
            if act in OF_THE_SERVER:
                getattr(world, act)()
            elif act == "restore_copy":
                world.restore_copy(world.chance.choice(NAMES), world.chance.choice(NAMES))
            else:
                getattr(world, act)(world.chance.choice(NAMES))


def tell(
    story: Callable[[World], None],
    seed: int,
    kind: type[Kept] = Kept,
    devices: type[Device] = Device,
) -> None:
    """One of the short stories: everybody is in touch, then it happens."""
    with begun(seed, kind, devices) as world:
        for name in NAMES:
            world.sync(name)
        story(world)
