"""What a range learns from the pieces its collector owns and has named.

Only what the owner said counts: a variant that was settled by them, answers that were sure, parts
they know to be replaced. A name that the engine only thinks likely says nothing.

    shares of an item's variants   Dirichlet priors with the range's shares m as their mean, worth
                                   A pieces, for each A of WORTH_OF: (A * m + n) / (A + N), mixed by
                                   how likely each A makes what is owned of all items. So a range
                                   that is right about what is met is kept to, and another is not
    how often a part is replaced   Beta prior with the range's figure as its mean, worth PART
                                   pieces: (PART * m + n) / (PART + N)
    states within one variant      Dirichlet prior, its mean what is recorded, OTHERWISE of it
                                   shared out over all states, worth STATE pieces. An answer may be
                                   misread, or be of a replaced part: the shares that fit best are
                                   found by FITTINGS rounds of expectation and maximisation.

The posterior mean of the Dirichlet and its "prior sample size" are those of Gelman and others,
Bayesian Data Analysis (3rd edition, 2013), sections 2.4 and 3.4; the mixture of Dirichlets that of
Good, The Estimation of Probabilities (1965); the rounds those of Dempster, Laird and Rubin,
"Maximum likelihood from incomplete data via the EM algorithm" (1977): all three from memory. What
the priors are worth are design figures without a source; tests/core/test_learning.py shows over
years of collecting what comes of them.
"""

from ..lists import empty_lists, filled, place_of, total
from ..misreading import channel, usual_errors
from ..types.learning import Learned, PartTold, Specimen, StateTold, VariantTold
from ..types.pack import Pack
from .issues import usual_shares
from .weights import scaled

WORTH_OF = [8.0, 32.0, 128.0, 512.0]  # pieces that what the range says of shares may be worth
PART = 30.0  # and of how often a part is replaced
STATE = 4.0  # and of what is seen on a variant
OTHERWISE = 0.04  # of that, for states that are not recorded of it
FITTINGS = 30
LEAST = 2  # pieces that must show a state before it is taken to be one of the variant's


def known_variant(pack: Pack, specimen: Specimen) -> int:
    """The place of a specimen's variant; -1 where it is not there, or not of that item."""
    place = place_of(pack["variants"], specimen["variant"])
    if place < 0:
        return -1
    item = pack["items"][pack["variants"][place]["item"]]
    return place if item["number"] == specimen["item"] else -1


def sure_states(pack: Pack, specimen: Specimen) -> list[int]:
    """By feature: the state that was surely seen; -1 for none, or where its part was replaced."""
    out: list[int] = []
    for feature in pack["features"]:
        seen = -1
        part = feature["part"]
        own = part < 0 or pack["parts"][part]["id"] not in specimen["replaced"]
        for answer in specimen["answers"]:
            is_sure = answer["how"] in ["sure", "twice"]
            if own and is_sure and answer["feature"] == feature["id"]:
                seen = place_of(feature["states"], answer["states"][0])
        out.append(seen)
    return out


def shares_by_item(pack: Pack) -> list[list[float]]:
    """By item the share of each of its variants, as the range says: by variant, 0 of others."""
    prior = priors_of(pack)
    out: list[list[float]] = []
    for i in range(len(pack["items"])):
        mine: list[float] = []
        for v in range(len(prior)):
            mine.append(prior[v] if pack["variants"][v]["item"] == i else 0.0)
        out.append(scaled(mine))
    return out


def worth_weights(shares: list[list[float]], owned: list[int]) -> list[float]:
    """How likely each of WORTH_OF makes what is owned, adding up to 1: the Dirichlet-multinomial
    chances of the pieces of each item, one after another.
    """
    out = filled(len(WORTH_OF), 1.0)
    for mean in shares:
        before = 0
        for v in range(len(mean)):
            for n in range(owned[v] if mean[v] > 0.0 else 0):
                for k in range(len(out)):
                    out[k] = out[k] * (WORTH_OF[k] * mean[v] + n) / (WORTH_OF[k] + before)
                before = before + 1
                out = scaled(out)
    return out


