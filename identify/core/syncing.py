"""What a device does so that nothing is lost between it and the server.

An operation is `held` once a pull has brought it, under mark_of(state); before that it is "". A
push that was acknowledged does not count: an older copy of the server's file may be put back, and
only what a pull has gone past would show it.
"""

from .clock import heard, tick
from .types.operations import (
    Arriving,
    Compared,
    Device,
    Forking,
    Heads,
    Meeting,
    PullAnswer,
    Pulled,
    Reached,
    Renamed,
    Sealed,
    Sealing,
    Unheld,
    Unsealed,
)

DIGITS = "0123456789"


def figures(number: int) -> str:
    """A whole number above 0 in figures."""
    out = ""
    rest = number
    while rest > 0:
        more = rest // 10
        digit = rest - 10 * more
        out = DIGITS[digit : digit + 1] + out
        rest = more
    return out


def operation_id(device: str, n: int) -> str:
    """The id of a device's nth operation."""
    return device + "." + figures(n)


def mark_of(state: Device) -> str:
    """The name for what the server holds now: another one whenever it may hold less than before."""
    return state["epoch"] + " " + figures(state["round"])


def sealed(state: Device, entries: list[Unsealed], heads: list[Heads]) -> Sealing:
    """What makes operations of what was changed here, in the order in which it was.

    heads: of those records, as merged from what was known when the changes were made: before
    anything else is taken in.
    """
    ends: dict[str, list[str]] = {}
    for row in heads:
        ends["r" + row["record"]] = row["heads"]
    n = state["n"]
    clock = state["clock"]
    ops: list[Sealed] = []
    order: list[str] = []
    for entry in entries:
        key = "r" + entry["record"]
        n = n + 1
        clock = tick(clock, entry["time"])
        ident = operation_id(state["device"], n)
        ops.append(
            {
                "id": ident,
                "device": state["device"],
                "n": n,
                "parents": sorted(ends.get(key, []), key=lambda ident: ident),
                "wall": clock["wall"],
                "count": clock["count"],
            }
        )
        if entry["record"] not in order:
            order.append(entry["record"])
        ends[key] = [ident]
    after: list[Heads] = [{"record": record, "heads": ends["r" + record]} for record in order]
    return {"n": n, "clock": clock, "ops": ops, "heads": after}


def is_late(state: Device, asked: Reached) -> bool:
    """Whether the answer to this question is to be thrown away.

    The state has moved on since it was asked; what lies between would be missed.
    """
    if asked["epoch"] != state["epoch"] or asked["after"] != state["after"]:
        return True
    return asked["last"] != state["last"]


def pulled(state: Device, answer: PullAnswer) -> Pulled:
    """The state after a pull's answer.

    Where the answer begins from the beginning, nothing counts as held any more.
    """
    return {
        "epoch": answer["epoch"],
        "after": answer["after"],
        "last": answer["last"],
        "round": one_more(state["round"], answer["from_start"]),
    }


def one_more(number: int, more: bool) -> int:
    """The next number, if so."""
    return number + 1 if more else number


def same_operation(first: Compared, second: Compared) -> bool:
    """Whether two operations under one id are the same, as far as neither was deleted for good."""
    if neither(first["scrubbed"], second["scrubbed"]):
        return first["text"] == second["text"]
    return first["bare"] == second["bare"]


def neither(first: bool, second: bool) -> bool:
    """Are both false?"""
    return not first and not second


def met(state: Device, ops: list[Arriving], now: int) -> Meeting:
    """What to do with operations that came from the server, or from a backup file, at `now` (ms).

    A fork is a copy of a device that went another way (one was restored from an old copy, or two
    use one). Before anything is taken in, forked() then gives other ids to what stands in the way.
    """
    clock = state["clock"]
    take: list[int] = []
    known: list[int] = []
    moved: list[str] = []
    fork = False
    for i in range(len(ops)):
        if ops[i]["here"] == "same":
            known.append(i)
        else:
            take.append(i)
            clock = heard(clock, ops[i], now)
            if ops[i]["here"] == "other":
                moved.append(ops[i]["id"])
                fork = True
            elif ops[i]["device"] == state["device"]:
                fork = True
    return {"clock": clock, "take": take, "known": known, "moved": moved, "fork": fork}


def forked(state: Device, device: str, ops: list[Unheld], moved: list[str]) -> Forking:
    """Other ids, where a copy of this device went another way: it goes on as `device`, a new id.

    ops: in the order of the journal, all that are not held under mark_of(state), and those `moved`:
    ids under which the server holds other operations. New ids get the moved; this device's own that
    no pull ever brought; and what is not held and has one of these as a parent. The rest stay as
    they are: others may know them.
    """
    mark = mark_of(state)
    ids: dict[str, str] = {}
    out: list[Renamed] = []
    for place in range(len(ops)):
        op = ops[place]
        own = op["device"] == state["device"] and op["held"] == ""
        child = False
        parents: list[str] = []
        for ident in op["parents"]:
            parents.append(ids.get("i" + ident, ident))
            child = child or ids.get("i" + ident, ident) != ident
        if own or op["id"] in moved or (child and op["held"] != mark):
            n = len(out) + 1
            ident = operation_id(device, n)
            ids["i" + op["id"]] = ident
            out.append(
                {
                    "place": place,
                    "id": ident,
                    "device": device,
                    "n": n,
                    "parents": sorted(parents, key=lambda ident: ident),
                }
            )
    return {"device": device, "n": len(out), "after": 0, "last": "", "ops": out}
