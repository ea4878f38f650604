"""What a record comes to, from the set of all changes ever made to it, in whatever order they came.

known      the operations, by (wall, count, device, n)
place      id of an operation -> where it stands in known
above      above[i][j]: j is an ancestor of i, so whoever wrote i had seen j
live       live[i]: its values count (no deletion for good has seen it)
"""

from typing import Any

from .lists import filled

TRASHED = "trashed"
GONE = "gone"
KEPT = '""'  # the text of `trashed` on a record that is not in the trash


def by_clock(ops: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Operations by clock, then by device and its count: the same on every device."""
    out = sorted(ops, key=lambda op: op["n"])
    out = sorted(out, key=lambda op: op["device"])
    out = sorted(out, key=lambda op: op["count"])
    return sorted(out, key=lambda op: op["wall"])


def places_of(known: list[dict[str, Any]]) -> dict[str, int]:
    """Where each operation stands, by its id."""
    place: dict[str, int] = {}
    for i in range(len(known)):
        place[known[i]["id"]] = i
    return place


def parents_of(known: list[dict[str, Any]], place: dict[str, int]) -> list[list[int]]:
    """The places of each operation's parents, without those that have not arrived."""
    out: list[list[int]] = []
    for op in known:
        out.append([place[ident] for ident in op["parents"] if ident in place])
    return out


def all_done(wanted: list[int], done: list[float]) -> bool:
    """Are all these places done?"""
    for i in wanted:
        if done[i] == 0.0:
            return False
    return True


def parents_first(parents: list[list[int]]) -> list[int]:
    """Places, parents before children. Clocks nearly give that order; a wrong one is put right, and
    a ring (which no device writes) is opened at its first place."""
    done = filled(len(parents), 0.0)
    out: list[int] = []
    while len(out) < len(parents):
        before = len(out)
        for i in range(len(parents)):
            if done[i] == 0.0 and all_done(parents[i], done):
                done[i] = 1.0
                out.append(i)
        if len(out) == before:
            i = 0
            while done[i] > 0.0:
                i = i + 1
            done[i] = 1.0
            out.append(i)
    return out


def ancestors(parents: list[list[int]]) -> list[list[float]]:
    """above[i][j] is 1 where j is an ancestor of i, else 0."""
    count = len(parents)
    above: list[list[float]] = []
    for _ in range(count):
        above.append(filled(count, 0.0))
    for i in parents_first(parents):
        mine = above[i]
        for parent in parents[i]:
            theirs = above[parent]
            for j in range(count):
                if theirs[j] > 0.0:
                    mine[j] = 1.0
            if parent != i:
                mine[parent] = 1.0
    return above


def writes(op: dict[str, Any], name: str) -> str:
    """The text that an operation wrote into a field; "" where it did not (JSON is never "")."""
    for field in op["fields"]:
        if field[0] == name:
            text: str = field[1]
            return text
    return ""


def edits(op: dict[str, Any]) -> bool:
    """Does it say that the record is wanted: by some field, or by taking it from the trash?"""
    for field in op["fields"]:
        if field[0] == TRASHED:
            if field[1] == KEPT:
                return True
        elif field[0] != GONE:
            return True
    return False


def apart(i: int, j: int, above: list[list[float]]) -> bool:
    """Were the two written without knowing of one another?"""
    return i != j and above[i][j] == 0.0 and above[j][i] == 0.0


def lived(known: list[dict[str, Any]], above: list[list[float]]) -> list[float]:
    """1 for every operation whose values count: no deletion for good knew of it."""
    live = filled(len(known), 1.0)
    for i in range(len(known)):
        if writes(known[i], GONE) == "true":
            for j in range(len(known)):
                if above[i][j] > 0.0:
                    live[j] = 0.0
    return live


def newest(writers: list[int], above: list[list[float]]) -> list[int]:
    """Those of these places that none of the others has seen, in the same order."""
    out: list[int] = []
    for i in writers:
        seen = False
        for k in writers:
            if above[k][i] > 0.0:
                seen = True
        if not seen:
            out.append(i)
    return out


def wanted_back(
    known: list[dict[str, Any]],
    above: list[list[float]],
    live: list[float],
    trashings: list[int],
) -> bool:
    """Did somebody change the record, who knew of none of these trashings and whom none knew of?"""
    for i in range(len(known)):
        if live[i] > 0.0 and edits(known[i]):
            alone = True
            for t in trashings:
                if not apart(i, t, above):
                    alone = False
            if alone:
                return True
    return False


def written(known: list[dict[str, Any]], live: list[float]) -> list[dict[str, Any]]:
    """For each field: {name, writers: places in order}; fields as they first come up."""
    at: dict[str, int] = {}
    out: list[dict[str, Any]] = []
    for i in range(len(known)):
        if live[i] > 0.0:
            for field in known[i]["fields"]:
                key = "f" + field[0]
                if key not in at:
                    at[key] = len(out)
                    out.append({"name": field[0], "writers": []})
                out[at[key]]["writers"].append(i)
    return out


def texts_of(known: list[dict[str, Any]], name: str, current: list[int]) -> list[dict[str, Any]]:
    """The different values of a field, the one to show first: {text, id}."""
    out: list[dict[str, Any]] = []
    for step in range(len(current)):
        op = known[current[len(current) - 1 - step]]
        text = writes(op, name)
        if len([one for one in out if one["text"] == text]) == 0:
            out.append({"text": text, "id": op["id"]})
    return out


def heads_of(known: list[dict[str, Any]], parents: list[list[int]]) -> list[str]:
    """The ids that no other operation names as a parent, sorted."""
    named = filled(len(known), 0.0)
    for i in range(len(known)):
        for parent in parents[i]:
            if parent != i:
                named[parent] = 1.0
    out = [known[p]["id"] for p in range(len(known)) if named[p] == 0.0]
    return sorted(out, key=lambda ident: ident)


def deletions(known: list[dict[str, Any]], name: str, current: list[int]) -> list[int]:
    """Those of a field's current writers that put the record into the trash, or deleted it."""
    if name == TRASHED:
        return [p for p in current if writes(known[p], TRASHED) != KEPT]
    if name == GONE:
        return [p for p in current if writes(known[p], GONE) == "true"]
    return []


def settled_trash(
    known: list[dict[str, Any]], fields: list[list[str]], trashings: list[int], trashed: bool
) -> list[list[str]]:
    """The fields, with `trashed` and `gone` as they are once it is known what was brought back."""
    for field in fields:
        if field[0] == TRASHED:
            field[1] = KEPT
            for place in trashings:
                if trashed and writes(known[place], TRASHED) not in ["", KEPT]:
                    field[1] = writes(known[place], TRASHED)
        elif field[0] == GONE and not trashed:
            field[1] = "null"
    return fields


def merged(ops: list[dict[str, Any]]) -> dict[str, Any]:
    """What one record comes to.

    ops: every known operation of the record, at least one, each once: {id, device, n, parents,
    wall, count, type, fields: [[name, JSON text]]}. Gives {type, fields: [[name, text]], clashes:
    [{field, values: [{text, id}], the shown one first}], heads: [ids], trashed, gone, brought_back
    (bool each), scrub: [ids whose values count no more]}. Depends on the set alone, not on its
    order; an operation that has not arrived yet may be named as a parent.
    """
    known = by_clock(ops)
    parents = parents_of(known, places_of(known))
    above = ancestors(parents)
    live = lived(known, above)
    fields: list[list[str]] = []
    clashes: list[dict[str, Any]] = []
    trashings: list[int] = []
    gone = False
    for entry in written(known, live):
        name = entry["name"]
        current = newest(entry["writers"], above)
        found = texts_of(known, name, current)
        deleted = deletions(known, name, current)
        gone = gone or (name == GONE and len(deleted) > 0)
        for place in deleted:
            trashings.append(place)
        if len(found) > 1 and name not in [TRASHED, GONE]:
            clashes.append({"field": name, "values": found})
        fields.append([name, found[0]["text"]])
    back = len(trashings) > 0 and wanted_back(known, above, live, trashings)
    trashed = len(trashings) > 0 and not back
    return {
        "type": known[0]["type"],
        "fields": settled_trash(known, fields, trashings, trashed),
        "clashes": clashes,
        "heads": heads_of(known, parents),
        "trashed": trashed,
        "gone": gone and trashed,
        "brought_back": back,
        "scrub": [known[p]["id"] for p in range(len(known)) if live[p] == 0.0],
    }
