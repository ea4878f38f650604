"""The seller's date on the phone: read, held against the answers, kept, changed and dropped."""

import re

import pytest
from playwright.sync_api import Page, expect

from identify.core.claim import judge
from identify.core.claim_words import read_claim
from tests.browser.phone import (
    asking,
    begin,
    choices,
    choose_range,
    expect_other_question,
    expect_question,
    kill,
    more_of_question,
    question,
    see,
    unfold,
)
from tests.browser.test_demo_pieces import at_hand
from tests.demo import PIECES, looked_at

BY_ID = {piece["id"]: piece for piece in PIECES}
FIELD = "What does the seller say?"


def opened(page: Page) -> None:
    if asking(page):
        more_of_question(page, "Check the seller’s date")
    else:
        page.get_by_role("button", name=re.compile("^Seller’s date")).click()
    expect(page.get_by_role("dialog")).to_contain_text(re.compile("seller", re.IGNORECASE))
    another = page.get_by_text("Say it another way")
    if another.count() and not page.get_by_label(FIELD).is_visible():
        another.click()


def checked(page: Page, text: str) -> None:
    """Type a claim and have it checked."""
    opened(page)
    page.get_by_label(FIELD).fill(text)
    page.get_by_role("button", name="Check it").click()
    expect(page.get_by_role("dialog")).to_contain_text("The seller says:")


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("late fifties", "Read as: 1956 to 1959 (1956/1959)."),
        ("1957", "Read as: 1957."),
        ("57/58", "Read as: 1957 to 1958 (1957/1958)."),
        ("before 1955", "Read as: 1954 or earlier (../1954)."),
        ("after 1962", "Read as: 1963 or later (1963/..)."),
        ("first issue", "Read as: the first issue."),
        ("purple", "The app cannot read that. Type a year (1957)"),
        ("1961-1957", "That ends before it begins. Put the earlier year first."),
        ("1890", "Pellmarsh was made from 1947 to 1966, so none of it is from then."),
    ],
)
def test_what_is_typed_is_read_back(page, server, text, read):
    page.goto(server.url)
    begin(page, "Coach")
    opened(page)
    page.get_by_label(FIELD).fill(text)
    expect(page.get_by_role("dialog").get_by_role("status")).to_contain_text(read)


def test_what_cannot_be_used_is_not_checked_and_nothing_is_lost(page, server):
    page.goto(server.url)
    begin(page, "Coach")
    opened(page)
    page.get_by_label(FIELD).fill("purple")
    page.get_by_role("button", name="Check it").click()
    expect(page.get_by_label(FIELD)).to_have_value("purple")
    expect(page.get_by_label(FIELD)).to_be_focused()
    page.get_by_label(FIELD).fill("1957")
    page.keyboard.press("Enter")
    expect(page.get_by_role("dialog")).to_contain_text("The seller says: 1957.")


def test_taps_instead_of_typing(page, server):
    page.goto(server.url)
    begin(page, "Coach")
    opened(page)
    for name, value in (
        ("late 1950s", "late 1950s"),
        ("First issue", "first issue"),
        ("early 1960s", "early 1960s"),
    ):
        page.get_by_role("button", name=name, exact=True).click()
        expect(page.get_by_label(FIELD)).to_have_value(value)
    page.get_by_text("From year to year").click()
    for year in ("1959", "1956"):
        page.get_by_role("button", name=year, exact=True).click()
    expect(page.get_by_label(FIELD)).to_have_value("1956 to 1959")
    expect(page.get_by_role("button", name="Before the war")).to_have_count(0)


def test_the_years_are_keys_and_each_is_judged_at_once(page, server):
    """A decade, then a year of it: nothing is typed and nothing to be confirmed."""
    page.goto(server.url)
    begin(page, "Coach")
    more_of_question(page, "Check the seller’s date")
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name="1950s", exact=True).click()
    expect(sheet).to_contain_text("The seller says: 1950 to 1959")
    sheet.get_by_role("button", name="1957", exact=True).click()
    expect(sheet).to_contain_text("The seller says: 1957.")
    expect(sheet.get_by_role("button", name="1957", exact=True)).to_have_attribute(
        "aria-pressed", "true"
    )
    expect(sheet.get_by_role("button", name="1949", exact=True)).to_have_count(0)


def test_before_the_war_is_offered_where_the_range_is_that_old(page, server):
    page.goto(server.url)
    choose_range(page, "Tarrowby")
    page.get_by_role("button", name="Not sure: ask me").click()
    opened(page)
    page.get_by_role("button", name="Before the war").click()
    sheet = page.get_by_role("dialog")
    expect(sheet.get_by_role("status")).to_have_text("Read as: 1939 or earlier (../1939).")


# what was seen, what is claimed: each of the words once
WORDS = [
    ("as_made", "1956 to 1958", "Agrees with what you saw."),
    ("poor_light", "1956", "It is possible."),
    ("as_made", "1959", "It is unlikely."),
    ("as_made", "1951", "It is ruled out."),
    ("unrecorded_variant", "1951", "Can’t say."),
]


