"""What a folder takes from the kit: an entry with `kit = "coupling"` is the kit's of that name but
for what it says itself.

Kinds, parts, conditions and pairs of a feature that it leaves to the kit are told in its own names,
without what it does not have.
"""

from typing import Any

from ..lists import plus
from ..looks import look_fits
from ..native.values import json_text, names_of, sort_of_value, value_at
from ..types.folders import Picked
from ..types.gate import Group

PICKED_TABLES = ["kinds", "parts", "feature"]


def said_text(entry: Group, name: str) -> str:
    """A text of an entry, "" where there is none."""
    value = value_at(entry, name)
    text: str = value if sort_of_value(value) == "text" else ""
    return text


def said_list(entry: Group, name: str) -> list[Any]:
    """A list of an entry, empty where there is none."""
    value = value_at(entry, name)
    entries: list[Any] = value if sort_of_value(value) == "list" else []
    return entries


def said_group(entry: Group, name: str) -> Group:
    """A group of an entry, empty where there is none."""
    value = value_at(entry, name)
    empty: Group = {}
    group: Group = value if sort_of_value(value) == "group" else empty
    return group


def has(entry: Group, name: str) -> bool:
    """Whether an entry says anything under a name."""
    return sort_of_value(value_at(entry, name)) != "nothing"


def in_the_kit(entry: Group) -> str:
    """What an entry or a state is called in the kit."""
    value = value_at(entry, "kit")
    if sort_of_value(value) == "text":
        name: str = value
        return name
    return json_text(value) if has(entry, "kit") else said_text(entry, "id")


def filled_in(of_kit: Group, entry: Group) -> Group:
    """An entry with what the kit says of it, but for what it is called there."""
    out: Group = {}
    for name in names_of(of_kit):
        if name != "id":
            out[name] = value_at(of_kit, name)
    for name in names_of(entry):
        out[name] = value_at(entry, name)
    return out


def groups_only(values: list[Any]) -> bool:
    """Whether all of these are groups."""
    for value in values:
        if sort_of_value(value) != "group":
            return False
    return True


def entry_of_kit(picked: Picked, table: str, entry: Group, nth: int) -> Group:
    """An entry filled in from the kit, where it is picked from there."""
    nothing: Group = {}
    if not has(entry, "kit") or table not in PICKED_TABLES:
        return filled_in(nothing, entry)
    known = said_group(picked["written"], table)
    name = in_the_kit(entry)
    if not has(known, name):
        picked["wrong"].append({"nth": nth, "key": "kit", "name": name, "known": names_of(known)})
        return filled_in(nothing, entry)
    return filled_in(said_group(known, name), entry)


def fill_states(picked: Picked, entry: Group, nth: int) -> dict[str, str]:
    """Fill in the states of a feature; gives what the kit's are called here."""
    names: dict[str, str] = {}
    known: Group = {}
    of_kit = said_group(said_group(picked["written"], "feature"), said_text(entry, "kit"))
    for state in said_list(of_kit, "states"):
        known[said_text(state, "id")] = state
    given = said_list(entry, "states")
    if len(given) == 0 or not groups_only(given):
        return names
    states: list[Any] = []
    for state in given:
        name = in_the_kit(state)
        there = has(known, name)
        if has(state, "kit") and not there:
            picked["wrong"].append(
                {"nth": nth, "key": "states", "name": name, "known": names_of(known)}
            )
        if there:
            names["i" + name] = said_text(state, "id")
        whole = filled_in(said_group(known, name), state)
        renamed = there and said_text(state, "id") != name
        if renamed and not has(whole, "look") and look_fits(said_text(entry, "layer"), name):
            whole["look"] = name  # the kit's id says it, the folder's does not
        states.append(whole)
    entry["states"] = states
    return names


def any_named(entry: Group, names: dict[str, str]) -> bool:
    """Whether any state of a feature is one of the kit's."""
    given = said_list(entry, "states")
    if not groups_only(given):
        return False
    for state in given:
        if "i" + in_the_kit(state) in names:
            return True
    return False


def told_here(picked: Picked, entry: Group, own: Group, names: dict[str, str]) -> None:
    """What a feature leaves to the kit, in the names of the folder."""
    if not has(own, "part") and has(entry, "part"):
        part = said_text(entry, "part")
        here = picked["parts"].get("i" + part, [])
        entry["part"] = here[0] if len(here) > 0 else part
    if not has(own, "kinds") and has(entry, "kinds"):
        kinds: list[str] = []
        for kind in said_list(entry, "kinds"):
            for ident in picked["kinds"].get("i" + kind, []):
                kinds.append(ident)
        if len(kinds) > 0:
            entry["kinds"] = kinds
    if not has(own, "mistaken"):
        pairs: list[list[str]] = []
        for pair in said_list(entry, "mistaken"):
            if "i" + pair[0] in names and "i" + pair[1] in names:
                pairs.append([names["i" + pair[0]], names["i" + pair[1]]])
        entry["mistaken"] = pairs


def conditions_here(wanted: Group, features: list[Group], states: list[dict[str, str]]) -> Group:
    """A condition as far as the folder has what it speaks of."""
    conditions: Group = {}
    for parent in names_of(wanted):
        for n in range(len(features)):
            here: list[str] = []
            for state in said_list(wanted, parent):
                if "i" + state in states[n]:
                    here.append(states[n]["i" + state])
            ident = said_text(features[n], "id")
            if (
                said_text(features[n], "kit") == parent
                and len(here) > 0
                and not has(conditions, ident)
            ):
                conditions[ident] = here
    return conditions


def picked_entries(picked: Picked, table: str, given: list[Group]) -> list[Group]:
    """The entries of a table with what the kit says of them; kinds and parts come first."""
    filled: list[Group] = []
    for nth in range(len(given)):
        entry = given[nth]
        filled.append(entry_of_kit(picked, table, entry, nth))
        name = "i" + in_the_kit(entry)
        if table == "kinds":
            picked["kinds"][name] = plus(picked["kinds"].get(name, []), said_text(entry, "id"))
        if table == "parts":
            picked["parts"][name] = plus(picked["parts"].get(name, []), said_text(entry, "id"))
    if table != "feature":
        return filled
    states: list[dict[str, str]] = []
    for nth in range(len(filled)):
        nothing: dict[str, str] = {}
        of_kit = has(filled[nth], "kit")
        states.append(fill_states(picked, filled[nth], nth) if of_kit else nothing)
    for nth in range(len(filled)):
        entry = filled[nth]
        if any_named(entry, states[nth]):
            told_here(picked, entry, given[nth], states[nth])
            if not has(given[nth], "when") and has(entry, "when"):
                entry["when"] = conditions_here(said_group(entry, "when"), filled, states)
    return filled


def new_picking(written: Group) -> Picked:
    """What a folder picks from a kit, nothing yet."""
    return {"written": written, "kinds": {}, "parts": {}, "wrong": []}
