"""Short stories for what chance seldom brings about. Each begins with everybody in touch."""

from tests.sync.world import World


def the_servers_file_is_put_back(world: World) -> None:
    """A's edit was answered, and not yet handed out again, when the file of the hour before is put
    back, under the same epoch; the place up to which A had pulled is in both."""
    world.copy_file()
    device = world.devices["A"]
    world.edit("A")
    device.seal()
    assert device.push(world.server, [device.unsent()])
    world.put_file_back()


def a_phone_is_restored_from_an_old_copy(world: World) -> None:
    """What it wrote since is on the server; it writes other things under the same numbers."""
    world.keep_copy("A")
    world.edit("A")
    world.sync("A")
    world.restore_copy("A", "A")
    world.edit("A")
    world.edit("A")


def two_phones_use_one_copy(world: World) -> None:
    """Both push first, before either has pulled what the other one wrote."""
    world.keep_copy("A")
    world.restore_copy("A", "D")
    for name in "AD":
        world.edit(name)
        world.edit(name)
        device = world.devices[name]
        device.seal()
        device.push(world.server, [device.unsent()])


def a_copy_fills_the_places_that_were_lost(world: World) -> None:
    """The server's file is put back; a copy of A fills the same places with other operations."""
    world.keep_copy("A")
    world.copy_file()
    world.edit("A")
    world.sync("A")
    world.sync("B")
    world.put_file_back()
    world.restore_copy("A", "D")
    world.edit("D")
    device = world.devices["D"]
    device.seal()
    device.push(world.server, [device.unsent()])


def an_answer_comes_late(world: World) -> None:
    """D has begun again, and a page from further on comes in between."""
    for _ in range(4):
        world.edit("A")
    world.sync("A")
    device = world.devices["D"]
    pages = device.pull(world.server, world.now, limit=2)
    device.state |= {"after": 0, "last": ""}
    device.journal = [entry for entry in device.journal if entry["device"] == "none"]
    device.found, device.records = {}, {}
    device.pull(world.server, world.now, limit=1, pages=1)
    device.take_page(*pages[-1], world.now)


STORIES = [
    the_servers_file_is_put_back,
    a_phone_is_restored_from_an_old_copy,
    two_phones_use_one_copy,
    a_copy_fills_the_places_that_were_lost,
    an_answer_comes_late,
]
