"""The year of a number or a barcode on the phone: said as it is typed, or what is wrong with it."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.phone import choices, question, see, take_up, tap
from tests.browser.phone_storage import place
from tests.conftest import serving

ENTRY = "Date a number or barcode"
SORTS = {"design": "British registered design", "patent": "British patent", "barcode": "Barcode"}


def opened(page: Page, url: str) -> None:
    page.goto(url)
    place(page, "More")
    page.get_by_role("main").get_by_role("button", name=ENTRY).click()
    expect(page.get_by_role("heading", name=ENTRY)).to_be_visible()


@pytest.mark.parametrize(
    ("what", "text", "said"),
    [
        ("design", "821265", "Registered design 821265: registered in 1937; the piece is of 1937 "
         "or later. From memory."),
        ("design", "Regd. No. 6012345", "Registered design 6012345: registered in 1990 or later; "
         "the piece is of 1990 or later. From memory."),
        ("patent", "654,321", "Patent 654321: published between 1949 and 1955; the piece is of "
         "1949 or later. From memory."),
        ("patent", "1577235", "Patent 1577235: published between 1980 and 1981; the piece is of "
         "1980 or later."),
        ("patent", "1234/09", "Application 1234 of 1909: the piece is of 1909 or later."),
        ("barcode", "5 012345 678900", "EAN-13: such bars have been printed since 1977. They say "
         "nothing of a later year."),
        ("design", "82I265", "“82I265” is not figures only. Look again for I read for 1, O for 0 "
         "and S for 5. It may be 821265."),
        ("design", "purple", "“purple” is not figures only. Look again for I read for 1, O for 0 "
         "and S for 5."),
        ("design", "123456789", "Registered design: 9 figures are too many, there are at most 8."),
        ("design", "0", "Registered designs begin at 1."),
        ("design", "1062000", "Registered design 1062000 was never given: the series ended before "
         "1062000 and went on at 2000000. Read it again."),
        ("patent", "99", "Below 100001 a patent number says no year by itself: before 1916 they "
         "began again at 1 each year. Add the year, as in 99/09."),
        ("patent", "1234/79", "British patents were numbered by the year from 1852 to 1978, not in "
         "1979."),
        ("barcode", "123", "A barcode has 8, 12 or 13 figures, this has 3. Type also the small "
         "ones at its ends."),
        ("barcode", "5012345678901", "Not right: by the other figures the last one should be 0. "
         "Read it again, figure by figure."),
    ],
)  # fmt: skip
def test_what_is_typed_is_answered_at_once(page, server, what, text, said):
    opened(page, server.url)
    sheet = page.get_by_role("dialog")
    sheet.get_by_label(SORTS[what]).check()
    sheet.get_by_label("Figures").fill(text)
    expect(sheet.get_by_role("status")).to_have_text(said)
    sheet.get_by_label("Figures").fill("")
    expect(sheet.get_by_role("status")).to_have_text("")


def test_another_sort_reads_the_same_figures_anew(page, server):
    opened(page, server.url)
    sheet = page.get_by_role("dialog")
    expect(sheet.get_by_label(SORTS["design"])).to_be_checked()
    sheet.get_by_label("Figures").fill("654321")
    expect(sheet.get_by_role("status")).to_contain_text("Registered design 654321")
    expect(sheet.get_by_label("Figures")).to_have_attribute("inputmode", "numeric")
    sheet.get_by_label(SORTS["patent"]).check()
    expect(sheet.get_by_role("status")).to_contain_text("Patent 654321")
    expect(sheet.get_by_label("Figures")).to_have_attribute("inputmode", "text")
    sheet.get_by_role("button", name="Close").click()
    expect(sheet).to_have_count(0)


def test_a_question_about_a_number_leads_there(page, server, pellmarsh):
    page.goto(server.url)
    asked = next(f for f in pellmarsh["pack"]["features"] if f["id"] == "mark_patent")
    session = {"pack": "pellmarsh", "version": "", "scope": {"kind": "", "items": []}}
    take_up(page, {**session, "able": [], "missing": [], "answers": []}, asked="mark_patent")
    assert question(page) == asked["question"]
    tap_link = page.get_by_role("button", name="Date the number")
    tap_link.click()
    sheet = page.get_by_role("dialog")
    expect(sheet.get_by_label(SORTS["patent"])).to_be_checked()
    sheet.get_by_label("Figures").fill("654321")
    expect(sheet.get_by_role("status")).to_contain_text("between 1949 and 1955")
    sheet.get_by_role("button", name="Close").click()
    assert question(page) == asked["question"]
    see(page, choices(page)[0])
    tap(page, "Undo")
    expect(tap_link).to_have_count(1)


def test_with_no_signal(page, site):
    with serving(site) as leaving:
        page.goto(leaving.url)
        page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    place(page, "More")
    page.get_by_role("main").get_by_role("button", name=ENTRY).click()
    sheet = page.get_by_role("dialog")
    sheet.get_by_label("Figures").fill("821265")
    expect(sheet.get_by_role("status")).to_contain_text("registered in 1937")


def test_without_the_tables_it_says_so(page, site):
    left = {name: content for name, content in site.items() if name != "packs/numbers.json"}
    with serving(left) as bare:
        page.goto(bare.url)
        place(page, "More")
        page.get_by_role("main").get_by_role("button", name=ENTRY).click()
        expect(page.get_by_role("alert")).to_contain_text("Could not load the tables of numbers")
        page.reported.clear()  # the browser's own line about the missing file
