"""What the engine takes and gives is as core/types says: every field, of its type, and no other."""

import random

import msgspec
import orjson
import pytest

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.core.claim import judge
from identify.core.claim_words import read_claim
from identify.core.deciding import assess_for
from identify.core.duplicates import duplicates
from identify.core.formation import incomplete
from identify.core.joining import join
from identify.core.look_up import find
from identify.core.mark_words import mark_span, reading_said
from identify.core.marking import read_mark
from identify.core.merging import merged
from identify.core.moved import moved
from identify.core.reasons import why_not
from identify.core.seen import seen_years
from identify.core.session import answered, mend, new_session
from identify.core.types.claims import Claim, Judgement, SeenYears
from identify.core.types.engine import Engine
from identify.core.types.holdings import Duplicate, Incomplete, Moved
from identify.core.types.marks import MarkRead, MarkSpan, MarkTables, ReadingSaid
from identify.core.types.matches import Match
from identify.core.types.operations import Merged, Written
from identify.core.types.pack import Pack
from identify.core.types.records import (
    Backup,
    Budget,
    Hand,
    JournalEntry,
    Note,
    Photo,
    Piece,
    Records,
    Sighting,
    Want,
)
from identify.core.types.session import Mended, Session
from identify.core.types.view import Against, View
from identify.reference.compiled import CompiledPack
from identify.reference.mark_tables import mark_tables
from identify.shipped import DEMO
from tests.kept_site import compiled_demo_packs
from tests.schema_sorts import plain
from tests.strategies import random_operations

PACKS = list(compiled_demo_packs().values())
JOINED = join(PACKS)
ENGINES = {pack["id"]: prepare(pack) for pack in [*PACKS, JOINED]}
BACKUP = orjson.loads(DEMO.read_bytes())
RECORDS = {
    f"{sort}s": [one for one in BACKUP["records"] if one["type"] == sort]
    for sort in ("piece", "want")
}
MONEY = {"minor": 450, "over": 0, "currency": "GBP", "typed": "4.50"}
SORTS = {"piece": Piece, "want": Want, "note": Note, "sighting": Sighting, "budget": Budget}
HAND = {"condition": "good", "boxed": "yes", "asked": MONEY}


def as_said(value, sort):
    """The value as a type takes it: equal to it, where no field is of another type or besides."""
    return msgspec.convert(value, sort)


def played(pack, seed):
    """An engine and a session with some answers of every way."""
    rng = random.Random(seed)
    engine = ENGINES[pack["id"]]
    session = new_session(engine)
    for feature in rng.sample(pack["features"], min(6, len(pack["features"]))):
        ids = [state["id"] for state in feature["states"]]
        how = rng.choice(["sure", "sure", "unsure", "several", "other", "cannot"])
        count = {"sure": 1, "unsure": 1, "several": min(2, len(ids))}.get(how, 0)
        session = answered(
            session, {"feature": feature["id"], "how": how, "states": rng.sample(ids, count)}
        )
    return engine, session


@pytest.mark.parametrize("pack", [*PACKS, JOINED], ids=lambda pack: pack["id"])
def test_a_pack_is_as_its_type(pack):
    assert as_said(pack, Pack) == pack


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("pack", [*PACKS, JOINED], ids=lambda pack: pack["id"])
def test_what_is_said_of_a_session_is_as_its_types(pack, seed):
    engine, session = played(pack, seed)
    judged = judge(engine, session, read_claim(engine, "fifties"))
    for value, sort in [
        (session, Session),
        (mend(engine, session), Mended),
        (assess(engine, session), View),
        (assess_for(engine, session, RECORDS, HAND), View),
        (why_not(engine, session, 0), list[Against]),
        (seen_years(engine, session), list[SeenYears]),
        (read_claim(engine, "fifties"), Claim),
        (read_claim(engine, "soon"), Claim),
        (judged, Judgement),
    ]:
        assert as_said(value, sort) == value, sort


@pytest.mark.parametrize("engine", ENGINES.values(), ids=ENGINES)
def test_an_engine_is_as_its_type(engine):
    assert as_said(engine, Engine) == engine


@pytest.mark.parametrize("pack", PACKS, ids=lambda pack: pack["id"])
def test_what_is_said_of_records_is_as_its_types(pack):
    engine = ENGINES[pack["id"]]
    own = [one for one in BACKUP["records"] if one.get("pack") == pack["id"]]
    strange = {**own[0], "item": "no such number"}
    for value, sort in [
        (RECORDS, Records),
        (HAND, Hand),
        (find(engine, pack["items"][0]["number"], 9), list[Match]),
        (find(engine, "lok", 9), list[Match]),
        (duplicates(engine, RECORDS["pieces"], "variant"), list[Duplicate]),
        (duplicates(engine, RECORDS["pieces"], "item"), list[Duplicate]),
        (incomplete(engine, RECORDS["pieces"]), list[Incomplete]),
        (moved(engine, [*own, strange]), list[Moved]),
    ]:
        assert as_said(value, sort) == value, sort
    assert moved(engine, [strange]) != []


def test_the_demo_collection_is_as_the_types_of_records():
    assert BACKUP.keys() == Backup.__annotations__.keys()
    for record in BACKUP["records"]:
        assert as_said(record, SORTS[record["type"]]) == record
    assert as_said(BACKUP["journal"], list[JournalEntry]) == BACKUP["journal"]
    assert as_said(BACKUP["photos"], list[Photo]) == BACKUP["photos"]


@pytest.mark.parametrize("seed", range(20))
def test_operations_and_what_they_come_to_are_as_their_types(seed):
    ops = random_operations(seed)
    assert as_said(ops, list[Written]) == ops
    assert as_said(merged(ops), Merged) == merged(ops)


def test_marks_and_what_is_read_of_them_are_as_their_types():
    tables = mark_tables()
    assert as_said(tables, MarkTables) == tables
    for text in [
        "Regd. Design No. 821265",
        "Regd. No. 8z1265",
        "British Patent 1234/09",
        "D.R.G.M.",
        "5012345678900",
        "501234567890",
        "12/6",
        "London, S.E.1",
        "nothing of the kind",
        "",
    ]:
        found = read_mark(tables, text)
        assert as_said(found, MarkRead) == found, text
        for reading in [each for mark in found["marks"] for each in mark["readings"]]:
            said = reading_said(tables, reading)
            assert as_said(said, ReadingSaid) == said, text
            span = mark_span(tables, reading)
            assert as_said(span, MarkSpan) == span, text


@pytest.mark.parametrize(
    "change", [{"stop": "perhaps"}, {"possible": "3"}, {"unrecorded": None}, {"shade": 1}]
)
def test_a_view_that_is_not_as_its_type_is_noticed(change):
    engine, session = played(PACKS[0], 1)
    wrong = assess(engine, session) | change
    try:
        assert as_said(wrong, View) != wrong
    except msgspec.ValidationError:
        assert "shade" not in change


def test_the_type_of_a_pack_says_the_same_as_the_schema_of_its_file():
    said, meant = (
        plain(whole, whole["$defs"], null_is_left_out=True)
        for whole in (msgspec.json.schema(CompiledPack), msgspec.json.schema(Pack))
    )
    assert meant.pop("packs") == plain({"type": "array", "items": {"type": "string"}}, {})
    assert meant["items"]["items"].pop("pack") == {"type": "string"}
    assert meant == said
