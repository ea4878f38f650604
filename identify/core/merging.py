"""What the operations of one record come to, whatever order they came in.

An operation is {id, device, n, parents: [ids], wall, count, type, fields: [[name, JSON text]]}. It
knows of its parents, of theirs, and so on: its ancestors. Two operations are concurrent where
neither is an ancestor of the other. Every rule is one over the set of operations, so that the
order in which they came, and what is still missing, make no difference once all are there.

A field is a multi-value register (Shapiro, Preguica, Baquero, Zawirski, "A comprehensive study of
Convergent and Commutative Replicated Data Types", INRIA RR-7506, 2011): its values are those that
no other operation on the field knew of.

Names and ids are looked up with a letter in front: no text is then a word of JavaScript.
"""

from .lists import empty_lists, filled
from .types.operations import Clash, FieldValue, Merged, Writers, Written

NOT_TRASHED = ['""', "null"]
OWN_RULES = ["trashed", "gone"]  # fields that nobody settles: the bin has its own rules


def merged(ops: list[Written]) -> Merged:
    """One record of all its known operations, each given once, in any order."""
    ordered = latest_first(ops)
    parents = known_parents(ordered)
    ends = [i for i in range(len(ordered)) if text_of_field(ordered[i], "gone") == "true"]
    dead = reached(parents, ends)
    written = writers(ordered, dead)
    shown: list[list[str]] = []
    clashes: list[Clash] = []
    trashing: list[int] = []
    restored = False
    finished = False
    for entry in written:
        name = entry["name"]
        places = unknown_to_others(parents, entry["places"])
        values = different(ordered, places, name)
        if name == "trashed":
            trashing = [i for i in places if is_trashing(ordered[i])]
            restored = len(trashing) < len(places)
        elif name == "gone":
            finished = len([1 for value in values if value["text"] == "true"]) > 0
        elif len(values) > 0:
            shown.append([name, values[0]["text"]])
            if len(values) > 1:
                clashes.append({"field": name, "values": values})
    edits = live_edits(ordered, dead)
    gone = finished and len(edits) == 0
    edited = changed_meanwhile(parents, trashing, edits)
    back = len(trashing) > 0 and not gone and (restored or edited)
    trashed = gone or (len(trashing) > 0 and not back)
    if gone:
        shown.append(["gone", "true"])
    if len(trashing) > 0 and trashed:
        shown.append(["trashed", text_of_field(ordered[trashing[0]], "trashed")])
    elif len([1 for other in written if other["name"] == "trashed"]) > 0:
        shown.append(["trashed", '""'])
    return {
        "type": ordered[len(ordered) - 1]["type"] if len(ordered) > 0 else "",
        "fields": sorted(shown, key=lambda field: field[0]),
        "clashes": sorted(clashes, key=lambda clash: clash["field"]),
        "heads": heads_of(ordered),
        "trashed": trashed,
        "gone": gone,
        "brought_back": back,
        "scrub": emptied(ordered, dead, ends),
    }


def latest_first(ops: list[Written]) -> list[Written]:
    """Operations by wall, count, device and number, the greatest first."""
    out = sorted(ops, key=lambda op: -op["n"])
    out = reversed_by_device(out)
    out = sorted(out, key=lambda op: -op["count"])
    return sorted(out, key=lambda op: -op["wall"])


def reversed_by_device(ops: list[Written]) -> list[Written]:
    """Operations by device, the last in the alphabet first; those of one device stay in order."""
    turned = [ops[len(ops) - 1 - i] for i in range(len(ops))]
    turned = sorted(turned, key=lambda op: op["device"])
    return [turned[len(turned) - 1 - i] for i in range(len(turned))]