def told_of_variants(pack: Pack, owned: list[int]) -> list[VariantTold]:
    """The shares of the variants of each item of which a piece is owned."""
    out: list[VariantTold] = []
    shares = shares_by_item(pack)
    weights = worth_weights(shares, owned)
    for mean in shares:
        alike = [n for n in range(len(mean)) if mean[n] > 0.0]
        count = 0
        for v in alike:
            count = count + owned[v]
        if count > 0 and len(alike) > 1:
            for v in alike:
                share = 0.0
                for k in range(len(weights)):
                    met = (WORTH_OF[k] * mean[v] + owned[v]) / (WORTH_OF[k] + count)
                    share = share + weights[k] * met
                out.append({"variant": v, "owned": owned[v], "of": count, "share": share})
    return out


def priors_of(pack: Pack) -> list[float]:
    """The prior of each variant."""
    out = filled(len(pack["variants"]), 0.0)
    for i in range(len(pack["rows"]["variant"])):
        v = pack["rows"]["variant"][i]
        out[v] = out[v] + pack["rows"]["prior"][i]
    return out


def told_of_parts(pack: Pack, known: list[Specimen], seen: list[list[int]]) -> list[PartTold]:
    """How often each part was replaced, of the pieces on which it was looked at."""
    out: list[PartTold] = []
    for p in range(len(pack["parts"])):
        replaced = 0
        looked = 0
        for n in range(len(known)):
            if pack["parts"][p]["id"] in known[n]["replaced"]:
                replaced = replaced + 1
                looked = looked + 1
            elif is_looked_at(pack, p, seen[n]):
                looked = looked + 1
        if looked > 0:
            swap = (PART * pack["parts"][p]["swap"] + replaced) / (PART + looked)
            out.append({"part": p, "replaced": replaced, "of": looked, "swap": swap})
    return out


def is_looked_at(pack: Pack, part: int, seen: list[int]) -> bool:
    """Whether anything on a part was surely seen."""
    for f in range(len(seen)):
        if pack["features"][f]["part"] == part and seen[f] >= 0:
            return True
    return False


def one_code(pack: Pack, place: int, variant: int) -> int:
    """The code that all rows of a variant have for a feature; -1 where they differ, by year."""
    code = -1
    codes = pack["cells"][place]["codes"]
    for i in range(len(codes)):
        if pack["rows"]["variant"][i] == variant:
            if code >= 0 and codes[i] != code:
                return -1
            code = codes[i]
    return code


def kind_of_variant(pack: Pack, variant: int) -> int:
    """The kind of a variant."""
    return pack["items"][pack["variants"][variant]["item"]]["kind"]


def fitted(
    pack: Pack, place: int, variant: int, counts: list[int], recorded: list[float]
) -> list[float]:
    """The shares of the states of a feature on a variant that fit best what was seen, `counts` by
    state, and what is recorded (all 0: nothing).
    """
    feature = pack["features"][place]
    usual = pack["backgrounds"][place][kind_of_variant(pack, variant)]
    mean = recorded if total(recorded) > 0.0 else usual
    start = [(1.0 - OTHERWISE) * share + OTHERWISE / len(mean) for share in mean]
    swap = pack["parts"][feature["part"]]["swap"] if feature["part"] >= 0 else 0.0
    read = channel(len(counts), feature["mistaken"], usual_errors()["sure"])
    shares = start[:]
    for _ in range(FITTINGS):
        held = [STATE * share for share in start]
        for a in range(len(counts)):
            if counts[a] > 0:
                own = products(shares, read[a])
                beyond = swap * total(products(usual, read[a]))
                whole = (1.0 - swap) * total(own) + beyond
                for s in range(len(held)):
                    # what is of another piece says nothing of the variant: it stays as it was
                    mine = (1.0 - swap) * own[s] + beyond * shares[s]
                    held[s] = held[s] + counts[a] * mine / whole
        shares = scaled(held)
    return shares


