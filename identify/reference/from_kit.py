"""What a pack takes from the kit (`core/ranges/kit_entries.py`), and the drawings with it."""

from collections.abc import Callable

from identify.core.ranges.kit_entries import new_picking, picked_entries
from identify.core.ranges.words import NONE, OF_THE_RANGE
from identify.reference.entries import Feature, Kind, Part
from identify.reference.kit import Kit
from identify.reference.mistakes import instead, quoted
from identify.reference.toml_files import Wrong
from identify.reference.types import TomlTable


class Picker:
    """Fills in the entries of one pack, its kinds and parts first."""

    def __init__(self, kit: Callable[[], Kit]) -> None:
        self.kit = kit  # asked for where something is picked
        self.picked = new_picking({})

    def pick(self, table: str, given: list[TomlTable], wrong: Wrong) -> list[TomlTable]:
        """The entries of a table with what the kit says of them."""
        if any("kit" in entry for entry in given):
            self.picked["written"] = self.kit().written
        filled = picked_entries(self.picked, table, given)
        for pick in self.picked["wrong"]:
            what = "a state of it in the kit" if pick["key"] == "states" else "in the kit"
            said = f"{quoted(pick['name'])} is not {what}: {instead(pick['name'], pick['known'])}"
            wrong(pick["nth"], pick["key"], said)
        self.picked["wrong"] = []
        return filled


def drawings_of(
    kit: Callable[[], Kit], kinds: list[Kind], features: list[Feature], parts: list[Part]
) -> dict[str, str]:
    """The kit's drawings by the names that they have in a pack which picked something of it."""
    wanted = {f"kind-{kind.id}": f"kind-{kind.kit}" for kind in kinds if kind.kit}
    for feature in features:
        for state in feature.states:
            if feature.kit:
                wanted[f"{feature.id}-{state.id}"] = f"{feature.kit}-{state.kit or state.id}"
    if wanted or any(part.kit for part in parts):
        wanted |= {name: name for name in (NONE, *OF_THE_RANGE)}
    drawn = kit().pack.drawings if wanted else {}
    return {name: drawn[of] for name, of in wanted.items() if of in drawn}
