"""What the range does not know, kept on the phone and brought to the pack."""

import re
import shutil
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from identify import phone
from identify.reference.sighting import propose
from tests.browser.phone import kill
from tests.browser.test_demo_pieces import at_hand
from tests.demo import PIECES

BY_ID = {piece["id"]: piece for piece in PIECES}


@pytest.fixture
def pack_folder(tmp_path) -> Path:
    folder = next(path for path in phone.demo_packs() if path.name == "pellmarsh")
    return Path(shutil.copytree(folder, tmp_path / "pellmarsh"))


def kept(page: Page, label: str, value: str) -> None:
    """Fill in a field, and see that it is saved."""
    field = page.get_by_label(re.compile(f"^{re.escape(label)}"))
    field.fill(value)
    field.blur()
    expect(page.locator(".field").filter(has_text=label)).to_contain_text("Saved")


def exported(page: Page, name: str, folder: Path) -> Path:
    with page.expect_download() as saving:
        page.get_by_role("button", name=name).click()
    path = folder / saving.value.suggested_filename
    saving.value.save_as(path)
    return path


def test_a_piece_in_no_reference_is_kept_and_proposed_to_the_pack(
    page, server, pellmarsh, pack_folder, tmp_path
):
    page.goto(server.url)
    at_hand(page, pellmarsh, BY_ID["unrecorded_variant"])
    page.get_by_role("button", name="Keep as a sighting").click()
    expect(page.get_by_text("Not in the range", exact=True)).to_be_visible()
    kept(page, "What to call it", "yellow with a band")
    page.get_by_label("It is a variant of").select_option(label="P 5 Express engine with tender")
    kept(page, "How do you know?", "The box is dated.")
    kept(page, "When was it made?", "1955")
    expect(page.locator("main")).to_contain_text("Main colour: yellow")
    page.get_by_role("button", name="All sightings").click()
    expect(page.get_by_role("list", name="Sightings")).to_contain_text("yellow with a band")
    diff = propose(exported(page, "Save all as a file", tmp_path), pack_folder)
    assert "+p_5_seen1,P 5,yellow with a band,1955,sighting" in diff
    assert "The box is dated." in diff


def test_what_stretches_a_known_year_is_said_and_proposed(
    page, server, pellmarsh, pack_folder, tmp_path
):
    page.goto(server.url)
    at_hand(page, pellmarsh, BY_ID["as_made"])
    page.get_by_text("Everything else").click()
    page.get_by_role("button", name="Keep as a sighting").click()
    field = page.get_by_label(re.compile("^When was it made?"))
    for text, said in (
        ("purple", "The app cannot read that"),
        ("1890", "Pellmarsh was made from 1947 to 1966"),
        ("first issue", "Type years here"),
    ):
        field.fill(text)
        field.blur()
        expect(page.locator("main")).to_contain_text(said)
    kept(page, "When was it made?", "late fifties")
    page.reload()
    expect(field).to_have_value("1956/1959")
    kept(page, "When was it made?", "1955")
    page.reload()
    expect(page.locator("main")).to_contain_text("This goes beyond what the sources say:")
    expect(page.locator("main")).to_contain_text(
        "Coupling, wide plastic claw: known from 1956 to 1963."
    )
    diff = propose(exported(page, "Save it as a file", tmp_path), pack_folder)
    assert re.search(r"^\+coupling,claw,1956-03,,,,cat57,.*sighting 1955", diff, re.MULTILINE)
    assert re.search(r"^\+p20_c,.*sighting 1955", diff, re.MULTILINE)


def test_sightings_outlive_the_tab_and_stand_under_more(browser, server, pellmarsh):
    context = browser.new_context()
    page = context.new_page()
    page.goto(server.url)
    at_hand(page, pellmarsh, BY_ID["unrecorded_variant"])
    page.get_by_role("button", name="Keep as a sighting").click()
    kept(page, "What to call it", "yellow")
    kill(page)
    again = context.new_page()
    again.goto(server.url)
    again.get_by_role("button", name="More", exact=True).click()
    again.get_by_role("button", name=re.compile("^Sightings")).click()
    again.get_by_role("list", name="Sightings").get_by_role("button").click()
    expect(again.get_by_role("heading", level=1)).to_have_text("yellow")
    again.get_by_role("button", name="Move to the bin").click()
    expect(again.get_by_role("alert")).to_contain_text("The sighting is in the bin.")
    context.close()
