"""What a pack takes from the kit: an entry with `kit = "coupling"` is the kit's of that name but
for what it says itself.

Kinds, parts, conditions and pairs of a feature that the pack leaves to the kit are told in the
pack's own names, without what it does not have.
"""

from collections.abc import Callable
from typing import Any

from identify.core.looks import look_fits
from identify.core.ranges.words import NONE, OF_THE_RANGE
from identify.reference.kit import Kit
from identify.reference.mistakes import instead, quoted
from identify.reference.records import Feature, Kind, Part
from identify.reference.toml_files import Wrong
from identify.reference.types import TomlTable

TABLES = ("kinds", "parts", "feature")
OWN = ("id",)  # what is not taken over: how the pack calls it


class Picker:
    """Fills in the entries of one pack, its kinds and parts first."""

    def __init__(self, kit: Callable[[], Kit]) -> None:
        self.kit = kit  # asked for where something is picked
        self.names: dict[str, dict[str, list[str]]] = {"kinds": {}, "parts": {}}

    def pick(self, table: str, given: list[TomlTable], wrong: Wrong) -> list[TomlTable]:
        """The entries of a table with what the kit says of them."""
        filled = []
        for nth, entry in enumerate(given):
            filled.append(self._entry(table, entry, nth, wrong))
            if table in self.names:
                names = self.names[table].setdefault(_name(entry), [])
                names.append(str(entry.get("id", "")))
        if table == "feature":
            states = [
                self._states(entry, nth, wrong) if "kit" in entry else {}
                for nth, entry in enumerate(filled)
            ]
            for entry, own, picked in zip(filled, given, states, strict=True):
                if picked:
                    self._told(entry, own, picked)
                    if "when" not in own and "when" in entry:
                        entry["when"] = _when(entry["when"], filled, states)
        return filled

    def _entry(self, table: str, entry: TomlTable, nth: int, wrong: Wrong) -> TomlTable:
        if "kit" not in entry or table not in TABLES:
            return dict(entry)
        known = self.kit().written[table]
        name = entry["kit"]
        if not isinstance(name, str) or name not in known:
            wrong(nth, "kit", f"{quoted(str(name))} is not in the kit: {instead(str(name), known)}")
            return dict(entry)
        return {key: said for key, said in known[name].items() if key not in OWN} | entry

    def _states(self, entry: TomlTable, nth: int, wrong: Wrong) -> dict[str, str]:
        """Fill in the states of a feature; returns what the kit's are called here."""
        of_kit = self.kit().written["feature"].get(str(entry["kit"]), {}).get("states", [])
        known = {state["id"]: state for state in of_kit}
        given = entry.get("states")
        if not isinstance(given, list) or not all(isinstance(state, dict) for state in given):
            return {}
        names: dict[str, str] = {}
        states: list[Any] = []
        for state in given:
            name = _name(state)
            if "kit" in state and name not in known:
                text = f"{quoted(name)} is not a state of it in the kit: {instead(name, known)}"
                wrong(nth, "states", text)
            if name in known:
                names[name] = str(state.get("id", ""))
            filled = {k: v for k, v in known.get(name, {}).items() if k not in OWN} | state
            renamed = name in known and state.get("id") != name
            if renamed and "look" not in filled and look_fits(str(entry.get("layer", "")), name):
                filled["look"] = name  # the kit's id says it, the pack's does not
            states.append(filled)
        entry["states"] = states
        return names

    def _told(self, entry: TomlTable, own: TomlTable, names: dict[str, str]) -> None:
        """What the pack leaves to the kit, in the pack's own names."""
        if "part" not in own and "part" in entry:
            entry["part"] = next(iter(self.names["parts"].get(entry["part"], [])), entry["part"])
        if "kinds" not in own and "kinds" in entry:
            kinds = [here for kind in entry["kinds"] for here in self.names["kinds"].get(kind, [])]
            entry["kinds"] = kinds or entry["kinds"]
        if "mistaken" not in own:
            pairs = entry.get("mistaken", [])
            entry["mistaken"] = [
                [names[a], names[b]] for a, b in pairs if a in names and b in names
            ]


def _name(entry: TomlTable) -> str:
    """What an entry or a state is called in the kit."""
    return str(entry.get("kit", entry.get("id", "")))


def _when(
    wanted: dict[str, list[str]], features: list[TomlTable], states: list[dict[str, str]]
) -> dict[str, list[str]]:
    """A condition as far as the pack has what it speaks of."""
    told: dict[str, list[str]] = {}
    for parent, listed in wanted.items():
        for feature, names in zip(features, states, strict=True):
            here = [names[state] for state in listed if state in names]
            if feature.get("kit") == parent and here:
                told.setdefault(str(feature.get("id", "")), here)
    return told


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
