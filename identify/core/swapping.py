"""What the answers on one part say, whether it is the piece's own or was swapped."""

from .donors import mixed, sharpened
from .kin import RELATIVES
from .lists import empty_lists, filled
from .types.engine import Engine, Heard, InScope, PartBelief, Parting
from .types.pack import Pack
from .types.session import Answer

IN_SCOPE = 0.5  # replaced parts that come from a piece as recorded (a guess, no source)


def are_answers(kept: list[Answer], things: list[Heard]) -> bool:
    """Whether these are the answers that were kept."""
    if len(kept) != len(things):
        return False
    for n in range(len(kept)):
        given = kept[n]
        heard = things[n]["answer"]
        if given["feature"] != heard["feature"] or given["how"] != heard["how"]:
            return False
        if len(given["states"]) != len(heard["states"]):
            return False
        for s in range(len(given["states"])):
            if given["states"][s] != heard["states"][s]:
                return False
    return True


def alike_on(pack: Pack, start: InScope, place: int, known: PartBelief) -> Parting:
    """The classes of rows in `known`, parted further by what is recorded of a feature."""
    shares = pack["cells"][place]["shares"]
    codes = pack["cells"][place]["codes"]
    count = len(known["kind"])
    numbers = filled(len(shares) * count, -1)
    rows = start["rows"]
    before = known["of"]
    of: list[int] = []
    code_of: list[int] = []
    came_from: list[int] = []
    for j in range(len(rows)):
        key = codes[rows[j]] * count + before[j]
        if numbers[key] < 0:
            numbers[key] = len(code_of)
            code_of.append(codes[rows[j]])
            came_from.append(before[j])
        of.append(numbers[key])
    return {"of": of, "code": code_of, "came_from": came_from}


def from_one_donor(start: InScope, known: PartBelief, singly: list[float]) -> list[float]:
    """P(answers | a part from a piece of each kind): as often from one of those in scope, whose
    features go together, as from any other, taken feature by feature (`singly`).
    """
    held = filled(len(singly), 0.0)
    whole = filled(len(singly), 0.0)
    mass = filled(len(known["own"]), 0.0)
    priors = start["priors"]
    of = known["of"]
    for j in range(len(of)):
        mass[of[j]] = mass[of[j]] + priors[j]
    for c in range(len(mass)):
        kind = known["kind"][c]
        whole[kind] = whole[kind] + mass[c]
        held[kind] = held[kind] + mass[c] * known["own"][c]
    out: list[float] = []
    for k in range(len(singly)):
        together = held[k] / whole[k] if whole[k] > 0.0 else singly[k]
        out.append((1.0 - IN_SCOPE) * singly[k] + IN_SCOPE * together)
    return out


def look_at_part(engine: Engine, start: InScope, things: list[Heard], part: int) -> PartBelief:
    """What the answers on one part say, whatever else was seen."""
    pack = engine["pack"]
    kinds: list[int] = []
    for k in range(len(pack["kinds"])):
        kinds.append(k)
    out: PartBelief = {
        "answers": [t["answer"] for t in things],
        "told": len(things),
        "of": start["kinds"],
        "kind": kinds,
        "own": filled(len(kinds), 1.0),
        "factors": [],
        "kin": [filled(len(kinds), 1.0) for _ in RELATIVES],
        "swapped": [],
        "beyond": filled(len(kinds), 1.0),
        "donors": [],
    }
    elsewhere = filled(len(kinds), 1.0)  # P(answers | any part of a kind)
    for thing in things:
        classes = alike_on(pack, start, thing["place"], out)
        own: list[float] = []
        kin: list[list[float]] = empty_lists(len(RELATIVES))
        kind_of: list[int] = []
        for c in range(len(classes["code"])):
            before = classes["came_from"][c]
            code = classes["code"][c]
            kind = out["kind"][before]
            usual = thing["any"][kind]
            kind_of.append(kind)
            own.append(out["own"][before] * (thing["like"][code] if code > 0 else usual))
            for n in range(len(kin)):
                seen = thing["kin"][n][code] if code > 0 else usual
                kin[n].append(out["kin"][n][before] * seen)
        out["of"] = classes["of"]
        out["kind"] = kind_of
        out["own"] = own
        out["kin"] = kin
        for k in range(len(kinds)):
            out["beyond"][k] = out["beyond"][k] * thing["beyond"][k]
            elsewhere[k] = elsewhere[k] * thing["any"][k]
    if len(things) > 0:
        elsewhere = from_one_donor(start, out, elsewhere)
    swap = pack["parts"][part]["swap"]
    spare = mixed(engine["donors"][part], elsewhere)
    out["donors"] = sharpened(engine["donors"][part], elsewhere)
    for c in range(len(out["own"])):
        other = swap * spare[out["kind"][c]]
        factor = (1.0 - swap) * out["own"][c] + other
        out["factors"].append(factor)
        out["swapped"].append(other / factor if factor > 0.0 else 0.0)
        for relatives in out["kin"]:
            relatives[c] = (1.0 - swap) * relatives[c] + other
    return out