@pytest.mark.parametrize("case", WORDS, ids=lambda case: case[2])
def test_each_word_with_its_reasons(page, server, pellmarsh, case):
    piece, said, verdict = case
    page.goto(server.url)
    at_hand(page, pellmarsh, BY_ID[piece])
    checked(page, said)
    sheet = page.get_by_role("dialog")
    expect(sheet).to_contain_text(verdict)
    judged = judge(pellmarsh, looked_at(pellmarsh, BY_ID[piece]), read_claim(pellmarsh, said))
    against = [e for e in judged["evidence"] if e["bits"] < -0.1][:2]
    for entry in against:
        name = pellmarsh["pack"]["features"][entry["feature"]]["name"]
        expect(sheet).to_contain_text(name)
        expect(sheet).to_contain_text(str(entry["earliest"]))
    if judged["word"] == "ruled out":
        expect(sheet.locator(".aloud")).to_contain_text("so this can’t be a 1951 one")
        assert against
        who = sheet.get_by_role("list").locator("summary").first
        who.click()
        expect(sheet).to_contain_text(re.compile("trusted|care|doubtful"))


def test_a_part_that_may_be_changed_is_named_as_the_way_out(page, server, pellmarsh):
    """Only the coupling is too late for 1949: that alone does not make the engine later."""
    page.goto(server.url)
    piece = {
        "kind": "coach",
        "seen": {"coupling": "claw", "main_colour": "brown", "coach_type": "compartment"},
    }
    at_hand(page, pellmarsh, piece)
    checked(page, "1949")
    sheet = page.get_by_role("dialog")
    aloud = sheet.locator(".aloud")
    expect(aloud).to_contain_text("The coupling here (wide plastic claw) didn’t come in until 1956")
    expect(aloud).to_contain_text("unless someone changed the coupling")
    coupling = sheet.get_by_role("list").filter(has_text="Coupling: wide plastic claw").first
    coupling.locator("summary").first.click()
    expect(coupling).to_contain_text("Wide plastic claw: from March 1956.")
    expect(coupling).to_contain_text("The sources differ:")
    expect(coupling).to_contain_text("Own examples, seen and noted (invented) (well trusted): June")


def test_the_question_that_settles_it_is_asked(page, server, pellmarsh):
    page.goto(server.url)
    begin(page, "Coach")
    see(page, choices(page)[0])
    before = question(page)
    checked(page, "1958")
    sheet = page.get_by_role("dialog")
    expect(sheet).to_contain_text("What would settle it best")
    page.get_by_role("button", name="Ask the question that settles it").click()
    expect(sheet).to_have_count(0)
    expect_other_question(page, before)
    names = {f["question"] for f in pellmarsh["pack"]["features"]}
    assert question(page) in names
    page.get_by_role("button", name="More", exact=True).click()
    expect(page.get_by_role("button", name="Back to the suggested question")).to_be_visible()
    page.get_by_role("button", name="Close", exact=True).click()
    see(page, choices(page)[0])
    expect(page.get_by_role("button", name=re.compile("^So far"))).to_contain_text(
        "Seller says 1958"
    )


def test_the_claim_stays_with_the_piece_when_the_tab_is_killed(browser, server):
    context = browser.new_context()
    page = context.new_page()
    page.goto(server.url)
    begin(page, "Coach")
    asked = question(page)
    checked(page, "1951")
    kill(page)
    again = context.new_page()
    again.goto(server.url)
    expect_question(again, asked)
    expect(again.get_by_role("button", name=re.compile("^So far"))).to_contain_text(
        "Seller says 1951"
    )
    context.close()


def test_the_claim_is_changed_taken_back_and_dropped(page, server):
    page.goto(server.url)
    begin(page, "Coach")
    strip = page.get_by_role("button", name=re.compile("^So far"))
    checked(page, "1951")
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name="Change this date").click()
    expect(sheet.get_by_label(FIELD)).to_have_value("1951")
    sheet.get_by_label(FIELD).fill("1953")
    sheet.get_by_role("button", name="Check it").click()
    expect(sheet).to_contain_text("The seller says: 1953.")
    sheet.get_by_role("button", name="Close").click()
    expect(strip).to_contain_text("Seller says 1953")
    page.get_by_role("button", name="Undo", exact=True).click()
    expect(strip).to_contain_text("Seller says 1951")
    opened(page)
    sheet.get_by_role("button", name="Forget this date").click()
    expect(sheet).to_have_count(0)
    expect(strip).not_to_contain_text("Seller says")


def test_the_time_line_says_in_words_what_it_draws(page, server, pellmarsh):
    page.goto(server.url)
    at_hand(page, pellmarsh, BY_ID["hybrid"])
    checked(page, "1955")
    page.get_by_role("dialog").get_by_role("button", name="Close").click()
    unfold(page)
    line = page.get_by_role("list", name="Timeline")
    rows = line.get_by_role("listitem")
    expect(rows.filter(has_text="Could be: P 20 Main-line electric")).not_to_have_count(0)
    expect(rows.filter(has_text="Part: Coupling, probably replaced (1962 or later)")).to_have_count(
        1
    )
    expect(rows.filter(has_text="Seller: says 1955 (1955)")).to_have_count(1)
    drawn = line.locator("svg").evaluate_all("all => all.map(e => e.getAttribute('aria-hidden'))")
    assert drawn == ["true"] * rows.count(), "the bars are for the eye, the words for everyone"


def test_who_says_so(page, server, pellmarsh):
    page.goto(server.url)
    at_hand(page, pellmarsh, BY_ID["swapped_coupling"])
    unfold(page)
    page.get_by_role("button", name="Who says so?").click()
    sheet = page.get_by_role("dialog")
    expect(sheet).to_contain_text("P 20 Main-line electric, flat ends")
    expect(sheet).to_contain_text("The sources differ:")
    expect(sheet).to_contain_text("A Handbook of Pellmarsh, first edition")
    expect(sheet).to_contain_text("not fully trusted")
    expect(sheet).to_contain_text("Narrow plastic claw: from January 1962")