def products(first: list[float], second: list[float]) -> list[float]:
    """The product of each two numbers."""
    return [first[n] * second[n] for n in range(len(first))]


def told_of_states(pack: Pack, of: list[int], seen: list[list[int]]) -> list[StateTold]:
    """What was seen on the pieces of each variant, where it is not as it is recorded."""
    out: list[StateTold] = []
    for f in range(1, len(pack["features"])):
        states = len(pack["features"][f]["states"])
        by_variant = empty_lists(len(pack["variants"]))
        for n in range(len(of)):
            if seen[n][f] >= 0:
                by_variant[of[n]].append(seen[n][f])
        for v in range(len(by_variant)):
            code = one_code(pack, f, v) if len(by_variant[v]) > 0 else -1
            if code >= 0:
                counts = filled(states, 0)
                for s in by_variant[v]:
                    counts[s] = counts[s] + 1
                recorded = filled(states, 0.0)
                if code > 0:
                    recorded = pack["cells"][f]["shares"][code][:]
                if is_news(counts, recorded):
                    out.append(
                        {
                            "variant": v, "feature": f, "seen": counts, "of": len(by_variant[v]),
                            "shares": fitted(pack, f, v, counts, recorded),
                        }
                    )  # fmt: skip
    return out


def is_news(counts: list[int], recorded: list[float]) -> bool:
    """Whether enough pieces show a state that is not recorded, or one of several is met oftener."""
    several = len([share for share in recorded if share > 0.0]) > 1
    for s in range(len(counts)):
        if counts[s] >= LEAST and (recorded[s] == 0.0 or several):
            return True
    return False


def learned_from(pack: Pack, specimens: list[Specimen]) -> Learned:
    """What specimens tell of a range, as it says itself (not of one that has learned already)."""
    known: list[Specimen] = []
    of: list[int] = []
    seen: list[list[int]] = []
    owned = filled(len(pack["variants"]), 0)
    for specimen in specimens:
        place = known_variant(pack, specimen)
        if place >= 0:
            known.append(specimen)
            of.append(place)
            seen.append(sure_states(pack, specimen))
            owned[place] = owned[place] + 1
    return {
        "pieces": len(known), "variants": told_of_variants(pack, owned),
        "states": told_of_states(pack, of, seen), "parts": told_of_parts(pack, known, seen),
    }  # fmt: skip


def take_in_learned(pack: Pack, learned: Learned) -> None:
    """Put what was learned into a compiled range, where it stands. Its version is not changed."""
    prior = pack["rows"]["prior"]
    before = priors_of(pack)
    items = filled(len(pack["items"]), 0.0)
    for v in range(len(before)):
        item = pack["variants"][v]["item"]
        items[item] = items[item] + before[v]
    times = filled(len(before), 1.0)
    for variant in learned["variants"]:
        v = variant["variant"]
        if before[v] > 0.0:
            times[v] = variant["share"] * items[pack["variants"][v]["item"]] / before[v]
    for i in range(len(prior)):
        prior[i] = prior[i] * times[pack["rows"]["variant"][i]]
    pack["rows"]["prior"] = scaled(prior)
    for seen in learned["states"]:
        cells = pack["cells"][seen["feature"]]
        place = len(cells["shares"])
        cells["shares"].append(seen["shares"])
        for i in range(len(cells["codes"])):
            if pack["rows"]["variant"][i] == seen["variant"]:
                cells["codes"][i] = place
    for part in learned["parts"]:
        pack["parts"][part["part"]]["swap"] = part["swap"]
    for f in range(len(pack["features"])):
        count = len(pack["features"][f]["states"])
        kinds = len(pack["kinds"])
        pack["backgrounds"][f] = usual_shares(pack["rows"], pack["cells"][f], kinds, count)
