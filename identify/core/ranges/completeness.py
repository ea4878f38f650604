"""How much of a range is not written down yet, told by the pieces of its owner.

Leave one piece out: would what it is still be in the range? It would not where it is the only one
that is owned of a variant which no catalogue, no book and nobody has told of. The share of such
pieces is how likely the next one is of a variant that is not written down: the total chance of
what has not been met yet, n1 / N of Good, "The Population Frequencies of Species and the
Estimation of Population Parameters", Biometrika 40 (1953), who has it of Turing. What the author
said of the kind goes in as a Beta prior worth SAID pieces (a design figure, no source):

    (SAID * what was said + n1) / (SAID + N)
"""

from ..kin import OPEN
from ..lists import filled
from ..types.learning import Gap, Specimen
from ..types.pack import Pack
from ..types.rows import RangeRows
from .learning import kind_of_variant, known_variant
from .words import OWN_PIECE

SAID = 6.0
MOST_OPEN = 0.95  # of a kind that can be in no range: what is recorded has to count too


def from_pieces_alone(rows: RangeRows) -> list[str]:
    """The ids of the variants that nothing but pieces has told of."""
    others = [row["id"] for row in rows["sources"] if row["what"] != OWN_PIECE]
    known: list[str] = []  # numbers of items that another source has told of
    for item in rows["items"]:
        if item["source"] in others or len(item["other_years"]) > 0:
            known.append(item["number"])
    out: list[str] = []
    for variant in rows["variants"]:
        is_told = variant["source"] in others or len(variant["other_years"]) > 0
        if not is_told and variant["item"] not in known:
            out.append(variant["id"])
    return out


def gaps_told(pack: Pack, specimens: list[Specimen], alone: list[str]) -> list[Gap]:
    """By kind of which any is owned: how many pieces there are, how many the range would not know
    without them, and so the share that is not written down; `alone` as of from_pieces_alone.
    """
    owned = filled(len(pack["variants"]), 0)
    for specimen in specimens:
        place = known_variant(pack, specimen)
        if place >= 0:
            owned[place] = owned[place] + 1
    pieces = filled(len(pack["kinds"]), 0)
    lone = filled(len(pack["kinds"]), 0)
    for v in range(len(owned)):
        kind = kind_of_variant(pack, v)
        pieces[kind] = pieces[kind] + owned[v]
        if owned[v] == 1 and pack["variants"][v]["id"] in alone:
            lone[kind] = lone[kind] + 1
    out: list[Gap] = []
    for k in range(len(pieces)):
        if pieces[k] > 0:
            said = pack["kinds"][k].get("open", OPEN)
            share = min(MOST_OPEN, (SAID * said + lone[k]) / (SAID + pieces[k]))
            out.append({"kind": k, "new": lone[k], "of": pieces[k], "share": share})
    return out


def take_in_gaps(pack: Pack, gaps: list[Gap]) -> None:
    """Put what was told into a compiled range, where it stands."""
    for gap in gaps:
        pack["kinds"][gap["kind"]]["open"] = gap["share"]
