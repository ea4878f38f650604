"""A mark is read on the phone as it stands: from the menu, the start and a question."""

import shutil
from collections.abc import Iterator
from functools import partial

import orjson
import pytest
from playwright.sync_api import Page, expect

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.core.session import answered, new_session
from identify.core.types.pack import Pack
from identify.phone import demo_packs
from tests.browser.phone import (
    expect_question,
    line,
    more_of_question,
    take_up,
    unfold,
)
from tests.browser.phone_storage import place
from tests.conftest import Server, serving
from tests.kept_site import kept_site
from tests.open_world.leaving import Line, rewrite

ENTRY = "Read a mark"
FIELD = "What does it say?"


def opened(page: Page, url: str) -> None:
    page.goto(url)
    place(page, "More")
    page.get_by_role("main").get_by_role("button", name=ENTRY).click()
    expect(page.get_by_role("heading", name=ENTRY)).to_be_visible()


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Regd. Des. 821265", "It was registered in 1937; the piece is from 1937 or later. By the "
         "table, from memory."),
        ("PAT. NO. 10811/97", "Numbered in 1897; from 1916 on as an application. The piece is from "
         "1897 or later."),
        ("W. Germany", "Germany: hardly before 1949, hardly after October 1990."),
        ("5 012345 678900", "Such bars have been printed since 1977. They do not say in which "
         "later year."),
        ("Rd 82I265", "It may be 821265."),
        ("purple", "“PURPLE” is not a mark the app knows."),
        ("Made in Occupied Japan £2.99 inc. VAT", "VAT is from 1972 or later, MADE IN OCCUPIED "
         "JAPAN from 1952 or earlier: not the same year."),
    ],
)  # fmt: skip
def test_what_is_typed_is_answered_at_once(page, server, text, said):
    opened(page, server.url)
    sheet = page.get_by_role("dialog")
    sheet.get_by_label(FIELD).fill(text)
    expect(sheet.get_by_role("status")).to_contain_text(said)
    sheet.get_by_label(FIELD).fill("")
    expect(sheet.get_by_role("status")).to_have_text("")


def test_each_reading_is_offered_with_who_says_so(page, server):
    opened(page, server.url)
    sheet = page.get_by_role("dialog")
    sheet.get_by_label(FIELD).fill("49/11")
    expect(sheet.get_by_text("Or: British patent, 49 of 1911")).to_be_visible()
    sheet.get_by_text("Who says so?").first.click()
    expect(sheet.get_by_text("Decimal Currency Act 1969").first).to_be_visible()
    expect(sheet.get_by_role("button", name="Take this as an answer")).to_have_count(0)


def test_a_question_about_a_mark_takes_the_reading_with_one_tap(page, server, pellmarsh):
    page.goto(server.url)
    asked = next(f for f in pellmarsh["pack"]["features"] if f["id"] == "mark_patent")
    session = {"pack": "pellmarsh", "version": "", "scope": {"kind": "", "items": []}}
    take_up(page, {**session, "able": [], "missing": [], "answers": []}, asked="mark_patent")
    expect_question(page, asked["question"])
    more_of_question(page, "Type what it says")
    sheet = page.get_by_role("dialog")
    sheet.get_by_label(FIELD).fill("Pat. No. 654321")
    sheet.get_by_role("button", name="Take this as an answer").first.click()
    expect(sheet).to_have_count(0)
    more_of_question(page, "1 answer so far")
    expect(page.get_by_role("dialog").get_by_text("Six figures").first).to_be_visible()


def test_it_is_reached_from_the_start(page, server):
    page.goto(server.url)
    page.get_by_role("button", name="Read a mark").click()
    sheet = page.get_by_role("dialog")
    sheet.get_by_label(FIELD).fill("12/6")
    expect(sheet.get_by_role("status")).to_contain_text("hardly after August 1971")


def test_with_no_signal(page, site):
    with serving(site) as leaving:
        page.goto(leaving.url)
        page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    place(page, "More")
    page.get_by_role("main").get_by_role("button", name=ENTRY).click()
    sheet = page.get_by_role("dialog")
    sheet.get_by_label(FIELD).fill("Rd. 821265")
    expect(sheet.get_by_role("status")).to_contain_text("registered in 1937")


def test_without_the_tables_it_says_so(page, site):
    left = {name: content for name, content in site.items() if name != "packs/marks.json"}
    with serving(left) as bare:
        page.goto(bare.url)
        place(page, "More")
        page.get_by_role("main").get_by_role("button", name=ENTRY).click()
        expect(page.get_by_role("alert")).to_contain_text("Could not load the tables of marks")
        page.reported.clear()  # the browser's own line about the missing file


def made_in(column: str, years: str, lines: list[Line]) -> list[Line]:
    """Lines of a table, those of the first engine with other years."""
    other = {"years": years, "other_years": ""}
    return [line | other if line[column] == "P 1" else line for line in lines]


@pytest.fixture(scope="module")
def long_lived(tmp_path_factory) -> Iterator[tuple[Server, Pack]]:
    """Pellmarsh, had it gone on to 1975 and its first engine with it: prices in two moneys."""
    folder = tmp_path_factory.mktemp("packs") / "pellmarsh"
    shutil.copytree(next(one for one in demo_packs() if one.name == "pellmarsh"), folder)
    about = folder / "range.toml"
    text = about.read_text("utf-8")
    assert 'years = "1947/1966"' in text
    about.write_text(text.replace('years = "1947/1966"', 'years = "1947/1975"'), "utf-8")
    for name, column, years in (("items.csv", "number", "1948/1975"), ("variants.csv", "item", "")):
        rewrite(folder / name, partial(made_in, column, years))
    files = kept_site([folder])
    with serving(files) as server:
        yield server, orjson.loads(files["packs/pellmarsh.json"])


def test_marks_that_can_hardly_be_of_one_year_are_told_in_the_answer(page, long_lived):
    server, pack = long_lived
    page.goto(server.url)
    engine = prepare(pack)
    number = pack["items"][0]["number"]
    session = new_session(engine) | {"scope": {"kind": "", "items": [number]}}
    seen = {"mark_price": "decimal", "mark_telephone": "letters"}
    for feature, state in seen.items():
        session = answered(session, {"feature": feature, "how": "sure", "states": [state]})
    view = assess(engine, session)
    while view["stop"] == "" and view["question"]:
        asked = pack["features"][view["question"]["feature"]]["id"]
        answer = {"feature": asked, "how": "cannot", "states": []}
        if asked in seen:  # looked at again, and still the same
            answer = {"feature": asked, "how": "sure", "states": [seen[asked]]}
        session = answered(session, answer)
        view = assess(engine, session)
    take_up(page, session)
    parts = line(page, "Its parts")
    expect(parts).to_contain_text("Its marks disagree")
    parts.click()
    expect(
        page.get_by_text("they can hardly be from the same year. Read both again.")
    ).to_be_visible()
    page.get_by_role("button", name="Close", exact=True).click()
    unfold(page)
    page.get_by_role("button", name="Who says so?").first.click()
    sheet = page.get_by_role("dialog")
    expect(sheet.get_by_text("hardly before 15 February 1971").first).to_be_visible()
    expect(sheet.get_by_text("hardly after", exact=False).first).to_be_visible()