def known_parents(ops: list[Written]) -> list[list[int]]:
    """For each operation the places of its parents, those that are here."""
    at: dict[str, int] = {}
    for i in range(len(ops)):
        at["i" + ops[i]["id"]] = i
    out = empty_lists(len(ops))
    for i in range(len(ops)):
        for ident in ops[i]["parents"]:
            place = at.get("i" + ident, -1)
            if place >= 0:
                out[i].append(place)
    return out


def reached(links: list[list[int]], starts: list[int]) -> list[int]:
    """For each place 1 where one or more links lead there from a start, else 0."""
    out = filled(len(links), 0)
    queue = starts[:]
    step = 0
    while step < len(queue):
        for place in links[queue[step]]:
            if out[place] == 0:
                out[place] = 1
                queue.append(place)
        step = step + 1
    return out


def backwards(links: list[list[int]]) -> list[list[int]]:
    """The links the other way round: from parents to children."""
    out = empty_lists(len(links))
    for i in range(len(links)):
        for place in links[i]:
            out[place].append(i)
    return out


def text_of_field(op: Written, name: str) -> str:
    """What an operation wrote into a field; "" where it wrote nothing there."""
    for field in op["fields"]:
        if field[0] == name:
            return field[1]
    return ""


def is_trashing(op: Written) -> bool:
    """Whether an operation that wrote `trashed` put the record into the bin."""
    return text_of_field(op, "trashed") not in NOT_TRASHED


def writers(ops: list[Written], dead: list[int]) -> list[Writers]:
    """Every field with the operations that wrote it, but for dead ones."""
    out: list[Writers] = []
    at: dict[str, int] = {}
    for i in range(len(ops)):
        if dead[i] == 0:
            for field in ops[i]["fields"]:
                place = at.get("f" + field[0], -1)
                if place < 0:
                    place = len(out)
                    at["f" + field[0]] = place
                    out.append({"name": field[0], "places": []})
                out[place]["places"].append(i)
    return out


def unknown_to_others(parents: list[list[int]], places: list[int]) -> list[int]:
    """Those of these operations that are no ancestor of another of them."""
    if len(places) == 1:
        return places
    known = reached(parents, places)
    return [i for i in places if known[i] == 0]


def different(ops: list[Written], places: list[int], name: str) -> list[FieldValue]:
    """The values that these operations wrote into a field, each once."""
    out: list[FieldValue] = []
    for i in places:
        text = text_of_field(ops[i], name)
        if len([1 for value in out if value["text"] == text]) == 0:
            out.append({"text": text, "id": ops[i]["id"]})
    return out


def live_edits(ops: list[Written], dead: list[int]) -> list[int]:
    """Operations that changed the record itself, not deleted for good since, nor deleting."""
    out: list[int] = []
    for i in range(len(ops)):
        if dead[i] == 0 and text_of_field(ops[i], "gone") != "true":
            others = [1 for field in ops[i]["fields"] if field[0] not in OWN_RULES]
            if len(others) > 0:
                out.append(i)
    return out


def changed_meanwhile(parents: list[list[int]], trashing: list[int], edits: list[int]) -> bool:
    """Whether an edit is concurrent with one of the trashings, and none of them knew of it."""
    if len(trashing) == 0:
        return False
    known = reached(parents, trashing)
    children = backwards(parents)
    for place in trashing:
        later = reached(children, [place])
        for i in edits:
            if known[i] == 0 and later[i] == 0 and i not in trashing:
                return True
    return False


def heads_of(ops: list[Written]) -> list[str]:
    """The ids that no operation names as a parent, sorted."""
    named: dict[str, int] = {}
    for op in ops:
        for ident in op["parents"]:
            named["i" + ident] = 1
    free = [each["id"] for each in ops if named.get("i" + each["id"], 0) == 0]
    return sorted(free, key=lambda ident: ident)


def emptied(ops: list[Written], dead: list[int], ends: list[int]) -> list[str]:
    """The ids of dead operations; those that delete for good stay as they are."""
    return [ops[i]["id"] for i in range(len(ops)) if dead[i] == 1 and i not in ends]
